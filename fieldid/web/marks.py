"""Every answer of a guide with the years that it alone speaks for, for paper.

Of a guide that brackets a tree of questions would ask for marks that hardly any object
has; on one page a person looks up those that are there.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fieldid.engine import Item, Tables
from fieldid.engine.claim import fitting
from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Field,
    Guide,
    Measure,
    Number,
    Size,
    layouts,
)
from fieldid.engine.one import weigh
from fieldid.engine.range import brackets, named, run
from fieldid.engine.special import Vector
from fieldid.engine.words import MONTHS, called, capital, figure, listed, years
from fieldid.web.prepared import tables_of
from fieldid.web.shares import span

ANY = "any year"
LAST = {
    1: "the last figure of ",
    2: "the last two figures of ",
    3: "the last three figures of ",
}
"""Of a year that is not written out."""
SHORT = 12
"""A longer table is folded."""


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

    @property
    def folded(self) -> bool:
        """Whether it would be in the way of whoever does not look for it."""
        return len(self.entries) > SHORT


@dataclass(frozen=True, slots=True)
class Row:
    """A clue with its answers, or with the tables that take their place."""

    clue: Clue
    marks: tuple[Mark, ...] = ()
    lists: tuple[Listed, ...] = ()


@lru_cache(maxsize=64)
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
            sizes = clue.kind.sizes
            return Row(clue, lists=(_sizes(tables.guide, clue.kind),) if sizes else ())
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


def _sizes(guide: Guide, kind: Measure) -> Listed:
    """The sizes of each group of members, or of all; a spread that all have is told
    once.
    """
    groups: dict[str, list[Size]] = {}
    for size in kind.sizes:
        names = listed([called(guide, member) for member in size.members])
        groups.setdefault(names, []).append(size)
    spreads = {size.sd for size in kind.sizes}
    usual = f", give or take {figure(kind.sizes[0].sd)} {kind.unit}"
    one = len(spreads) == 1
    return Listed(
        f"The usual sizes{usual if one else ''}",
        tuple(
            entry
            for names, sizes in groups.items()
            for entry in _grouped(kind, names, sizes, one, len(groups))
        ),
    )


def _grouped(
    kind: Measure,
    names: str,
    sizes: Sequence[Size],
    one: bool,
    many: int,
) -> Iterator[str]:
    """A line for each size, or where members differ for each group of them."""
    told: dict[str, list[int]] = {}
    for size in sizes:
        spread = "" if one else f", give or take {figure(size.sd)}"
        first, last = size.years
        told.setdefault(f"{figure(size.mean)} {kind.unit}{spread}", []).extend(
            range(first, last + 1)
        )
    entries = [f"{years(sorted(known))}: {size}" for size, known in told.items()]
    if many == 1:
        yield from entries
    else:
        yield f"{names or 'all others'}: {'; '.join(entries)}"


def _codes(kind: Code) -> Iterator[Listed]:
    """What each field tells, layout by layout."""
    for layout in layouts(kind):
        when = f", {span(*layout.years)}" if layout.years else ""
        told = tuple(
            f"{capital(field.name)}: {said(kind, field)}." for field in layout.fields
        )
        yield Listed(f"How it is laid out{when}", told)


def said(kind: Code, field: Field) -> str:
    """What a field of a code tells, in a line.

    >>> year = Field("figure", "year", 1, "0123456789")
    >>> said(Code((year,)), year)
    'the last figure of the year it was built'
    """
    match field.means:
        case "month":
            return _months(field)
        case "year":
            given = "it was built" if kind.means == "made" else "it was marked so"
            return f"{LAST.get(field.width, '')}the year {given}"
        case "week":
            return "the week of the year"
        case "day":
            return "the day of the month"
        case "plain":
            return "nothing about the date"
    named: dict[str, list[int]] = {}
    for year, text in field.codes:
        named.setdefault(text, []).append(year)
    # A text and its years stay together.
    return "; ".join(f"{text}\u00a0{years(found)}" for text, found in named.items())


def _months(field: Field) -> str:
    """The letters of the months, as a run where they are one."""
    letters, others = field.alphabet[:12], field.alphabet[12:]
    special = f"; {listed(list(others))} tells no month" if others else ""
    if [ord(letter) - ord(letters[0]) for letter in letters] == list(range(12)):
        return f"{letters[0]} January to {letters[-1]} December{special}"
    pairs = zip(letters, MONTHS, strict=True)
    return ", ".join(f"{letter} {name}" for letter, name in pairs) + special
