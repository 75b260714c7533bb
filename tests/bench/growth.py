"""How the time of a verdict grows with model years, clues and members.

The guides are drawn by lot, with four parts of which two may have been replaced on the
whole set; half of the clues are read. With an exponent of 1, twice the size takes
twice the time; with one of 2, four times.
"""

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from fieldid.engine import Find, judge, prepare
from fieldid.engine.guide import Guide, Members
from machine import least
from node import asked, seconds
from report import Record
from specimens import look, specimen
from turnstone import drawn

FINDS = 5
MILLI = 1000


@dataclass(frozen=True)
class Curve:
    """Some sizes, and a guide and how many members go with each."""

    what: str
    sizes: tuple[int, ...]
    at: Callable[[int], tuple[Guide, int]]


CURVES = (
    Curve("model years", (5, 10, 20, 40, 80), lambda n: (drawn(1, n, 12), 1)),
    Curve("clues", (5, 10, 20, 40, 80), lambda n: (drawn(1, 10, n), 1)),
    Curve("members", (2, 4, 8, 16, 32), lambda n: (bag(drawn(1, 10, 12), n), n)),
)


def measure(*, quick: bool) -> list[Record]:
    rounds = 2 if quick else 10
    return [
        record
        for curve in CURVES
        for record in grown(curve, curve.sizes[:3] if quick else curve.sizes, rounds)
    ]


def grown(curve: Curve, sizes: Sequence[int], rounds: int) -> list[Record]:
    """A row a size and language, and the exponent of each."""
    cases = [finds(*curve.at(size)) for size in sizes]
    times = {
        "Python": [_python(guide, found, rounds) for guide, found in cases],
        "JavaScript": seconds([asked(*case, "judge") for case in cases], rounds),
    }
    return [
        record
        for language, took in times.items()
        for record in _rows(f"{curve.what}, {language}", sizes, took)
    ]


def bag(guide: Guide, members: int) -> Guide:
    """The guide with a set of so many."""
    shared = tuple(
        replace(part, whole_set=0.2 if part.id in ("shaft", "grip") else 0.0)
        for part in guide.parts
    )
    every = tuple(f"m{n}" for n in range(members))
    return replace(guide, parts=shared, members=Members(every))


def finds(guide: Guide, members: int) -> tuple[Guide, list[Find]]:
    """Finds of so many objects each, half of their clues read."""
    dice = random.Random(1)
    names = guide.members.all if guide.members else (None,)
    return guide, [
        Find(
            guide.id,
            tuple(
                look(guide, specimen(guide, dice, name), dice, seen=0.5, lost=0.0)
                for name in names[:members]
            ),
        )
        for _ in range(FINDS)
    ]


def exponent(sizes: Sequence[int], times: Sequence[float]) -> float:
    """The slope of the straight line through the logarithms.

    >>> round(exponent([1, 2, 4], [3.0, 12.0, 48.0]), 9)
    2.0
    """
    return float(np.polyfit(np.log(sizes), np.log(times), 1)[0])


def _python(guide: Guide, found: Sequence[Find], rounds: int) -> float:
    tables = prepare(guide)
    return least(rounds, lambda: [judge(tables, find) for find in found])


def _rows(name: str, sizes: Sequence[int], took: Sequence[float]) -> list[Record]:
    notes = ["", *(f"{later / before:.2f} times" for before, later in pairwise(took))]
    return [
        *(
            Record(f"{size} {name}", MILLI * time / FINDS, "ms a verdict", note=note)
            for size, time, note in zip(sizes, took, notes, strict=True)
        ),
        Record(f"{name}: exponent", exponent(sizes, took), ""),
    ]
