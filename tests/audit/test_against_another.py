"""The audit against a simulation that shares nothing with it but the engine's verdict.

The other draws its specimens by `specimens.py`, from the records and with the
library's dice, walks by what the verdict names as next, and counts by itself.
"""

import math
import random
from dataclasses import dataclass, replace
from statistics import fmean, pstdev

import pytest

from fieldid.audit.figures import chance
from fieldid.audit.report import report
from fieldid.audit.run import Run
from fieldid.engine import Find, Guide, Item, judge, prepare
from fieldid.engine.gain import WORTHWHILE
from kittiwake import GUIDE
from specimens import specimen

ALONE = replace(GUIDE, members=None)
TABLES = prepare(ALONE)
SPECIMENS = 400
# Two simulations differ by more than so many standard errors once in 16,000 times.
MOST = 4.0


@dataclass(frozen=True)
class Other:
    p: float
    right: bool
    seconds: float
    readings: int


def walked(i: int, world: Guide = ALONE) -> Other:
    found = specimen(world, random.Random(f"audit {i}"))
    shown = dict(found.readings)
    seconds = {clue.id: clue.seconds for clue in ALONE.clues}
    readings: tuple = ()
    while True:
        verdict = judge(TABLES, Find(ALONE.id, (Item(readings),)))
        told = [*verdict.model_years, (None, verdict.outside)]
        year, p = max(told, key=lambda pair: pair[1])
        worth = [each for each in verdict.next if each.bits >= WORTHWHILE]
        if p >= 0.95 or not worth:
            spent = sum(seconds[clue] for clue, _ in readings)
            return Other(p, year == found.year, spent, len(readings))
        clue = max(worth, key=lambda each: each.bits * each.bits_per_second).clue
        readings = (*readings, (clue, shown[clue]))


@pytest.fixture(scope="module")
def other():
    return [walked(i) for i in range(SPECIMENS)]


@pytest.fixture(scope="module")
def run():
    made = Run(ALONE, specimens=SPECIMENS, seed=9)
    for _ in made.steps():
        pass
    return made


def near(ours: list[float], theirs: list[float]) -> bool:
    spread = max(pstdev(ours), pstdev(theirs), 0.02)
    return abs(fmean(ours) - fmean(theirs)) < MOST * math.sqrt(2 / SPECIMENS) * spread


def test_verdicts_are_those_of_another_simulation(run, other):
    walks = run.walks[0]

    assert near([each.right for each in walks], [each.right for each in other])
    assert near([each.sure for each in walks], [each.p >= 0.95 for each in other])
    assert near([each.p for each in walks], [each.p for each in other])


def test_time_is_that_of_another_simulation(run, other):
    walks = run.walks[0]

    assert near([each.seconds for each in walks], [each.seconds for each in other])
    asked = [len(each.item.readings) for each in walks]
    assert near(asked, [each.readings for each in other])


def test_calibration_holds_in_both(run, other):
    """What is told is true as often, whoever drew the specimens."""
    found = report(run).own

    assert not any(row.far for row in found.rows)
    assert found.error < 3 * found.error_by_chance
    for row in found.rows:
        theirs = [
            each
            for each in other
            if row.low <= each.p < row.high or row.high == 1 <= each.p
        ]
        came = sum(each.right for each in theirs)
        assert chance([each.p for each in theirs], came) > 0.001


@pytest.mark.parametrize(
    ("w", "changed"),
    [
        (
            1,
            replace(
                ALONE,
                parts=tuple(replace(p, replaced=2 * p.replaced) for p in ALONE.parts),
            ),
        ),
        (
            2,
            replace(
                ALONE,
                clues=tuple(replace(c, misread=3 * c.misread) for c in ALONE.clues),
            ),
        ),
    ],
    ids=["replaced", "misread"],
)
def test_other_worlds_are_those_of_changed_guides(run, w, changed):
    """Drawn by the other from the changed records, judged by the guide as it is."""
    walks = run.walks[w]
    theirs = [walked(i, changed) for i in range(SPECIMENS)]

    assert near([each.right for each in walks], [each.right for each in theirs])
    assert near([each.p for each in walks], [each.p for each in theirs])
    assert near([each.seconds for each in walks], [each.seconds for each in theirs])
