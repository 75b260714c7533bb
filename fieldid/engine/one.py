"""One object: what its readings say of cells and parts, parts summed out.

Model page: "One object". Every vector has one entry a cell and a last one for
outside, where a reading's likelihood does not depend on the part.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import mul

from fieldid.engine.find import Item
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.parts import Forest
from fieldid.engine.prepare import Tables, likelihood, tables_for
from fieldid.engine.special import LOG_HUGE, Scaled, Vector, rescale, round9

States = tuple[Vector, Vector]
"""Something said of a part's two states: original, replaced."""


@dataclass(frozen=True, slots=True)
class Posterior:
    """Everything that the readings say of one object.

    `original[p]` and `replaced[p]` are the probabilities of each cell (and outside)
    with part `p` in that state; `cells` is their sum, the same for every part.
    """

    original: tuple[Vector, ...]
    replaced: tuple[Vector, ...]
    cells: Vector
    years: tuple[float, ...]
    outside: float
    log_evidence: float


def weigh(tables: Tables, item: Item) -> Posterior:
    """Probability of each cell and part state given the item's readings."""
    forest = tables.forest
    own, counts = told(tables, item)
    below, messages, more = _collect(forest, own)
    whole, last = _evidence(forest, messages, tables.prior, None)
    total = sum(whole)
    posterior = _over(whole, total)
    states = _spread(forest, own, below, messages, tables.prior, posterior, 1.0)
    return Posterior(
        tuple(original for original, _ in states),
        tuple(replaced for _, replaced in states),
        posterior,
        tuple(sum(posterior[start:stop]) for start, stop in tables.stretches),
        posterior[-1],
        math.log(total) - (sum(counts) + more + last) * LOG_HUGE,
    )


def fit(forest: Forest, own: Sequence[States]) -> Scaled:
    """Likelihood of each cell (and outside), parts summed out."""
    _, messages, more = _collect(forest, own)
    whole, last = _evidence(forest, messages, _filled(own[0][0], 1.0), None)
    return whole, more + last


def states(forest: Forest, own: Sequence[States]) -> list[States]:
    """The same, lifted as often, by each part's state."""
    below, messages, _ = _collect(forest, own)
    ones = _filled(own[0][0], 1.0)
    whole, _ = _evidence(forest, messages, ones, None)
    return _spread(forest, own, below, messages, ones, whole, sum(whole))


def told(tables: Tables, item: Item) -> tuple[list[States], list[int]]:
    """What the readings on each part say, and how often that was scaled up."""
    found = read(tables, item)
    own: list[States] = []
    counts = []
    ones = _filled(tables.prior, 1.0)
    shown: list[list[Likelihood]] = [[] for _ in tables.guide.parts]
    for k, reading in found.items():
        shown[tables.part_of[k]].append(reading)
    for p, part in enumerate(tables.guide.parts):
        states, scaled = _shown(shown[p], ones) if shown[p] else ((ones, ones), 0)
        if part.id in item.gone:
            states = (_filled(ones, 0.0), states[1])
        own.append(states)
        counts.append(scaled)
    return own, counts


def read(tables: Tables, item: Item) -> dict[int, Likelihood]:
    """The likelihood of every reading that says something, in clue order.

    A clue that was not read, or could not be told, is not there.
    """
    readings = dict(item.readings)
    rows = tables_for(tables, item.member)
    return {
        k: likelihood(rows[k], readings[clue.id])
        for k, clue in enumerate(tables.guide.clues)
        if readings.get(clue.id) is not None
    }


def ranked(years: Vector) -> list[int]:
    """Places of the model years, the most probable first."""
    return sorted(range(len(years)), key=lambda y: -round9(years[y]))


def _shown(shown: Sequence[Likelihood], ones: Vector) -> tuple[States, int]:
    """What some readings say of their part, and how often that was scaled up."""
    first, *rest = shown
    # Of a replaced part each reading is as likely in any cell.
    (later, original), scaled = rescale([[first.rep, first.out], first.orig])
    for reading in rest:
        original = _times(original, reading.orig)
        later = [later[0] * reading.rep, later[1] * reading.out]
        (later, original), count = rescale([later, original])
        scaled += count
    rep, out = later
    replaced = _filled(ones, rep)
    replaced[-1] = out
    return ([*original, out], replaced), scaled


