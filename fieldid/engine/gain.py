"""What to look at next: expected information, per second, and when to stop.

Model page: "What to look at next".
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

from fieldid.engine.find import Item, Next
from fieldid.engine.one import Posterior, ranked
from fieldid.engine.prepare import Tables, outcomes, tables_for
from fieldid.engine.special import Vector, round9
from fieldid.engine.words import figure

WORTHWHILE = 0.02
"""Bits below which a clue is not worth looking at."""
RIVALS = 4
"""How many of the most probable model years a reason is sought among."""

Rows = Sequence[Vector]
"""Joint probability of each outcome (row) with each model year and outside."""


@dataclass(frozen=True, slots=True)
class Prospect:
    """The clue at place `k` of the guide, and what reading it is expected to tell."""

    k: int
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
) -> list[Prospect]:
    """Every clue that can still be looked at, best first.

    `claimed` is the place of a claimed model year, which is then what the clues are
    to tell; `away` leaves out what must be held in the hand, `without` the clues
    that need one of these tools.
    """
    answered = [clue for clue, _ in item.readings]
    found = []
    for k, clue in enumerate(tables.guide.clues):
        if clue.id in answered or clue.part in item.gone:
            continue
        if (away and clue.seen_from != "away") or clue.needs in without:
            continue
        rows = _rows(tables, item, posterior, k)
        aim = rows if claimed is None else [_for_and_against(r, claimed) for r in rows]
        bits = (1 - clue.unreadable) * gain(aim)
        found.append(Prospect(k, bits, bits / clue.seconds, rows))
    return sorted(found, key=lambda found: -round9(found.bits_per_second))


def advice(tables: Tables, posterior: Posterior, prospect: Prospect) -> Next:
    """A prospect with its reason in words."""
    clue = tables.guide.clues[prospect.k]
    effort = f"{figure(clue.seconds)} seconds; {clue.needs or 'no tools'}"
    if prospect.bits < WORTHWHILE:
        reason = "tells next to nothing now"
    else:
        rivals = ranked(posterior)[:RIVALS]
        i, j = max(
            combinations(sorted(rivals), 2),
            key=lambda pair: round9(between(prospect.rows, *pair)),
            default=(0, 0),
        )
        years = tables.guide.years
        reason = f"splits {years[i].year} from {years[j].year} best"
        if i == j:
            reason = f"tells {years[i].year} from anything else"
    return Next(clue.id, prospect.bits, prospect.bits_per_second, f"{reason}; {effort}")


def separator(
    tables: Tables, found: Sequence[Prospect], i: int, j: int
) -> Prospect | None:
    """The prospect that best tells the model years at two places apart, if any can."""
    best = max(
        found,
        key=lambda prospect: round9(_weighed(tables, prospect, i, j)),
        default=None,
    )
    if best is None or _weighed(tables, best, i, j) < WORTHWHILE:
        return None
    return best


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
            sum(x * y for x, y in zip(outcome.orig[start:stop], piece, strict=True))
            + outcome.rep * later
            for (start, stop), piece, later in zip(
                tables.stretches, pieces, by_year, strict=True
            )
        ]
        rows.append([*row, outcome.out * posterior.outside])
    whole = [*posterior.years, posterior.outside]
    rows.append(
        [max(p - sum(row[y] for row in rows), 0.0) for y, p in enumerate(whole)]
    )
    return rows


def _for_and_against(row: Vector, claimed: int) -> Vector:
    return [row[claimed], sum(row[:claimed]) + sum(row[claimed + 1 :])]


def _weighed(tables: Tables, prospect: Prospect, i: int, j: int) -> float:
    readable = 1 - tables.guide.clues[prospect.k].unreadable
    return readable * gain([(row[i], row[j]) for row in prospect.rows])
