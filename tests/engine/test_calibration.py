"""What the engine calls likely must come true as often: simulated sets, judged.

The benchmark prints the same as a table, for thousands of sets of a real guide.
"""

from dataclasses import replace

import pytest

from calibration import bins, simulate
from fieldid.engine.guide import Members
from fieldid.engine.prepare import prepare
from kittiwake import GUIDE

SEVEN = ("3", "4", "5", "6", "7", "8", "W")
TABLES = prepare(
    replace(
        GUIDE,
        parts=tuple(
            replace(part, whole_set=0.0 if part.id == "head" else 0.2)
            for part in GUIDE.parts
        ),
        members=Members(SEVEN, stray=0.15),
    )
)
# By chance alone a bin is off by more than this once in 740 times.
MOST = 3.2


@pytest.fixture(scope="module")
def told():
    return simulate(TABLES, members=SEVEN, sets=120, seen=0.6)


def test_strays_come_true_as_often_as_told(told):
    strays, _ = told
    found = bins(strays)

    assert all(abs(each.deviations) < MOST for each in found)
    assert sum(each.true for each in found if each.low >= 0.5) > 50


def test_leading_years_come_true_as_often_as_told(told):
    _, leading = told

    assert all(abs(each.deviations) < MOST for each in bins(leading))
