"""The guide of dated marks against logic: twenty things as somebody may find them.

Each case names its marks. The range that follows from them is worked out here, from
the bounds that are published for each mark, by comparing years alone: the latest "not
before" and the earliest "not after". The guide must find no less, and at most half as
much again.
"""

import random
from dataclasses import dataclass
from datetime import date
from functools import cache

import pytest

from fieldid.engine import Find, Item, Verdict, judge, prepare
from fieldid.engine.guide import Choice, Clue, Guide, Number
from fieldid.engine.one import weigh
from fieldid.engine.prepare import likelihood, tables_for
from fieldid.engine.range import run
from fieldid.guides.load import load
from fieldid.paths import RULES
from specimens import look, specimen

GUIDE: Guide = load(RULES / "dated-marks.toml")
TABLES = prepare(GUIDE)
CLUES = {clue.id: clue for clue in GUIDE.clues}
FIRST, LAST = GUIDE.years[0].year, GUIDE.years[-1].year

OVERRUN = 2
"""Old labels and moulds run on for one to three years after a change: the middle."""
DECADES = 50
"""How long a patent number "stays on the mould for decades"."""
DESIGN = 20
"""How long one registered design was made: "ten to twenty years"."""
LIKELY = 15
"""An Rd number: "likely within fifteen years"."""
MARGIN = 1.5


@dataclass(frozen=True, slots=True)
class Mark:
    """A reading, the years between which it is found, and who says so."""

    clue: str
    reading: str | float
    since: int
    until: int | None
    source: str


def after(clue: str, reading: str | float, since: int, source: str) -> Mark:
    """A mark that says not before, and nothing of an end."""
    return Mark(clue, reading, since, None, source)


def between(
    clue: str, reading: str | float, since: int, until: int, source: str
) -> Mark:
    """A mark that ended: old stock runs on."""
    return Mark(clue, reading, since, until + OVERRUN, source)


def until(clue: str, reading: str, end: int, source: str) -> Mark:
    """A mark that ended, and may be as old as can be."""
    return Mark(clue, reading, FIRST, end + OVERRUN, source)


def about(
    clue: str, reading: str | float, since: int, within: int, source: str
) -> Mark:
    """A date of registration: not before it, likely within so many years."""
    return Mark(clue, reading, since, since + within, source)


UPC = after("bar-code", "upc", 1973, "standards body: chosen 3 April 1973")
ZIP = after("us-address", "zip", 1963, "postal service: 1 July 1963")
WEST = between("german-name", "west", 1949, 1990, "state department historian")
TRIANGLE = after("recycling", "triangle", 2013, "trade paper of 11 June 2013")
ZONE = between("us-address", "zone", 1943, 1963, "encyclopedia: 1943, and ZIP after")
OCCUPIED = between("japan-name", "occupied", 1947, 1952, "SCAPIN-1535 and -2061")
ARROWS = after("recycling", "arrows", 1988, "statement of the plastics society")
RING = after("trade-mark", "ring", 1946, "Act of 1946; US Code 15, 1111")
ENGLAND = after("origin-words", "country", 1891, "Tariff Act of 1 October 1890")

CASES = {
    "a kitchen timer with patent, ZIP and bar code": (
        after("patent-number", 3_650_000, 1972, "office table: 3,631,539 in 1972"),
        ZIP,
        UPC,
    ),
    "a patent number alone": (
        about("patent-number", 1_000_000, 1911, DECADES, "milestones: 8 August 1911"),
    ),
    "a number between two copies of the table": (
        # 1,612,700 in one copy, 1,612,790 by memory and by the count of 1926.
        about("patent-number", 1_612_750, 1926, DECADES, "doubtful entries: 1927"),
    ),
    "a patent of 1950 with a postal zone": (
        after("patent-number", 2_524_035, 1950, "single dated patents: 1950"),
        ZONE,
    ),
    "a toy from West Germany with a patent": (
        after("patent-number", 3_163_865, 1965, "office table: first of 1965"),
        WEST,
    ),
    "a jug with a diamond and a year letter": (
        about("diamond", "EE3102", 1855, DESIGN, "worked mark: 31 May 1855"),
    ),
    "a bowl with a diamond of the later layout": (
        about("diamond", "0909CR", 1870, DESIGN, "worked mark: 9 August 1870"),
    ),
    "a diamond of the odd days of March 1878": (
        about("diamond", "03??WG", 1878, DESIGN, "known exceptions"),
    ),
    "a glass with an Rd number and no more": (
        about("rd-number", 150_000, 1890, LIKELY, "list: 141273 in 1890"),
    ),
    "an Rd number where the lists disagree": (
        # The list has 1905, others are up to a year off.
        about("rd-number", 450_000, 1904, LIKELY + 2, "widened for 1902-1910"),
        ENGLAND,
    ),
    "West Germany beside a solid triangle": (WEST, TRIANGLE),
    "a radio from the German Democratic Republic": (
        between("german-name", "east", 1949, 1990, "state department historian"),
        ARROWS,
    ),
    "a camera from the U.S. Zone": (
        between("german-name", "zone", 1945, 1949, "state department historian"),
    ),
    "a cup from Occupied Japan": (OCCUPIED,),
    "Occupied Japan with a web address on it": (
        OCCUPIED,
        after("web", "www", 1991, "public web: 1991, from memory"),
    ),
    "a tin with a zone and an exchange name": (
        ZONE,
        Mark("telephone", "exchange", 1920, 1970 + OVERRUN, "from memory"),
    ),
    "a box with ZIP and Reg. U.S. Pat. Off.": (
        ZIP,
        between("trade-mark", "office", 1881, 1975, "from memory"),
    ),
    "a coat with RN number, fibres and care words": (
        after("textile-number", "middle", 1959, "textile act, from memory"),
        after("fibre", "other", 1960, "textile act, from memory"),
        after("care", "words", 1972, "FTC rule 423, from memory"),
    ),
    "a Yugoslav drill with a bar code": (
        between("eastern-name", "yugoslavia", 1929, 2003, "country code withdrawn"),
        UPC,
    ),
    "a tool of this year": (
        after("copyright", str(LAST), LAST, "US Code 17, 401"),
        after("waste-bin", "bar", 2005, "EN 50419: 13 August 2005"),
        RING,
    ),
}


