"""Expectation-maximisation (Dempster, Laird and Rubin, Journal of the Royal Statistical
Society B 39, 1977), whatever it is that has shares. A leaf.

Each row of shares adds up to one. A pass asks how often each share is expected to have
come about, given what was seen and the shares so far, and makes shares of these counts.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

Row = tuple[float, ...]
Rows = tuple[Row, ...]

CLOSE = 1e-9
"""Shares that move by less than this in a pass have settled."""
MOST_PASSES = 5000


@dataclass(frozen=True, slots=True)
class Expected:
    """How often each share is expected to have come about, and the natural logarithm
    of the probability of what was seen, both under the shares that were asked with.
    """

    counts: Rows
    log_likelihood: float


@dataclass(frozen=True, slots=True)
class Climbed:
    """The shares at the end. `heights` is the objective before each pass and at the
    end: it never falls.
    """

    shares: Rows
    heights: tuple[float, ...]
    settled: bool

    @property
    def passes(self) -> int:
        """How many passes it took."""
        return len(self.heights) - 1


def climb(
    expect: Callable[[Rows], Expected],
    start: Rows,
    *,
    prior: Rows,
    close: float = CLOSE,
    most: int = MOST_PASSES,
) -> Climbed:
    """The shares at which the objective is highest, from `start` uphill.

    `prior` is counted along as if it had been seen. The objective is the logarithm of
    the likelihood plus `sum(prior * log(share))`; with no prior the likelihood alone.
    """
    shares = start
    heights: list[float] = []
    for _ in range(most):
        expected = expect(shares)
        heights.append(height(expected, shares, prior))
        moved = maximised(expected.counts, shares, prior)
        furthest = _furthest(shares, moved)
        shares = moved
        if furthest < close:
            break
    heights.append(height(expect(shares), shares, prior))
    return Climbed(shares, tuple(heights), furthest < close)


def maximised(counts: Rows, shares: Rows, prior: Rows) -> Rows:
    """Each row's counts with the prior as shares; a row without any stays as it is.

    >>> maximised(((3.0, 0.0),), ((0.5, 0.5),), ((0.5, 0.5),))
    ((0.875, 0.125),)
    """
    return tuple(
        _shared([k + a for k, a in zip(row, own, strict=True)]) or before
        for row, before, own in zip(counts, shares, prior, strict=True)
    )


def height(expected: Expected, shares: Rows, prior: Rows) -> float:
    """The objective at these shares."""
    return expected.log_likelihood + math.fsum(
        a * math.log(share)
        for own, row in zip(prior, shares, strict=True)
        for a, share in zip(own, row, strict=True)
        if a > 0
    )


def _shared(counts: Sequence[float]) -> Row:
    total = sum(counts)
    return tuple(k / total for k in counts) if total > 0 else ()


def _furthest(before: Rows, after: Rows) -> float:
    """By how much the share moved that moved most."""
    return max(
        (
            abs(x - y)
            for rows in zip(before, after, strict=True)
            for x, y in zip(*rows, strict=True)
        ),
        default=0.0,
    )
