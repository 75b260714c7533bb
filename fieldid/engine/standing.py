"""One item of a set taken for itself: what it says of each cell in each world.

Model page: "A set". A world is one choice of parts that were replaced on the whole set.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.find import Item
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.one import States, fit, read, states, told
from fieldid.engine.parts import World
from fieldid.engine.prepare import Tables, tables_for
from fieldid.engine.special import Scaled, Vector, dot


@dataclass(frozen=True, slots=True)
class Standing:
    """One item taken for itself: its readings, how often its like is a stray, what it
    says of each part, and in each world of each cell.

    `fits` is `F` by world, `means` is `S`, lifted as often.
    """

    found: dict[int, Likelihood]
    stray: float
    own: tuple[States, ...]
    fits: tuple[Scaled, ...]
    means: tuple[float, ...]


def stand(tables: Tables, items: Sequence[Item]) -> list[Standing]:
    """What each item says by itself; items that say the same share one record."""
    same: dict[object, Standing] = {}
    found = []
    for item in items:
        key = _key(tables, item)
        if key not in same:
            same[key] = _stand(tables, item)
        found.append(same[key])
    return found


def by_part(tables: Tables, one: Standing) -> list[tuple[States, ...]]:
    """`F` by part, world and the part's state, for the worlds in which the part was
    not replaced on the whole set.
    """
    worlds = [states(world.forest, unshared(world, one.own)) for world in tables.worlds]
    return [
        tuple(
            by[p]
            for by, world in zip(worlds, tables.worlds, strict=True)
            if not world.whole[p]
        )
        for p in range(len(one.own))
    ]


def as_stray(
    tables: Tables, parts: Sequence[States], outcomes: Sequence[Likelihood]
) -> list[Vector]:
    """`S` for each outcome of a clue, if that is read too, by world; `parts` is what
    the item says of the clue's part, by world.
    """
    prior = tables.prior
    by_world = []
    for made, later in parts:
        own = [p * x for p, x in zip(prior, made, strict=True)]
        replaced = dot(prior[:-1], later)
        outside = own[-1] + prior[-1] * later[-1]
        by_world.append(
            [dot(a.orig, own) + a.rep * replaced + a.out * outside for a in outcomes]
        )
    return [[means[a] for means in by_world] for a in range(len(outcomes))]


def stray_share(tables: Tables, member: str | None) -> float:
    """How often this member comes from another set."""
    members = tables.guide.members
    if members is None:
        return 0.0
    return dict(members.stray_for).get(member or "", members.stray)


def _key(tables: Tables, item: Item) -> tuple[object, ...]:
    """What makes an item say what it says: its member only through its tables."""
    readings = dict(item.readings)
    told = []
    for k, clue in enumerate(tables.guide.clues):
        if readings.get(clue.id) is not None:
            table = tables_for(tables, item.member)[k]
            first = [rows[k] is table for rows in tables.clues].index(True)
            told.append((k, first, readings[clue.id]))
    gone = [part.id for part in tables.guide.parts if part.id in item.gone]
    return (stray_share(tables, item.member), *gone, *told)


def _stand(tables: Tables, item: Item) -> Standing:
    own, counts = told(tables, item)
    fits = [_fit(world, own, counts) for world in tables.worlds]
    return Standing(
        read(tables, item),
        stray_share(tables, item.member),
        tuple(own),
        tuple(fits),
        tuple(dot(vector, tables.prior) for vector, _ in fits),
    )


def _fit(world: World, own: Sequence[States], counts: Sequence[int]) -> Scaled:
    """`F` in one world."""
    vector, count = fit(world.forest, unshared(world, own))
    by_part = zip(counts, world.whole, strict=True)
    return vector, count + sum(count for count, whole in by_part if not whole)


def unshared(world: World, own: Sequence[States]) -> list[States]:
    """What is said of each part, of those replaced on the whole set nothing."""
    ones = [1.0] * len(own[0][0])
    return [
        (ones, ones) if whole else said
        for said, whole in zip(own, world.whole, strict=True)
    ]
