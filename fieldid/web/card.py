"""A guide on one sheet for a pocket without a phone: steps, or marks, and red flags.

A guide that names a year becomes a key of numbered steps, grown best first as far as
the sheet reaches. Of one that brackets the marks that tell most are listed.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from fieldid.engine import Tables
from fieldid.engine.guide import Clue, Guide
from fieldid.engine.one import ranked
from fieldid.engine.range import brackets
from fieldid.engine.words import percent
from fieldid.learn.worth import worths
from fieldid.web.asking import Ask, Printed
from fieldid.web.growing import Bud, grown, pruned
from fieldid.web.marks import ANY, Row, rows
from fieldid.web.prepared import tables_of

ANSWERS = 74.0
"""What a sheet holds, in rows of drawn answers: two columns of 37."""
LINES = 124.0
"""What it holds in lines of marks, two columns of 62."""
ACROSS = 2
"""So many answers stand beside each other in a column."""
HEAD = 1.6
"""What the question of a step takes, with the space around it, in rows."""
ASKED = 2.1
"""What the question above some marks takes, in lines."""
SURE = 0.9
"""A step whose answer is that sure names no second year."""


@dataclass(frozen=True, slots=True)
class Way:
    """An answer (None: it cannot be told) and what it leads to, a step's number or the
    years that it ends with.
    """

    printed: Printed | None
    step: int | None
    end: str


@dataclass(frozen=True, slots=True)
class Step:
    """A numbered question; `rest` if unlikely answers were left out."""

    number: int
    ask: Ask
    ways: tuple[Way, ...]
    rest: bool


@dataclass(frozen=True, slots=True)
class Card:
    """What the sheet holds: steps, or in their place rows of marks; `right` is how
    often who follows the steps ends at the right year, by the model.
    """

    steps: tuple[Step, ...]
    marks: tuple[Row, ...]
    right: float | None

    @property
    def clues(self) -> tuple[Clue, ...]:
        """Whose answers are drawn."""
        return tuple(
            dict.fromkeys(
                [step.ask.clue for step in self.steps]
                + [row.clue for row in self.marks]
            )
        )


def card(guide: Guide) -> Card:
    """The guide's card."""
    tables = tables_of(guide)
    if brackets(guide):
        return Card((), tuple(_marks(tables)), None)
    root = grown(guide)
    kept = [id(bud) for bud in pruned(root, room=ANSWERS, cost=cost)]
    buds = list(_asked(root, kept))
    right = sum(_right(root, kept))
    return Card(tuple(_steps(tables, buds)), (), right)


def cost(answers: int) -> float:
    """Rows that a step of so many answers takes."""
    return HEAD + -(-answers // ACROSS)


def _steps(tables: Tables, buds: Sequence[Bud]) -> Iterator[Step]:
    """The questions, numbered as they come."""
    numbers = {id(bud): number for number, bud in enumerate(buds, start=1)}
    for bud in buds:
        assert bud.ask is not None
        ways = tuple(
            Way(printed, numbers.get(id(child)), _end(tables, child))
            for printed, child in bud.branches
        )
        yield Step(numbers[id(bud)], bud.ask, ways, len(ways) <= len(bud.ask.answers))


def _asked(bud: Bud, kept: Collection[int]) -> Iterator[Bud]:
    """The questions that are kept, from the top."""
    if id(bud) in kept:
        yield bud
        for _, child in bud.branches:
            yield from _asked(child, kept)


def _end(tables: Tables, bud: Bud) -> str:
    """The most likely year, and the next if the first is not nearly sure."""
    years = [p for _, p in bud.verdict.model_years]
    first, *others = ranked(years)
    names = [year.year for year in tables.guide.years]
    if bud.verdict.outside > years[first]:
        return "none of these"
    say = f"{names[first]}, {percent(years[first])}"
    if years[first] >= SURE or not others:
        return say
    return f"{say}; else {names[others[0]]}"


def _right(bud: Bud, kept: Collection[int]) -> Iterator[float]:
    """For each end, how likely one gets there and how likely it is right then.

    What is not printed counts as wrong.
    """
    if id(bud) not in kept:
        yield bud.share * max(p for _, p in bud.verdict.model_years)
        return
    for _, child in bud.branches:
        yield from _right(child, kept)


def _marks(tables: Tables) -> Iterator[Row]:
    """The marks that tell most, as far as the sheet reaches; tables that take the place
    of marks are for a page.
    """
    by_clue = {row.clue.id: _telling(row) for row in rows(tables.guide)}
    room = LINES
    for worth in worths(tables):
        row = by_clue[worth.clue.id]
        needed = ASKED + len(row.marks)
        if row.marks and needed <= room:
            room -= needed
            yield row


def _telling(row: Row) -> Row:
    """The row without what may be of any year."""
    return replace(row, marks=tuple(mark for mark in row.marks if mark.years != ANY))
