"""What a find is worth: how probable each amount is, exactly, and what to expect.

Model page: "The offer". A scene is a world with all that the readings leave open in it;
one object has a single scene, in which no part was replaced on a whole set.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.claim import Weighed
from fieldid.engine.find import Item
from fieldid.engine.members import often_apart
from fieldid.engine.one import Posterior, States, states, told
from fieldid.engine.parts import World
from fieldid.engine.prepare import Tables
from fieldid.engine.sets import SetPosterior
from fieldid.engine.special import Vector, round9
from fieldid.engine.standing import Standing, unshared
from fieldid.engine.worth import RARE, Sheet, Taken, added, beyond, trees, within

Amounts = tuple[tuple[int, float], ...]
"""What the find may be worth in hundredths, least first, with probabilities."""
_Said = tuple[float, list[tuple[float, float]]]
"""The probability of a stray, and what is said of each part, original and replaced."""


@dataclass(frozen=True, slots=True)
class Scene:
    """A world: the probability of each cell in it (and outside), by item what is said
    of each part and the probability of a stray, and whether a stray takes off anything.
    """

    world: World
    cells: Vector
    own: tuple[tuple[States, ...], ...]
    strays: tuple[Vector, ...]
    matters: tuple[bool, ...]


def scenes(
    tables: Tables, items: Sequence[Item], posterior: Weighed
) -> tuple[Scene, ...]:
    """Every scene that the readings leave."""
    if isinstance(posterior, Posterior):
        return (_alone(tables, items[0], posterior),)
    matters = tuple(not often_apart(tables.guide, str(each.member)) for each in items)
    return tuple(
        _together(tables, posterior, w, matters) for w in range(len(tables.worlds))
    )


def amounts(tables: Tables, sheet: Sheet, scenes: Sequence[Scene]) -> Amounts:
    """How probable it is that the find is worth each amount.

    Within a cell of a scene the items are independent of each other, so that what
    comes off in all is a sum; cells that say the same are added up once.
    """
    found: dict[int, float] = {}
    for scene in scenes:
        for y, (start, stop) in enumerate(_places(tables)):
            for share, said in _runs(scene, start, stop):
                several = [_taken(scene, sheet, y, i, x) for i, x in enumerate(said)]
                for loss, p in added(several, sheet.step[y], share):
                    left = sheet.whole[y] - loss
                    found[left] = found.get(left, 0.0) + p
    total = sum(found[left] for left in sorted(found))
    return tuple((left, found[left] / total) for left in sorted(found))


def quantile(amounts: Amounts, share: float) -> int:
    """The least amount that is not exceeded with at least this probability.

    >>> quantile(((0, 0.5), (10, 0.5)), 0.5), quantile(((0, 0.5), (10, 0.5)), 0.9)
    (0, 10)
    """
    run = 0.0
    for amount, p in amounts:
        run += p
        if round9(run) >= share:
            return amount
    return amounts[-1][0]


def off(scene: Scene, sheet: Sheet, tables: Tables, i: int) -> Vector:
    """What is expected to come off the item at place `i`, by cell."""
    made = off_made(scene, sheet, tables, scene.own[i])
    stray = by_cell(tables, sheet.stray) if scene.matters[i] else [0.0] * len(made)
    return [
        (1 - q) * x + q * y
        for q, x, y in zip(scene.strays[i], made, stray, strict=True)
    ]


def off_made(
    scene: Scene, sheet: Sheet, tables: Tables, own: Sequence[States]
) -> list[float]:
    """What is expected to come off an item that is no stray, by cell, if this is said
    of its parts: what they take off one by one, less what is more than all of it.
    """
    total = [-x for x in _beyond(scene, sheet, tables, own)]
    joint = states(scene.world.forest, own)
    for p, (original, replaced) in enumerate(joint):
        amount = by_cell(tables, [parts[p] for parts in sheet.parts])
        if scene.world.whole[p]:
            total = [x + loss for x, loss in zip(total, amount, strict=True)]
        else:
            total = [
                x + loss * (later / (made + later) if later > 0 else 0.0)
                for x, loss, made, later in zip(
                    total, amount, original, replaced, strict=True
                )
            ]
    return total


def by_cell(tables: Tables, by_place: Sequence[int]) -> list[int]:
    """What stands by model year, and last for outside, written to every cell."""
    by_year = zip(tables.stretches, by_place, strict=False)
    return [x for (start, stop), x in by_year for _ in range(start, stop)] + [
        by_place[-1]
    ]


def _places(tables: Tables) -> list[tuple[int, int]]:
    """The cells of each model year, and the one for outside."""
    outside = len(tables.cells)
    return [*tables.stretches, (outside, outside + 1)]


def _beyond(
    scene: Scene, sheet: Sheet, tables: Tables, own: Sequence[States]
) -> list[float]:
    """By how much the parts of an item are expected to take off more than it counts
    for, by cell; cells that say the same as the one before are worked out with it.
    """
    found = [0.0] * len(tables.prior)
    for y, (start, stop) in enumerate(_places(tables)):
        if sum(sheet.parts[y]) <= sheet.portion[y]:
            continue
        before: list[tuple[float, float]] = []
        more = 0.0
        for c in range(start, stop):
            if scene.cells[c] >= RARE:
                parts = _ratios(own, c)
                if parts != before:
                    several = trees(scene.world, parts, sheet.parts[y])
                    before, more = parts, beyond(several, sheet.portion[y])
                found[c] = more
    return found


def _alone(tables: Tables, item: Item, posterior: Posterior) -> Scene:
    own, _ = told(tables, item)
    world = World((False,) * len(own), 1.0, tables.forest)
    never = [0.0] * len(tables.prior)
    return Scene(world, posterior.cells, (tuple(own),), (never,), (False,))


def _together(
    tables: Tables, posterior: SetPosterior, w: int, matters: tuple[bool, ...]
) -> Scene:
    """The scene of the world at place `w`."""
    world = tables.worlds[w]
    return Scene(
        world,
        posterior.worlds[w],
        tuple(tuple(unshared(world, one.own)) for one in posterior.standing),
        tuple(_strays(one, w) for one in posterior.standing),
        matters,
    )


def _strays(one: Standing, w: int) -> Vector:
    """Probability in each cell that the item is a stray, in the world at place `w`."""
    stray = one.stray * one.means[w]
    totals = [(1 - one.stray) * x + stray for x in one.fits[w][0]]
    return [stray / total if total > 0 else 0.0 for total in totals]


def _runs(scene: Scene, start: int, stop: int) -> list[tuple[float, list[_Said]]]:
    """Stretches of the cells from `start` up to `stop` in which the same is said of
    every item: the probability of each stretch, and what is said by item.
    """
    runs: list[tuple[float, list[_Said]]] = []
    for c in range(start, stop):
        share = scene.cells[c]
        if share >= RARE:
            said = [_said(scene, i, c) for i in range(len(scene.own))]
            if runs and runs[-1][1] == said:
                share += runs.pop()[0]
            runs.append((share, said))
    return runs


def _said(scene: Scene, i: int, c: int) -> _Said:
    """What is said of the item at place `i` in a cell."""
    return scene.strays[i][c], _ratios(scene.own[i], c)


def _ratios(own: Sequence[States], c: int) -> list[tuple[float, float]]:
    """What is said of each part in a cell: only the ratio counts, and products of
    ratios stay in sight.
    """
    parts = []
    for original, replaced in own:
        most = max(original[c], replaced[c]) or 1.0
        parts.append((original[c] / most, replaced[c] / most))
    return parts


def _taken(scene: Scene, sheet: Sheet, y: int, i: int, said: _Said) -> Taken:
    """What may come off the item at place `i` in the model year at place `y`."""
    share, parts = said
    stray = sheet.stray[y] if scene.matters[i] else 0
    several = trees(scene.world, parts, sheet.parts[y])
    return Taken(stray, share, within(several, sheet.portion[y]))
