"""Codes: fields, look-alikes, and readings that do not overlap."""

from dataclasses import replace

import pytest

from fieldid.engine.cells import cells
from fieldid.engine.code import code_likelihood, code_table
from fieldid.engine.guide import Code, Field
from kittiwake import GUIDE, STAMP, month

CELLS = cells(GUIDE)
TABLE = code_table(STAMP, STAMP.kind, CELLS)


def at(year, number):
    """The place of the cell of this model year, built in its `number`th month."""
    return [c.year for c in CELLS].index(year) + number - 1


def plain(alphabet, codes, misread=0.02):
    field = Field("f", "model-year", 1, alphabet, 0.0, codes)
    clue = replace(STAMP, kind=Code((field,)), misread=misread)
    return code_table(clue, clue.kind, CELLS)


def test_clean_reading_by_hand():
    """September 1950, model year 1951: J, 0, 17, and a works letter by lot."""
    found = code_likelihood(TABLE, "J017A")

    letter = 0.98 * 0.98 + 0.02 / 13
    pattern = 0.99 * 0.98**2 + 0.01 / 100
    assert found.orig[at(1951, 1)] == pytest.approx(letter * 0.98 * pattern / 2)
    assert found.out == pytest.approx(1 / 13 / 10 / 100 / 2)


def test_odd_letter_is_possible_and_rare():
    """X is no month: the works broke its rule, or K was misread."""
    found = code_likelihood(TABLE, "X????")

    assert found.orig[at(1951, 1)] < 0.01
    assert found.out == pytest.approx(1 / 13)


def test_look_alikes_are_taken_for_each_other():
    table = plain("0OX", ((1951, "0"),))

    taken = code_likelihood(table, "O").orig[0]
    other = code_likelihood(table, "X").orig[0]

    assert taken / other == pytest.approx(5)
    assert taken + other == pytest.approx(0.02)


def test_silent_model_year_is_uniform():
    """The pattern table says nothing of 1954."""
    assert code_likelihood(TABLE, "??99?").orig[at(1954, 1)] == pytest.approx(0.01)


def test_digit_repeats_every_ten_years():
    later = replace(
        GUIDE.years[3], year=1964, opens=month(1964, 1), closes=month(1964, 12)
    )
    guide = replace(GUIDE, years=(*GUIDE.years, later))
    table = code_table(STAMP, STAMP.kind, cells(guide))

    found = code_likelihood(table, "?4???")

    assert found.orig[at(1954, 1)] == found.orig[len(CELLS)]


def test_replaced_part_is_half_the_line_half_anything():
    found = code_likelihood(TABLE, "C?18?")

    mixture = sum(c.spread * x for c, x in zip(CELLS, found.orig, strict=True))
    assert found.rep == pytest.approx(0.5 * mixture + 0.5 * found.out)


def test_clean_readings_do_not_overlap():
    """Summed over all of them, each cell has at most the whole probability."""
    for c in range(len(CELLS)):
        assert sum(reading.orig[c] for reading in TABLE.clean) <= 1 + 1e-12


def test_code_that_dates_nothing_has_one_outcome():
    field = Field("works", "plain", 2, "AB")
    clue = replace(STAMP, kind=Code((field,)))

    table = code_table(clue, clue.kind, CELLS)

    assert [reading.out for reading in table.clean] == [1.0]
