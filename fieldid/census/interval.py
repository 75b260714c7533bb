"""What a count says of a share: its estimate, its interval, and how far it speaks
against another share.

The interval is that of Jeffreys with equal tails, as L. D. Brown, T. T. Cai and
A. DasGupta, "Interval estimation for a binomial proportion", Statistical Science 16
(2001), recommend it for small counts.
"""

import math

from fieldid.census.beta import log_beta, quantile

TAIL = 0.025
"""So much lies beyond each end of the interval: 95 % lie within."""

HALF = 0.5
"""The prior of Jeffreys counts half a specimen for and half a one against."""


def estimate(k: float, n: float) -> float:
    """The share that `k` seen of `n` looked at enters a guide as.

    >>> estimate(0, 30) == 0.5 / 31
    True
    """
    return (k + HALF) / (n + 2 * HALF)


def interval(k: float, n: float) -> tuple[float, float]:
    """Between which shares the true one lies, in 95 cases of a hundred.

    None seen leaves 0 possible, and all seen leaves 1. Counts may be fractions.

    >>> [round(end, 4) for end in interval(25, 200)]
    [0.0846, 0.1761]
    """
    a, b = k + HALF, n - k + HALF
    low = quantile(TAIL, a, b) if k > 0 else 0.0
    high = quantile(1 - TAIL, a, b) if k < n else 1.0
    return low, high


def against(k: float, n: float, share: float) -> float:
    """Bayes factor against the share: how much likelier the count is where the share
    may be any (with the prior of Jeffreys) than where it is this one.

    >>> round(against(1, 1, 0.5), 9), round(against(0, 0, 0.1), 9)
    (1.0, 1.0)
    """
    free = log_beta(k + HALF, n - k + HALF) - log_beta(HALF, HALF)
    held = k * math.log(share) + (n - k) * math.log1p(-share)
    # No word is stronger than that for 150; this only keeps the figure a number.
    return math.exp(min(free - held, 700.0))
