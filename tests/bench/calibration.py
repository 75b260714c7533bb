"""Whether what is called 30 % comes true in 30 of 100: simulated objects and sets.

They are drawn from the guide's own model, so the engine's probabilities must be right
on the average: of all leading model years that it gives some probability, that share
are the right one; and of all members that it calls strays, that share are strays.
Deviations are from what was told, in standard deviations: beyond 3 is no chance.
"""

import random
from dataclasses import dataclass
from itertools import pairwise

from fieldid.engine import Tables, prepare
from fieldid.engine.one import ranked, weigh
from fieldid.engine.sets import weigh_set
from fieldid.guides.load import load
from fieldid.paths import RULES
from report import Record
from scores import brier, calibration_error, log_loss, place
from setspecimens import bag
from specimens import look, specimen

GUIDE = "wrackham-teale-dotterel"
OBJECTS, SETS = 4_000, 1_000
READ, MUCH, LITTLE = 0.3, 0.4, 0.05
"""Shares of the clues that are read: of one object; of each member, for strays; and
for years, of which much read on ten members would leave no doubt.
"""
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


def measure(*, quick: bool) -> list[Record]:
    tables = prepare(load(RULES / f"{GUIDE}.toml"))
    objects, sets = (n // 10 if quick else n for n in (OBJECTS, SETS))
    members = tables.guide.members.all
    strays, _ = simulate(tables, members=members, sets=sets, seen=MUCH)
    _, leading = simulate(tables, members=members, sets=sets, seen=LITTLE)
    return [
        *_single(tables, objects),
        *_reliability(f"strays in {sets} sets of {len(members)}", strays),
        *_reliability(f"leading years of {sets} sets", leading),
    ]


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


def _single(tables: Tables, objects: int) -> list[Record]:
    """Model years of single objects, of which a third is read."""
    found = []
    for i in range(objects):
        dice = random.Random(i)
        one = specimen(tables.guide, dice)
        posterior = weigh(tables, look(tables.guide, one, dice, seen=READ, lost=0.0))
        answers = (*posterior.years, posterior.outside)
        found.append((answers, place(tables.guide, one)))
    leading = []
    for answers, truth in found:
        best = ranked(answers)[0]
        leading.append((answers[best], best == truth))
    name = f"{objects} objects"
    return [
        Record(f"{name}: calibration error", 100 * calibration_error(found), "points"),
        Record(f"{name}: Brier score", brier(found), "0 to 2"),
        Record(f"{name}: log loss", log_loss(found), "nats"),
        *_reliability(f"leading answers of {name}", leading),
    ]


def _reliability(name: str, told: list[Told]) -> list[Record]:
    """What came true of what was told, by its probability."""
    return [
        Record(
            f"{name} told with {each.low:.0%} to {each.high:.0%}",
            100 * each.true / len(each.told),
            "% came true",
            note=f"{each.mean:.1%} told on average, {len(each.told)} of them, "
            f"{each.deviations:+.1f} deviations",
        )
        for each in bins(told)
    ]