def _is_silent(states: States) -> bool:
    """Whether nothing is said of a part: one vector of ones stands for both states."""
    return states[0] is states[1]


def _collect(
    forest: Forest, own: Sequence[States]
) -> tuple[list[States], list[States], int]:
    """From the followers up: each part with all that follows it, and what it tells
    its parent, by the parent's state.
    """
    below = list(own)
    messages = list(own)
    scaled = 0
    for p in reversed(forest.order):
        if _is_silent(below[p]):
            continue
        parent = forest.parent[p]
        first, second = forest.rates[p]
        told = _blend(below[p], 1 - first, first)
        if parent is None:
            # Nothing that it follows can be replaced.
            messages[p] = (told, [])
            continue
        messages[p] = (told, _blend(below[p], 1 - second, second))
        (original, replaced), count = rescale(_both(below[parent], messages[p]))
        below[parent] = (original, replaced)
        scaled += count
    return below, messages, scaled


def _spread(
    forest: Forest,
    own: Sequence[States],
    below: list[States],
    messages: list[States],
    prior: Vector,
    whole: Vector,
    total: float,
) -> list[States]:
    """From the roots down: weight of each cell with each state of each part, for every
    part in all `whole`, which adds up to `total`.
    """
    above = list(own)
    joint = list(own)
    for p in forest.order:
        parent, rates = forest.parent[p], forest.rates[p]
        if _is_silent(below[p]):
            joint[p] = _passed(
                (whole, whole) if parent is None else joint[parent], rates
            )
            continue
        context = _context(forest, own, above, messages, prior, p)
        above[p] = _passed(context, rates)
        (original, replaced), _ = rescale(_both(above[p], below[p]))
        found = sum(original) + sum(replaced)
        # What was read may be impossible if other parts were replaced on a whole set.
        share = found / total if total else 1.0
        joint[p] = (_over(original, share), _over(replaced, share))
    return joint


def _passed(above: Sequence[Vector], rates: tuple[float, float]) -> States:
    """What is known by a parent's state, by that of the part that follows it; of a root
    the same in both places.
    """
    first, second = rates
    if above[0] is above[1]:
        return _scaled(above[0], 1 - first), _scaled(above[0], first)
    return (_blend(above, 1 - first, 1 - second), _blend(above, first, second))


def _context(
    forest: Forest,
    own: Sequence[States],
    above: list[States],
    messages: list[States],
    prior: Vector,
    p: int,
) -> Sequence[Vector]:
    """All that is known without `p` and its followers, by the parent's state.

    A root has no parent; what is known then stands in both places.
    """
    parents = forest.parent
    parent = parents[p]
    if parent is None:
        rest, _ = _evidence(forest, messages, prior, p)
        return [rest, rest]
    context, _ = rescale(_both(above[parent], own[parent]))
    for q in range(len(parents)):
        if parents[q] == parent and q != p and not _is_silent(messages[q]):
            context, _ = rescale(_both((context[0], context[1]), messages[q]))
    return context


def _evidence(
    forest: Forest, messages: list[States], prior: Vector, but: int | None
) -> Scaled:
    """Prior of each cell times what the roots tell, one of them left out; and how
    often that was scaled up.
    """
    weights = prior
    scaled = 0
    for p, parent in enumerate(forest.parent):
        if parent is None and p != but and not _is_silent(messages[p]):
            [weights], count = rescale([_times(weights, messages[p][0])])
            scaled += count
    return weights, scaled


def _filled(a: Vector, x: float) -> list[float]:
    """As long as another vector."""
    return [x] * len(a)


def _both(a: States, b: States) -> States:
    """Each of the two states times the other's."""
    return _times(a[0], b[0]), _times(a[1], b[1])


def _times(a: Vector, b: Vector) -> list[float]:
    return list(map(mul, a, b))


def _over(a: Vector, total: float) -> list[float]:
    return [x / total for x in a]


def _scaled(a: Vector, factor: float) -> list[float]:
    return [x * factor for x in a]


def _blend(states: Sequence[Vector], a: float, b: float) -> list[float]:
    original, replaced = states
    return [a * x + b * y for x, y in zip(original, replaced, strict=True)]
