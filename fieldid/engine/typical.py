"""What objects show: the reading of a clue to expect in some cells, and its words.

Model page: "A claim", for a cited clue that was not read.
"""

import math
from collections.abc import Sequence

from fieldid.engine.choice import ChoiceTable
from fieldid.engine.code import UNREADABLE, CodeTable
from fieldid.engine.find import Reading
from fieldid.engine.guide import Choice, Clue, Measure
from fieldid.engine.measure import MeasureTable
from fieldid.engine.prepare import ClueTable, Tables
from fieldid.engine.special import Vector, round9
from fieldid.engine.words import figure

MOST = 0.5
"""A field of a code is read if more than this share of the objects shows the same."""


def typical(tables: Tables, table: ClueTable, start: int, stop: int) -> Reading:
    """The reading to expect in the cells from `start` up to `stop`; None where the
    guide does not say.
    """
    spread = [cell.spread for cell in tables.cells[start:stop]]
    match table:
        case ChoiceTable():
            return _option(table, spread, start)
        case MeasureTable():
            return _size(table, spread, start)
        case CodeTable():
            return _code(table, spread, start)


def common(tables: Tables, orig: Vector, start: int, stop: int) -> float:
    """How often the cells from `start` up to `stop` show, as made, a reading that is
    as likely as `orig` in each.
    """
    spread = [cell.spread for cell in tables.cells[start:stop]]
    return _shown(orig, spread, start) / sum(spread)


def shown(clue: Clue, reading: Reading) -> str:
    """A reading that is not None in words: the option's label, the size, the code."""
    match clue.kind:
        case Choice(options):
            return next(o.label for o in options if o.id == reading)
        case Measure():
            return f"{figure(float(reading or 0))} {clue.kind.unit}"
    return str(reading)


def _option(table: ChoiceTable, spread: Vector, start: int) -> str | None:
    """The likeliest option; None if all are as likely."""
    shares = [round9(_shown(each.orig, spread, start)) for each in table.likelihoods]
    most = max(shares)
    return None if most == min(shares) else table.ids[shares.index(most)]


def _size(table: MeasureTable, spread: Vector, start: int) -> float | None:
    """The size of most cells less the usual wear, as people write it down."""
    kind = table.measure
    c, _ = _prevailing(table.which, spread, start)
    k = table.which[c]
    if k == len(kind.sizes):
        return None
    size = math.floor(100 * (kind.sizes[k].mean - kind.wear) + 0.5) / 100
    return min(max(size, kind.low), kind.high)


def _code(table: CodeTable, spread: Vector, start: int) -> str | None:
    """What most cells have in each field; unread where they differ too much."""
    reading = ""
    for field, expected in zip(table.code.fields, table.expected, strict=True):
        c, weight = _prevailing(expected, spread, start)
        same = round9(weight / sum(spread)) > MOST
        reading += (expected[c] if same else None) or UNREADABLE * field.width
    return reading if reading.strip(UNREADABLE) else None


def _prevailing(
    values: Sequence[object], spread: Vector, start: int
) -> tuple[int, float]:
    """The first cell with the value that weighs most, and that weight."""
    weights = dict.fromkeys(values[start : start + len(spread)], 0.0)
    for i, w in enumerate(spread):
        weights[values[start + i]] += w
    best = max(weights, key=lambda value: round9(weights[value]))
    return values.index(best, start), weights[best]


def _shown(orig: Vector, spread: Vector, start: int) -> float:
    return sum(w * orig[start + i] for i, w in enumerate(spread))
