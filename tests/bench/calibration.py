"""Whether what is called 30 % comes true in 30 of 100 sets: simulated sets, judged.

The sets are drawn from the guide's own model, so the engine's probabilities must be
right on the average: of all members that it calls strays with some probability, that
share are strays; and of all leading model years, that share are the right one.
"""

import random
from dataclasses import dataclass
from itertools import pairwise

from fieldid.engine import Tables
from fieldid.engine.one import ranked
from fieldid.engine.sets import weigh_set
from setspecimens import bag
from specimens import look

EDGES = (0.0, 0.01, 0.03, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 1.0)

Told = tuple[float, bool]
"""A probability as told, and whether it came true."""


@dataclass(frozen=True)
class Bin:
    """What was told between two probabilities, and what came of it."""

    low: float
    high: float
    told: list[Told]

    @property
    def mean(self) -> float:
        return sum(p for p, _ in self.told) / len(self.told)

    @property
    def true(self) -> int:
        return sum(came for _, came in self.told)

    @property
    def deviations(self) -> float:
        """How far the count is from what was told, in standard deviations."""
        spread = sum(p * (1 - p) for p, _ in self.told) ** 0.5
        return (self.true - self.mean * len(self.told)) / max(spread, 1e-9)


def simulate(
    tables: Tables, *, members: tuple[str, ...], sets: int, seen: float
) -> tuple[list[Told], list[Told]]:
    """Strays as told and as they are, member by member; and leading model years.

    `seen` is how much of each member is read.
    """
    strays: list[Told] = []
    leading: list[Told] = []
    for i in range(sets):
        dice = random.Random(i)
        found = bag(tables.guide, dice, members)
        items = [
            look(tables.guide, one, dice, seen=seen, lost=0.0) for one in found.members
        ]
        posterior = weigh_set(tables, items)
        strays += zip(posterior.stray, found.strays, strict=True)
        first = ranked(posterior.years)[0]
        right = tables.guide.years[first].year == found.year
        leading.append((posterior.years[first], right))
    return strays, leading


def bins(told: list[Told]) -> list[Bin]:
    """What was told, by its probability; empty bins are left out."""
    found = []
    for low, high in pairwise(EDGES):
        # Rounding may take what is certain a hair above 1.
        within = [t for t in told if low <= t[0] and (t[0] < high or high == 1)]
        if within:
            found.append(Bin(low, high, within))
    return found
