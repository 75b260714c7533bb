"""The world's date codes as guides: each table held against what is published of it.

In these guides nothing is ever misread, so that a reading is possible exactly where it
is right. What comes from memory alone is called so beside the check.
"""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from vininfo import Vin

from fieldid.engine import Find, Item, judge, prepare
from fieldid.engine.prepare import likelihood, tables_for
from fieldid.engine.weeks import week
from fieldid.guides.load import load
from fieldid.guides.months import month_text
from fieldid.guides.readings import as_read, misfit
from make import PLOVER, find

WORLD = PLOVER.parents[1] / "rules" / "world"
TABLES = {path.stem: prepare(load(path)) for path in sorted(WORLD.glob("*.toml"))}


def shares(guide: str, clue: str, text: str) -> dict[str, float]:
    """The months in which an object may have been built that shows this, each with
    how likely it is there.
    """
    tables = TABLES[guide]
    k = tables.places[clue]
    kind = tables.guide.clues[k]
    assert misfit(text, kind) is None
    found = likelihood(tables_for(tables, None)[k], as_read(text, kind))
    return {
        month_text(cell.t): x
        for cell, x in zip(tables.cells, found.orig, strict=True)
        if x
    }


def months(*args: str) -> list[str]:
    return sorted(shares(*args))


def years(*args: str) -> list[int]:
    return sorted({int(month[:4]) for month in months(*args)})


def refuses(guide: str, clue: str, text: str) -> bool:
    """Whether a reading has characters that the code cannot have."""
    tables = TABLES[guide]
    return misfit(text, tables.guide.clues[tables.places[clue]]) is not None


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


VIN = "1M8GDM9AX{}P042788"
SYMBOLS = "ABCDEFGHJKLMNPRSTVWXY123456789"


@pytest.mark.parametrize("symbol", SYMBOLS)
def test_vehicle_letter_equals_the_library(symbol):
    """Source: the package vininfo, which names all years that there were so far."""
    told = sorted(Vin(VIN.format(symbol)).years)
    found = years("vehicle-year", "letter", symbol)

    assert [year for year in found if year <= max(told[-1], date.today().year)] == told


@pytest.mark.parametrize(
    ("seventh", "tenth", "year"),
    [
        ("4", "T", 1996),
        ("R", "T", 2026),
        ("2", "A", 1980),
        ("B", "A", 2010),
        ("5", "9", 2009),
        ("C", "L", 2020),
        ("7", "Y", 2000),
    ],
)
def test_position_seven_tells_the_cycle(seventh, tenth, year):
    """Source: 49 CFR 565.15(b), and 565.6(b) before 2008: a letter, or a digit."""
    assert years("vehicle-year", "number", seventh + tenth) == [year]


@pytest.mark.parametrize("symbol", "IOQUZ0")
def test_symbol_that_no_year_has_is_refused(symbol):
    """Source: 49 CFR 565.15, the symbols that stand for no year."""
    assert refuses("vehicle-year", "letter", symbol)
    assert refuses("vehicle-year", "number", "4" + symbol)


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


@pytest.mark.parametrize(
    ("letter", "style", "year"),
    [
        # Source: Ciceri, the order of twenty letters, and the start of the cycle.
        ("K", "old", 1845),
        ("U", "old", 1855),
        ("A", "old", 1836),
        # From memory: the capitals of 1975 to 1999, J left out.
        ("K", "capital", 1984),
        ("Z", "capital", 1999),
        # Source: the Birmingham office's page; t by a silver forum.
        ("h", "small", 2007),
        ("j", "small", 2008),
        ("l", "small", 2010),
        ("t", "small", 2018),
    ],
)
def test_london_letter_names_its_year(letter, style, year):
    tables = TABLES["london-letters"]
    read = find({"letter": letter, "style": style}, guide="london-letters")

    verdict = judge(tables, read)

    assert verdict.leading == year
    assert dict(verdict.model_years)[year] > 0.9


def test_london_letter_spans_two_years():
    """Source: the London page on date letters: until 1974 they changed on 29 May."""
    found = months("london-letters", "letter", "K")

    assert (found[0], found[12]) == ("1845-05", "1846-05")
    assert found[13] == "1984-01"


def test_letters_that_london_left_out_date_nothing():
    """Source: Ciceri for J and V to Z, the Birmingham office for i."""
    old = [
        month
        for letter in "JVWXYZ"
        for month in months("london-letters", "letter", letter)
    ]

    assert all(month >= "1975" for month in old)
    assert months("london-letters", "letter", "i") == []


