"""Specimens drawn from a guide's own model: what nobody can see, and what is read.

Model page: "Clues: how likely a reading is", taken the other way round.
"""

import math
from dataclasses import dataclass

from fieldid.engine.choice import ChoiceTable
from fieldid.engine.code import CodeTable
from fieldid.engine.codespecimen import spelled
from fieldid.engine.find import Reading
from fieldid.engine.guide import Measure
from fieldid.engine.lot import Draw, among, exponential, normal, pick
from fieldid.engine.measure import MeasureTable
from fieldid.engine.number import NumberTable
from fieldid.engine.parts import Forest
from fieldid.engine.prepare import ClueTable, Tables, tables_for
from fieldid.engine.special import round9

# A size is read as fine as about a hundredth of what the clue takes.
FINE = 100


@dataclass(frozen=True, slots=True)
class Specimen:
    """An object of the guide: the place of its cell and which parts are replaced,
    which nobody can see, and what is read of each clue, None where it cannot be told.
    """

    cell: int
    replaced: tuple[bool, ...]
    member: str | None
    readings: tuple[tuple[str, Reading], ...]


def specimen(
    tables: Tables, draw: Draw, *, y: int | None, member: str | None
) -> Specimen:
    """A specimen of the model year at place `y`, or of any as often as they are."""
    cell = _cell(tables, draw, y)
    replaced = _replaced(tables.forest, draw)
    readings = []
    for k, table in enumerate(tables_for(tables, member)):
        clue = tables.guide.clues[k]
        hidden = draw() < clue.unreadable
        reading = shows(table, draw, cell, replaced[tables.part_of[k]])
        readings.append((clue.id, None if hidden else reading))
    return Specimen(cell, replaced, member, tuple(readings))


def shows(table: ClueTable, draw: Draw, cell: int, replaced: bool) -> Reading:
    """What somebody reads of one clue, mistakes included."""
    match table:
        case ChoiceTable():
            likes = table.likelihoods
            weights = [x.rep if replaced else x.orig[cell] for x in likes]
            return table.ids[pick(draw, weights)]
        case MeasureTable():
            return _size(table, draw, cell, replaced)
        case CodeTable():
            return spelled(table, draw, pick(draw, table.sources) if replaced else cell)
        case NumberTable():
            return _number(table, draw, cell, replaced)


def _cell(tables: Tables, draw: Draw, y: int | None) -> int:
    """A cell by lot, never outside."""
    if y is None:
        return pick(draw, tables.prior[:-1])
    start, stop = tables.stretches[y]
    return start + among(draw, stop - start)


def _replaced(forest: Forest, draw: Draw) -> tuple[bool, ...]:
    """Which parts are replaced, on an object by itself."""
    found = [False] * len(forest.order)
    for p in forest.order:
        parent = forest.parent[p]
        after = parent is not None and found[parent]
        found[p] = draw() < forest.rates[p][1 if after else 0]
    return tuple(found)


def _size(table: MeasureTable, draw: Draw, cell: int, replaced: bool) -> float:
    """A size as it was made, less the wear; or any of the range."""
    kind = table.measure
    k = pick(draw, table.sources) if replaced else table.which[cell]
    if k >= len(kind.sizes) or draw() < table.misread:
        return _as_read(kind, kind.low + draw() * (kind.high - kind.low))
    worn = kind.wear * exponential(draw) if kind.wear > 0 else 0.0
    made = kind.sizes[k].mean + kind.sizes[k].sd * normal(draw)
    return _as_read(kind, made - worn)


def _as_read(kind: Measure, x: float) -> float:
    """A size within the range, as fine as it would be read."""
    within = min(max(x, kind.low), kind.high)
    step = 10.0 ** math.floor(math.log10((kind.high - kind.low) / FINE))
    return round9(math.floor(within / step + 0.5) * step)


def _number(table: NumberTable, draw: Draw, cell: int, replaced: bool) -> float | None:
    """A number of the year in which it was given, or any; None where none was."""
    kind = table.number
    k = pick(draw, table.sources) if replaced else table.which[cell]
    if k == len(table.rows) or draw() < table.misread:
        return float(kind.first[0][1] + among(draw, sum(table.counts)))
    row = table.rows[k]
    # What is left over are years that the table does not know.
    i = pick(draw, [*row, max(1 - sum(row), 0.0)])
    if i == len(row):
        return None
    return float(kind.first[i][1] + among(draw, table.counts[i]))
