"""The simulation behind a guide's charts, against another one made from the records.

The other draws its specimens by `specimens.py`, with the library's dice, and looks for
the best clue by itself; only the engine's judgement is shared.
"""

import math
import random
from itertools import pairwise
from statistics import fmean, pstdev

import pytest

from fieldid.engine import Find, Item, judge, prepare
from fieldid.engine.gain import WORTHWHILE
from fieldid.learn.simulate import mistaken, sureness
from kittiwake import GUIDE
from make import choice, guide, option, span
from specimens import specimen

TABLES = prepare(GUIDE)
SAME = choice("face", option("dots", span()), option("lines"))
WALKS = 150
LOOKS = 4
# Two simulations differ by more than so many standard errors once in 16,000 times.
MOST = 4.0


def inside(i, year=None):
    """A specimen that is of the guide, and of this year if one is asked for."""
    for n in range(10_000):
        found = specimen(GUIDE, random.Random(f"{i} {n}"))
        if found.year is not None and year in (None, found.year):
            return found
    raise AssertionError(f"none of {year}")


def walked(found):
    """The leading year's probability and whether it is right, look by look."""
    shown = dict(found.readings)
    readings: tuple = ()
    for _ in range(LOOKS + 1):
        verdict = judge(TABLES, Find(GUIDE.id, (Item(readings),)))
        year, told = max(verdict.model_years, key=lambda pair: pair[1])
        yield told, float(year == found.year)
        worth = [each for each in verdict.next if each.bits >= WORTHWHILE]
        if worth:
            clue = max(worth, key=lambda each: each.bits * each.bits_per_second).clue
            readings = (*readings, (clue, shown[clue]))


@pytest.fixture(scope="module")
def other():
    return [list(walked(inside(i))) for i in range(WALKS)]


@pytest.fixture(scope="module")
def ours():
    return sureness(TABLES, walks=WALKS, looks=LOOKS)


@pytest.mark.parametrize("look", range(LOOKS + 1))
def test_curve_is_that_of_another_simulation(ours, other, look):
    for found, column in (
        (ours[look].told, [walk[look][0] for walk in other]),
        (ours[look].right, [walk[look][1] for walk in other]),
    ):
        error = math.sqrt(2 / WALKS) * max(pstdev(column), 0.02)
        assert abs(found - fmean(column)) < MOST * error


def test_nothing_is_read_before_the_first_look(ours):
    assert ours[0].looks == 0
    assert ours[0].seconds == 0
    assert [each.looks for each in ours] == list(range(LOOKS + 1))


def test_seconds_are_those_of_the_clues_read(ours):
    quickest = min(clue.seconds for clue in GUIDE.clues)
    slowest = max(clue.seconds for clue in GUIDE.clues)

    assert quickest <= ours[1].seconds <= slowest
    assert all(a.seconds <= b.seconds for a, b in pairwise(ours))


def test_matrix_is_that_of_another_simulation():
    """The mean over specimens of each year, all read whole."""
    each = 150
    rows = mistaken(TABLES, each=each)

    for year, row in zip(GUIDE.years, rows, strict=True):
        finds = [inside(i, year.year) for i in range(each)]
        told = [[p for _, p in judged(found).model_years] for found in finds]
        for y, column in enumerate(zip(*told, strict=True)):
            # A few specimens make most of the mean.
            error = math.sqrt(2 / each) * max(pstdev(column), 0.08)
            assert abs(row[y] - fmean(column)) < MOST * error, (year.year, y)


def judged(found):
    return judge(TABLES, Find(GUIDE.id, (Item(found.readings),)))


def test_same_guide_gives_the_same_figures(ours):
    assert sureness(TABLES, walks=WALKS, looks=LOOKS) == ours


def test_guide_that_tells_nothing_stays_unsure():
    """Both years show the same: no clue is worth a look."""
    found = sureness(prepare(guide(SAME, outside=0.0)), walks=20, looks=3)

    assert [each.told for each in found] == pytest.approx([0.5] * 4)
    assert [each.seconds for each in found] == [0.0] * 4


def test_years_that_look_alike_share_their_row():
    rows = mistaken(prepare(guide(SAME, outside=0.0)), each=20)

    assert rows == (pytest.approx((0.5, 0.5)), pytest.approx((0.5, 0.5)))