def registered(text: str) -> str | None:
    """The month in which the design was registered: nothing that shows the mark is
    older.
    """
    return next(iter(months("registered-design", "diamond", text)), None)


@pytest.mark.parametrize(
    ("text", "month"),
    [
        # Top, left, right, bottom; ? for what is not told of the mark.
        ("EE3102", "1855-05"),  # Source: a page on a marked weight, 31 May 1855
        ("NA02??", "1864-12"),  # Source: a pressed-glass page, 2 December 1864
        ("EK09??", "1855-11"),  # Source: an unofficial page, 9 November 1855
        ("01??KR", "1883-08"),  # Source: a pressed-glass page, 1 August 1883
        ("0909CR", "1870-08"),  # Source: an unofficial page, 9 August 1870
        ("28??YK", "1879-11"),  # Source: an unofficial page, 28 November 1879
        ("06??AI", "1871-07"),  # Source: a page on silk pictures, 6 July 1871
    ],
)
def test_diamond_names_its_month(text, month):
    assert registered(text) == month


def test_diamond_dates_what_was_made_later_too():
    """A mark stays on the mould: it fades, and never ends."""
    found = shares("registered-design", "diamond", "EE3102")

    assert list(found) == sorted(found)
    assert list(found)[-1] == "1900-12"
    assert list(found.values()) == sorted(found.values(), reverse=True)


def test_known_exceptions_keep_their_year():
    """Source: two unofficial pages, for R in September 1857 and K in December 1860.
    From memory: W for the first days of March 1878; one page says 1876 by mistake.
    """
    assert registered("KR05??")[:4] == "1857"
    assert registered("ZK15??")[:4] == "1860"
    assert registered("03??WG")[:4] == "1878"


@pytest.mark.parametrize("text", ["EG30??", "EH31??", "EE32??", "EE00??", "30??KG"])
def test_day_that_its_month_lacks_dates_nothing(text):
    """Which the rules of the mark do not name: they follow from the calendar."""
    assert registered(text) is None


@pytest.mark.parametrize("letter", "BGMNOQRTZ")
def test_year_letter_of_the_other_period_is_refused(letter):
    """Source: the table of letters, in which these have no year after 1867."""
    assert refuses("registered-design", "diamond", f"01??{letter}R")


@pytest.mark.parametrize("text", ["EF01??", "EO01??", "EE??KR", "01??K5"])
def test_corner_of_the_wrong_kind_is_refused(text):
    """O for January has one page for it and two against, so it is not read here."""
    assert refuses("registered-design", "diamond", text)


def practice(readings, **rest):
    read = find(readings, guide="common-practice", **rest)
    return judge(TABLES["common-practice"], read)


@pytest.mark.parametrize("t", range(12))
def test_month_letters_run_from_a_to_l(t):
    """Common practice without a source."""
    letter = "ABCDEFGHIJKL"[t]

    built = {
        int(month[5:]) for month in months("common-practice", "stamp", f"{letter}6")
    }

    assert t + 1 in built


def test_autumn_digit_is_one_below_the_model_year():
    """Common practice without a source: what was built in October 1955 is a 1956."""
    verdict = practice({"stamp": "J5"})

    assert verdict.leading == 1956
    assert verdict.flags == ()


def test_letter_past_l_is_a_special_order():
    """Common practice without a source: it is read, and tells no month."""
    verdict = practice({"stamp": "Q6"})

    assert [flag.say for flag in verdict.flags] == [
        "A letter past L often means a special order."
    ]
    assert verdict.leading in (1956, 1957)


def test_long_iron_and_wedge_need_no_code():
    """Common practice without a source."""
    told = {"3": "B6", "5": "B6", "7": "C6", "9": "B6", "2": None, "W": None}
    items = tuple(Item((("stamp", a),), (), member) for member, a in told.items())

    verdict = judge(TABLES["common-practice"], Find("common-practice", items))

    assert verdict.leading == 1956
    assert verdict.flags == ()


@pytest.mark.parametrize(("points", "flags"), [(2, 0), (3, 0), (4, 0), (7, 1)])
def test_usual_swing_weight_is_no_alarm(points, flags):
    """Common practice without a source: D2 to D4 is the usual men's range."""
    verdict = practice({"swing-weight": float(points)})

    assert len(verdict.flags) == flags
    assert (verdict.outside < 0.06) == (not flags)
