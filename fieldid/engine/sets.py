"""A set: members that were made together, but for strays and what was replaced on all.

Model page: "A set". A world is one choice of parts that were replaced on the whole set;
sums over cells and worlds are exact.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.find import Item
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.parts import World
from fieldid.engine.prepare import Tables
from fieldid.engine.special import (
    HUGE,
    LOG_HUGE,
    TINY,
    Scaled,
    Vector,
    aligned,
    multiplied,
    products,
)
from fieldid.engine.standing import Standing, stand


@dataclass(frozen=True, slots=True)
class Common:
    """A clue as all members show it, if its part was replaced on the whole set.

    `sources` is how probable each source then is, `weight` how probable the readings
    are (one entry), and `without` the same by item, had that item never been seen.
    """

    sources: Vector
    weight: Scaled
    without: tuple[Scaled, ...]


@dataclass(frozen=True, slots=True)
class SetPosterior:
    """Everything that the readings say of a set.

    `cells`, `years`, `outside` and `log_evidence` are as for one object; `stray` is by
    item, `whole_set` by part. `without` is by item the probability of each model year,
    and last of outside, had that item never been seen.

    `worlds` has the probability of each cell in each world. `others` is by item and
    world what all the rest says of each cell: times what the item says, it is `worlds`.
    """

    cells: Vector
    years: tuple[float, ...]
    outside: float
    log_evidence: float
    stray: tuple[float, ...]
    whole_set: tuple[float, ...]
    without: tuple[tuple[float, ...], ...]
    worlds: tuple[Vector, ...]
    others: tuple[tuple[Vector, ...], ...]
    standing: tuple[Standing, ...]
    common: dict[int, Common]


@dataclass(frozen=True, slots=True)
class _Weighed:
    """A world: the weight of each cell, and by item that of all the rest, with what
    the item shows of parts replaced on the whole set and without it.
    """

    whole: Scaled
    others: list[Scaled]
    without: list[Scaled]


def weigh_set(tables: Tables, items: Sequence[Item]) -> SetPosterior:
    """Probability of each cell, stray and whole-set replacement given all readings."""
    standing = stand(tables, items)
    common = _common(tables, standing)
    weighed = [
        _world(tables, world, w, standing, common)
        for w, world in enumerate(tables.worlds)
    ]
    weights, least = aligned([each.whole for each in weighed])
    total = sum(map(sum, weights))
    worlds = tuple([x / total for x in vector] for vector in weights)
    others = tuple(
        tuple(
            _paired(each.others[i], worlds[w], least, total)
            for w, each in enumerate(weighed)
        )
        for i in range(len(items))
    )
    cells = _added(worlds)
    return SetPosterior(
        cells=cells,
        years=by_year(tables, cells),
        outside=cells[-1],
        log_evidence=math.log(total) - least * LOG_HUGE,
        stray=tuple(map(_stray, standing, others)),
        whole_set=_whole_set(tables, worlds),
        without=tuple(
            _without(tables, [each.without[i] for each in weighed])
            for i in range(len(items))
        ),
        worlds=worlds,
        others=others,
        standing=tuple(standing),
        common=common,
    )


def by_year(tables: Tables, cells: Vector) -> tuple[float, ...]:
    """The cells added up to model years."""
    return tuple(sum(cells[start:stop]) for start, stop in tables.stretches)


def _stray(one: Standing, others: Sequence[Vector]) -> float:
    """How probable it is that an item is a stray."""
    by_world = zip(one.means, others, strict=True)
    return one.stray * sum(mean * sum(rest) for mean, rest in by_world)


def _whole_set(tables: Tables, worlds: Sequence[Vector]) -> tuple[float, ...]:
    """How probable it is of each part that it was replaced on the whole set."""
    return tuple(
        sum(
            (sum(worlds[w]) for w, world in enumerate(tables.worlds) if world.whole[p]),
            0.0,
        )
        for p in range(len(tables.guide.parts))
    )


def _common(tables: Tables, standing: Sequence[Standing]) -> dict[int, Common]:
    """The clues that were read on parts that can be replaced on the whole set."""
    return {
        k: _shared(tables.clues[0][k].sources, [one.found.get(k) for one in standing])
        for k, p in enumerate(tables.part_of)
        if any(world.whole[p] for world in tables.worlds)
        and any(k in one.found for one in standing)
    }


def _shared(sources: Vector, found: Sequence[Likelihood | None]) -> Common:
    """A clue with its likelihood by item (None: not read)."""
    (vector, count), others = products(
        sources, [reading.by_source for reading in found if reading]
    )
    total = sum(vector)
    weight: Scaled = ([total], count)
    rest = iter([([sum(other)], count) for other, count in others])
    return Common(
        # No source fits them all if nothing is ever misread; then nothing comes of it.
        [x / (total or 1.0) for x in vector],
        weight,
        tuple(next(rest) if reading else weight for reading in found),
    )


def _world(
    tables: Tables,
    world: World,
    w: int,
    standing: Sequence[Standing],
    common: dict[int, Common],
) -> _Weighed:
    """All weights in the world at place `w`."""
    counts = [one.fits[w][1] for one in standing]
    lifted = sum(counts)
    whole, others = products(
        tables.prior,
        [
            [(1 - one.stray) * x + one.stray * one.means[w] for x in one.fits[w][0]]
            for one in standing
        ],
    )
    shown = [on for k, on in common.items() if world.whole[tables.part_of[k]]]
    given = _given(world, [on.weight for on in shown])
    return _Weighed(
        _weighted(whole, given, lifted),
        [_weighted(rest, given, lifted) for rest in others],
        [
            _weighted(
                rest, _given(world, [on.without[i] for on in shown]), lifted - counts[i]
            )
            for i, rest in enumerate(others)
        ],
    )


def _given(world: World, weights: Sequence[Scaled]) -> Scaled:
    """`G`: the world's prior times what its parts show on the whole set."""
    product: Scaled = ([world.prior], 0)
    for weight in weights:
        product = multiplied(product, weight)
    return product


def _weighted(vector: Scaled, given: Scaled, lifted: int) -> Scaled:
    """The vector times a number, with what its factors had been lifted before."""
    (number,), count = given
    return multiplied(vector, ([number] * len(vector[0]), count + lifted))


def _paired(rest: Scaled, world: Vector, least: int, total: float) -> Vector:
    """What all the rest says, scaled so that it goes with what the item says."""
    vector, count = rest
    if not any(world):
        return [0.0] * len(vector)
    lift = TINY ** (count - least) if count >= least else HUGE ** (least - count)
    return [x * lift / total for x in vector]


def _without(tables: Tables, weights: Sequence[Scaled]) -> tuple[float, ...]:
    """Model years and outside from the weights by world."""
    vectors, _ = aligned(weights)
    cells = _added(vectors)
    total = sum(cells)
    return tuple(x / total for x in (*by_year(tables, cells), cells[-1]))


def _added(vectors: Sequence[Vector]) -> list[float]:
    return [sum(column) for column in zip(*vectors, strict=True)]
