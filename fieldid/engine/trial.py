"""Whether to look again before buying: the value of knowing all, and of one reading.

Model page: "The offer". The decision is to buy at the price asked or not; what is known
is worth what it adds to the better of the two (Raiffa, Decision Analysis, 1968).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.claim import Weighed
from fieldid.engine.find import Item
from fieldid.engine.gain import left
from fieldid.engine.likelihood import Likelihood, blend
from fieldid.engine.one import Posterior, States
from fieldid.engine.prepare import Tables, outcomes, tables_for
from fieldid.engine.setgain import expected
from fieldid.engine.sets import SetPosterior
from fieldid.engine.special import Vector, dot
from fieldid.engine.standing import as_stray, by_part
from fieldid.engine.value import Amounts, Scene, by_cell, off, off_made
from fieldid.engine.worth import RARE, Sheet


@dataclass(frozen=True, slots=True)
class Bargain:
    """What is left of a worth: `keep` of it, less the `price`; both in hundredths."""

    keep: float
    price: float


@dataclass(frozen=True, slots=True)
class Trial:
    """The clue at place `k` of the guide on the item at place `item`, and what one
    reading of it is worth to the decision, in hundredths.
    """

    k: int
    item: int
    worth: float


@dataclass(frozen=True, slots=True)
class _Mass:
    """Weights that go with what an item may show of one part: by cell with the part
    original, with it replaced, outside, by world with the item a stray, and with the
    part replaced on the whole set.
    """

    original: Vector
    replaced: float
    outside: float
    strays: Vector
    whole: float


@dataclass(frozen=True, slots=True)
class _Part:
    """One part of one item: how probable each state is, the same times what the find
    is then worth, and what outcomes are foreseen from.
    """

    chance: _Mass
    worth: _Mass
    parts: Sequence[States]
    foreseen: tuple[Vector, float, float]


def best(bargain: Bargain, chance: float, worth: float) -> float:
    """What the better decision leaves, where the find's `worth` goes with a `chance`.

    >>> best(Bargain(1.0, 70.0), 0.5, 25.0), best(Bargain(1.0, 70.0), 0.5, 60.0)
    (0.0, 25.0)
    """
    return max(bargain.keep * worth - bargain.price * chance, 0.0)


def perfect(amounts: Amounts, bargain: Bargain) -> float:
    """What it is worth to know exactly what the find is worth."""
    mean = sum(amount * p for amount, p in amounts)
    knowing = sum(best(bargain, p, amount * p) for amount, p in amounts)
    return max(knowing - best(bargain, 1.0, mean), 0.0)


def trials(
    tables: Tables,
    items: Sequence[Item],
    posterior: Weighed,
    *,
    sheet: Sheet,
    scenes: Sequence[Scene],
    bargain: Bargain,
    away: bool,
    without: Sequence[str],
    photos: bool,
) -> list[Trial]:
    """Every clue that can still be looked at on every item, in their order."""
    kept = _kept(tables, sheet, scenes)
    found = []
    for i, item in enumerate(items):
        known: dict[int, _Part] = {}
        for k in left(tables, item, away=away, without=without, photos=photos):
            p = tables.part_of[k]
            if p not in known:
                known[p] = (
                    _one(tables, posterior, sheet, scenes[0], p)
                    if isinstance(posterior, Posterior)
                    else _member(tables, posterior, sheet, scenes, kept, i, p)
                )
            pairs = _pairs(tables, posterior, known[p], k, item.member)
            before = best(
                bargain, sum(q for q, _ in pairs), sum(worth for _, worth in pairs)
            )
            after = sum(best(bargain, *pair) for pair in pairs)
            readable = 1 - tables.guide.clues[k].unreadable
            found.append(Trial(k, i, readable * max(after - before, 0.0)))
    return found


def _kept(
    tables: Tables, sheet: Sheet, scenes: Sequence[Scene]
) -> list[tuple[Vector, list[Vector]]]:
    """By scene what the find is expected to be worth in each cell, and by item what is
    expected to come off it.
    """
    whole = by_cell(tables, sheet.whole)
    found: list[tuple[Vector, list[Vector]]] = []
    for scene in scenes:
        offs = [off(scene, sheet, tables, i) for i in range(len(scene.own))]
        total = [x - sum(each) for x, *each in zip(whole, *offs, strict=True)]
        found.append((total, offs))
    return found


def _one(
    tables: Tables, posterior: Posterior, sheet: Sheet, scene: Scene, p: int
) -> _Part:
    """Part `p` of one object."""
    made, later = posterior.original[p], posterior.replaced[p]
    whole = by_cell(tables, sheet.whole)
    if_made, if_later = (
        _less(whole, off_made(scene, sheet, tables, own))
        for own in _struck(scene.own[0], p)
    )
    chance = _Mass(made[:-1], sum(later[:-1]), posterior.outside, (), 0.0)
    worth = _Mass(
        _times(made, if_made)[:-1],
        dot(later[:-1], if_later),
        made[-1] * if_made[-1] + later[-1] * if_later[-1],
        (),
        0.0,
    )
    return _Part(chance, worth, (), (made[:-1], sum(later[:-1]), posterior.outside))


def _member(
    tables: Tables,
    posterior: SetPosterior,
    sheet: Sheet,
    scenes: Sequence[Scene],
    kept: Sequence[tuple[Vector, list[Vector]]],
    i: int,
    p: int,
) -> _Part:
    """Part `p` of the item at place `i` of a set."""
    one = posterior.standing[i]
    parts = by_part(tables, one)[p]
    by_world = iter(parts)
    nothing = [0.0] * len(tables.prior)
    chances, worths = [nothing, nothing], [nothing, nothing]
    strays: list[float] = []
    strayed: list[float] = []
    whole = whole_worth = 0.0
    for w, scene in enumerate(scenes):
        total, offs = kept[w]
        if scene.world.whole[p]:
            whole += sum(scene.cells)
            whole_worth += dot(scene.cells, total)
            continue
        rest = posterior.others[i][w]
        others = _plus(total, offs[i], 1.0)
        stray = by_cell(tables, sheet.stray) if scene.matters[i] else nothing
        strays.append(one.stray * sum(rest))
        strayed.append(one.stray * dot(rest, _less(others, stray)))
        for s, said in enumerate(next(by_world)):
            share = _times(rest, said)
            chances[s] = _plus(chances[s], share, 1 - one.stray)
            if sum(scene.cells) >= RARE:
                own = _struck(scene.own[i], p)[s]
                left = _less(others, off_made(scene, sheet, tables, own))
                worths[s] = _plus(worths[s], _times(share, left), 1 - one.stray)
    shares = [[x] for x in strays]
    return _Part(
        _mass(chances, strays, whole),
        _mass(worths, strayed, whole_worth),
        parts,
        expected(tables, chances[0], chances[1], parts, shares),
    )


def _pairs(
    tables: Tables, posterior: Weighed, part: _Part, k: int, member: str | None
) -> list[tuple[float, float]]:
    """How probable every outcome of a clue is, and the same times what the find is then
    worth; what the outcomes leave over is one more.
    """
    table = tables_for(tables, member)[k]
    sources = table.sources
    if isinstance(posterior, SetPosterior) and k in posterior.common:
        sources = posterior.common[k].sources
    whole = [part.chance.whole * q for q in sources]
    found = outcomes(table, *part.foreseen, whole)
    means = as_stray(tables, part.parts, found)
    pairs = [
        (
            _shown(part.chance, a, mean, sources),
            _shown(part.worth, a, mean, sources),
        )
        for a, mean in zip(found, means, strict=True)
    ]
    rest = [
        max(_all(mass, tables, part.parts) - sum(pair[s] for pair in pairs), 0.0)
        for s, mass in enumerate((part.chance, part.worth))
    ]
    return [*pairs, (rest[0], rest[1])]


def _shown(mass: _Mass, a: Likelihood, means: Vector, sources: Vector) -> float:
    """Weight of an outcome; `means` is how likely strays show it, by world."""
    shown = dot(a.orig, mass.original) + a.rep * mass.replaced + a.out * mass.outside
    if mass.whole:
        shown += mass.whole * blend(sources, a.by_source)
    return shown + dot(mass.strays, means)


def _all(mass: _Mass, tables: Tables, parts: Sequence[States]) -> float:
    """Weight of anything that may be read."""
    strays = 0.0
    for (made, later), share in zip(parts, mass.strays, strict=True):
        strays += share * (dot(tables.prior, made) + dot(tables.prior, later))
    return sum(mass.original) + mass.replaced + mass.outside + mass.whole + strays


def _mass(states: Sequence[Vector], strays: Vector, whole: float) -> _Mass:
    made, later = states
    outside = made[-1] + later[-1]
    return _Mass(made[:-1], sum(later[:-1]), outside, tuple(strays), whole)


def _struck(own: Sequence[States], p: int) -> tuple[list[States], list[States]]:
    """What is said of the parts if part `p` is original, and if it is replaced."""
    made, later = own[p]
    never = [0.0] * len(made)
    before, after = list(own[:p]), list(own[p + 1 :])
    return [*before, (made, never), *after], [*before, (never, later), *after]


def _times(a: Vector, b: Vector) -> list[float]:
    return [x * y for x, y in zip(a, b, strict=True)]


def _less(a: Vector, b: Vector) -> list[float]:
    return _plus(a, b, -1.0)


def _plus(a: Vector, b: Vector, share: float) -> list[float]:
    return [x + share * y for x, y in zip(a, b, strict=True)]
