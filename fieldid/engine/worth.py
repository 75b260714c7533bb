"""What a find is worth in each model year, and what may come off: prices to amounts.

Model page: "The offer". All amounts here are whole hundredths, so that adding them up
is exact and both languages reach the same ones.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import zip_longest

from fieldid.engine.find import Item
from fieldid.engine.guide import Guide, Off, Prices, SetPrices
from fieldid.engine.members import missing, often_apart
from fieldid.engine.parts import World
from fieldid.engine.special import round9

STEPS = 1000
"""A set's worth has at most so many of the steps in which losses are counted."""
RARE = 1e-15
"""What is less probable than this is left out of the sums over amounts."""

Losses = tuple[tuple[int, float], ...]
"""What may come off, least first, and how probable each amount is."""


@dataclass(frozen=True, slots=True)
class Taken:
    """What may come off one item: either, as a stray, one amount, or what each tree of
    its parts takes off, which are independent of each other; see `within`.
    """

    stray: int
    share: float
    trees: tuple[Losses, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """Amounts by place: one a model year, and a last one for outside.

    `whole` is the worth of the find with every part original and no stray, `step` what
    losses are counted in, `portion` what one item counts for, and the most that comes
    off it. `parts` is by place what each part takes off an item on which it is
    replaced, `stray` what a stray takes off; a member that was often bought apart takes
    off nothing.
    """

    whole: tuple[int, ...]
    step: tuple[int, ...]
    portion: tuple[int, ...]
    parts: tuple[tuple[int, ...], ...]
    stray: tuple[int, ...]


def sheet(
    guide: Guide, items: Sequence[Item], *, prices: Prices, condition: str
) -> Sheet:
    """The amounts for one object, or for a set of several."""
    many = prices.set if len(items) > 1 else None
    absent = [m for m in missing(guide, items) if not often_apart(guide, m)]
    offs = [many.missing] * len(absent) if many else []
    offs.append(dict(prices.condition).get(condition, Off()))
    whole = [
        max(x - sum(taken(off, x) for off in offs), 0)
        for x in map(hundredths, _worth(guide, prices, many, len(items)))
    ]
    step = [_step(x) if len(items) > 1 else 1 for x in whole]
    portions = [x // len(items) // s * s for x, s in zip(whole, step, strict=True)]
    places = list(zip(portions, step, strict=True))
    return Sheet(
        tuple(whole),
        tuple(step),
        tuple(portions),
        tuple(_parts(guide, prices, portion, s) for portion, s in places),
        tuple(
            _counted(taken(many.stray, portion), s) if many else 0
            for portion, s in places
        ),
    )


def hundredths(x: float) -> int:
    """An amount of money in whole hundredths.

    >>> hundredths(12.345), hundredths(0.1)
    (1235, 10)
    """
    return _nearest(100 * x)


def taken(off: Off, worth: int) -> int:
    """What is taken off a worth, never more than all of it.

    >>> taken(Off(5.0), 2000), taken(Off(share=0.25), 2000), taken(Off(5.0), 300)
    (500, 500, 300)
    """
    return min(hundredths(off.amount) + _nearest(off.share * worth), worth)


def trees(
    world: World, said: Sequence[tuple[float, float]], parts: Sequence[int]
) -> tuple[Losses, ...]:
    """What replaced parts may take off one item in a cell of a world, by tree of parts.

    `said` is what the item says of each part there, original and replaced. From the
    followers up, what a part and all that follow it take off is added to what the
    others do: exact for any forest.
    """
    below: list[tuple[Losses, Losses]] = [
        (((0, original),), ((loss, replaced),))
        for (original, replaced), loss in zip(said, parts, strict=True)
    ]
    roots = []
    for p in reversed(world.forest.order):
        parent = world.forest.parent[p]
        first, second = (1.0, 1.0) if world.whole[p] else world.forest.rates[p]
        if parent is None:
            roots.append(_shares(_either(below[p], first)))
        else:
            original, replaced = below[parent]
            below[parent] = (
                both(original, _either(below[p], first)),
                both(replaced, _either(below[p], second)),
            )
    return tuple(roots)


def both(a: Losses, b: Losses) -> Losses:
    """What two things take off together that are independent of each other.

    >>> both(((0, 0.5), (2, 0.5)), ((0, 0.5), (2, 0.5)))
    ((0, 0.25), (2, 0.5), (4, 0.25))
    """
    return _gathered([(x + y, p * q) for x, p in a for y, q in b])


def within(several: Sequence[Losses], most: int) -> tuple[Losses, ...]:
    """What trees may take off an item that counts for `most`: the same trees, or where
    together they could take off more, one in which they take off all of it.

    >>> within([((0, 0.5), (3, 0.5)), ((0, 0.5), (2, 0.5))], 4)
    (((0, 0.25), (2, 0.25), (3, 0.25), (4, 0.25)),)
    """
    if sum(tree[-1][0] for tree in several) <= most:
        return tuple(several)
    return (_gathered([(min(x, most), p) for x, p in _in_all(several, 1.0)]),)


def beyond(several: Sequence[Losses], most: int) -> float:
    """By how much trees are expected to exceed the most that can come off.

    >>> beyond([((0, 0.5), (3, 0.5)), ((0, 0.5), (2, 0.5))], 4)
    0.25
    """
    return sum((x - most) * p for x, p in _in_all(several, 1.0) if x > most)


def added(several: Sequence[Taken], step: int, chance: float) -> Losses:
    """What comes off in all, if the items are independent of each other; `chance` is
    that of all the amounts together.

    >>> added([Taken(4, 0.5, (((0, 0.5), (2, 0.5)),))] * 2, 2, 1.0)[:3]
    ((0, 0.0625), (2, 0.125), (4, 0.3125))
    """
    if len(several) == 1:
        # One object is no stray.
        return _in_all(several[0].trees, chance)
    run = [chance]
    for one in several:
        made = [(1 - one.share) * x for x in run]
        for tree in one.trees:
            made = _moved(made, tree, step)
        strayed = _moved(run, ((one.stray, one.share),), step)
        run = [x + y for x, y in zip_longest(made, strayed, fillvalue=0.0)]
    return tuple((step * i, p) for i, p in enumerate(run) if p > RARE)


def _in_all(several: Sequence[Losses], chance: float) -> Losses:
    """What several trees take off together."""
    found: Losses = ((0, chance),)
    for tree in several:
        found = both(found, tree)
    return found


def _worth(
    guide: Guide, prices: Prices, many: SetPrices | None, count: int
) -> list[float]:
    """The worth at each place; items of a set without a price of its own are worth
    what they are one by one.
    """
    known, other = dict(prices.worth), prices.other
    if many:
        known, other = dict(many.worth), many.other
    times = 1 if many else count
    by_year = [times * known.get(y.year, other) for y in guide.years]
    return [*by_year, times * other]


def _parts(guide: Guide, prices: Prices, portion: int, step: int) -> tuple[int, ...]:
    """What each part takes off an item by itself."""
    known = {each.part: each for each in prices.parts}
    amounts = []
    for part in guide.parts:
        each = known.get(part.id)
        off = taken(each.off, portion) if each else 0
        if each and each.put_right is not None:
            off = min(off, hundredths(each.put_right))
        amounts.append(_counted(off, step))
    return tuple(amounts)


def _counted(x: int, step: int) -> int:
    return _nearest(x / step) * step


def _nearest(x: float) -> int:
    """The nearest whole number, of halves the one above, in both languages."""
    return math.floor(round9(x) + 0.5)


def _step(whole: int) -> int:
    """The least of 1, 2, 5, 10, 20, 50 and so on of which there are few enough."""
    step = 1
    turn = 0
    while whole > STEPS * step:
        step = step * 5 // 2 if turn % 3 == 1 else step * 2
        turn += 1
    return step


def _either(states: tuple[Losses, Losses], rate: float) -> Losses:
    """Losses of a part that is replaced with a rate, by its two states."""
    original, replaced = states
    found = [(loss, (1 - rate) * p) for loss, p in original]
    return _gathered([*found, *((loss, rate * p) for loss, p in replaced)])


def _gathered(found: Sequence[tuple[int, float]]) -> Losses:
    """The same with each amount once, the least first; what cannot be is left out."""
    total: dict[int, float] = {}
    for loss, p in found:
        if p > 0:
            total[loss] = total.get(loss, 0.0) + p
    return tuple((loss, total[loss]) for loss in sorted(total))


def _shares(found: Losses) -> Losses:
    """The same with probabilities that sum to one; nothing comes off where the
    readings cannot be, since such a cell weighs nothing.
    """
    total = sum(p for _, p in found)
    return tuple((loss, p / total) for loss, p in found) or ((0, 1.0),)


def _moved(run: Sequence[float], losses: Losses, step: int) -> list[float]:
    """The probabilities of each number of steps, after these losses too."""
    longer = [0.0] * (len(run) + losses[-1][0] // step)
    for loss, p in losses:
        start = loss // step
        for i, x in enumerate(run):
            longer[start + i] += p * x
    return longer
