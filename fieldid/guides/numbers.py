"""What a number counts: whether its table rises, and what it means for the making."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from fieldid.guides.refusals import Finding, Path, quote, refusal
from fieldid.guides.times import Times, check_build_year

LAG = "the years for which a mark stays in use on average, as 8"


def check_meaning(clue: Any, path: Path) -> Iterator[Finding]:
    """A code or a number has a lag if it means not-before, and else none."""
    if not {"means", "lag"} <= clue.keys():
        return
    means, lag = clue["means"], clue["lag"]
    if means == "not-before" and lag is None:
        yield (*path, "lag"), refusal("missing", wants=LAG)
    if means == "made" and lag is not None:
        yield (*path, "lag"), refusal("lag-unwanted", means=f"means = {quote(means)}")


def check_number(clue: Any, path: Path, known: Times) -> Iterator[Finding]:
    """The numbers rise, up to the last, and the years are some of building, or are
    before one.
    """
    first, last = clue.get("first"), clue.get("last")
    if first is None:
        return
    for (_, before), (year, value) in pairwise(first):
        if value <= before:
            told = refusal("number-order", value=value, year=year, before=before)
            yield (*path, "first", str(year)), told
    if last is not None and last < first[-1][1]:
        year, least = first[-1]
        told = refusal("number-last", value=last, least=least, year=year)
        yield (*path, "last"), told
    if clue.get("means") == "made":
        for year, _ in first:
            yield from check_build_year(year, (*path, "first", str(year)), known)
    elif "means" in clue:
        yield from check_before(first[0][0], (*path, "first"), known)


def check_before(year: int, path: Path, known: Times) -> Iterator[Finding]:
    """Something was built in the year or later."""
    if known.years and not known.unread and year > known.closes // 12:
        yield path, refusal("never")
