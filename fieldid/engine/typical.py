"""What objects show: the reading of a clue to expect in some cells, and its words.

Model page: "A claim", for a cited clue that was not read.
"""

import math
from collections.abc import Mapping

from fieldid.engine.choice import ChoiceTable
from fieldid.engine.code import UNREADABLE, CodeTable, code_dates
from fieldid.engine.find import Measured, Reading, measured
from fieldid.engine.guide import Choice, Clue, Measure, Number
from fieldid.engine.layout import LayoutTable
from fieldid.engine.measure import MeasureTable
from fieldid.engine.number import NumberTable
from fieldid.engine.prepare import ClueTable, Tables
from fieldid.engine.special import Vector, round9
from fieldid.engine.words import figure

MOST = 0.5
"""A field of a code is read if more than this share of the objects shows the same."""
LEAST_SAID = 0.01
"""The smallest error that is told, since sizes are told in hundredths."""


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
        case NumberTable():
            return _number(table, spread, start)


def common(tables: Tables, orig: Vector, start: int, stop: int) -> float:
    """How often the cells from `start` up to `stop` show, as made, a reading that is
    as likely as `orig` in each.
    """
    spread = [cell.spread for cell in tables.cells[start:stop]]
    return _shown(orig, spread, start) / sum(spread)


def shown(clue: Clue, reading: Reading) -> str:
    """A reading that is not None in words: label, size, code or number."""
    match clue.kind:
        case Choice(options):
            return next(o.label for o in options if o.id == reading)
        case Measure():
            return _size_say(measured(reading), clue.kind.unit)
        case Number():
            return str(int(measured(reading).value))
    return str(reading)


def told(clue: Clue, reading: Reading) -> str:
    """A reading in words: the clue's name and what it showed."""
    return f"{clue.name} ({shown(clue, reading)})"


def _size_say(size: Measured, unit: str) -> str:
    """A size with its unit, and with its error if it has one."""
    said = f"{figure(size.value)} {unit}"
    if size.error == 0:
        return said
    return f"{said}, give or take {figure(max(size.error, LEAST_SAID))}"


def _option(table: ChoiceTable, spread: Vector, start: int) -> str | None:
    """The likeliest option; None if all are as likely."""
    shares = [round9(_shown(each.orig, spread, start)) for each in table.likelihoods]
    most = max(shares)
    return None if most == min(shares) else table.ids[shares.index(most)]


def _size(table: MeasureTable, spread: Vector, start: int) -> float | None:
    """The size of most cells less the usual wear, as people write it down."""
    kind = table.measure
    classes = dict.fromkeys(table.which[start : start + len(spread)], 0.0)
    for k, w in zip(table.which[start:], spread, strict=False):
        classes[k] += w
    k, _ = _prevailing(classes)
    if k == len(kind.sizes):
        return None
    size = math.floor(100 * (kind.sizes[k].mean - kind.wear) + 0.5) / 100
    return min(max(size, kind.low), kind.high)


def _code(table: CodeTable, spread: Vector, start: int) -> str | None:
    """What most have in each field of the usual layout; unread where they differ too
    much.
    """
    dates = code_dates(table, spread, start)
    shares = [
        [x * w for x, w in zip(dates, weights, strict=True)]
        for weights in table.weights
    ]
    best = max(range(len(shares)), key=lambda i: round9(sum(shares[i])))
    layout = table.layouts[best]
    reading = ""
    for f, field in enumerate(layout.fields):
        place, weight = _prevailing(_weighed(layout, f, shares[best]))
        texts = layout.texts[f][place]
        same = round9(weight / sum(spread)) > MOST
        alone = texts[0] if texts is not None and len(texts) == 1 else None
        reading += (same and alone) or UNREADABLE * field.width
    return reading if reading.strip(UNREADABLE) else None


def _number(table: NumberTable, spread: Vector, start: int) -> float | None:
    """The first number of the year whose numbers most have."""
    years = dict.fromkeys(range(len(table.counts)), 0.0)
    for k, w in zip(table.which[start:], spread, strict=False):
        for i, share in enumerate(table.rows[k]):
            years[i] += w * share
    i, weight = _prevailing(years)
    same = round9(weight / sum(spread)) > MOST
    return float(table.number.first[i][1]) if same else None


def _weighed(layout: LayoutTable, f: int, dates: Vector) -> dict[int, float]:
    """How much each thing weighs that field `f` of the layout should read."""
    weights = dict.fromkeys(range(len(layout.texts[f])), 0.0)
    for k, w in zip(layout.which, dates, strict=True):
        for share, places in layout.rows[k]:
            weights[places[f]] += w * share
    return weights


def _prevailing(weights: Mapping[int, float]) -> tuple[int, float]:
    """What weighs most, the first if several do, and its weight."""
    best = max(weights, key=lambda value: round9(weights[value]))
    return best, weights[best]


def _shown(orig: Vector, spread: Vector, start: int) -> float:
    return sum(w * orig[start + i] for i, w in enumerate(spread))
