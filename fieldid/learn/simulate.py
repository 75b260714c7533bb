"""Specimens by lot, read and judged: how sure one gets, and which years look alike.

The lots are the same at every build, so a page changes only when its guide does.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.lot import lots
from fieldid.engine.one import ranked, weigh
from fieldid.engine.specimen import Specimen, specimen
from fieldid.learn.walk import Known, Step, walk

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


def sureness(
    tables: Tables, *, walks: int = WALKS, looks: int = LOOKS
) -> tuple[Sureness, ...]:
    """From none to `looks` clues, always the one that tells most for its time.

    Who has nothing worthwhile left to look at keeps what is known.
    """
    draw = lots(SEED)
    known: Known = {}
    rows = []
    for _ in range(walks):
        found = specimen(tables, draw, y=None, member=None)
        steps = _held(walk(tables, found, known), looks + 1)
        rows.append([_told(tables, found, step) for step in steps])
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


def _held(steps: Iterator[Step], count: int) -> Iterator[Step]:
    """So many steps; who has nothing worthwhile left to look at keeps what is known."""
    step = next(steps)
    yield step
    for _ in range(count - 1):
        step = next(steps, step)
        yield step


def _told(tables: Tables, found: Specimen, step: Step) -> tuple[float, float, float]:
    """The leading year's probability, whether it is right, and the seconds."""
    years = step.standing.years
    y = ranked(years)[0]
    start, stop = tables.stretches[y]
    return years[y], float(start <= found.cell < stop), step.seconds
