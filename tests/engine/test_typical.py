"""What objects as made mostly show."""

import pytest

from fieldid.engine.guide import Field, Size
from fieldid.engine.prepare import prepare, tables_for
from fieldid.engine.typical import common, shown, typical
from make import choice, code, guide, measure, option, span

MONTHS = Field("m", "month", 1, "ABCDEFGHJKLM")
DIGITS = Field("y", "year", 2, "0123456789")
WORKS = Field("w", "plain", 1, "AB")


def expected(clue, year=1951, member=None):
    tables = prepare(guide(clue))
    stretch = tables.stretches[year - 1951]
    return typical(tables, tables_for(tables, member)[0], *stretch)


def test_likeliest_option_is_expected():
    rings = choice(
        "rings",
        option("green", span((1951, 1951), share=0.4)),
        option("navy", span((1951, 1951), share=0.6), span((1952, 1952), share=0.1)),
        option("red", span((1952, 1952), share=0.2)),
    )

    assert expected(rings) == "navy"
    assert expected(rings, 1952) == "red"


def test_silent_guide_expects_nothing():
    assert expected(choice("rings", option("green"), option("navy"))) is None
    assert expected(measure("pad", Size((1952, 1952), 7.0, 0.3))) is None
    assert expected(code("stamp", WORKS)) is None


def test_code_keeps_what_most_have():
    """Every month is as good as another; the works tell nothing."""
    assert expected(code("stamp", MONTHS, DIGITS, WORKS)) == "?51?"


def test_size_is_less_the_usual_wear():
    pad = measure("pad", Size((1951, 1952), 7.0, 0.3), wear=0.128, range=(3.0, 12.0))

    assert expected(pad) == 6.87


def test_size_stays_in_its_range():
    pad = measure("pad", Size((1951, 1952), 3.1, 0.3), wear=0.5, range=(3.0, 12.0))

    assert expected(pad) == 3.0


def test_common_is_the_share_as_made():
    rings = choice(
        "rings",
        option("green", span((1951, 1952), until="1951-03")),
        option("navy", span((1951, 1952), since="1951-04")),
    )
    tables = prepare(guide(rings, floor=0.0, misread=0.0))
    orig = tables_for(tables, None)[0].likelihoods[0].orig

    assert common(tables, orig, *tables.stretches[0]) == pytest.approx(
        0.98 * 3 / 12 + 0.02 * 9 / 12
    )


def test_readings_are_shown_in_words():
    rings = choice("rings", option("green"))

    assert shown(rings, "green") == "green"
    assert shown(measure("pad"), 6.10) == "6.1 mm"
    assert shown(code("stamp", MONTHS), "C") == "C"
