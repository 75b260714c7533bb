"""Specimens by lot, read and judged: how sure one gets, and which years look alike.

The lots are the same at every build, so a page changes only when its guide does.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.find import Reading
from fieldid.engine.gain import WORTHWHILE, prospects
from fieldid.engine.lot import lots
from fieldid.engine.one import Posterior, ranked, weigh
from fieldid.engine.specimen import Specimen, specimen

SEED = 20_260_101
WALKS = 240
"""Specimens walked through clue by clue: a share of them is within 3 % of the truth."""
LOOKS = 10
"""More clues are hardly ever looked at."""
EACH = 40
"""Specimens of each model year that are read whole."""


@dataclass(frozen=True, slots=True)
class Sureness:
    """After so many of the best clues: the mean probability of the leading year, the
    share of specimens of which it is the year, and the mean seconds until then.
    """

    looks: int
    told: float
    right: float
    seconds: float


_Known = dict[tuple[tuple[str, Reading], ...], tuple[Posterior, int | None]]
"""What was read so far, and what follows: many specimens begin alike."""


def sureness(
    tables: Tables, *, walks: int = WALKS, looks: int = LOOKS
) -> tuple[Sureness, ...]:
    """From none to `looks` clues, always the one that tells most a second.

    Who has nothing worthwhile left to look at keeps what is known.
    """
    draw = lots(SEED)
    known: _Known = {}
    rows = [
        list(_walk(tables, specimen(tables, draw, y=None, member=None), looks, known))
        for _ in range(walks)
    ]
    return tuple(
        Sureness(look, *(sum(column) / walks for column in zip(*step, strict=True)))
        for look, step in enumerate(zip(*rows, strict=True))
    )


def mistaken(tables: Tables, *, each: int = EACH) -> tuple[tuple[float, ...], ...]:
    """For each model year, a row: the mean probability of every model year once all
    clues of its specimens are read. What is missing from 1 is outside.
    """
    draw = lots(SEED)
    return tuple(
        _mean_years(
            tables, [specimen(tables, draw, y=y, member=None) for _ in range(each)]
        )
        for y in range(len(tables.guide.years))
    )


def _mean_years(tables: Tables, found: list[Specimen]) -> tuple[float, ...]:
    rows = [weigh(tables, Item(each.readings)).years for each in found]
    return tuple(sum(column) / len(rows) for column in zip(*rows, strict=True))


def _walk(
    tables: Tables, found: Specimen, looks: int, known: "_Known"
) -> Iterator[tuple[float, float, float]]:
    """What is told, whether it is right, and the seconds, look by look from none on."""
    shown = dict(found.readings)
    item, seconds = Item(), 0.0
    for _ in range(looks + 1):
        if item.readings not in known:
            posterior = weigh(tables, item)
            known[item.readings] = (posterior, _best(tables, item, posterior))
        posterior, k = known[item.readings]
        yield (*_leading(tables, posterior, found.cell), seconds)
        if k is not None:
            clue = tables.guide.clues[k]
            item = Item((*item.readings, (clue.id, shown[clue.id])))
            seconds += clue.seconds


def _leading(tables: Tables, posterior: Posterior, cell: int) -> tuple[float, float]:
    y = ranked(posterior.years)[0]
    start, stop = tables.stretches[y]
    return posterior.years[y], float(start <= cell < stop)


def _best(tables: Tables, item: Item, posterior: Posterior) -> int | None:
    """The clue to look at next; None where none is worth it."""
    found = prospects(tables, item, posterior, claimed=None, away=False, without=())
    worth = [each.k for each in found if each.bits >= WORTHWHILE]
    return worth[0] if worth else None
