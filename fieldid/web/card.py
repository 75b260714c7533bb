"""A guide on one sheet for a pocket without a phone: steps, or marks, and red flags.

A guide that names a year becomes a key of numbered steps, grown best first as far as
the sheet reaches. Of one that brackets the marks that tell most are listed.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from fieldid.engine import Tables
from fieldid.engine.guide import Clue, Code, Guide, Number
from fieldid.engine.one import ranked
from fieldid.engine.range import brackets
from fieldid.engine.words import percent, years
from fieldid.learn.worth import worths
from fieldid.web.asking import Ask, Printed
from fieldid.web.growing import Bud, grown, pruned
from fieldid.web.marks import ANY, Listed, Row, rows
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
TYPED = 2
"""So many codes and numbers are told beside the steps, those that tell most."""
LETTERS = 52
"""Characters in a line of a column."""
LINE = 0.62
"""What a line of text takes, in rows."""
GUESS = 0.4
"""A first year that is less likely than this is only a guess."""
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
class Read:
    """A code or a number, and what stands for which years, in a line a field."""

    clue: Clue
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """What the sheet holds: what can be read off at once, and steps, or in their place
    rows of marks; `right` is how often who follows the steps alone ends at the right
    year, by the model.
    """

    reads: tuple[Read, ...]
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
        return Card((), (), tuple(_marks(tables)), None)
    root, reads = grown(guide), tuple(_reads(tables))
    room = ANSWERS - sum(length(read) for read in reads)
    kept = [id(bud) for bud in pruned(root, room=room, cost=cost)]
    buds = list(_asked(root, kept))
    right = sum(_right(root, kept))
    return Card(reads, tuple(_steps(tables, buds)), (), right)


def length(read: Read) -> float:
    """Rows that a code or a number takes."""
    lines = [-(-len(line) // LETTERS) for line in (read.clue.ask, *read.lines)]
    return HEAD / 2 + LINE * sum(lines)


def _reads(tables: Tables) -> Iterator[Read]:
    """The codes and numbers that tell most, as far as anything stands for a year."""
    by_clue = {row.clue.id: row for row in rows(tables.guide)}
    typed = [
        worth.clue
        for worth in worths(tables)
        if isinstance(worth.clue.kind, Code | Number)
    ]
    for clue in typed[:TYPED]:
        told = [_line(listed) for listed in by_clue[clue.id].lists]
        lines = (*_last_figures(clue), *told)
        if lines:
            yield Read(clue, lines)


def _last_figures(clue: Clue) -> Iterator[str]:
    """What a code says of the year in plain figures."""
    fields = clue.kind.fields if isinstance(clue.kind, Code) else ()
    for field in fields:
        if field.means == "year":
            many = "figure" if field.width == 1 else f"{field.width} figures"
            yield f"The {field.name}: the last {many} of the year it was built."


def _line(listed: Listed) -> str:
    """A table on one line; of a text that stands for several years these together."""
    named: dict[str, list[str]] = {}
    for entry in listed.entries:
        text, _, year = entry.partition(": ")
        named.setdefault(text, []).append(year)
    told = [f"{text} {_years(years)}" for text, years in named.items()]
    return f"{listed.title}: {'; '.join(told)}."


def _years(found: Sequence[str]) -> str:
    """Years with runs drawn together; a number stays as it is."""
    if len(found) == 1:
        return found[0]
    return years([int(year) for year in found])


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
    shares = [p for _, p in bud.verdict.model_years]
    first, *others = ranked(shares)
    names = [year.year for year in tables.guide.years]
    if bud.verdict.outside > shares[first]:
        return "none of these"
    say = f"{names[first]}, {percent(shares[first])}"
    if shares[first] < GUESS:
        return f"unclear: {say}"
    if shares[first] >= SURE or not others:
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
