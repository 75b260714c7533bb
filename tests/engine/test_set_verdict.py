"""The verdict on a set: members alone and together, strays, the whole set."""

from dataclasses import replace
from itertools import permutations

import pytest

from fieldid.engine.claim import factor, odds
from fieldid.engine.find import Claim
from fieldid.engine.guide import Members
from fieldid.engine.judge import judge
from fieldid.engine.prepare import prepare
from fieldid.engine.sets import weigh_set
from kittiwake import SET, bag, find

TABLES = prepare(SET)
GOOD = {"stamp": "C218A", "rings": "green", "numeral": "plain"}
OTHER = {"stamp": "A3??A", "numeral": "boxed", "rings": "navy"}
STRAY = (("5", GOOD), ("6", OTHER), ("7", GOOD))


def judged(*told, tables=TABLES, **limits):
    return judge(tables, bag(*told), **limits)


def member(verdict, name):
    return next(each for each in verdict.members if each.member == name)


def test_one_item_is_one_object():
    """Even with a member, and under a guide that has a set."""
    verdict = judged(("5", GOOD))

    assert verdict.replaced
    assert verdict.weights
    assert verdict.members == verdict.whole_set == verdict.missing == ()
    assert verdict.set_say == ""


def test_members_are_judged_alone_first():
    verdict = judged(*STRAY)

    for told in STRAY:
        alone, within = judge(TABLES, bag(told)), member(verdict, told[0])
        for key in ("model_years", "outside", "replaced", "leading", "say"):
            assert getattr(within, key) == getattr(alone, key), key


def test_set_has_no_parts_of_its_own():
    verdict = judged(*STRAY)

    assert verdict.replaced == verdict.weights == ()
    assert [each.member for each in verdict.members] == ["5", "6", "7"]


def test_order_of_members_changes_nothing():
    first = judged(*STRAY)
    for told in permutations(STRAY):
        other = judged(*told)

        assert [p for _, p in other.model_years] == pytest.approx(
            [p for _, p in first.model_years]
        )
        assert other.say == first.say
        for each in first.members:
            assert member(other, each.member).stray == pytest.approx(each.stray)
            assert member(other, each.member).stray_say == each.stray_say


def test_planted_stray_is_named_with_its_reason():
    verdict = judged(*STRAY)

    assert verdict.leading == 1952
    assert [each.stray > 0.5 for each in verdict.members] == [False, True, False]
    assert member(verdict, "6").stray_say == (
        "The 6 iron is probably a stray (very likely, 92 %), with the "
        "hosel letters made for 1953, while the others speak for 1952."
    )
    assert member(verdict, "5").stray_say == ""


def test_stray_of_the_same_year_is_told_by_its_month():
    """Members are built together, so another month of the same year is another set."""
    late, early = ({**GOOD, "stamp": stamp} for stamp in ("H218A", "A218A"))

    verdict = judged(("5", early), ("6", early), ("W", late))

    assert (
        ", with the hosel letters made about August 1952, "
        "while the others speak for about January 1952. "
    ) in member(verdict, "W").stray_say


def test_two_members_are_one_and_the_other():
    verdict = judged(("5", GOOD), ("W", OTHER))

    assert " while the other speaks for " in member(verdict, "W").stray_say


def test_stray_often_bought_apart_is_no_alarm():
    verdict = judged(("5", GOOD), ("7", GOOD), ("W", OTHER))

    assert member(verdict, "W").stray_say.endswith(
        " That is no alarm: it was often bought apart."
    )
    assert "stray" not in [flag.kind for flag in verdict.flags]


def test_stray_among_the_others_is_an_alarm():
    verdict = judged(*STRAY)

    [flag] = [flag for flag in verdict.flags if flag.kind == "stray"]
    assert flag.say == member(verdict, "6").stray_say
    assert flag.members == ("6",)
    assert flag.ask == "Has the 6 iron always been with this set?"