def logic(marks: tuple[Mark, ...]) -> tuple[int, int]:
    """The range that follows. Where marks contradict each other a modern one decides,
    and the ends that are before it count for nothing.
    """
    since = max(mark.since for mark in marks)
    ends = [mark.until for mark in marks if mark.until and mark.until >= since]
    return since, min([*ends, LAST])


@cache
def verdict(*marks: Mark) -> Verdict:
    readings = tuple((mark.clue, mark.reading) for mark in marks)
    return judge(TABLES, Find(GUIDE.id, (Item(readings),)))


def length(since: int, until: int) -> int:
    return until - since + 1


def test_there_are_twenty_cases():
    assert len(CASES) == 20
    assert all(mark.source for marks in CASES.values() for mark in marks)


@pytest.mark.parametrize("name", CASES)
def test_range_contains_what_logic_says(name):
    since, until = logic(CASES[name])

    found = verdict(*CASES[name]).range

    assert found.since <= since
    assert found.until >= until


@pytest.mark.parametrize("name", CASES)
def test_range_is_not_much_wider(name):
    found = verdict(*CASES[name]).range

    wide = length(found.since, found.until)
    assert wide <= MARGIN * length(*logic(CASES[name]))


@pytest.mark.parametrize("name", CASES)
def test_case_is_none_outside_the_guide(name):
    """Marks are rare, and an object that bears three is still an object."""
    assert verdict(*CASES[name]).outside < 0.05


def test_contradiction_raises_a_flag():
    """A modern mark beside an old one: a marriage, a repair, a reissue or a copy."""
    kinds = [flag.kind for flag in verdict(WEST, TRIANGLE).flags]

    assert "disagree" in kinds
    assert "disagree" not in [flag.kind for flag in verdict(WEST, RING).flags]


def test_ends_name_the_marks_that_set_them():
    found = verdict(WEST, RING, UPC).range

    assert "bar code" in found.start_say
    assert "German name" in found.stop_say


MODERN = [
    ("us-address", "zip", 1963),
    ("us-address", "zip-4", 1983),
    ("us-state", "two", 1963),
    ("uk-address", "figure", 1917),
    ("uk-address", "norwich", 1959),
    ("uk-address", "full", 1966),
    ("telephone", "area", 1947),
    ("telephone", "free-888", 1996),
    ("web", "com", 1985),
    ("bar-code", "upc", 1973),
    ("recycling", "loop", 1970),
    ("recycling", "arrows", 1988),
    ("recycling", "triangle", 2013),
    ("waste-bin", "bare", 2003),
    ("waste-bin", "bar", 2005),
    ("ce", "ce", 1988),
    ("trade-mark", "ring", 1946),
    ("trade-mark", "both", 1975),
    ("fibre", "other", 1960),
    ("care", "words", 1972),
    ("eastern-name", "czech", 1993),
]


@pytest.mark.parametrize(("clue", "option", "since"), MODERN)
def test_modern_mark_is_hard_before_its_start(clue, option, since):
    found = verdict(Mark(clue, option, since, None, ""))

    years = dict(found.model_years)
    assert (found.range.since, found.range.until) == (since, LAST)
    assert years[since - 1] < 0.05 * max(years.values())


ENDED = [
    ("us-address", "zone", 1943, 1963),
    ("german-name", "west", 1949, 1990),
    ("german-name", "zone", 1945, 1949),
    ("eastern-name", "soviet", 1922, 1991),
    ("eastern-name", "czechoslovakia", 1918, 1992),
    ("japan-name", "occupied", 1947, 1952),
    ("other-name", "zaire", 1971, 1997),
]


