"""Why: what each reading adds for the leading year, and which readings disagree."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from fieldid.engine.claim import alone, fitting, odds
from fieldid.engine.find import Item, Weight
from fieldid.engine.guide import Clue
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.one import Posterior, read, weigh
from fieldid.engine.parts import pair
from fieldid.engine.prepare import Tables
from fieldid.engine.range import Run, brackets, meet, named, own_run
from fieldid.engine.special import round9
from fieldid.engine.typical import told
from fieldid.engine.words import BARE, capital, evidence, tells_nothing, times, years

# Two readings are named when they go together so many times more seldom than by
# chance that the factor is more than barely worth a mention.
CONFLICT = BARE
MOST_PAIRS = 3


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two clues, by place, that go together `times` more seldom than by chance."""

    first: int
    second: int
    times: float


def weights(
    tables: Tables, item: Item, posterior: Posterior, lead: Run
) -> tuple[Weight, ...]:
    """The factor that each reading adds for the years that lead.

    It is the Bayes factor with the reading over the one without it, all other
    readings kept.
    """
    full = _factor(tables, posterior, lead)
    what = named(tables.guide, lead)
    found = []
    for k in read(tables, item):
        clue = tables.guide.clues[k]
        rest = tuple(r for r in item.readings if r[0] != clue.id)
        less = weigh(tables, Item(rest, item.gone, item.member))
        without = _factor(tables, less, lead)
        found.append(_weight(clue, item, full / without, what))
    return tuple(found)


def conflicts(tables: Tables, item: Item) -> list[Conflict]:
    """The pairs of readings that disagree most, the worst first.

    The measure is P(a) P(b) / P(a, b), parts summed out: the conflict measure of
    F. V. Jensen and others (1990; cited from memory), for two findings. Under a guide
    that brackets, readings disagree if their own ranges have no year in common.
    """
    found = read(tables, item)
    shares = {k: _over_itself(tables, k, reading) for k, reading in found.items()}
    pairs = [
        Conflict(k, q, 1 / _together(tables, k, shares[k], q, shares[q]))
        for k, q in combinations(found, 2)
    ]
    runs = _runs(tables, item, list(found))
    worst = [pair for pair in pairs if _disagree(pair, runs)]
    # By the logarithm, since nine places of a large number are more than it has.
    return sorted(worst, key=lambda pair: -round9(math.log(pair.times)))[:MOST_PAIRS]


def said(tables: Tables, item: Item, k: int) -> str:
    """A reading and the years that it alone speaks for."""
    clue = tables.guide.clues[k]
    what = told(clue, dict(item.readings)[clue.id])
    if brackets(tables.guide):
        return f"{what} for {named(tables.guide, own_run(tables, item, k))}"
    return f"{what} for {years(fitting(tables, alone(tables, item, clue.id).years))}"


def _factor(tables: Tables, posterior: Posterior, lead: Run) -> float:
    """Bayes factor of the years that lead against all the rest."""
    return odds(tables, [*posterior.years, posterior.outside], lead)


def _runs(tables: Tables, item: Item, read: Sequence[int]) -> dict[int, Run]:
    """The own range of each reading, under a guide that brackets."""
    return {k: own_run(tables, item, k) for k in read if brackets(tables.guide)}


def _disagree(pair: Conflict, runs: dict[int, Run]) -> bool:
    if not runs:
        return pair.times > CONFLICT
    return not meet(runs[pair.first], runs[pair.second])


def _over_itself(tables: Tables, k: int, a: Likelihood) -> Likelihood:
    """The likelihood of reading `a` over its probability, so that the product of two
    long codes cannot underflow.
    """
    any_reading = Likelihood([1.0] * len(tables.cells), 1.0, 1.0)
    alone = _together(tables, k, a, k, any_reading)
    return Likelihood([x / alone for x in a.orig], a.rep / alone, a.out / alone)


def _together(tables: Tables, k: int, a: Likelihood, q: int, b: Likelihood) -> float:
    """Probability of reading `a` of clue `k` and `b` of clue `q`."""
    both, first_only, second_only, neither = pair(
        tables.forest, tables.part_of[k], tables.part_of[q]
    )
    total = tables.guide.outside * a.out * b.out
    # Whether each part is original: both, the first alone, the second alone, neither.
    for p, x, y in zip(tables.prior[:-1], a.orig, b.orig, strict=True):
        total += p * (
            both * x * y
            + first_only * x * b.rep
            + second_only * a.rep * y
            + neither * a.rep * b.rep
        )
    return total


def _weight(clue: Clue, item: Item, weighed: float, lead: str) -> Weight:
    what = capital(told(clue, dict(item.readings)[clue.id]))
    if tells_nothing(weighed):
        return Weight(clue.id, weighed, f"{what}: next to nothing about {lead}.")
    told_for = evidence(weighed, lead)
    return Weight(clue.id, weighed, f"{what}: {told_for}, {times(weighed)}.")
