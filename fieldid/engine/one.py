"""One object: what its readings say of cells and parts, parts summed out.

Model page: "One object". Every vector has one entry a cell and a last one for
outside, where a reading's likelihood does not depend on the part.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

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
    states = _spread(forest, own, below, messages, tables.prior, 1.0)
    posterior = _over(whole, total)
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
    whole, last = _evidence(forest, messages, _ones(own), None)
    return whole, more + last


def states(forest: Forest, own: Sequence[States]) -> list[States]:
    """The same, lifted as often, by each part's state."""
    below, messages, _ = _collect(forest, own)
    whole, _ = _evidence(forest, messages, _ones(own), None)
    return _spread(forest, own, below, messages, _ones(own), sum(whole))


def told(tables: Tables, item: Item) -> tuple[list[States], list[int]]:
    """What the readings on each part say, and how often that was scaled up."""
    found = read(tables, item)
    cells = len(tables.cells)
    own: list[States] = []
    counts = []
    for p, part in enumerate(tables.guide.parts):
        original = [1.0] * (cells + 1)
        replaced = [1.0] * (cells + 1)
        scaled = 0
        if part.id in item.gone:
            original = [0.0] * (cells + 1)
        for k, reading in found.items():
            if tables.part_of[k] == p:
                original = _times(original, [*reading.orig, reading.out])
                replaced = _times(replaced, [reading.rep] * cells + [reading.out])
                (original, replaced), count = rescale([original, replaced])
                scaled += count
        own.append((original, replaced))
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
        parent = forest.parent[p]
        first, second = forest.rates[p]
        messages[p] = (
            _blend(below[p], 1 - first, first),
            _blend(below[p], 1 - second, second),
        )
        if parent is not None:
            (original, replaced), count = rescale(
                [_times(below[parent][s], messages[p][s]) for s in (0, 1)]
            )
            below[parent] = (original, replaced)
            scaled += count
    return below, messages, scaled


def _spread(
    forest: Forest,
    own: Sequence[States],
    below: list[States],
    messages: list[States],
    prior: Vector,
    total: float,
) -> list[States]:
    """From the roots down: weight of each cell with each state of each part, in all
    `total` for every part.
    """
    above = list(own)
    joint = list(own)
    for p in forest.order:
        context = _context(forest, own, above, messages, prior, p)
        rates = forest.rates[p]
        above[p] = (
            _blend(context, 1 - rates[0], 1 - rates[1]),
            _blend(context, rates[0], rates[1]),
        )
        (original, replaced), _ = rescale(
            [_times(above[p][s], below[p][s]) for s in (0, 1)]
        )
        found = sum(original) + sum(replaced)
        # What was read may be impossible if other parts were replaced on a whole set.
        share = found / total if total else 1.0
        joint[p] = (_over(original, share), _over(replaced, share))
    return joint


def _context(
    forest: Forest,
    own: Sequence[States],
    above: list[States],
    messages: list[States],
    prior: Vector,
    p: int,
) -> Sequence[Vector]:
    """All that is known without `p` and its followers, by the parent's state.

    A root has no parent; what is known then stands in the first place.
    """
    parents = forest.parent
    parent = parents[p]
    if parent is None:
        rest, _ = _evidence(forest, messages, prior, p)
        return [rest, [0.0] * len(rest)]
    context, _ = rescale([_times(above[parent][s], own[parent][s]) for s in (0, 1)])
    for q in range(len(parents)):
        if parents[q] == parent and q != p:
            context, _ = rescale([_times(context[s], messages[q][s]) for s in (0, 1)])
    return context


def _evidence(
    forest: Forest, messages: list[States], prior: Vector, but: int | None
) -> tuple[list[float], int]:
    """Prior of each cell times what the roots tell, one of them left out; and how
    often that was scaled up.
    """
    weights = list(prior)
    scaled = 0
    for p, parent in enumerate(forest.parent):
        if parent is None and p != but:
            [weights], count = rescale([_times(weights, messages[p][0])])
            scaled += count
    return weights, scaled


def _ones(own: Sequence[States]) -> Vector:
    return [1.0] * len(own[0][0])


def _times(a: Vector, b: Vector) -> list[float]:
    return [x * y for x, y in zip(a, b, strict=True)]


def _over(a: Vector, total: float) -> list[float]:
    return [x / total for x in a]


def _blend(states: Sequence[Vector], a: float, b: float) -> list[float]:
    return [a * x + b * y for x, y in zip(states[0], states[1], strict=True)]
