"""From many walks to figures: shares with their range, quantiles, calibration."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fieldid.audit.walked import Walked
from fieldid.engine.special import round9

Z = 1.959963984540054
"""Standard errors that hold 95 % of a normal distribution."""
EDGES = (0.0, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 0.99, 1.0)
"""Verdicts are counted together whose probability lies between two of these."""
RARE = 0.002
"""What chance does more seldom than this is not put down to chance."""
HALF, NINE_TENTHS = 0.5, 0.9


@dataclass(frozen=True, slots=True)
class Share:
    """So many of so many, and the range in which the share lies 95 times in 100: the
    score interval of E. B. Wilson (JASA 22, 1927).
    """

    count: int
    of: int
    share: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Spread:
    """What half of the specimens need at most, and what nine in ten do."""

    half: float
    nine_tenths: float


@dataclass(frozen=True, slots=True)
class Row:
    """Verdicts with a probability from `low` up to `high`: the mean of what was told,
    the share that came true, and how often chance alone would be so far off, if all
    that was told is true.
    """

    low: float
    high: float
    told: float
    true: Share
    chance: float

    @property
    def far(self) -> bool:
        """Whether it is further off than chance explains."""
        return self.chance < RARE


@dataclass(frozen=True, slots=True)
class Figures:
    """How verdicts went: `right` of all specimens, `sure` with 95 % or more, and
    `right_if_sure` of those; `told` is the mean probability of what was told.

    `error` is the expected calibration error, the mean distance of the rows, and
    `error_by_chance` what it would be on average if all that is told were true.
    """

    specimens: int
    right: Share
    sure: Share
    right_if_sure: Share
    told: float
    seconds: Spread
    readings: Spread
    brier: float
    error: float
    error_by_chance: float
    rows: tuple[Row, ...]


def figures(walks: Sequence[Walked]) -> Figures:
    """The figures of at least one walk."""
    sure = [each for each in walks if each.sure]
    found = rows(walks)
    return Figures(
        specimens=len(walks),
        right=share(sum(each.right for each in walks), len(walks)),
        sure=share(len(sure), len(walks)),
        right_if_sure=share(sum(each.right for each in sure), len(sure)),
        told=_mean([each.p for each in walks]),
        seconds=_spread(walks, lambda each: each.seconds),
        readings=_spread(walks, lambda each: len(each.item.readings)),
        brier=_mean([each.brier for each in walks]),
        error=sum(each.true.of * abs(each.true.share - each.told) for each in found)
        / len(walks),
        error_by_chance=_by_chance(walks) / len(walks),
        rows=found,
    )


def share(count: int, of: int) -> Share:
    """A count with its interval; of none nothing is known.

    >>> found = share(8, 10)
    >>> round(found.low, 4), round(found.high, 4)
    (0.4902, 0.9433)
    """
    if of == 0:
        return Share(0, 0, 0.0, 0.0, 1.0)
    p, z = count / of, Z * Z / of
    middle = (p + z / 2) / (1 + z)
    half = math.sqrt(p * (1 - p) * z + z * z / 4) / (1 + z)
    return Share(count, of, p, max(middle - half, 0.0), min(middle + half, 1.0))


def rows(walks: Sequence[Walked]) -> tuple[Row, ...]:
    """What was told, by its probability; without the rows in which nothing was."""
    return tuple(
        _row(low, high, within)
        for low, high in pairwise(EDGES)
        if (within := _between(walks, low, high))
    )


def chance(shares: Sequence[float], count: int) -> float:
    """How often so few or so many come true: twice the smaller tail of the sum of
    independent events with these probabilities.

    >>> chance([0.5, 0.5], 0)
    0.5
    """
    # The rarer outcome needs fewer sums.
    rare, seen = list(shares), count
    if 2 * sum(shares) > len(shares):
        rare, seen = [1 - p for p in shares], len(shares) - count
    exactly = [1.0] + [0.0] * seen
    for p in rare:
        for k in range(seen, 0, -1):
            exactly[k] = exactly[k] * (1 - p) + exactly[k - 1] * p
        exactly[0] *= 1 - p
    at_most = sum(exactly)
    return min(2 * min(at_most, 1 - at_most + exactly[seen]), 1.0)


def quantile(numbers: Sequence[float], part: float) -> float:
    """The least number that so many are not above.

    >>> quantile([10, 30, 20, 40], 0.5), quantile([10, 30, 20, 40], 0.9)
    (20, 40)
    """
    return sorted(numbers)[max(math.ceil(part * len(numbers)), 1) - 1]


def _between(walks: Sequence[Walked], low: float, high: float) -> list[Walked]:
    """A probability on an edge counts above it, and 1 in the last row."""
    return [
        each
        for each in walks
        if low <= round9(each.p) < high or (high == EDGES[-1] <= round9(each.p))
    ]


def _row(low: float, high: float, within: Sequence[Walked]) -> Row:
    came = share(sum(each.right for each in within), len(within))
    told = _mean([each.p for each in within])
    return Row(low, high, told, came, chance([each.p for each in within], came.count))


def _deviation(walks: Sequence[Walked]) -> float:
    """The standard deviation of how many are right, if what is told is true."""
    return math.sqrt(sum(each.p * max(1 - each.p, 0.0) for each in walks))


def _by_chance(walks: Sequence[Walked]) -> float:
    """The mean distance of a normal variable is this part of its deviation."""
    known = [_between(walks, low, high) for low, high in pairwise(EDGES)]
    return math.sqrt(2 / math.pi) * sum(map(_deviation, known))


def _spread(walks: Sequence[Walked], need: Callable[[Walked], float]) -> Spread:
    numbers = [need(each) for each in walks]
    return Spread(quantile(numbers, HALF), quantile(numbers, NINE_TENTHS))


def _mean(numbers: Sequence[float]) -> float:
    return sum(numbers) / len(numbers)
