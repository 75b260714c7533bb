"""Letters that stand for years: vehicles, London silver, registered designs.

Each table is held against what is published of it; what comes from memory alone is
called so beside the check.
"""

from datetime import date

import pytest
from vininfo import Vin

from fieldid.engine import judge
from make import find
from world import TABLES, months, refuses, shares, years

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
