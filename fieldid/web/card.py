"""A guide on one sheet for a pocket without a phone: steps, or marks, and red flags.

A guide that names a year becomes a key of numbered steps, grown best first as far as
the sheet reaches. Of one that brackets the marks that tell most are listed.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from fieldid.engine import Tables
from fieldid.engine.guide import Clue, Code, Guide, Number, layouts
from fieldid.engine.one import ranked
from fieldid.engine.range import brackets
from fieldid.engine.words import percent
from fieldid.learn.worth import worths
from fieldid.web.asking import Ask, Printed
from fieldid.web.growing import Bud, grown, pruned
from fieldid.web.marks import ANY, Row, rows, said
from fieldid.web.prepared import tables_of
from fieldid.web.shares import span
from fieldid.web.sheet import SIZES, Sheet, hold

TYPED = 2
"""So many codes and numbers are told beside the steps, those that tell most."""
FLAGS = 3
"""So many red flags of the guide's own have room."""
LITTLE = 0.01
"""So much of the hits larger letters are worth."""
UNTOLD = "can’t tell, or gone"
HEAD = "Begin at 1, take the answer that fits. " * 5
"""As long as what the head says."""
DATING = ("year", "year-letter", "model-year")
"""Fields of a code that tell a year; a month is of little use without one."""
GUESS = 0.4
"""A first year that is less likely than this is only a guess."""
SURE = 0.9
"""A step whose answer is that sure names no second year."""


@dataclass(frozen=True, slots=True)
class Way:
    """An answer (None: it cannot be told) and what it leads to, a step's number or the
    year that it ends with, and how likely that is.
    """

    printed: Printed | None
    step: int | None
    end: str
    more: str


@dataclass(frozen=True, slots=True)
class Step:
    """A numbered question; `rest` if unlikely answers were left out."""

    number: int
    ask: Ask
    ways: tuple[Way, ...]
    rest: bool


@dataclass(frozen=True, slots=True)
class Read:
    """A code or a number, and what stands for which years, in a line a field."""

    clue: Clue
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """What the sheet holds, in letters of so many points: what can be read off at once,
    and steps, or in their place rows of marks; `right` is how often who follows the
    steps alone ends at the right year, by the model.
    """

    size: float
    reads: tuple[Read, ...]
    steps: tuple[Step, ...]
    marks: tuple[Row, ...]
    right: float | None

    @property
    def clues(self) -> tuple[Clue, ...]:
        """Whose answers are drawn."""
        return tuple(dict.fromkeys(step.ask.clue for step in self.steps))


@lru_cache(maxsize=64)
def card(guide: Guide) -> Card:
    """The guide's card, with the largest letters that lose next to nothing against the
    smallest: no mark, or hardly a hit in the steps.
    """
    draft = _marked if brackets(guide) else _stepped
    *larger, fullest = (draft(guide, Sheet(size)) for size in SIZES)
    return next((made for made in larger if _as_good(made, fullest)), fullest)


def _as_good(made: Card, fullest: Card) -> bool:
    if made.right is None or fullest.right is None:
        return len(made.marks) == len(fullest.marks)
    return made.right >= fullest.right - LITTLE


def foot(guide: Guide) -> tuple[str, ...]:
    """What stands below: red flags, and a caution."""
    flags = " ".join(flag.say for flag in guide.flags[:FLAGS])
    caution = " ".join(guide.cautions[:1])
    estimate = "An estimate, not an authentication or an appraisal."
    return (flags, f"{estimate} {caution}".strip())


def _stepped(guide: Guide, sheet: Sheet) -> Card:
    """A card of steps, as far as the sheet reaches."""
    tables = tables_of(guide)
    root, reads = grown(guide), tuple(_reads(tables))
    column = sheet.column(HEAD, foot(guide))
    above = [sheet.read(read.clue.ask, read.lines) for read in reads]

    def fits(buds: list[Bud]) -> bool:
        below = [height(sheet, bud) for bud in _asked(root, [id(bud) for bud in buds])]
        return hold(column, above + below)

    kept = [id(bud) for bud in pruned(root, fits)]
    steps = tuple(_steps(tables, list(_asked(root, kept))))
    return Card(sheet.size, reads, steps, (), sum(_right(root, kept)))


