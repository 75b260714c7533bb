"""Layouts of a code: which is in use, two readings of one text, older marks."""

import math

import pytest

from fieldid.engine.cells import cells
from fieldid.engine.code import code_likelihood, code_table
from fieldid.engine.guide import Field
from fieldid.engine.layout import MANY
from fieldid.engine.prepare import prepare, tables_for
from fieldid.engine.typical import typical
from make import code, guide, layout, model_year

DIGITS = "0123456789"
YEAR = Field("year", "year", 1, DIGITS)
MONTH = Field("month", "month", 1, "ABCDEFGHJKLM")
DAY = Field("day", "day", 2, DIGITS)
WORKS = Field("works", "plain", 1, DIGITS)
SUNDAYS = Field("week", "week", 2, DIGITS, weeks="sunday")
LETTERS = tuple((year, "ABCDEFGHJK"[year - 1951]) for year in range(1951, 1961))
LETTER = Field("letter", "year-letter", 1, "ABCDEFGHJK", codes=LETTERS)
GUIDE = guide(years=tuple(model_year(year) for year in range(1951, 1961)))
CELLS = cells(GUIDE)


def place(year, number=1):
    return 12 * (year - 1951) + number - 1


def table(*layouts, lag=0.0, misread=0.02):
    clue = code("stamp", layouts=layouts, lag=lag, misread=misread)
    return code_table(clue, clue.kind, CELLS)


def year_of(found):
    """The years in which a reading is possible without a mistake."""
    return sorted({cell.year for cell, x in zip(CELLS, found.orig, strict=True) if x})


def test_text_may_be_read_in_two_layouts():
    """4 the works and 5 the year, or 4 the year and 5 the works; nothing is misread."""
    both = table(
        layout(WORKS, YEAR, years=(1951, 1955)),
        layout(YEAR, WORKS, years=(1952, 1960)),
        misread=0.0,
    )

    found = code_likelihood(both, "45")

    assert year_of(found) == [1954, 1955]
    assert found.orig[place(1954)] == pytest.approx(1 / 2 / 10)


def test_layouts_in_use_are_alike():
    """Where one alone is in use, the other counts as a mistake does."""
    two = table(layout(YEAR, years=(1951, 1955)), layout(LETTER, years=(1955, 1960)))

    assert code_likelihood(two, "5").orig[place(1955)] == pytest.approx(0.98 / 2)
    assert code_likelihood(two, "4").orig[place(1954)] == pytest.approx(0.98 / 1.02)
    assert code_likelihood(two, "F").orig[place(1954)] == pytest.approx(
        0.02 / 1.02 / 10
    )


def test_length_tells_the_layout():
    two = table(
        layout(YEAR, years=(1951, 1955)), layout(YEAR, WORKS, years=(1956, 1960))
    )

    found = code_likelihood(two, "?")

    assert found.orig[place(1951)] == pytest.approx(1 / 1.02)
    assert found.orig[place(1960)] == pytest.approx(0.02 / 1.02)
    assert found.out == 0.5


@pytest.mark.parametrize("misread", [0.0, 0.02])
def test_years_without_a_layout_are_silent(misread):
    one = table(layout(YEAR, years=(1951, 1955)), misread=misread)

    found = code_likelihood(one, "3")

    assert found.orig[place(1958)] == pytest.approx(1 / 10)


def test_plain_fields_are_one_layout():
    plain = code("stamp", YEAR, WORKS)
    same = code("stamp", layouts=(layout(YEAR, WORKS),))

    first, second = (code_table(clue, clue.kind, CELLS) for clue in (plain, same))

    assert code_likelihood(first, "3?") == code_likelihood(second, "3?")


def test_mark_fades_month_by_month():
    """Given in March 1953: the same geometric fall a month as a number has a year."""
    marks = table(layout(LETTER, MONTH, years=(1951, 1960)), lag=2.0, misread=0.0)

    found = code_likelihood(marks, "CC")

    q = math.exp(-1 / 24)
    assert found.orig[place(1953, 2)] == 0
    assert found.orig[place(1953, 3)] == pytest.approx(1 - q)
    assert found.orig[place(1955, 3)] == pytest.approx((1 - q) * q**24)


