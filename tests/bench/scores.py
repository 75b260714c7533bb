"""How good beliefs were, once the truth is known."""

import math
from collections.abc import Sequence
from statistics import fmean

from fieldid.engine.guide import Guide
from specimens import Specimen

Told = tuple[Sequence[float], int]
"""The probability of every answer, and the place of the true one."""

LEAST = 1e-12
"""What was called impossible and came true costs no more than this."""
BINS = 10


def place(guide: Guide, found: Specimen) -> int:
    """The place of the true answer; outside is the last."""
    years = [y.year for y in guide.years]
    return len(years) if found.year is None else years.index(found.year)


def accuracy(told: Sequence[Told]) -> float:
    """How often the likeliest answer was the true one."""
    return fmean(_likeliest(answers) == truth for answers, truth in told)


def log_loss(told: Sequence[Told]) -> float:
    """Mean surprise of the truth, in nats.

    >>> round(log_loss([((0.5, 0.5), 0)]) / math.log(2), 9)
    1.0
    """
    return fmean(-math.log(max(answers[truth], LEAST)) for answers, truth in told)


def brier(told: Sequence[Told]) -> float:
    """Mean squared distance from the truth, over all answers: 0 is best, 2 worst.

    >>> brier([((0.75, 0.25), 0)])
    0.125
    """
    return fmean(
        sum((p - (place == truth)) ** 2 for place, p in enumerate(answers))
        for answers, truth in told
    )


def calibration_error(told: Sequence[Told]) -> float:
    """How far what is said of the likeliest answer is from how often it comes true,
    on the average over ten equal bins, each by how much lies in it.

    >>> calibration_error([((0.75, 0.25), 0), ((0.75, 0.25), 1)])
    0.25
    """
    bins: dict[int, list[tuple[float, bool]]] = {}
    for answers, truth in told:
        best = _likeliest(answers)
        place = min(int(answers[best] * BINS), BINS - 1)
        bins.setdefault(place, []).append((answers[best], best == truth))
    gaps = (abs(sum(p - came for p, came in each)) for each in bins.values())
    return sum(gaps) / len(told)


def _likeliest(answers: Sequence[float]) -> int:
    return max(range(len(answers)), key=answers.__getitem__)
