"""What to look at next: expected information, the seconds it takes, and when to stop.

Model page: "What to look at next".
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from fieldid.engine.find import Item
from fieldid.engine.one import Posterior
from fieldid.engine.prepare import Tables, outcomes, tables_for
from fieldid.engine.special import Vector, dot, round9

WORTHWHILE = 0.02
"""Bits below which a clue is not worth looking at."""

Rows = Sequence[Vector]
"""Joint probability of each outcome (row) with each model year and outside."""


@dataclass(frozen=True, slots=True)
class Prospect:
    """The clue at place `k` of the guide on the item at place `item` of the find, and
    what reading it is expected to tell.
    """

    k: int
    item: int
    bits: float
    bits_per_second: float
    rows: Rows


def prospects(
    tables: Tables,
    item: Item,
    posterior: Posterior,
    *,
    claimed: int | None,
    away: bool,
    without: Sequence[str],
    photos: bool = False,
) -> list[Prospect]:
    """Every clue that can still be looked at, best first.

    `claimed` is the place of a claimed model year, which is then what the clues are
    to tell; `away` leaves out what must be held in the hand, `without` the clues
    that need one of these tools, `photos` what no photo can show.
    """
    found = [
        prospect(tables, k, 0, _rows(tables, item, posterior, k), claimed)
        for k in left(tables, item, away=away, without=without, photos=photos)
    ]
    return best_first(found)


def left(
    tables: Tables, item: Item, *, away: bool, without: Sequence[str], photos: bool
) -> list[int]:
    """The clues that can still be looked at, in guide order; limits as above."""
    answered = [clue for clue, _ in item.readings]
    return [
        k
        for k, clue in enumerate(tables.guide.clues)
        if clue.id not in answered
        and clue.part not in item.gone
        and (clue.seen_from == "away" or not away)
        and clue.needs not in without
        and (clue.photo or not photos)
    ]


def prospect(
    tables: Tables, k: int, item: int, rows: Rows, claimed: int | None
) -> Prospect:
    """A clue with what its outcomes tell of the model year, or of a claimed one."""
    clue = tables.guide.clues[k]
    aim = rows if claimed is None else [_for_and_against(r, claimed) for r in rows]
    bits = (1 - clue.unreadable) * gain(aim)
    return Prospect(k, item, bits, bits / clue.seconds, rows)


def best_first(found: Sequence[Prospect]) -> list[Prospect]:
    """Prospects by the square of what they tell, divided by the seconds; ties stay as
    they stand.

    Tan and Schlimmer (1990), in Mitchell (1997), section 3.7.5: by the bits alone, a
    second, many quick looks that tell little would go before one that tells much.
    """
    return sorted(found, key=lambda each: -round9(each.bits * each.bits_per_second))


def whatever_is_claimed(tables: Tables, found: Sequence[Prospect]) -> list[Prospect]:
    """The prospects by what they tell of the model year, best first."""
    in_order = sorted(found, key=lambda each: (each.item, each.k))
    return best_first(
        [prospect(tables, each.k, each.item, each.rows, None) for each in in_order]
    )


def with_rest(rows: Rows, whole: Vector) -> Rows:
    """The rows, and what they leave over of the columns as one row more."""
    rest = [max(p - sum(row[y] for row in rows), 0.0) for y, p in enumerate(whole)]
    return [*rows, rest]


def separator(
    tables: Tables, found: Sequence[Prospect], i: int, j: int
) -> Prospect | None:
    """The prospect that best tells the model years at two places apart, if any can."""
    return max(
        (each for each in found if separates(tables, each, i, j)),
        key=lambda each: round9(_apart(tables, each, i, j)),
        default=None,
    )


def separates(tables: Tables, prospect: Prospect, i: int, j: int) -> bool:
    """Whether a prospect can tell the model years at two places apart at all, however
    unlikely the one of them is.
    """
    return round9(_apart(tables, prospect, i, j)) >= WORTHWHILE


def between(rows: Rows, i: int, j: int) -> float:
    """Bits of the question "year `i` or year `j`?", weighed by how likely it is to
    be one of the two.
    """
    two = [(row[i], row[j]) for row in rows]
    return sum(a + b for a, b in two) * gain(two)


def gain(rows: Rows) -> float:
    """Expected fall of the entropy of the columns, in bits, from learning the row.

    Mitchell, Machine Learning (1997), section 3.4.1.

    >>> gain([(0.5, 0.0), (0.0, 0.5)])
    1.0
    """
    shares = [sum(row) for row in rows]
    total = sum(shares)
    if total == 0:
        return 0.0
    expected = sum(
        share * entropy(row) for row, share in zip(rows, shares, strict=True)
    )
    return entropy([sum(column) for column in zip(*rows, strict=True)]) - (
        expected / total
    )


def entropy(weights: Iterable[float]) -> float:
    """Entropy in bits of weights that need not sum to one.

    >>> entropy([2, 2, 4])
    1.5
    """
    positive = [w for w in weights if w > 0]
    total = sum(positive)
    if not positive:
        return 0.0
    return math.log2(total) - sum(w * math.log2(w) for w in positive) / total


def _rows(tables: Tables, item: Item, posterior: Posterior, k: int) -> Rows:
    """Joint probability of every outcome of a clue with every model year; what the
    outcomes leave over is one more.
    """
    p = tables.part_of[k]
    original = posterior.original[p][:-1]
    replaced = posterior.replaced[p][:-1]
    by_year = [sum(replaced[start:stop]) for start, stop in tables.stretches]
    found = outcomes(
        tables_for(tables, item.member)[k], original, sum(by_year), posterior.outside
    )
    pieces = [original[start:stop] for start, stop in tables.stretches]
    rows = []
    for outcome in found:
        row = [
            dot(outcome.orig[start:stop], piece) + outcome.rep * later
            for (start, stop), piece, later in zip(
                tables.stretches, pieces, by_year, strict=True
            )
        ]
        rows.append([*row, outcome.out * posterior.outside])
    return with_rest(rows, [*posterior.years, posterior.outside])


def _for_and_against(row: Vector, claimed: int) -> Vector:
    return [row[claimed], sum(row[:claimed]) + sum(row[claimed + 1 :])]


def _apart(tables: Tables, prospect: Prospect, i: int, j: int) -> float:
    """Bits of the question "year `i` or year `j`?", as if both were equally likely."""
    a, b = (sum(row[y] for row in prospect.rows) for y in (i, j))
    if a == 0 or b == 0:
        return 0.0
    readable = 1 - tables.guide.clues[prospect.k].unreadable
    return readable * gain([(row[i] / a, row[j] / b) for row in prospect.rows])