def test_member_without_readings_is_no_stray():
    """However often its like was bought apart."""
    apart = Members(("5", "6", "7", "W"), (), 0.04, (("W", 0.9),))
    tables = prepare(replace(SET, members=apart))

    unread, untold = (
        member(judged(("5", GOOD), ("W", readings), tables=tables), "W")
        for readings in ({}, {"rings": None})
    )

    assert unread.stray == pytest.approx(0.9)
    assert unread.stray_say == untold.stray_say == ""
    assert unread.say == "nothing read yet"


def test_member_adds_its_own_factor():
    """Odds of the leading year with it over those had it never been seen."""
    verdict = judged(*STRAY)

    whole = weigh_set(TABLES, bag(*STRAY).items)
    rest = judged(STRAY[0], STRAY[1])
    without = odds(TABLES, [*(p for _, p in rest.model_years), rest.outside], (1, 1))
    found = member(verdict, "7")
    assert found.factor == pytest.approx(factor(TABLES, whole, 1) / without)
    assert found.factor_say.startswith("The 7 iron: ")
    assert found.factor_say.endswith(" times.")


def test_unread_member_says_nothing_of_the_year():
    found = member(judged(("5", GOOD), ("7", GOOD), ("W", {})), "W")

    assert found.factor == pytest.approx(1)
    assert found.factor_say == "The wedge: next to nothing about 1952."


def test_parts_that_can_be_replaced_on_all_are_told():
    """The collar follows the shaft, so it can be replaced with it on all."""
    verdict = judged(("5", {"band": "S"}), ("6", {"band": "S"}))

    assert [state.part for state in verdict.whole_set] == ["grip", "collar", "shaft"]
    assert verdict.whole_set[0].say.startswith("not replaced on the whole set: ")
    assert verdict.whole_set[1].say == "not looked at"


def test_one_members_part_says_nothing_of_the_others():
    """A grip that is gone is no sign that all were replaced at once."""
    verdict = judged(("5", {"stamp": "C218A"}, ["grip"]), ("6", {}))

    assert verdict.whole_set[0].probability > 0.5
    assert verdict.whole_set[0].say == "looked at on one of them alone"
    assert "whole-set" not in [flag.kind for flag in verdict.flags]


def test_same_late_grip_on_all_was_replaced_at_once():
    late = {"stamp": "C218A", "band": "S"}

    verdict = judged(("5", late), ("6", late), ("7", late))

    grip = verdict.whole_set[0]
    assert grip.say.startswith("replaced on the whole set: ")
    [flag] = [flag for flag in verdict.flags if flag.kind == "whole-set"]
    assert flag.about == ("grip",)
    assert flag.members == ("5", "6", "7")
    assert flag.say.startswith(
        "Someone probably replaced the grip on the whole set at once: "
    )
    assert flag.ask == "Did anyone replace the grip on the whole set, and when?"


def test_what_was_replaced_on_all_is_not_told_twice():
    """Neither as replaced on each, nor as disagreeing with what is original."""
    tables = prepare(
        replace(SET, parts=tuple(replace(p, replaced=0.05) for p in SET.parts))
    )
    late = {"stamp": "C218A", "band": "S"}

    verdict = judged(("5", late), ("6", late), ("7", late), tables=tables)

    alone = judged(("5", late), tables=tables)
    assert [flag.kind for flag in alone.flags] == ["disagree", "replaced"]
    assert [flag.kind for flag in verdict.flags] == ["whole-set"]


def test_missing_member_is_asked_for():
    verdict = judged(("5", GOOD), ("W", {}))

    assert (verdict.missing, verdict.surplus) == (("6", "7"), ("W",))
    assert verdict.set_say == (
        "Sold as 5 to 7: the 6 and 7 irons are missing; the wedge came beside."
    )
    flag = verdict.flags[-1]
    assert (flag.kind, flag.members) == ("missing", ("6", "7"))
    assert flag.say == (
        "A set was sold as 5 to 7, and the 6 and 7 irons are not among these."
    )
    assert flag.ask == "Do you still have the 6 and 7 irons?"