def test_mark_younger_than_the_object_is_misread():
    marks = table(layout(LETTER, MONTH, years=(1951, 1960)), lag=2.0)

    found = code_likelihood(marks, "KM")

    assert found.orig[place(1951)] < found.out
    assert found.orig[place(1951)] >= 0.02 * found.out


def test_marks_may_be_older_than_all_objects():
    """The last were given in 1941; what is left of them only fades."""
    letter = Field("letter", "year-letter", 1, "AB", codes=((1940, "A"), (1941, "B")))
    marks = table(layout(letter, years=(1940, 1941)), lag=5.0, misread=0.0)

    found = code_likelihood(marks, "B").orig

    q = math.exp(-1 / 60)
    assert found[0] == pytest.approx(q ** (12 * 9 + 1) * (1 - q**12))
    assert found[1] / found[0] == pytest.approx(q)


def test_marks_without_a_span_are_as_old_as_the_line():
    marks = table(layout(YEAR, MONTH), lag=2.0, misread=0.0)

    found = code_likelihood(marks, "1A").orig

    assert found[0] == pytest.approx(1 - math.exp(-1 / 24))


def test_day_is_any_of_its_month():
    """The thirtieth is in no February."""
    days = table(layout(DAY, MONTH), misread=0.0)

    found = code_likelihood(days, "30B")
    other = code_likelihood(days, "29B")

    assert not any(found.orig)
    assert other.orig[place(1952, 2)] == pytest.approx(1 / 29)
    assert other.orig[place(1953, 2)] == 0


def test_year_beside_a_week_is_that_of_the_week():
    """Week 52 of 1960 began on Sunday 25 December, week 53 of 1955 does not exist."""
    weeks = table(layout(SUNDAYS, YEAR), misread=0.0)

    last = code_likelihood(weeks, "520").orig
    across = code_likelihood(weeks, "525").orig
    none = code_likelihood(weeks, "535").orig

    assert last[place(1960, 12)] == pytest.approx(7 / 31)
    # Sunday 25 to Saturday 31 December 1955.
    assert across[place(1955, 12)] == pytest.approx(7 / 31)
    assert not any(none)


def test_clean_readings_leave_weeks_unread():
    """They would be too many, and tell little of the year."""
    weeks = table(layout(SUNDAYS, YEAR))

    assert len(weeks.clean) == 10


def test_clean_readings_are_never_many():
    wide = tuple(model_year(year) for year in range(1900, 1960))
    letters = Field("year", "year", 2, DIGITS)
    clue = code("stamp", letters, MONTH)

    found = code_table(clue, clue.kind, cells(guide(years=wide)))

    assert MANY < 12 * 60
    assert len(found.clean) == 60


def test_clean_readings_of_layouts_do_not_overlap():
    """A layout that can be taken for one before it has none of its own."""
    both = table(
        layout(WORKS, YEAR),
        layout(YEAR, WORKS),
        layout(LETTER, Field("star", "plain", 1, "*+")),
    )

    assert len(both.clean) == 20
    for c in range(len(CELLS)):
        assert sum(reading.orig[c] for reading in both.clean) <= 1 + 1e-12


def test_layouts_with_letters_of_their_own_are_told_apart():
    """A digit before the year is of the first, a star of the second; the works that
    they stand for tell nothing.
    """
    both = table(
        layout(WORKS, YEAR, years=(1951, 1955)),
        layout(Field("star", "plain", 1, "*+"), YEAR, years=(1954, 1960)),
        misread=0.0,
    )

    assert [year_of(each) for each in both.clean] == [
        [year] for year in (*range(1951, 1956), *range(1954, 1961))
    ]


def expected(clue, year):
    tables = prepare(guide(clue, years=GUIDE.years))
    return typical(tables, tables_for(tables, None)[0], *tables.stretches[year - 1951])


def test_usual_layout_is_expected():
    clue = code(
        "stamp",
        layouts=(
            layout(WORKS, YEAR, years=(1951, 1955)),
            layout(LETTER, WORKS, MONTH, years=(1956, 1960)),
        ),
    )

    assert expected(clue, 1953) == "?3"
    assert expected(clue, 1957) == "G??"


def test_fresh_mark_is_expected():
    fresh, stale = (
        code("mark", layouts=(layout(LETTER, DAY, MONTH),), lag=lag)
        for lag in (0.2, 9.0)
    )

    assert expected(fresh, 1953) == "C???"
    assert expected(stale, 1953) is None
