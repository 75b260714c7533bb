"""Marks that are older than the object: how long a date stays in use. A leaf.

Model page: "number" and "code", for those that mean not-before.
"""

import math

from fieldid.engine.special import Vector


def staying(lag: float) -> float:
    """The share of marks that stay in use for one step more, where they do so for
    `lag` steps on average.

    >>> round(staying(8.0), 6)
    0.882497
    """
    return math.exp(-1 / lag)


def on_later(dates: Vector, stay: float) -> list[float]:
    """How likely a reading is on what was built in each step, where `dates` is how
    likely it is for a mark of each step: older marks fade, younger ones there are not.

    One pass, since what was seen a step before only fades: no sum over all pairs.

    >>> on_later([1.0, 0.0, 0.0], 0.5)
    [0.5, 0.25, 0.125]
    """
    found = []
    seen = 0.0
    for x in dates:
        seen = stay * seen + (1 - stay) * x
        found.append(seen)
    return found