@pytest.mark.parametrize(("clue", "option", "since", "end"), ENDED)
def test_ended_mark_runs_on_for_three_years(clue, option, since, end):
    """And then lives on as a copy, which is faint but never nothing."""
    found = verdict(Mark(clue, option, since, None, ""))

    years = dict(found.model_years)
    copied = years[end + 5] / max(years.values())
    assert (found.range.since, found.range.until) == (since, end + 3)
    assert 0.01 < copied < 0.1


CHOICES = [clue for clue in GUIDE.clues if isinstance(clue.kind, Choice)]


@pytest.mark.parametrize("clue", CHOICES, ids=lambda clue: clue.id)
def test_missing_mark_proves_nothing(clue: Clue):
    """That something is not marked is as likely in any year, or nearly."""
    table = tables_for(TABLES, None)[TABLES.places[clue.id]]
    shares = likelihood(table, "none").orig

    assert clue.kind.options[-1].label == "none of these"
    assert min(shares) > 0.75 * max(shares)


def test_bare_object_may_be_of_any_year():
    """Even if every mark is missing."""
    marks = [Mark(clue.id, "none", FIRST, None, "") for clue in CHOICES]

    found = verdict(*marks).range

    assert (found.since, found.until) == (FIRST, LAST)


def test_simulated_objects_fall_in_their_range():
    """Drawn by lot from the guide's own shares, with parts replaced and lost."""
    dice = random.Random(1840)
    found = [specimen(GUIDE, dice) for _ in range(150)]
    inside = []
    for each in found:
        if each.year is not None:
            seen = look(GUIDE, each, dice, seen=1.0, lost=0.3)
            first, last = run(weigh(TABLES, seen).years)
            inside.append(first <= each.year - FIRST <= last)

    assert sum(inside) / len(inside) > 0.85


def first_of(clue: str) -> dict[int, int]:
    kind = CLUES[clue].kind
    assert isinstance(kind, Number)
    return dict(kind.first)


def year_of(clue: str, number: int) -> int:
    return max(year for year, first in first_of(clue).items() if first <= number)


@pytest.mark.parametrize(
    ("number", "year"),
    [
        # Source: the patent office's page of milestones.
        (1, 1836),
        (1_000_000, 1911),
        (2_000_000, 1935),
        (3_000_000, 1961),
        (4_000_000, 1976),
        (5_000_000, 1991),
        # Source: other pages.
        (6_000_000, 1999),
        (7_000_000, 2006),
        (8_000_000, 2011),
        # Source: single dated patents on general pages.
        (1_647, 1840),
        (3_633, 1844),
        (4_750, 1846),
        (6_469, 1849),
        (223_898, 1880),
        (821_393, 1906),
        (2_524_035, 1950),
        (2_612_994, 1952),
        # Doubtful entries: they count as the earlier of two years.
        (1_106, 1839),
        (1_612_700, 1926),
        (1_612_789, 1926),
        (1_612_790, 1927),
        (4_490_855, 1984),
        (4_490_885, 1985),
    ],
)
def test_patent_falls_in_its_year(number, year):
    assert year_of("patent-number", number) == year


def test_patent_table_has_every_year():
    assert list(first_of("patent-number")) == list(range(1836, 2016))


@pytest.mark.parametrize(
    ("clue", "last", "year"),
    [("patent-number", 9_999_999, 2015), ("rd-number", 999_999, 1965)],
)
def test_number_past_the_table_is_of_its_end_or_later(clue, last, year):
    found = verdict(Mark(clue, last, year, None, ""))

    assert CLUES[clue].kind.last == last
    assert found.range.since == year


@pytest.mark.parametrize(
    ("clue", "year", "number"),
    [
        ("patent-number", 1936, 2_026_516),
        ("patent-number", 1999, 5_855_021),
        ("design-number", 1842, 1),
        ("design-number", 1895, 23_922),
        ("design-number", 1903, 36_187),
        ("rd-number", 1884, 1),
        ("rd-number", 1901, 368_154),
        ("rd-number", 1911, 574_817),
        ("rd-number", 1965, 919_607),
    ],
)
def test_first_number_is_as_published(clue, year, number):
    assert first_of(clue)[year] == number


def test_rd_numbers_are_a_year_wider_where_lists_disagree():
    """What the list gives to 1902-1910 may be of the year before."""
    listed = {385_180: 1902, 403_200: 1903, 447_800: 1905, 552_000: 1910}

    for number, year in listed.items():
        assert year_of("rd-number", number) == year - 1
    assert year_of("rd-number", 574_816) == 1909


def test_no_unchecked_design_number_is_shipped():
    """What was found ends in 1903; the rest is memory that nobody has checked."""
    assert max(first_of("design-number")) == 1903


@pytest.mark.parametrize("clue", GUIDE.clues, ids=lambda clue: clue.id)
def test_every_clue_tells_its_standing(clue: Clue):
    """Found, remembered or practised: a reader can tell which."""
    standings = ("ound", "from memory, not checked", "From memory", "common practice")

    assert any(standing in clue.source for standing in standings)


def test_years_run_to_the_present():
    assert date.fromisoformat(GUIDE.updated).year == LAST
    assert (FIRST, GUIDE.fiction, GUIDE.verdict) == (1840, False, "range")