def height(sheet: Sheet, bud: Bud) -> float:
    """How much of a column a question takes."""
    assert bud.ask is not None
    answers = [
        (printed.label, printed.drawn) if printed else (UNTOLD, False)
        for printed, _ in bud.branches
    ]
    return sheet.step(f"00 {bud.ask.clue.ask} {bud.ask.detail}", answers)


def _marked(guide: Guide, sheet: Sheet) -> Card:
    """A card of the marks that tell most, as far as the sheet reaches; tables that take
    the place of marks are for a page.
    """
    tables = tables_of(guide)
    by_clue = {row.clue.id: _telling(row) for row in rows(guide)}
    told = [by_clue[worth.clue.id] for worth in worths(tables)]
    column = sheet.column(HEAD, foot(guide))
    kept: list[Row] = []
    for row in told:
        if row.marks and hold(column, (_height(sheet, each) for each in (*kept, row))):
            kept.append(row)
    return Card(sheet.size, (), (), tuple(kept), None)


def _reads(tables: Tables) -> Iterator[Read]:
    """The codes and numbers that tell most, as far as anything stands for a year."""
    typed = [
        (worth.clue, worth.clue.kind)
        for worth in worths(tables)
        if isinstance(worth.clue.kind, Code | Number)
    ]
    for clue, kind in typed[:TYPED]:
        lines = tuple(_fields(kind) if isinstance(kind, Code) else _firsts(kind))
        if lines:
            yield Read(clue, lines)


def _fields(kind: Code) -> Iterator[str]:
    """What a code says of the year, field by field."""
    for layout in layouts(kind):
        when = f" in {span(*layout.years)}" if layout.years else ""
        for field in layout.fields:
            if field.means in DATING:
                yield f"The {field.name}{when}: {said(kind, field)}."


def _firsts(kind: Number) -> Iterator[str]:
    told = "; ".join(f"{year} {first:,}" for year, first in kind.first)
    yield f"The first number of each year: {told}; last {kind.last:,}."


def _steps(tables: Tables, buds: Sequence[Bud]) -> Iterator[Step]:
    """The questions, numbered as they come."""
    numbers = {id(bud): number for number, bud in enumerate(buds, start=1)}
    for bud in buds:
        assert bud.ask is not None
        ways = tuple(
            Way(printed, numbers.get(id(child)), *_end(tables, child))
            for printed, child in bud.branches
        )
        yield Step(numbers[id(bud)], bud.ask, ways, len(ways) <= len(bud.ask.answers))


def _asked(bud: Bud, kept: Collection[int]) -> Iterator[Bud]:
    """The questions that are kept, from the top."""
    if id(bud) in kept:
        yield bud
        for _, child in bud.branches:
            yield from _asked(child, kept)


def _end(tables: Tables, bud: Bud) -> tuple[str, str]:
    """The most likely year, and how likely; the next if that is not nearly sure."""
    shares = [p for _, p in bud.verdict.model_years]
    first, *others = ranked(shares)
    names = [str(year.year) for year in tables.guide.years]
    if bud.verdict.outside > shares[first]:
        return "none of these", ""
    say = percent(shares[first])
    if shares[first] < GUESS:
        return names[first], f"{say}, unclear"
    if shares[first] >= SURE or not others:
        return names[first], say
    return names[first], f"{say}, or {names[others[0]]}"


def _right(bud: Bud, kept: Collection[int]) -> Iterator[float]:
    """For each end, how likely one gets there and how likely it is right then.

    What is not printed counts as wrong.
    """
    if id(bud) not in kept:
        yield bud.share * max(p for _, p in bud.verdict.model_years)
        return
    for _, child in bud.branches:
        yield from _right(child, kept)


def _height(sheet: Sheet, row: Row) -> float:
    return sheet.marks(row.clue.ask, [mark.label for mark in row.marks])


def _telling(row: Row) -> Row:
    """The row without what may be of any year."""
    return replace(row, marks=tuple(mark for mark in row.marks if mark.years != ANY))
