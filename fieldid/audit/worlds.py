"""What the world may be like while the guide stays as it is, and specimens of it."""

import hashlib
from collections.abc import Callable
from dataclasses import dataclass, replace

from fieldid.engine import Tables
from fieldid.engine.choice import ChoiceTable
from fieldid.engine.guide import Guide
from fieldid.engine.lot import Draw, among, lots
from fieldid.engine.prepare import ClueTable, tables_for
from fieldid.engine.specimen import Specimen, shows, specimen

TIMES_REPLACED = 2
TIMES_MISREAD = 3
MOST_REPLACED = 0.95
MOST_MISREAD = 0.5
"""No rate is raised beyond these, and none above them is lowered."""


@dataclass(frozen=True, slots=True)
class World:
    """A name, what is different in words, and the guide that would be right there."""

    name: str
    say: str
    guide: Callable[[Guide], Guide]


def _replaced(guide: Guide) -> Guide:
    """Twice the rate of every part by itself; followers follow as they did."""
    return replace(
        guide,
        parts=tuple(
            replace(
                part, replaced=_raised(part.replaced, TIMES_REPLACED, MOST_REPLACED)
            )
            for part in guide.parts
        ),
    )


def _misread(guide: Guide) -> Guide:
    return replace(
        guide,
        clues=tuple(
            replace(clue, misread=_raised(clue.misread, TIMES_MISREAD, MOST_MISREAD))
            for clue in guide.clues
        ),
    )


OWN = World("own", "as the guide says", lambda guide: guide)
WORLDS = (
    OWN,
    World("replaced", "parts replaced twice as often as the guide says", _replaced),
    World("misread", "clues misread three times as often as the guide says", _misread),
)


def nth(tables: Tables, seed: int, i: int) -> Specimen:
    """The specimen at place `i` of a seed, whatever others are drawn.

    Of a set it is any member, and which one is known. Objects from outside the guide
    are among them; their cell is the place after the last.
    """
    draw = lots(_mixed(seed, i))
    outside = draw() < tables.guide.outside
    members = tables.members[1:]
    member = members[among(draw, len(members))] if members else None
    if outside:
        return _stranger(tables, draw, member)
    return specimen(tables, draw, y=None, member=member)


def _raised(rate: float, times: int, most: float) -> float:
    return max(rate, min(times * rate, most))


def _mixed(seed: int, i: int) -> int:
    """A seed of its own for each: the generator's first draws from seeds in a row are
    nearly the same.
    """
    return int.from_bytes(hashlib.sha256(f"{seed} {i}".encode()).digest()[:4])


def _stranger(tables: Tables, draw: Draw, member: str | None) -> Specimen:
    """An object that is none of these: its clues show anything, whatever its parts."""
    readings = []
    for clue, table in zip(tables.guide.clues, tables_for(tables, member), strict=True):
        hidden = draw() < clue.unreadable
        reading = shows(_anything(table), draw, 0, True)
        readings.append((clue.id, None if hidden else reading))
    replaced = (False,) * len(tables.guide.parts)
    return Specimen(len(tables.cells), replaced, member, tuple(readings))


def _anything(table: ClueTable) -> ClueTable:
    """The clue's table if replaced parts came from anywhere."""
    if isinstance(table, ChoiceTable):
        likes = tuple(replace(each, rep=each.out) for each in table.likelihoods)
        return replace(table, likelihoods=likes)
    return replace(table, sources=[*(0.0 for _ in table.sources[:-1]), 1.0])
