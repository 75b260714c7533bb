"""Cells, the (model year, build month) pairs, and their prior.

Model page: "Hypotheses: cells".
"""

from dataclasses import dataclass

from fieldid.engine.guide import Guide


@dataclass(frozen=True, slots=True)
class Cell:
    """Model year `year`, built in month `t`; `spread` is its share of the inside."""

    year: int
    t: int
    spread: float


def cells(guide: Guide) -> tuple[Cell, ...]:
    """All cells, model year by model year; their spreads sum to one."""
    volume = sum(y.volume for y in guide.years)
    return tuple(
        Cell(y.year, t, y.volume / volume / (y.closes - y.opens + 1))
        for y in guide.years
        for t in range(y.opens, y.closes + 1)
    )


def stretches(guide: Guide) -> tuple[tuple[int, int], ...]:
    """Where each model year's cells begin and end (one past the last)."""
    ends = []
    stop = 0
    for y in guide.years:
        start, stop = stop, stop + y.closes - y.opens + 1
        ends.append((start, stop))
    return tuple(ends)
