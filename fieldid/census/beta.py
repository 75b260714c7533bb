"""The beta distribution: how much of it lies below a share, and the share below which
so much of it lies. A leaf.

DLMF is the Digital Library of Mathematical Functions, section 8.17.
"""

import math

TINY = 1e-300
"""Stands for 0 where a continued fraction would divide by it."""
CLOSE = 1e-15
MOST_STEPS = 10_000
HALVINGS = 200


def below(x: float, a: float, b: float) -> float:
    """Probability that a beta variable of parameters `a` and `b` is at most `x`.

    >>> round(below(0.25, 1.0, 1.0), 12), round(below(0.5, 3.5, 3.5), 12)
    (0.25, 0.5)
    """
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    # On the other side of the mean the fraction would be slow (DLMF 8.17.4).
    if x > (a + 1) / (a + b + 2):
        return 1 - _front(1 - x, b, a) * _fraction(1 - x, b, a)
    return _front(x, a, b) * _fraction(x, a, b)


def quantile(p: float, a: float, b: float) -> float:
    """The share that so much of the distribution lies below.

    It is found by halving: slow, but it cannot go astray, and it is called seldom.

    >>> round(quantile(0.25, 1.0, 1.0), 12)
    0.25
    """
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if below(middle, a, b) < p:
            low = middle
        else:
            high = middle
    return high


def log_beta(a: float, b: float) -> float:
    """Natural logarithm of the beta function.

    >>> round(log_beta(0.5, 0.5), 12) == round(math.log(math.pi), 12)
    True
    """
    return math.lgamma(a) + math.lgamma(b) - math.lgamma(a + b)


def _front(x: float, a: float, b: float) -> float:
    """What stands before the fraction in DLMF 8.17.22."""
    return math.exp(a * math.log(x) + b * math.log1p(-x) - log_beta(a, b)) / a


def _fraction(x: float, a: float, b: float) -> float:
    """The continued fraction of DLMF 8.17.22, from the front on (W. J. Lentz, Applied
    Optics 15, 1976, as modified by I. J. Thompson and A. R. Barnett, 1986).
    """
    c, d, value = 1.0, 0.0, 1.0
    for n in range(1, MOST_STEPS):
        term = _term(n, x, a, b)
        d = 1 / ((1 + term * d) or TINY)
        c = (1 + term / c) or TINY
        value *= c * d
        if abs(c * d - 1) < CLOSE:
            break
    return 1 / value


def _term(n: int, x: float, a: float, b: float) -> float:
    """The fraction's numerators (DLMF 8.17.23)."""
    m = n // 2
    if n % 2:
        return -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
    return m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
