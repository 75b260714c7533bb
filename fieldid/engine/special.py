"""What one language or the other lacks: erfc, its scaled tail, the rescale. A leaf.

Model page: "measure" and "Numbers that must survive". The algorithms are written
out so that both languages run the same ones.
"""

import math
from collections.abc import Sequence

Vector = Sequence[float]

SERIES_BELOW = 2.5
# From 2.5 upwards forty steps of the continued fraction leave an error near 1e-19.
FRACTION_STEPS = 40
TINY = 2.0**-500
HUGE = 2.0**500
LOG_HUGE = 500 * math.log(2)


def erfcx(u: float) -> float:
    """Scaled tail `exp(u * u) * erfc(u)` for `u >= 0`.

    A series of positive terms below 2.5, Laplace's continued fraction above
    (Abramowitz and Stegun, 1964, 7.1.6 and 7.1.14).

    >>> erfcx(0.0)
    1.0
    """
    if u < SERIES_BELOW:
        term = total = 2 * u / math.sqrt(math.pi)
        n = 1
        while term > 1e-17 * total:
            term *= 2 * u * u / (2 * n + 1)
            total += term
            n += 1
        return math.exp(u * u) - total
    tail = u
    for k in range(FRACTION_STEPS, 0, -1):
        tail = u + k / 2 / tail
    return 1 / (tail * math.sqrt(math.pi))


def erfc(u: float) -> float:
    """Complementary error function, for any `u`.

    >>> round(erfc(1.0), 12) == round(math.erfc(1.0), 12)
    True
    """
    if u < 0:
        return 2 - erfc(-u)
    return math.exp(-u * u) * erfcx(u)


def phi(z: float) -> float:
    """Probability that a standard normal variable is at most `z`.

    >>> phi(0.0)
    0.5
    """
    return erfc(-z / math.sqrt(2)) / 2


def rescale(vectors: Sequence[Vector]) -> tuple[list[list[float]], int]:
    """The vectors times `2**500` as often as it takes, and how often that was.

    They keep their ratios exactly, since only exponents change.

    >>> vectors, count = rescale([[2.0**-700], [2.0**-600]])
    >>> vectors[1][0] == 2.0**-100, count
    (True, 1)
    """
    scaled = [list(vector) for vector in vectors]
    count = 0
    while 0 < max(map(max, scaled)) < TINY:
        scaled = [[x * HUGE for x in vector] for vector in scaled]
        count += 1
    return scaled, count


def round9(x: float) -> float:
    """`x` at nine places, the same in both languages; what rankings sort by.

    >>> round9(0.12345678949)
    0.123456789
    """
    return math.floor(x * 1e9 + 0.5) / 1e9
