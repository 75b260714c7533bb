"""Specimens of a world: by lot, each by itself, and some from outside the guide."""

import math
from collections import Counter
from dataclasses import replace

import pytest

from fieldid.audit.worlds import MOST_MISREAD, MOST_REPLACED, WORLDS, nth
from fieldid.engine import prepare
from fieldid.engine.guide import Field, Size
from kittiwake import GUIDE
from make import choice, code, guide, measure, number, option, part, span

TABLES = prepare(GUIDE)
STRANGE = prepare(
    guide(
        choice("face", option("dots", span()), option("lines"), option("bars")),
        measure("sole", Size((1951, 1952), 20.0, 1.0)),
        code("stamp", Field("digit", "year", 1, "0123456789")),
        number("serial", {1951: 1, 1952: 101}, 200),
        outside=1.0,
    )
)
"""All of its specimens come from outside."""
DRAWN = 3000


@pytest.fixture(scope="module")
def strangers():
    return [dict(nth(STRANGE, 1, i).readings) for i in range(DRAWN)]


def far(count: int, share: float) -> float:
    """How many standard deviations a count is off."""
    return abs(count - DRAWN * share) / math.sqrt(DRAWN * share * (1 - share))


def test_specimen_is_the_same_whatever_was_drawn_before():
    first = [nth(TABLES, 5, i) for i in range(20)]

    assert [nth(TABLES, 5, i) for i in reversed(range(20))] == first[::-1]
    assert len(set(first)) == 20
    assert [nth(TABLES, 6, i) for i in range(20)] != first


def test_years_come_as_often_as_the_guide_says():
    """Seeds in a row must not draw nearly the same."""
    found = [nth(TABLES, 1, i).cell for i in range(DRAWN)]

    for (start, stop), year in zip(TABLES.stretches, GUIDE.years, strict=True):
        share = (1 - GUIDE.outside) * year.volume / sum(y.volume for y in GUIDE.years)
        assert far(sum(start <= cell < stop for cell in found), share) < 4, year.year
    assert far(found.count(len(TABLES.cells)), GUIDE.outside) < 4


def test_specimen_of_a_set_is_any_member():
    found = Counter(nth(TABLES, 1, i).member for i in range(DRAWN))

    assert set(found) == {"7", "W"}
    assert far(found["W"], 0.5) < 4


def test_strangers_show_anything(strangers):
    for clue in ("face", "stamp"):
        found = Counter(each[clue] for each in strangers)
        assert len(found) == {"face": 3, "stamp": 10}[clue]
        assert all(far(count, 1 / len(found)) < 4 for count in found.values())


def test_strangers_have_any_size_and_number(strangers):
    for clue, high in (("sole", 100), ("serial", 200)):
        for quarter in (1, 2, 3):
            below = sum(each[clue] <= high * quarter / 4 for each in strangers)
            assert far(below, quarter / 4) < 4, clue


def test_other_worlds_differ_in_their_rates_alone():
    own, replaced, misread = (world.guide(GUIDE) for world in WORLDS)

    assert own == GUIDE
    assert [p.replaced for p in replaced.parts] == [0.6, 0.04, 0.2, 0.4]
    assert replace(replaced, parts=GUIDE.parts) == GUIDE
    assert misread.clues[0].misread == pytest.approx(0.09)
    assert replace(misread, clues=GUIDE.clues) == GUIDE


def test_rates_are_never_lowered_and_never_certain():
    parts = (part("head", 0.6), part("grip", 0.97))
    plain = guide(choice("face", option("dots"), misread=0.4), parts=parts)
    _, replaced, misread = (world.guide(plain) for world in WORLDS)

    assert [p.replaced for p in replaced.parts] == [MOST_REPLACED, 0.97]
    assert misread.clues[0].misread == MOST_MISREAD
