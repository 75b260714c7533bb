"""Days and weeks, held against Python's own calendar and published dates."""

import calendar
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldid.engine.weeks import days_in, week

FAR = st.dates(date(1000, 1, 1), date(2999, 12, 31))
# Computed from the rule; five of them were also found stated in documentation.
PUBLISHED = """
1997-12-29 1998-01, 1999-01-01 1998-53, 1999-01-03 1998-53, 1999-01-04 1999-01,
2000-01-01 1999-52, 2000-01-03 2000-01, 2004-12-31 2004-53, 2005-01-01 2004-53,
2006-01-01 2005-52, 2008-12-29 2009-01, 2010-01-03 2009-53, 2012-12-31 2013-01,
2013-12-30 2014-01, 2016-01-03 2015-53, 2018-12-31 2019-01, 2020-12-31 2020-53,
2021-01-03 2020-53, 2024-12-30 2025-01
"""
LONG = [1953, 1959, 1964, 1970, 1976, 1981, 1987, 1992, 1998]
LONG += [2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048]


def of(day: date, weeks: str) -> tuple[int, int]:
    return week(12 * day.year + day.month - 1, day.day, weeks)


@given(FAR)
def test_iso_weeks_equal_the_standard_library(day):
    assert of(day, "iso") == day.isocalendar()[:2]


@given(FAR)
def test_sunday_week_one_is_the_first_full_one(day):
    """strftime's %U counts weeks from the first Sunday; what is before it is 00."""
    last = day if day.strftime("%U") != "00" else date(day.year - 1, 12, 31)

    assert of(day, "sunday") == (last.year, int(last.strftime("%U")))


@given(FAR)
def test_months_have_their_days(day):
    t = 12 * day.year + day.month - 1

    assert days_in(t) == calendar.monthrange(day.year, day.month)[1]


@pytest.mark.parametrize("pair", PUBLISHED.replace("\n", " ").split(","))
def test_weeks_equal_published_dates(pair):
    """Source: ISO 8601, by its rule that week 01 holds the year's first Thursday."""
    day, told = pair.split()

    assert "{}-{:02}".format(*of(date.fromisoformat(day), "iso")) == told


def test_long_iso_years_are_known():
    """Source: computed from the rule; 28 December lies in the last week."""
    found = [y for y in range(1950, 2051) if of(date(y, 12, 28), "iso")[1] == 53]

    assert found == LONG


def test_week_has_seven_days_in_a_row():
    first = date(1997, 6, 1)
    days = [of(first + timedelta(i), "sunday") for i in range(700)]

    assert all(days.count(each) == 7 for each in days)
