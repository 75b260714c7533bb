"""What one language or the other lacks: erfc, its scaled tail, the rescale. A leaf.

Model page: "measure" and "Numbers that must survive". The algorithms are written
out so that both languages run the same ones.
"""

import math
from collections.abc import Sequence
from operator import mul

Vector = Sequence[float]
Scaled = tuple[Vector, int]
"""A vector, and how often it was multiplied by `2**500` to stay in sight."""

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


def rescale(vectors: Sequence[Vector]) -> tuple[list[Vector], int]:
    """The vectors times `2**500` as often as it takes, and how often that was.

    They keep their ratios exactly, since only exponents change.

    >>> vectors, count = rescale([[2.0**-700], [2.0**-600]])
    >>> vectors[1][0] == 2.0**-100, count
    (True, 1)
    """
    scaled = list(vectors)
    count = 0
    while not any(map(_is_in_sight, scaled)) and any(map(any, scaled)):
        scaled = [[x * HUGE for x in vector] for vector in scaled]
        count += 1
    return scaled, count


def _is_in_sight(vector: Vector) -> bool:
    """Whether an entry is large enough to be multiplied further."""
    return max(vector) >= TINY


def dot(a: Vector, b: Vector) -> float:
    """Sum of the products of two vectors, as far as the shorter one goes.

    >>> dot([1.0, 2.0], [3.0, 4.0, 5.0])
    11.0
    """
    total: float = sum(map(mul, a, b))
    return total


def products(start: Vector, factors: Sequence[Vector]) -> tuple[Scaled, list[Scaled]]:
    """`start` times all the factors, and times all but each one of them.

    Nothing is divided, since a factor may hold a 0.

    >>> products([1.0], [[2.0], [0.0], [5.0]])
    (([0.0], 0), [([0.0], 0), ([10.0], 0), ([0.0], 0)])
    """
    before: list[Scaled] = [(list(start), 0)]
    for factor in factors:
        before.append(multiplied(before[-1], (factor, 0)))
    after: Scaled = ([1.0] * len(start), 0)
    others: list[Scaled] = []
    for i in range(len(factors) - 1, -1, -1):
        others.append(multiplied(before[i], after))
        after = multiplied((factors[i], 0), after)
    return before[-1], others[::-1]


def multiplied(a: Scaled, b: Scaled) -> Scaled:
    """The product of two vectors, entry by entry."""
    [vector], count = rescale([list(map(mul, a[0], b[0]))])
    return vector, a[1] + b[1] + count


def aligned(vectors: Sequence[Scaled]) -> tuple[list[Vector], int]:
    """The vectors lifted equally often, and how often that is.

    >>> aligned([([1.0], 0), ([2.0**400], 1)])[0][1][0] == 2.0**-100
    True
    """
    least = min((count for vector, count in vectors if any(vector)), default=0)
    # One that holds nothing but 0 may have been lifted less often; so it stays.
    return [
        [x * TINY ** max(count - least, 0) for x in vector] for vector, count in vectors
    ], least


def round9(x: float) -> float:
    """`x` at nine places, the same in both languages; what rankings sort by.

    >>> round9(0.12345678949)
    0.123456789
    """
    return math.floor(x * 1e9 + 0.5) / 1e9
