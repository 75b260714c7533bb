"""What to look at next on a set: every clue on every item, for what it tells of all.

Model page: "What to look at next". A clue is weighed with its part on the item as made
or replaced there, with the item a stray, and with the part replaced on the whole set.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.engine.find import Item
from fieldid.engine.gain import Prospect, Rows, best_first, left, prospect, with_rest
from fieldid.engine.likelihood import blend
from fieldid.engine.one import States
from fieldid.engine.prepare import Tables, outcomes, tables_for
from fieldid.engine.sets import SetPosterior, by_year
from fieldid.engine.special import Vector, dot
from fieldid.engine.standing import as_stray, by_part


@dataclass(frozen=True, slots=True)
class _View:
    """What is known of one item's part; all are probabilities given the readings.

    Where the item is no stray: `original` of each cell with the part original,
    `replaced` of each model year with the part replaced, `outside` of none of these.
    Where it is one: `strays` by world, for each model year of the set and outside, what
    goes with `parts`, which is what the item itself says. `whole` is for each model
    year and outside that of the part replaced on the whole set. `expected` is what
    outcomes are foreseen from.
    """

    original: Vector
    replaced: Vector
    outside: float
    parts: Sequence[States]
    strays: Sequence[Vector]
    whole: Vector
    expected: tuple[Vector, float, float]


def set_prospects(
    tables: Tables,
    items: Sequence[Item],
    posterior: SetPosterior,
    *,
    claimed: int | None,
    away: bool,
    without: Sequence[str],
    photos: bool,
) -> list[Prospect]:
    """Every clue on every item that can still be looked at, best first; limits as for
    one object.
    """
    views: dict[int, list[_View]] = {}
    known: dict[tuple[int, int], Prospect] = {}
    found = []
    for i, item in enumerate(items):
        # Items that share one record, and tables, have the same prospects.
        own = id(posterior.standing[i])
        if own not in views:
            views[own] = _views(tables, posterior, i)
        for k in left(tables, item, away=away, without=without, photos=photos):
            table = id(tables_for(tables, item.member)[k])
            if (own, table) not in known:
                view = views[own][tables.part_of[k]]
                rows = _rows(tables, posterior, view, k, item.member)
                known[own, table] = prospect(tables, k, i, rows, claimed)
            found.append(replace(known[own, table], item=i))
    return best_first(found)


def _views(tables: Tables, posterior: SetPosterior, i: int) -> list[_View]:
    """The parts of the item at place `i`."""
    parts = by_part(tables, posterior.standing[i])
    return [
        _view(tables, posterior, by_world, i, p) for p, by_world in enumerate(parts)
    ]


def _view(
    tables: Tables, posterior: SetPosterior, parts: Sequence[States], i: int, p: int
) -> _View:
    """Part `p` of the item at place `i`, from what it says in each world."""
    stray = posterior.standing[i].stray
    nothing = [0.0] * len(tables.prior)
    original, replaced, whole = nothing, nothing, nothing
    for world, cells in zip(tables.worlds, posterior.worlds, strict=True):
        if world.whole[p]:
            whole = _plus(whole, cells, 1.0)
    others = [
        rest
        for rest, world in zip(posterior.others[i], tables.worlds, strict=True)
        if not world.whole[p]
    ]
    for rest, (made, later) in zip(others, parts, strict=True):
        original = _plus(original, _times(rest, made), 1 - stray)
        replaced = _plus(replaced, _times(rest, later), 1 - stray)
    strays = [[stray * x for x in _with_outside(tables, rest)] for rest in others]
    return _View(
        original[:-1],
        by_year(tables, replaced),
        original[-1] + replaced[-1],
        parts,
        strays,
        _with_outside(tables, whole),
        expected(tables, original, replaced, parts, strays),
    )


def expected(
    tables: Tables,
    original: Vector,
    replaced: Vector,
    parts: Sequence[States],
    strays: Sequence[Vector],
) -> tuple[Vector, float, float]:
    """Cells with the part original, the part replaced, none of these; strays too."""
    for (made, later), share in zip(parts, strays, strict=True):
        original = _plus(original, _times(tables.prior, made), sum(share))
        replaced = _plus(replaced, _times(tables.prior, later), sum(share))
    return original[:-1], sum(replaced[:-1]), original[-1] + replaced[-1]


def _rows(
    tables: Tables, posterior: SetPosterior, view: _View, k: int, member: str | None
) -> Rows:
    """Joint probability of every outcome of a clue with every model year of the set;
    what the outcomes leave over is one more.
    """
    table = tables_for(tables, member)[k]
    shown = posterior.common.get(k)
    sources = table.sources if shown is None else shown.sources
    whole = sum(view.whole)
    found = outcomes(table, *view.expected, [whole * q for q in sources])
    rows = []
    for a, means in zip(found, as_stray(tables, view.parts, found), strict=True):
        row = [
            dot(a.orig[start:stop], view.original[start:stop]) + a.rep * later
            for (start, stop), later in zip(
                tables.stretches, view.replaced, strict=True
            )
        ]
        row.append(a.out * view.outside)
        for share, mean in zip(view.strays, means, strict=True):
            row = _plus(row, share, mean)
        rows.append(_plus(row, view.whole, blend(sources, a.by_source)))
    return with_rest(rows, [*posterior.years, posterior.outside])


def _with_outside(tables: Tables, cells: Vector) -> list[float]:
    return [*by_year(tables, cells), cells[-1]]


def _times(a: Vector, b: Vector) -> list[float]:
    return [x * y for x, y in zip(a, b, strict=True)]


def _plus(a: Vector, b: Vector, share: float) -> list[float]:
    return [x + share * y for x, y in zip(a, b, strict=True)]
