"""Red flags: the guide's own, and those of a set's members drawn together."""

from dataclasses import replace

import pytest

from fieldid.engine.guide import Condition, GuideFlag
from fieldid.engine.judge import judge
from fieldid.engine.prepare import prepare
from kittiwake import SET, bag

TABLES = prepare(SET)
GOOD = {"stamp": "C218A", "rings": "green", "numeral": "plain"}


def flags(kind, *told, tables=TABLES):
    return [flag for flag in judge(tables, bag(*told)).flags if flag.kind == kind]


def collars(*told):
    """The flags of replaced collars; with a collar the shaft is often doubted too."""
    return [flag for flag in flags("replaced", *told) if flag.about == ("collar",)]


def test_one_objects_flags_name_no_member():
    [gone] = flags("gone", ("5", GOOD, ["grip"]))

    assert gone.members == ()
    assert gone.say == (
        "With the grip gone, nothing there can speak for a year any more; "
        "who lost this often renewed the shaft too."
    )
    assert gone.ask == "Do you still have the grip?"


def test_equal_flags_of_members_become_one():
    [gone] = flags("gone", ("5", GOOD, ["grip"]), ("6", GOOD), ("7", {}, ["grip"]))

    assert gone.members == ("5", "7")
    assert gone.about == ("grip",)
    assert gone.say == (
        "With the grip of the 5 and 7 irons gone, nothing there can speak for a year "
        "any more; "
        "who lost this often renewed the shaft too."
    )
    assert gone.ask == "Do you still have the grip of the 5 and 7 irons?"


def test_flag_of_every_member_is_the_whole_sets():
    [gone] = flags("gone", ("5", GOOD, ["shaft"]), ("W", GOOD, ["shaft"]))

    assert gone.members == ("5", "W")
    assert gone.ask == "Do you still have the shaft of the whole set?"


def test_different_parts_stay_apart():
    found = flags("gone", ("5", GOOD, ["grip"]), ("6", GOOD, ["collar"]))

    assert [flag.members for flag in found] == [("5",), ("6",)]


def test_parts_replaced_more_or_less_probably_are_one_flag():
    """What is said holds for all of them."""
    likelier = {**GOOD, "rings": "none"}
    less = {"rings": "none"}
    parts = {
        name: judge(TABLES, bag(told)).replaced[2].probability
        for name, told in (("more", ("5", likelier)), ("less", ("6", less)))
    }

    [flag] = collars(("5", likelier), ("6", less), ("7", GOOD))

    assert parts["more"] > parts["less"] > 0.5
    percent = round(100 * parts["less"])
    assert flag.members == ("5", "6")
    assert flag.say.startswith(
        "Someone probably replaced the collar of the 5 and 6 irons: "
    )
    assert flag.say.endswith(f", {percent} %, or more.")
    assert (
        flag.ask == "Did anyone ever replace the collar of the 5 and 6 irons, and when?"
    )


def test_parts_replaced_alike_need_no_or_more():
    odd = {**GOOD, "rings": "none"}

    [flag] = collars(("5", odd), ("6", odd), ("7", GOOD))

    assert flag.members == ("5", "6")
    assert not flag.say.endswith("or more.")


def test_equal_disagreements_are_one():
    odd = {"numeral": "plain", "stamp": "L321A"}

    [flag] = flags("disagree", ("5", odd), ("6", odd), ("7", {}))

    assert flag.members == ("5", "6")
    assert flag.say.startswith("Two readings of the 5 and 6 irons disagree: ")
    assert flag.ask == "Did anyone ever work on the head of the 5 and 6 irons?"


def test_other_readings_disagree_apart():
    odd, other = ({"numeral": "plain", "stamp": code} for code in ("L321A", "L321B"))

    found = flags("disagree", ("5", odd), ("6", other))

    assert [flag.members for flag in found] == [("5",), ("6",)]


def test_member_tells_its_worst_disagreement_alone():
    odd = {"numeral": "plain", "pad": 7.4, "stamp": "L321A", "rings": "green"}

    alone = flags("disagree", ("5", odd))
    assert len(alone) > 1
    assert len(flags("disagree", ("5", odd), ("6", GOOD))) == 1


def test_guides_flag_says_whose_it_is():
    [flag] = flags("guide", ("5", {"pad": 4.9}), ("6", {}), ("7", {"pad": 4.8}))

    assert flag.members == ("5", "7")
    assert flag.say == "On the 5 and 7 irons: Worn thin."
    assert flag.ask == ""


def test_guides_question_says_whose_it_is():
    first, *_ = flags("guide", ("5", {"rings": "none"}), ("6", {}))

    assert first.say == "On the 5 iron: No rings."
    assert first.ask == "Why? (the 5 iron)"


@pytest.mark.parametrize(("year", "members"), [(1952, ("5", "7")), (1953, ("6",))])
def test_guides_years_are_the_sets_but_a_strays_own(year, members):
    waits = GuideFlag((Condition(years=(year, year)),), "Rare.")
    tables = prepare(replace(SET, flags=(waits,)))
    other = {"stamp": "A3??A", "numeral": "boxed", "rings": "navy"}

    [flag] = flags("guide", ("5", GOOD), ("6", other), ("7", GOOD), tables=tables)

    assert flag.members == members


def test_alarms_come_before_what_is_common():
    other = {"stamp": "A3??A", "numeral": "boxed", "rings": "navy"}
    told = (("5", {**GOOD, "pad": 4.9}, ["grip"]), ("6", other, ["grip"]), ("W", GOOD))

    kinds = [flag.kind for flag in judge(TABLES, bag(*told, claim=1954)).flags]

    order = ("claim", "stray", "whole-set", "gone", "missing", "guide")
    assert tuple(dict.fromkeys(kinds)) == order
