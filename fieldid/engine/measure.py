"""Measure clues: a size as made, less what polishing and use took away.

Model page: "measure", and "What to look at next" for the cut at the deciles.
"""

import math
from dataclasses import dataclass, replace

from fieldid.engine.cells import Cell
from fieldid.engine.find import Reading, measured
from fieldid.engine.guide import Clue, Measure, Size
from fieldid.engine.likelihood import Likelihood, applies, blend, gathered, halves
from fieldid.engine.special import Vector, erfc, erfcx, phi, round9

STEPS = 120
CUTS = 10


@dataclass(frozen=True, slots=True)
class MeasureTable:
    """Cells by class: one class a size, and a last one where the guide is silent.

    `which` is the class of each cell, `rows` the probability of each of the equal
    steps of the range, class by class. The sources of a replaced part are the classes
    as they are when the member is not known, and a last one that shows anything.
    """

    measure: Measure
    misread: float
    which: tuple[int, ...]
    sources: Vector
    rows: tuple[Vector, ...]


def measure_table(
    clue: Clue, kind: Measure, cells: tuple[Cell, ...], member: str | None
) -> MeasureTable:
    """The table for a set member (None: not known)."""
    share = [0.0] * (len(kind.sizes) + 1)
    for cell in cells:
        share[_class(kind, cell, None)] += cell.spread
    rows = [_steps(kind, size, clue.misread) for size in kind.sizes]
    rows.append([1 / STEPS] * STEPS)
    return MeasureTable(
        kind,
        clue.misread,
        tuple(_class(kind, cell, member) for cell in cells),
        halves(share),
        tuple(rows),
    )


def measure_for(
    table: MeasureTable, cells: tuple[Cell, ...], member: str | None
) -> MeasureTable:
    """The same table for another set member: only the classes of the cells differ."""
    which = tuple(_class(table.measure, cell, member) for cell in cells)
    return replace(table, which=which)


def measure_likelihood(table: MeasureTable, reading: Reading) -> Likelihood:
    """Likelihood (a density, per unit) of a size that was measured.

    Its standard error is normal, so it joins the spread in quadrature.
    """
    kind, m = table.measure, table.misread
    x, error = measured(reading).value, measured(reading).error
    out = _any(x, error, kind)
    by_class = [
        (1 - m) * density(x, size.mean, _joined(size.sd, error), kind.wear) + m * out
        for size in kind.sizes
    ]
    by_class.append(out)
    return _likelihood(table, by_class, out)


def measure_outcomes(
    table: MeasureTable,
    original: Vector,
    replaced: float,
    outside: float,
    whole: Vector = (),
) -> list[Likelihood]:
    """Likelihoods of the readings to expect, cut at their predictive deciles.

    `original` is the probability of each cell with the part original, `replaced`
    of the part being replaced, `outside` of none of these, and `whole` of each
    source with the part replaced on the whole set.
    """
    mass = gathered(table.which, table.sources, original, replaced, outside, whole)
    # The silent class shows anything, as the last source and what is outside do.
    rows = [*table.rows, table.rows[-1]]
    outcomes: list[Likelihood] = []
    start, run = 0, 0.0
    for i in range(STEPS):
        run += sum(p * row[i] for p, row in zip(mass, rows, strict=True))
        if round9(run) >= (len(outcomes) + 1) / CUTS or i + 1 == STEPS:
            by_class = [sum(row[start : i + 1]) for row in table.rows]
            outcomes.append(_likelihood(table, by_class, (i + 1 - start) / STEPS))
            start = i + 1
    return outcomes


def density(x: float, mean: float, sd: float, wear: float) -> float:
    """Normal(mean, sd) minus an exponential of mean `wear`, at `x`.

    >>> round(density(6.0, 6.0, 0.25, 0.0), 6)
    1.595769
    """
    z = (x - mean) / sd
    if wear == 0:
        return math.exp(-z * z / 2) / (sd * math.sqrt(2 * math.pi))
    rate = 1 / wear
    u = (rate * sd + z) / math.sqrt(2)
    if u >= 0:
        return rate / 2 * math.exp(-z * z / 2) * erfcx(u)
    return rate / 2 * math.exp(rate * (rate * sd * sd + 2 * (x - mean)) / 2) * erfc(u)


def _any(x: float, error: float, kind: Measure) -> float:
    """Density at `x` where any size of the range is as likely, seen with the error."""
    width = kind.high - kind.low
    if error == 0:
        return 1 / width
    return (phi((kind.high - x) / error) - phi((kind.low - x) / error)) / width


def _joined(sd: float, error: float) -> float:
    """The spread of a size together with the error that it is measured with."""
    return math.sqrt(sd * sd + error * error)


def _class(kind: Measure, cell: Cell, member: str | None) -> int:
    """The first size that covers the cell, or the silent class."""
    for k, size in enumerate(kind.sizes):
        covered = size.years[0] <= cell.year <= size.years[1]
        if covered and applies(size.members, size.excluded, member):
            return k
    return len(kind.sizes)


def _steps(kind: Measure, size: Size, m: float) -> Vector:
    """Probability of each step of the range; what lies beyond counts at its ends."""
    width = (kind.high - kind.low) / STEPS
    edges = [_below(kind.low + i * width, kind, size) for i in range(1, STEPS)]
    edges = [0.0, *edges, 1.0]
    return [(1 - m) * (edges[i + 1] - edges[i]) + m / STEPS for i in range(STEPS)]


def _below(x: float, kind: Measure, size: Size) -> float:
    """Probability of a size below `x`: the normal's, and the part worn down past it,
    which is `wear` times the density.
    """
    worn = kind.wear * density(x, size.mean, size.sd, kind.wear)
    return phi((x - size.mean) / size.sd) + worn


def _likelihood(table: MeasureTable, by_class: Vector, out: float) -> Likelihood:
    by_source = (*by_class, out)
    return Likelihood(
        tuple(by_class[k] for k in table.which),
        blend(table.sources, by_source),
        out,
        by_source,
    )
