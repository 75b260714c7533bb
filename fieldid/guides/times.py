"""Years and months across a guide: model years, spans and sizes that must meet them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from fieldid.engine.guide import ModelYear
from fieldid.guides.months import month_text
from fieldid.guides.records import model_years
from fieldid.guides.refusals import Finding, Path, refusal

MOST_YEARS = 500
MOST_MONTHS = 120


@dataclass(frozen=True, slots=True)
class Times:
    """The model years that could be read and that rise; `unread` is how many more
    there may be: any of them may be a year that is named elsewhere.
    """

    years: tuple[ModelYear, ...]
    unread: int

    @property
    def opens(self) -> int:
        """The first month in which anything was built."""
        return min(y.opens for y in self.years)

    @property
    def closes(self) -> int:
        """The last month in which anything was built."""
        return max(y.closes for y in self.years)


def times(tables: Sequence[Any]) -> Times:
    """What the [[model_year]] tables say, as far as they can be read."""
    known: list[ModelYear] = []
    unread = 0
    for table in tables:
        years = model_years(table) if _is_sound(table) else ()
        if years and (not known or known[-1].year < years[0].year):
            known += years
        else:
            # A run that was refused may have meant any years.
            unread += 1 if table.get("years", "refused") is None else MOST_YEARS
    return Times(tuple(known), unread)


def check_model_years(tables: Sequence[Any]) -> Iterator[Finding]:
    """Each table says one thing, and together they rise."""
    for place, table in enumerate(tables):
        yield from _check_model_year(table, ("model_year", place))
    sound = [
        (place, model_years(table))
        for place, table in enumerate(tables)
        if _is_sound(table)
    ]
    last = 0
    for place, years in sound:
        first = years[0].year
        if first <= last:
            code = "year-twice" if first == last else "year-order"
            yield ("model_year", place), refusal(code, value=first, before=last)
        last = max(last, years[-1].year)
    count = sum(len(years) for _, years in sound)
    if count > MOST_YEARS:
        yield ("model_year",), refusal("too-many-years", count=count, most=MOST_YEARS)


def check_year(year: int, path: Path, known: Times) -> Iterator[Finding]:
    """A year that is named is a model year."""
    years = [y.year for y in known.years]
    if not years or year in years:
        return
    slack = known.unread
    if slack and years[0] - slack <= year <= years[-1] + slack:
        return
    nearest = min(years, key=lambda y: abs(y - year))
    yield path, refusal("year-outside", value=year, what="model year", nearest=nearest)


def check_build_year(year: int, path: Path, known: Times) -> Iterator[Finding]:
    """A build year that is named is one in which something was built."""
    if not known.years or known.unread:
        return
    first, last = known.opens // 12, known.closes // 12
    if not first <= year <= last:
        nearest = first if year < first else last
        yield (
            path,
            refusal("year-outside", value=year, what="build year", nearest=nearest),
        )


def check_years(
    years: tuple[int, int] | None, path: Path, known: Times
) -> Iterator[Finding]:
    """The first and the last year are model years."""
    if years:
        for year in dict.fromkeys(years):
            yield from check_year(year, path, known)


def check_span(span: Any, path: Path, known: Times) -> Iterator[Finding]:
    """A span lies in the guide's years and months and covers some of them."""
    found = [
        *check_years(span.get("years"), (*path, "years"), known),
        *_check_month(span.get("since"), (*path, "from"), known),
        *_check_month(span.get("until"), (*path, "to"), known),
        *_check_fade(span, (*path, "fade")),
        *_check_order(span, (*path, "to")),
    ]
    yield from found
    if not found and known.years and not known.unread and not _meets(span, known):
        yield path, refusal("never")


def _is_sound(table: Any) -> bool:
    if not {"year", "years", "built"} <= table.keys():
        return False
    return (table["year"] is None) != (table["years"] is None)


def _check_model_year(table: Any, path: Path) -> Iterator[Finding]:
    if not {"year", "years"} <= table.keys():
        return
    if not _is_sound({"built": None, **table}):
        found = "neither" if table["year"] is None else "both"
        yield path, refusal("year-or-years", found=found)
    elif table.get("built"):
        yield from _check_window(table, (*path, "built"))


def _check_window(table: Any, path: Path) -> Iterator[Finding]:
    year = table["year"]
    opens, closes = table["built"]
    if year is None:
        yield path, refusal("run-built")
    elif closes - opens >= MOST_MONTHS:
        count = closes - opens + 1
        yield path, refusal("built-long", count=count, most=MOST_MONTHS)
    elif closes // 12 < year - 1 or opens // 12 > year + 1:
        yield path, refusal("built-far", year=year)


def _check_month(t: int | None, path: Path, known: Times) -> Iterator[Finding]:
    if t is None or not known.years or known.unread:
        return
    if not known.opens <= t <= known.closes:
        yield (
            path,
            refusal(
                "month-outside",
                value=repr(month_text(t)),
                least=month_text(known.opens),
                most=month_text(known.closes),
            ),
        )


def _check_fade(span: Any, path: Path) -> Iterator[Finding]:
    # A month that was refused is there to fade from.
    months = [span.get(key, "refused") for key in ("since", "until")]
    if span.get("fade") and months == [None, None]:
        yield path, refusal("fade-alone")


def _check_order(span: Any, path: Path) -> Iterator[Finding]:
    since, until = span.get("since"), span.get("until")
    if since is not None and until is not None and until < since:
        value = repr(f"{month_text(since)} to {month_text(until)}")
        yield path, refusal("backwards", value=value)


def _meets(span: Any, known: Times) -> bool:
    """Whether any cell lies in the span; true for a span that is partly unread."""
    first, last = span.get("years") or (known.years[0].year, known.years[-1].year)
    since, until = span.get("since"), span.get("until")
    return any(
        first <= y.year <= last
        and (since is None or since <= y.closes)
        and (until is None or y.opens <= until)
        for y in known.years
    )
