"""The forest of parts: who follows whom, and how often each is replaced.

Model page: "Parts: original or replaced".
"""

from dataclasses import dataclass

from fieldid.engine.guide import Guide


@dataclass(frozen=True, slots=True)
class Forest:
    """Parts by their place in the guide.

    `rates[p]` is the share replaced while the parent is original and while it is
    replaced (of a root the first counts); `order` has parents before followers.
    """

    parent: tuple[int | None, ...]
    rates: tuple[tuple[float, float], ...]
    order: tuple[int, ...]


def forest(guide: Guide) -> Forest:
    """The forest of a guide whose parts follow in no circle."""
    place = {part.id: p for p, part in enumerate(guide.parts)}
    parent = tuple(
        None if part.follows is None else place[part.follows] for part in guide.parts
    )
    rates = tuple(
        (
            part.replaced,
            part.replaced if part.follows is None else max(part.share, part.replaced),
        )
        for part in guide.parts
    )
    order: list[int] = []
    while len(order) < len(parent):
        order += [
            p
            for p in range(len(parent))
            if p not in order and (parent[p] is None or parent[p] in order)
        ]
    return Forest(parent, rates, tuple(order))


@dataclass(frozen=True, slots=True)
class World:
    """What was replaced on the whole set, how probable that was beforehand, and how
    often the other parts are then replaced, member by member.

    In `forest` a part that was replaced on the whole set stands alone, and a follower
    of such a part falls back to its own rate.
    """

    whole: tuple[bool, ...]
    prior: float
    forest: Forest


def worlds(guide: Guide, forest: Forest) -> tuple[World, ...]:
    """Every choice of parts that can have been replaced on a whole set together."""
    found = [((False,) * len(guide.parts), 1.0)]
    for p in forest.order:
        part, parent = guide.parts[p], forest.parent[p]
        longer = []
        for whole, prior in found:
            follows = parent is not None and whole[parent]
            rate = max(part.share, part.whole_set) if follows else part.whole_set
            if rate > 0:
                also = tuple(was or q == p for q, was in enumerate(whole))
                longer.append((also, prior * rate))
            if rate < 1:
                longer.append((whole, prior * (1 - rate)))
        found = longer
    return tuple(World(whole, prior, _apart(forest, whole)) for whole, prior in found)


def pair(forest: Forest, p: int, q: int) -> tuple[float, float, float, float]:
    """Prior of two parts' states: both original, only `q` replaced, only `p`, both.

    >>> pair(Forest((None, 0), ((0.5, 0.5), (0.25, 0.75)), (0, 1)), 0, 1)
    (0.375, 0.125, 0.125, 0.375)
    """
    if p == q:
        replaced = _replaced(forest, p)
        return (1 - replaced, 0.0, 0.0, replaced)
    joined = [0.0, 0.0, 0.0, 0.0]
    above = _line(forest, p)
    line = [*above, *(a for a in _line(forest, q) if a not in above)]
    for states in range(2 ** len(line)):
        state = {a: states >> i & 1 for i, a in enumerate(line)}
        joined[2 * state[p] + state[q]] += _prior(forest, state)
    return (joined[0], joined[1], joined[2], joined[3])


def _apart(forest: Forest, whole: tuple[bool, ...]) -> Forest:
    """The forest cut above and below the parts that were replaced on a whole set."""
    parent = tuple(
        None if above is None or whole[p] or whole[above] else above
        for p, above in enumerate(forest.parent)
    )
    return Forest(parent, forest.rates, forest.order)


def _prior(forest: Forest, state: dict[int, int]) -> float:
    """Probability of the states (0 original, 1 replaced) of parts and ancestors."""
    share = 1.0
    for p in forest.order:
        if p in state:
            parent = forest.parent[p]
            rate = forest.rates[p][0 if parent is None else state[parent]]
            share *= rate if state[p] else 1 - rate
    return share


def _replaced(forest: Forest, p: int) -> float:
    parent = forest.parent[p]
    original, replaced = forest.rates[p]
    if parent is None:
        return original
    above = _replaced(forest, parent)
    return (1 - above) * original + above * replaced


def _line(forest: Forest, p: int) -> list[int]:
    """The part and those that it follows, the root first."""
    parent = forest.parent[p]
    return [p] if parent is None else [*_line(forest, parent), p]
