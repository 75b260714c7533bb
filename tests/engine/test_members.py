"""Members of a set in words, and what a set was sold as."""

import pytest

from fieldid.engine.find import Item
from fieldid.engine.guide import Members
from fieldid.engine.members import (
    missing,
    often_apart,
    set_say,
    several,
    sold_as,
    surplus,
    whose,
)
from make import guide

NAMES = {str(n): f"{n} iron" for n in range(2, 10)}
NAMES |= {"W": "pitching wedge", "S": "sand wedge", "P": "putter"}
USUAL = tuple("3456789")


def irons(usual=USUAL, names=NAMES):
    return guide(
        members=Members(
            (*"23456789WSP",), usual, 0.04, (("2", 0.5), ("W", 0.04)), (*names.items(),)
        )
    )


def items(members):
    return [Item(member=member) for member in members]


@pytest.mark.parametrize(
    ("members", "phrase"),
    [
        ("6", "the 6 iron"),
        ("56", "the 5 and 6 irons"),
        ("567", "the 5, 6 and 7 irons"),
        ("WS", "the pitching and sand wedges"),
        ("56W", "the 5 and 6 irons and the pitching wedge"),
        ("5WP6", "the 5 and 6 irons, the pitching wedge and the putter"),
    ],
)
def test_members_called_alike_are_drawn_together(members, phrase):
    assert several(irons(), [*members]) == phrase


def test_members_without_names_go_by_their_ids():
    assert several(irons(names={}), [*"57W"]) == "the 5, 7 and W"


@pytest.mark.parametrize(
    ("name", "plural"),
    [("brass", "brasses"), ("box", "boxes"), ("brush", "brushes"), ("iron", "irons")],
)
def test_plural_can_be_said(name, plural):
    names = {"2": f"low {name}", "3": f"high {name}"}

    assert several(irons(names=names), [*"23"]) == f"the low and high {plural}"


def test_all_of_them_are_the_whole_set():
    assert whose(irons(), items("567"), [*"567"]) == "the whole set"
    assert whose(irons(), items("567"), [*"56"]) == "the 5 and 6 irons"
    assert whose(irons(), items("5"), ["5"]) == "the 5 iron"


def test_members_bought_apart_are_strays_more_often():
    """One whose share is the set's own is like all others."""
    assert often_apart(irons(), "2")
    assert not often_apart(irons(), "W")
    assert not often_apart(irons(), "6")
    assert not often_apart(guide(), "6")


@pytest.mark.parametrize(
    ("usual", "words"),
    [
        (USUAL, "3 to 9"),
        (("9", "8", "7"), "7 to 9"),
        (("3", "5", "7"), "3, 5 and 7"),
        (("3", "4"), "3 and 4"),
        (("9", "W", "S"), "9 to S"),
        ((), ""),
    ],
)
def test_what_a_set_was_sold_as(usual, words):
    assert sold_as(irons(usual)) == words


@pytest.mark.parametrize(
    ("members", "sentence"),
    [
        ("3456789", "complete."),
        ("W987653", "the 4 iron is missing; the pitching wedge came beside."),
        ("3456", "the 7, 8 and 9 irons are missing."),
        ("23456789S", "complete; the 2 iron and the sand wedge came beside."),
    ],
)
def test_set_is_held_against_what_was_sold(members, sentence):
    assert set_say(irons(), items(members)) == f"Sold as 3 to 9: {sentence}"


def test_missing_and_surplus_stand_in_guide_order():
    assert missing(irons(), items("S95W37")) == ("4", "6", "8")
    assert surplus(irons(), items("S95W37")) == ("W", "S")


@pytest.mark.parametrize("silent", [irons(usual=()), guide()])
def test_silent_guide_misses_nothing(silent):
    assert missing(silent, items("S9")) == surplus(silent, items("S9")) == ()
    assert set_say(silent, items("S9")) == sold_as(silent) == ""
