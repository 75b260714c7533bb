"""Codes that tell a week: tyres, electronic parts, ISO weeks.

Each is held against what is published of it; what comes from memory alone is called
so beside the check.
"""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldid.engine.weeks import week
from world import months, shares


def tyre(text: str) -> list[str]:
    return months("tyre-code", "date", text)


@pytest.mark.parametrize(
    ("year", "number", "first", "last"),
    [
        # From memory of the rule's own examples; the rule with a calendar agrees.
        (1997, 31, date(1997, 8, 3), date(1997, 8, 9)),
        (1998, 1, date(1998, 1, 4), date(1998, 1, 10)),
        # Source: an owner's manual of 2006 for the week; its days by the rule.
        (2001, 3, date(2001, 1, 21), date(2001, 1, 27)),
        # By the rule: week 01 is the first full one, Sunday to Saturday.
        (2000, 1, date(2000, 1, 2), date(2000, 1, 8)),
        (2000, 53, date(2000, 12, 31), date(2001, 1, 6)),
        (1997, 52, date(1997, 12, 28), date(1998, 1, 3)),
        # Source: the association's page on source codes, 9910 = 7 to 13 March.
        (1999, 10, date(1999, 3, 7), date(1999, 3, 13)),
    ],
)
def test_tyre_weeks_equal_the_rule(year, number, first, last):
    """Source: 49 CFR 574.5. Weeks from Sunday on: from memory, and they fit."""
    week_of = {
        day: week(12 * day.year + day.month - 1, day.day, "sunday")
        for day in (first + timedelta(i) for i in range(-1, 8))
    }

    found = [day for day, told in week_of.items() if told == (year, number)]
    assert (found[0], found[-1]) == (first, last)


def test_tyre_code_names_its_month():
    """Source: 49 CFR 574.5; the months follow from the weeks above."""
    assert tyre("0301") == ["2001-01"]
    assert tyre("0100") == ["2000-01"]
    assert tyre("317") == ["1977-07", "1977-08", "1987-08", "1997-08"]


def test_tyre_week_across_the_year_is_in_both():
    """31 December 2000 to 6 January 2001, by the rule."""
    found = shares("tyre-code", "date", "5300")

    assert found == pytest.approx({"2000-12": 1 / 31, "2001-01": 6 / 31})


def test_three_digits_leave_the_decade_open():
    """Source: an owner's manual of 2006 names 1981 and 1991; 1971 by the rule."""
    assert tyre("031") == ["1971-01", "1981-01", "1991-01"]


def test_week_that_no_year_has_is_no_tyre_date():
    """54 is none, and 2001 has no 53rd Sunday."""
    assert tyre("5407") == tyre("547") == tyre("0007") == tyre("5301") == []


def part(text: str) -> list[str]:
    return months("source-date", "code", text)


def test_part_of_six_digits_leaves_the_decade_open():
    """Source: articles on EIA codes, SSS-542 = week 42 of 1955 or 1965; 1945 is the
    year in which the association began.
    """
    assert sorted({month[:4] for month in part("???542")}) == ["1945", "1955", "1965"]
    assert {month[5:] for month in part("???542")} == {"10"}


@pytest.mark.parametrize(
    ("text", "year", "month"),
    [
        # Source: articles on EIA codes, for the layout and the week.
        ("???6210", 1962, "03"),
        ("???7215", 1972, "04"),
        # Source: the association's page, source 113; the days by Sunday weeks.
        ("1139910", 1999, "03"),
    ],
)
def test_part_of_seven_digits_names_its_year(text, year, month):
    """It may also be read as four digits, a year without its decade and the week."""
    found = shares("source-date", "code", text)

    assert f"{year}-{month}" in max(found, key=found.get)
    assert sorted({int(month[:4]) for month in found}) == [
        y for y in range(1945, 2000) if y % 10 == year % 10
    ]


@pytest.mark.parametrize("text", ["???500", "???554", "???599", "???6200", "???6254"])
def test_week_that_is_none_dates_no_part(text):
    assert part(text) == []


@given(st.dates(date(1990, 1, 1), date(2030, 12, 28)))
def test_week_date_equals_the_standard_library(day):
    """Source: ISO 8601 as datetime's isocalendar has it."""
    year, number, weekday = day.isocalendar()
    if year < 1990:
        return
    monday = day - timedelta(weekday - 1)
    days = [monday + timedelta(i) for i in range(7)]
    wanted = {f"{d:%Y-%m}" for d in days if d.year >= 1990}

    assert set(months("iso-weeks", "week", f"{year}{number:02}")) == wanted
