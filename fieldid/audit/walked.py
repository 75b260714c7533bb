"""How one specimen went: what was asked, how long it took, and what was told."""

from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.one import ranked
from fieldid.engine.range import brackets, run
from fieldid.engine.special import Vector, round9
from fieldid.engine.specimen import Specimen
from fieldid.learn.walk import Known, Standing, Step, walk

SURE = 0.95
"""A verdict as probable as this ends the walk."""

Answer = tuple[int, int]
"""The first and the last of the model years told, by place; outside is one more."""


@dataclass(frozen=True, slots=True)
class Walked:
    """The specimen's model year by place (outside is one more), what was read, what
    was told with which probability, and whether that was sure enough to stop.

    `bits` is the most that each clue promised to tell on the way, by place. `brier` is
    the score of G. W. Brier over all years (Monthly Weather Review 78, 1950).
    """

    year: int
    item: Item
    seconds: float
    told: Answer
    p: float
    sure: bool
    bits: tuple[float, ...]
    brier: float

    @property
    def right(self) -> bool:
        """Whether the specimen is what was told."""
        return self.told[0] <= self.year <= self.told[1]


def walked(tables: Tables, found: Specimen, known: Known) -> Walked:
    """The specimen, clue by clue, until the verdict is sure or nothing is worth it.

    A guide that brackets narrows its range as long as anything is worth a look.
    """
    bits = [0.0] * len(tables.guide.clues)
    for step in walk(tables, found, known):
        for k, most in step.standing.bits:
            bits[k] = max(bits[k], most)
        _, p = answer(tables, _shares(step.standing))
        # It is sure from the beginning that an object lies in the whole range.
        if round9(p) >= SURE and not brackets(tables.guide):
            break
    return _ended(tables, found, step, tuple(bits))


def answer(tables: Tables, shares: Vector) -> tuple[Answer, float]:
    """What the verdict would be, and how probable that is; the last share is that of
    outside.
    """
    leading = ranked(shares)[0]
    told = (leading, leading)
    if brackets(tables.guide) and leading < len(tables.stretches):
        told = run(shares[:-1])
    return told, sum(shares[told[0] : told[1] + 1])


def year_of(tables: Tables, found: Specimen) -> int:
    """The place of the specimen's model year; outside is one more."""
    for y, (start, stop) in enumerate(tables.stretches):
        if start <= found.cell < stop:
            return y
    return len(tables.stretches)


def _ended(
    tables: Tables, found: Specimen, step: Step, bits: tuple[float, ...]
) -> Walked:
    shares = _shares(step.standing)
    told, p = answer(tables, shares)
    year = year_of(tables, found)
    brier = sum((share - (y == year)) ** 2 for y, share in enumerate(shares))
    return Walked(
        year=year,
        item=step.item,
        seconds=step.seconds,
        told=told,
        p=p,
        sure=round9(p) >= SURE,
        bits=bits,
        brier=brier,
    )


def _shares(standing: Standing) -> Vector:
    return [*standing.years, standing.outside]
