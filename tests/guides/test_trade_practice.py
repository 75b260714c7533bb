"""Habits of the trade, each of them common practice, no published source.

An invented line keeps to all of them; what a habit explains must raise no alarm.
"""

import pytest

from fieldid.engine import Find, Item, judge, prepare
from fieldid.guides.load import load
from fieldid.paths import RULES
from make import find
from world import TABLES, shares

LINE = "common-practice"
MONTHS = "ABCDEFGHIJKL"
SPECIAL = "MNOPQRSTUVWXYZ"


def practice(readings, **rest):
    return judge(TABLES[LINE], find(readings, guide=LINE, **rest))


def practice_set(clue, told):
    """The verdict on a set of which one clue was read, on each member."""
    items = tuple(Item(((clue, a),), (), member) for member, a in told.items())
    return judge(TABLES[LINE], Find(LINE, items))


def likeliest(text):
    """The months in which a stamp is likeliest, all of them alike."""
    found = shares(LINE, "stamp", text)
    return sorted(
        m for m, x in found.items() if x == pytest.approx(max(found.values()))
    )


@pytest.mark.parametrize("letter", MONTHS)
def test_month_letters_run_from_a_to_l(letter):
    """Common practice, no published source."""
    assert likeliest(f"{letter}6") == [f"1956-{MONTHS.index(letter) + 1:02}"]


@pytest.mark.parametrize("letter", MONTHS)
def test_autumn_digit_is_one_below_the_model_year(letter):
    """Common practice, no published source: the catalogue of 1956 was built from
    September 1955 on.
    """
    verdict = practice({"stamp": f"{letter}5"})

    assert verdict.leading == (1956 if letter in "IJKL" else 1955)
    assert verdict.flags == ()


@pytest.mark.parametrize("letter", SPECIAL)
def test_letter_past_l_is_a_special_order(letter):
    """Common practice, no published source: it is read, and tells no month."""
    verdict = practice({"stamp": f"{letter}6"})

    assert [flag.say for flag in verdict.flags] == [
        "A letter past L often means a special order."
    ]
    assert likeliest(f"{letter}6") == [f"1956-{month:02}" for month in range(1, 13)]


@pytest.mark.parametrize("told", ["no", None])
def test_long_iron_and_wedge_need_no_code(told):
    """Common practice, no published source: whether there is none, or nobody looked."""
    rest = dict.fromkeys(("3", "5", "7", "9"), "yes")
    verdict = practice_set("stamped", {"2": told, **rest, "W": told})

    assert verdict.flags == ()
    assert [member.stray_say for member in verdict.members] == [""] * 6


@pytest.mark.parametrize("member", ["3", "5", "7", "9"])
def test_other_irons_need_their_code(member):
    """Or the habit would explain everything."""
    rest = dict.fromkeys(("3", "5", "7", "9"), "yes")
    verdict = practice_set("stamped", rest | {member: "no"})

    assert [(flag.kind, flag.members) for flag in verdict.flags] == [
        ("replaced", (member,))
    ]


def test_codeless_members_change_no_year():
    """Common practice, no published source."""
    told = {"3": "B6", "5": "B6", "7": "C6", "9": "B6", "2": None, "W": None}
    verdict = practice_set("stamp", told)

    assert verdict.leading == 1956
    assert verdict.flags == ()


@pytest.mark.parametrize("points", [2, 3, 4])
def test_usual_swing_weight_is_no_alarm(points):
    """Common practice, no published source: D2 to D4 is the usual men's range."""
    verdict = practice({"swing-weight": 30.0 + points})

    assert verdict.flags == ()
    assert verdict.outside < 0.06


def test_usual_swing_weight_suits_any_club():
    """In the guide to any club too, which says the same of its source."""
    guide = load(RULES / "golf-club-era.toml")
    tables = prepare(guide)
    read = [find({"swing-weight": points}, guide=guide.id) for points in (32.0, 34.0)]

    flags = [flag for each in read for flag in judge(tables, each).flags]
    assert all("swing-weight" not in flag.about for flag in flags)
    source = guide.clues[tables.places["swing-weight"]].source
    assert "Common practice, no published source: D2-D4" in source


def test_unusual_swing_weight_is_an_alarm():
    """D7 is heavier than the habit explains."""
    verdict = practice({"swing-weight": 37.0})

    assert verdict.flags[-1].about == ("swing-weight",)
    assert verdict.outside > 0.5
