"""Every answer of a guide with the years that it alone speaks for, for paper.

Of a guide that brackets a tree of questions would ask for marks that hardly any object
has; on one page a person looks up those that are there.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.claim import fitting
from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure, Number, layouts
from fieldid.engine.one import weigh
from fieldid.engine.range import brackets, named, run
from fieldid.engine.special import Vector
from fieldid.engine.words import figure, years
from fieldid.web.prepared import tables_of

ANY = "any year"


@dataclass(frozen=True, slots=True)
class Mark:
    """One answer and the years that it alone speaks for."""

    label: str
    years: str
    option: str
    drawn: bool


@dataclass(frozen=True, slots=True)
class Listed:
    """A table to look something up in, entry by entry."""

    title: str
    entries: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """A clue with its answers, or with the tables that take their place."""

    clue: Clue
    marks: tuple[Mark, ...] = ()
    lists: tuple[Listed, ...] = ()


def rows(guide: Guide) -> tuple[Row, ...]:
    """Every clue of the guide, in its order."""
    tables = tables_of(guide)
    return tuple(_row(tables, clue) for clue in guide.clues)


def _row(tables: Tables, clue: Clue) -> Row:
    match clue.kind:
        case Choice():
            return Row(clue, marks=tuple(_marks(tables, clue, clue.kind)))
        case Number():
            return Row(clue, lists=(_numbers(clue.kind),))
        case Measure():
            return Row(clue, lists=(_sizes(clue.kind),))
        case Code():
            return Row(clue, lists=tuple(_codes(clue.kind)))


def _marks(tables: Tables, clue: Clue, kind: Choice) -> Iterator[Mark]:
    for option in kind.options:
        told = _years(tables, _as_first(tables, clue, option.id))
        yield Mark(option.label, told, option.id, option.picture is not None)


def _as_first(tables: Tables, clue: Clue, option: str) -> Vector:
    """How much the answer speaks for each year while its part is the first one."""
    found = weigh(tables, Item(((clue.id, option),)))
    part = tables.part_of[tables.places[clue.id]]
    cells = found.original[part][:-1]
    return [sum(cells[start:stop]) for start, stop in tables.stretches]


def _years(tables: Tables, shares: Vector) -> str:
    """The years that stand out: a range, or one by one where the guide names a year."""
    if brackets(tables.guide):
        lead = run(shares)
        every = lead == (0, len(shares) - 1)
        return ANY if every else named(tables.guide, lead)
    found = fitting(tables, shares)
    return ANY if len(found) == len(shares) else years(found)


def _numbers(kind: Number) -> Listed:
    entries = tuple(f"{year}: {first:,}" for year, first in kind.first)
    return Listed("The first number of each year", (*entries, f"last: {kind.last:,}"))


def _sizes(kind: Measure) -> Listed:
    entries = tuple(
        f"{size.years[0]}-{size.years[1]}: "
        f"{figure(size.mean)} {kind.unit}, give or take {figure(size.sd)}"
        for size in kind.sizes
    )
    return Listed("The usual sizes", entries)


def _codes(kind: Code) -> Iterator[Listed]:
    """What stands for which year, layout by layout."""
    for layout in layouts(kind):
        when = f", {layout.years[0]}-{layout.years[1]}" if layout.years else ""
        for field in layout.fields:
            if field.codes:
                entries = tuple(f"{text}: {year}" for year, text in field.codes)
                yield Listed(f"The {field.name}{when}", entries)
