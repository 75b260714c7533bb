"""What a size, a code or a number reads in each model year, for the preview."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from fieldid.engine.cells import Cell
from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Field,
    Guide,
    Layout,
    Measure,
    Number,
    layouts,
)
from fieldid.engine.layout import Texts, layout_table, used
from fieldid.engine.words import called, listed
from fieldid.web.shares import span
from fieldid.workbench.words import numeral

MODEL_YEAR = "Model year"
SILENT = "the guide says nothing"
MANY = 24
"""More rows than this lie folded."""
RUN = 3
"""From so many on, what follows one another is told as a run."""


@dataclass(frozen=True, slots=True)
class Yearly:
    """What to say above the table, what its years are, and its rows: years, and what
    they read.
    """

    caption: str
    of: str
    rows: tuple[tuple[str, str], ...]

    @property
    def is_long(self) -> bool:
        """Whether it would be in the way."""
        return len(self.rows) > MANY


@dataclass(frozen=True, slots=True)
class _Year:
    """A model year, or of older marks a calendar year, with its months."""

    year: int
    opens: int
    closes: int


def yearly(guide: Guide, clue: Clue) -> Yearly | None:
    """The table of a clue; None of a choice, which has bands."""
    kind = clue.kind
    match kind:
        case Measure():
            told = [(year.year, _sizes(guide, kind, year.year)) for year in guide.years]
            return Yearly("The usual size", MODEL_YEAR, _rows(told))
        case Code():
            told = [(each.year, _code(kind, each)) for each in _coded(guide, kind)]
        case Number():
            told = [(each.year, _numbers(kind, each)) for each in _given(guide, kind)]
        case Choice():
            return None
    if kind.means == "made":
        return Yearly("What it reads on objects", MODEL_YEAR, _rows(told))
    return Yearly("What marks of each year read", "Year of the mark", _rows(told))


def _given(guide: Guide, kind: Number) -> list[_Year]:
    if kind.means == "made":
        return _model_years(guide)
    return [_calendar(year) for year, _ in kind.first]


def _coded(guide: Guide, kind: Code) -> list[_Year]:
    """The years in which a code was given, up to the last one of building."""
    if kind.means == "made":
        return _model_years(guide)
    first = guide.years[0].opens // 12
    starts = [each.years[0] if each.years else first for each in layouts(kind)]
    return [
        _calendar(year) for year in range(min(starts), guide.years[-1].closes // 12 + 1)
    ]


def _model_years(guide: Guide) -> list[_Year]:
    return [_Year(year.year, year.opens, year.closes) for year in guide.years]


def _calendar(year: int) -> _Year:
    return _Year(year, 12 * year, 12 * year + 11)


def _rows(told: Sequence[tuple[int, str]]) -> tuple[tuple[str, str], ...]:
    """Years in a row that read the same are told together."""
    found = []
    for text, group in groupby(told, key=lambda pair: pair[1]):
        years = [year for year, _ in group]
        found.append((span(years[0], years[-1]), text))
    return tuple(found)


def _sizes(guide: Guide, kind: Measure, year: int) -> str:
    here = [each for each in kind.sizes if each.years[0] <= year <= each.years[1]]
    return (
        "; ".join(
            f"{numeral(each.mean)} {kind.unit}, give or take {numeral(each.sd)}"
            f"{_whose(guide, each.members, each.excluded)}"
            for each in here
        )
        or SILENT
    )


def _whose(guide: Guide, members: Sequence[str], excluded: Sequence[str]) -> str:
    names = listed([called(guide, each) for each in members or excluded])
    if members:
        return f" (only {names})"
    return f" (but for {names})" if excluded else ""


def _numbers(kind: Number, year: _Year) -> str:
    """The numbers of the years that it was built in."""
    stops = [first - 1 for _, first in kind.first[1:]] + [kind.last]
    given = [
        (first, stop)
        for (when, first), stop in zip(kind.first, stops, strict=True)
        if year.opens // 12 <= when <= year.closes // 12
    ]
    if not given:
        return "no number was given"
    return f"{numeral(given[0][0])} to {numeral(given[-1][1])}"


def _code(kind: Code, year: _Year) -> str:
    """What each stretch reads, layout by layout."""
    months = range(year.opens, year.closes + 1)
    dates = [Cell(year.year, t, 0.0) for t in months]
    told = [_laid(each, dates) for each in layouts(kind)]
    return ", or else ".join(filter(None, told)) or SILENT


def _laid(layout: Layout, dates: Sequence[Cell]) -> str:
    dates = [date for date in dates if used(layout, date)]
    if not dates:
        return ""
    texts = layout_table(layout, dates).texts
    told = zip(layout.fields, texts, strict=True)
    return "; ".join(f"{field.name} {_read(field, known)}" for field, known in told)


def _read(field: Field, known: Sequence[Texts]) -> str:
    """What stands in a stretch: each text, or a run of them.

    >>> letters = Field("month", "month", 1, "ABCDEFGHJKLM")
    >>> _read(letters, [("H",), ("J",), ("K",), ("B",)])
    'B or H to K'
    >>> _read(letters, [None])
    'anything'
    """
    if None in known:
        return "anything"
    alphabet = field.alphabet
    texts = dict.fromkeys(text for each in known for text in each or ())
    placed = sorted((_place(alphabet, text), text) for text in texts)
    return " or ".join(_runs(placed))


def _place(alphabet: str, text: str) -> int:
    """The place of a text among all that the alphabet can spell, in its order."""
    place = 0
    for letter in text:
        place = place * len(alphabet) + alphabet.index(letter)
    return place


def _runs(placed: Sequence[tuple[int, str]]) -> Iterator[str]:
    numbered = enumerate(placed)
    for _, group in groupby(numbered, key=lambda pair: pair[1][0] - pair[0]):
        run = [text for _, (_, text) in group]
        if len(run) >= RUN:
            yield f"{run[0]} to {run[-1]}"
        else:
            yield from run