def test_one_missing_member_is_one():
    verdict = judged(("5", GOOD), ("6", {}))

    assert verdict.flags[-1].say.endswith("the 7 iron is not among these.")


def test_member_bought_apart_is_not_missed():
    """It is named, but nobody is asked for it."""
    members = replace(SET.members, usual=("5", "6", "W"))
    verdict = judged(
        ("5", GOOD), ("6", GOOD), tables=prepare(replace(SET, members=members))
    )

    assert verdict.missing == ("W",)
    assert verdict.flags == ()


def test_reading_on_a_gone_part_changes_nothing():
    with_it = judged(("5", {**GOOD, "band": "S"}, ["grip"]), ("6", GOOD))

    assert with_it == judged(("5", GOOD, ["grip"]), ("6", GOOD))


def test_next_names_the_member():
    verdict = judged(("5", {"numeral": "plain"}), ("6", {"numeral": "plain"}))

    first = verdict.next[0]
    assert (first.member, first.clue) == ("5", "stamp")
    assert first.what == "the 5 iron's hosel letters"
    assert verdict.runner_up.endswith(
        "; the 5 iron's hosel letters would best tell 1952 from 1951"
    )


def test_next_of_one_object_names_the_clue_alone():
    first = judged(("5", {"numeral": "plain"})).next[0]

    assert (first.member, first.what) == ("5", "the hosel letters")


def test_limits_hold_for_every_member():
    shown = replace(
        SET,
        clues=tuple(
            replace(c, photo="The face" if c.id == "scoring" else "") for c in SET.clues
        ),
    )
    tables = prepare(shown)
    told = (("5", {}), ("6", {}))

    for limits in ({"away": True}, {"photos": True}):
        verdict = judged(*told, tables=tables, **limits)
        assert [each.clue for each in verdict.next] == ["scoring", "scoring"], limits
    without = judged(*told, tables=tables, without=("callipers",))
    assert "pad" not in [each.clue for each in without.next]


def test_claim_on_a_set_is_flagged_once():
    verdict = judge(TABLES, bag(*STRAY, claim=1954))

    assert [flag.kind for flag in verdict.flags][:2] == ["claim", "stray"]
    assert verdict.claim.say in verdict.flags[0].say


def test_claim_steers_what_is_next():
    """With a claim open, the next clue is the one that best tests it."""
    told = (("5", {"numeral": "plain"}), ("6", {}))
    free, open = judge(TABLES, bag(*told)), judge(TABLES, bag(*told, claim=1954))

    assert free.next[0].bits > open.next[0].bits


def test_strange_set_looks_like_none_of_these():
    tables = prepare(replace(SET, outside=0.4))
    strange = {"rings": "red", "numeral": "plain", "pad": 11.5, "stamp": "X999A"}

    verdict = judged(("5", strange), ("6", strange), tables=tables)

    assert verdict.leading is None
    assert verdict.flags[0].kind == "outside"


def test_others_that_are_none_of_these_give_no_reason():
    tables = prepare(replace(SET, outside=0.4))
    strange = {"rings": "red", "numeral": "plain", "pad": 11.5, "stamp": "X999A"}

    verdict = judged(("5", strange), ("6", strange), ("7", GOOD), tables=tables)

    assert ", with " not in member(verdict, "7").stray_say


def test_nothing_read_says_so():
    verdict = judged(("5", {}), ("6", {"rings": None}))

    assert verdict.say == "nothing read yet"
    assert [each.say for each in verdict.members] == ["nothing read yet"] * 2


def test_undo_restores_the_verdict():
    before = judged(*STRAY)
    judged(*STRAY[:2], ("7", {**GOOD, "band": "Q"}))

    assert judged(*STRAY) == before


def test_find_of_one_is_untouched_by_the_set():
    """A guide's [set] tells nothing about an object whose member is not known."""
    bare = prepare(replace(SET, members=None))
    claim = Claim(1952, ("scoring",))

    assert judge(TABLES, find(GOOD, claim=claim)) == judge(
        bare, find(GOOD, claim=claim)
    )
