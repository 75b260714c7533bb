"""When each option was seen: its share in every model year, and what changed when.

Computed from the spans of the guide; nobody writes it a second time.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fieldid.engine.choice import weight
from fieldid.engine.guide import Choice, Clue, Measure, Option
from fieldid.engine.prepare import Tables

MUCH = 0.25
"""A share that rises by so much from one year to the next is worth a word."""
NEVER = 1e-9
"""A share below this is none; sums round so far off."""


@dataclass(frozen=True, slots=True)
class Seen:
    """An option's share among what left the works in each model year, from 0 to 1."""

    option: Option
    shares: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """What a clue shows in a model year that it did not show the year before, what it
    shows much more often, and what it shows no more.
    """

    clue: Clue
    new: tuple[Seen, ...]
    more: tuple[Seen, ...]
    gone: tuple[Option, ...]


def seen(tables: Tables, clue: Clue) -> tuple[Seen, ...]:
    """The options of a choice clue, with their shares; of another clue none.

    Shares are those of the guide without its floor, the mean of all members. A year of
    which the guide says nothing has 0 for all.
    """
    if not isinstance(clue.kind, Choice):
        return ()
    options = clue.kind.options
    by_year = [_shares(tables, options, *stretch) for stretch in tables.stretches]
    return tuple(
        Seen(option, tuple(shares[o] for shares in by_year))
        for o, option in enumerate(options)
    )


def changes(tables: Tables) -> tuple[tuple[Change, ...], ...]:
    """For each model year what changed since the one before, clue by clue; nothing for
    the first, which has none before.
    """
    known = [(clue, seen(tables, clue)) for clue in tables.guide.clues]
    later = range(1, len(tables.guide.years))
    return ((), *(tuple(_changes(known, y)) for y in later))


def sizes(tables: Tables, clue: Clue) -> tuple[float | None, ...]:
    """The mean size in every model year, of whatever member is not told apart; None
    where the guide says nothing, and everywhere of a clue that is not measured.
    """
    kind = clue.kind
    known = kind.sizes if isinstance(kind, Measure) else ()
    return tuple(
        next(
            (
                size.mean
                for size in known
                if size.years[0] <= year.year <= size.years[1] and not size.members
            ),
            None,
        )
        for year in tables.guide.years
    )


def _changes(
    all_known: Sequence[tuple[Clue, tuple[Seen, ...]]], y: int
) -> Iterator[Change]:
    for clue, known in all_known:
        before, now = (any(_has(each, i) for each in known) for i in (y - 1, y))
        new = tuple(each for each in known if _has(each, y) > _has(each, y - 1))
        gone = tuple(each.option for each in known if _has(each, y) < _has(each, y - 1))
        # Where the guide falls silent nothing is known to have changed.
        more = tuple(each for each in known if _has(each, y - 1) and _rises(each, y))
        if before and now and (new or more or gone):
            yield Change(clue, new, more, gone)


def _rises(each: Seen, y: int) -> bool:
    return each.shares[y] - each.shares[y - 1] >= MUCH


def _has(each: Seen, y: int) -> bool:
    return each.shares[y] > NEVER


def _shares(
    tables: Tables, options: tuple[Option, ...], start: int, stop: int
) -> list[float]:
    """Each option's share of what was built in some cells: month by month, and member
    by member.
    """
    members = tables.guide.members
    total = [0.0] * len(options)
    told = 0.0
    for member in members.all if members else (None,):
        for cell in tables.cells[start:stop]:
            weights = [weight(option, cell, member) for option in options]
            if sum(weights) > 0:
                told += cell.spread
                for o, w in enumerate(weights):
                    total[o] += cell.spread * w / sum(weights)
    return [x / told if told else 0.0 for x in total]
