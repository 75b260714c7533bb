"""Days and weeks of the calendar, counted the same way in both languages. A leaf.

Model page: "code", for fields that tell a week or a day.
"""

# A week belongs to the year of its Thursday (ISO 8601), or of the Sunday that it
# begins with, so that week 01 is the first full one (49 CFR 574.5).
ANCHORS = {"iso": 3, "sunday": -1}
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def days_in(t: int) -> int:
    """How many days month `t` has.

    >>> days_in(12 * 2000 + 1), days_in(12 * 1900 + 1)
    (29, 28)
    """
    year, month = divmod(t, 12)
    return DAYS[month] + (1 if month == 1 and _leaps(year) else 0)


def week(t: int, day: int, weeks: str) -> tuple[int, int]:
    """The year and the number of the week that a day of month `t` lies in.

    >>> week(12 * 1998, 1, "iso"), week(12 * 1998, 1, "sunday")
    ((1998, 1), (1997, 52))
    """
    year = t // 12
    of_year = sum(days_in(month) for month in range(12 * year, t)) + day
    # Monday is 0; Sunday ends an ISO week and begins the other.
    weekday = (_before(year) + of_year - 1) % 7
    monday = of_year - weekday
    begins = monday + 7 if weeks == "sunday" and weekday == 6 else monday
    anchor = begins + ANCHORS[weeks]
    if anchor < 1:
        year -= 1
        anchor += 365 + _leaps(year)
    elif anchor > 365 + _leaps(year):
        anchor -= 365 + _leaps(year)
        year += 1
    return year, (anchor - 1) // 7 + 1


def _leaps(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _before(year: int) -> int:
    """Days before the year, counted from a Monday, as 1 January of year 1 is."""
    y = year - 1
    return 365 * y + y // 4 - y // 100 + y // 400
