"""Drawing lots that can be repeated: the same from the same seed. A leaf.

The minimal standard generator of S. K. Park and K. W. Miller (Communications of the
ACM 31, 1988) with their multiplier of 1993, which ISO C++ calls `minstd_rand`.
"""

import math
from collections.abc import Callable

from fieldid.engine.special import Vector

Draw = Callable[[], float]
"""Gives a number between 0 and 1, another one at each call."""

MULTIPLIER = 48271
MODULUS = 2147483647


def lots(seed: int) -> Draw:
    """What draws from this seed on, a whole number from 0.

    >>> draw = lots(0)
    >>> round(draw() * MODULUS), round(draw() * MODULUS)
    (48271, 182605794)
    """
    state = seed % (MODULUS - 1) + 1

    def draw() -> float:
        nonlocal state
        state = state * MULTIPLIER % MODULUS
        return state / MODULUS

    return draw


def pick(draw: Draw, weights: Vector) -> int:
    """A place among the weights, each as often as it weighs."""
    left = draw() * sum(weights)
    for i, w in enumerate(weights):
        left -= w
        if left < 0:
            return i
    # The last digits of a sum may leave a little over.
    return max(i for i, w in enumerate(weights) if w > 0)


def among(draw: Draw, count: int) -> int:
    """One of so many places, all alike.

    >>> among(lambda: 0.99, 3)
    2
    """
    return math.floor(draw() * count)


def normal(draw: Draw) -> float:
    """A standard normal variable (G. E. P. Box and M. E. Muller, 1958)."""
    radius = math.sqrt(-2 * math.log(draw()))
    return radius * math.cos(2 * math.pi * draw())


def exponential(draw: Draw) -> float:
    """An exponential variable of mean 1."""
    return -math.log(draw())
