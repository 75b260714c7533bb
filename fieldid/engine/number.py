"""Number clues: serial, patent and registration numbers, with the first of each year.

Model page: "number", and "What to look at next" for the cut into runs of years.
"""

from dataclasses import dataclass

from fieldid.engine.cells import Cell
from fieldid.engine.guide import Clue, Number
from fieldid.engine.later import staying
from fieldid.engine.likelihood import Likelihood, blend, gathered, halves
from fieldid.engine.special import Vector, dot, round9

CUTS = 20
"""A table of more years than this is cut into about so many runs for the ranking."""


@dataclass(frozen=True, slots=True)
class NumberTable:
    """Cells by the year of building: `years` are these, `which` is each cell's place
    among them.

    `counts` is how many numbers each year of the guide's table has; `rows` is, for each
    year of building, the probability of a number of each of those years. The sources of
    a replaced part are the years of building, and a last one that shows anything.
    """

    number: Number
    misread: float
    years: tuple[int, ...]
    which: tuple[int, ...]
    sources: Vector
    counts: tuple[int, ...]
    rows: tuple[Vector, ...]


def number_table(clue: Clue, kind: Number, cells: tuple[Cell, ...]) -> NumberTable:
    """The table of a number clue."""
    years = tuple(sorted(dict.fromkeys(cell.t // 12 for cell in cells)))
    which = tuple(years.index(cell.t // 12) for cell in cells)
    share = [0.0] * len(years)
    for k, cell in zip(which, cells, strict=True):
        share[k] += cell.spread
    starts = [n for _, n in kind.first]
    stops = [*starts[1:], kind.last + 1]
    return NumberTable(
        kind,
        clue.misread,
        years,
        which,
        halves(share),
        tuple(stop - n for n, stop in zip(starts, stops, strict=True)),
        tuple(_row(kind, year) for year in years),
    )


def number_likelihood(table: NumberTable, n: float) -> Likelihood:
    """Likelihood of reading the number `n`, which is one of the table's."""
    i = max(i for i, (_, first) in enumerate(table.number.first) if first <= n)
    count = table.counts[i]
    return _likelihood(table, [row[i] / count for row in table.rows], 1)


def number_outcomes(
    table: NumberTable,
    original: Vector,
    replaced: float,
    outside: float,
    whole: Vector = (),
) -> list[Likelihood]:
    """Likelihoods of a number of each year of the table, or of each run of years if
    they are many, cut where the prediction has another part of all. The arguments are
    as for `measure_outcomes`.
    """
    mass = gathered(table.which, table.sources, original, replaced, outside, whole)
    many = len(table.counts) > CUTS
    outcomes: list[Likelihood] = []
    start, run = 0, 0.0
    for i, p in enumerate(_predicted(table, mass)):
        run += p
        enough = not many or round9(run) >= (len(outcomes) + 1) / CUTS
        if enough or i + 1 == len(table.counts):
            by_year = [sum(row[start : i + 1]) for row in table.rows]
            count = sum(table.counts[start : i + 1])
            outcomes.append(_likelihood(table, by_year, count))
            start = i + 1
    return outcomes


def _row(kind: Number, year: int) -> Vector:
    """How likely something built in the year has a number of each of the years."""
    if kind.means == "made":
        return [1.0 if given == year else 0.0 for given, _ in kind.first]
    q = staying(kind.lag)
    return [
        (1 - q) * q ** (year - given) if given <= year else 0.0
        for given, _ in kind.first
    ]


def _predicted(table: NumberTable, mass: Vector) -> list[float]:
    """How probable a number of each year is, by mass of the sources."""
    m = table.misread
    lot = (m * sum(mass[:-1]) + mass[-1]) / _all(table)
    return [
        (1 - m) * dot(mass, column) + lot * count
        for column, count in zip(
            zip(*table.rows, strict=True), table.counts, strict=True
        )
    ]


def _all(table: NumberTable) -> int:
    """How many numbers there are in all."""
    return sum(table.counts)


def _likelihood(table: NumberTable, by_year: Vector, count: int) -> Likelihood:
    """Likelihood of any of `count` numbers, whose clean probabilities are given."""
    out = count / _all(table)
    read = [(1 - table.misread) * g + table.misread * out for g in by_year]
    by_source = (*read, out)
    return Likelihood(
        [read[k] for k in table.which],
        blend(table.sources, by_source),
        out,
        by_source,
    )
