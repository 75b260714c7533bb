"""One clue against the guide: its part and spot, its options, sizes or fields."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import Any

from fieldid.engine.likelihood import applies
from fieldid.errors import nearest
from fieldid.guides.codes import check_code
from fieldid.guides.names import Names, names, twice
from fieldid.guides.numbers import check_meaning, check_number
from fieldid.guides.refusals import Finding, Path, Refusal, figure, quote, refusal
from fieldid.guides.times import Times, check_span, check_years


@dataclass(frozen=True, slots=True)
class Known:
    """What the guide has, as far as it could be read.

    `has_set` is whether members can be named at all; `spots` are those of the
    drawing, none if it is not known.
    """

    parts: Names
    members: Names
    has_set: bool
    times: Times
    drawing: str
    spots: tuple[str, ...]


def check_clue(clue: Any, path: Path, known: Known) -> Iterator[Finding]:
    """All of one clue."""
    if "part" in clue:
        yield from known.parts.unknown(clue["part"], (*path, "part"))
    yield from _check_spot(clue, (*path, "spot"), known)
    yield from _check_options(clue, path, known)
    yield from _check_sizes(clue, (*path, "size"), known)
    yield from check_meaning(clue, path)
    yield from check_code(clue, path, known.times)
    yield from check_number(clue, path, known.times)


def beyond(value: float, clue: Any) -> Refusal | None:
    """Why the clue cannot be read as this measure or number, as far as is known; None
    if it can.
    """
    if {"first", "last"} <= clue.keys():
        low, high = clue["first"][0][1], clue["last"]
    else:
        low, high = clue.get("range", (value, value))
    if low <= value <= high:
        return None
    words = {"value": figure(value), "least": figure(low), "most": figure(high)}
    if "last" in clue:
        return refusal("outside-numbers", **words)
    return refusal("outside-range", **words, unit=clue.get("unit", ""))


def _check_spot(clue: Any, path: Path, known: Known) -> Iterator[Finding]:
    if "spot" not in clue or not known.spots:
        return
    spot = clue["spot"]
    if spot is None:
        # The part's id stands in; a part that is not known is refused already.
        spot = clue.get("part")
        if spot not in known.parts.known:
            return
    if spot not in known.spots:
        yield (
            path,
            refusal(
                "no-spot",
                value=quote(spot),
                drawing=quote(known.drawing),
                nearest=nearest(spot, known.spots),
            ),
        )


def _check_options(clue: Any, path: Path, known: Known) -> Iterator[Finding]:
    options = clue.get("option", [])
    ids = names("option of this clue", options)
    yield from twice(options, (*path, "option"))
    for name, _ in clue.get("replacement", ()):
        yield from ids.unknown(name, (*path, "replacement", name))
    for place, option in enumerate(options):
        yield from _check_option(option, (*path, "option", place), ids, known)


def _check_option(
    option: Any, path: Path, ids: Names, known: Known
) -> Iterator[Finding]:
    for place, name in enumerate(option.get("like", ())):
        at = (*path, "like", place)
        if name == option.get("id"):
            yield at, refusal("like-itself", value=quote(name))
        yield from ids.unknown(name, at)
    for place, span in enumerate(option.get("seen", ())):
        yield from check_span(span, (*path, "seen", place), known.times)
        yield from _check_members(span, (*path, "seen", place), known)


def _check_sizes(clue: Any, path: Path, known: Known) -> Iterator[Finding]:
    sizes = clue.get("size", [])
    for place, size in enumerate(sizes):
        at = (*path, place)
        yield from check_years(size.get("years"), (*at, "years"), known.times)
        yield from _check_members(size, at, known)
        if "mean" in size and (told := beyond(size["mean"], clue)):
            yield (*at, "mean"), told
    yield from _check_overlaps(sizes, path, known)


def _check_overlaps(sizes: list[Any], path: Path, known: Known) -> Iterator[Finding]:
    for (i, one), (j, other) in combinations(enumerate(sizes), 2):
        if not {"years", "members", "excluded"} <= one.keys() & other.keys():
            continue
        year = max(one["years"][0], other["years"][0])
        meet = year <= min(one["years"][1], other["years"][1])
        if meet and _share_member(one, other, known):
            yield (*path, j), refusal("overlap", other=i + 1, year=year)


def _share_member(one: Any, other: Any, known: Known) -> bool:
    """Whether an object may fall under both, its member known or not."""
    return any(
        all(applies(size["members"], size["excluded"], m) for size in (one, other))
        for m in (None, *known.members.known)
    )


def _check_members(table: Any, path: Path, known: Known) -> Iterator[Finding]:
    """The members that a span or a size is for."""
    if table.get("members") and table.get("excluded"):
        yield (*path, "except"), refusal("members-and-except")
    for attribute, key in (("members", "members"), ("excluded", "except")):
        named = table.get(attribute, ())
        if named and not known.has_set:
            yield (*path, key), refusal("no-set")
        for place, member in enumerate(named):
            yield from known.members.unknown(member, (*path, key, place))
