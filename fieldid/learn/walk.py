"""One specimen, look by look, always at the clue that tells most for its time."""

from collections.abc import Iterator
from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.gain import WORTHWHILE, prospects
from fieldid.engine.one import weigh
from fieldid.engine.specimen import Specimen

MOST = 4_000
"""So much of what was worked out is kept; of guides with many years that is much."""


@dataclass(frozen=True, slots=True)
class Standing:
    """What some readings say: how probable each model year and outside are, the bits
    that each clue would tell that is left, by place, and the place of the clue to look
    at next; None where none is worth it.
    """

    years: tuple[float, ...]
    outside: float
    bits: tuple[tuple[int, float], ...]
    best: int | None


@dataclass(frozen=True, slots=True)
class Step:
    """What was read so far, how many seconds that took, and what it says."""

    item: Item
    seconds: float
    standing: Standing


Known = dict[Item, Standing]
"""What was worked out before: many specimens begin alike."""


def walk(tables: Tables, found: Specimen, known: Known) -> Iterator[Step]:
    """From nothing read on, until nothing worthwhile is left."""
    shown = dict(found.readings)
    item, seconds = Item(member=found.member), 0.0
    while True:
        standing = _standing(tables, item, known)
        yield Step(item, seconds, standing)
        if standing.best is None:
            return
        clue = tables.guide.clues[standing.best]
        item = Item((*item.readings, (clue.id, shown[clue.id])), member=found.member)
        seconds += clue.seconds


def _standing(tables: Tables, item: Item, known: Known) -> Standing:
    if item in known:
        return known[item]
    posterior = weigh(tables, item)
    found = prospects(tables, item, posterior, claimed=None, away=False, without=())
    standing = Standing(
        posterior.years,
        posterior.outside,
        tuple((each.k, each.bits) for each in found),
        next((each.k for each in found if each.bits >= WORTHWHILE), None),
    )
    if len(known) < MOST:
        known[item] = standing
    return standing
