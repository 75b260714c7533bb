"""A guide that brackets: its range, what sets the ends, marks that cannot both be."""

from dataclasses import replace

import pytest

from fieldid.engine import judge, prepare
from fieldid.engine.guide import Condition, GuideFlag
from fieldid.engine.range import meet, named, run
from make import choice, find, guide, model_year, number, option, part, span

NONE = option("none", span(share=0.9))
SURE = {"misread": 0.001}
MARKS = guide(
    choice("zip", option("digits", span(since="1963-01", share=0.1)), NONE, **SURE),
    choice(
        "country",
        option("western", span((1949, 1990), share=0.1)),
        option("eastern", span((1949, 1990), share=0.1)),
        NONE,
        **SURE,
    ),
    choice("arrows", option("solid", span((1995, 1999), share=0.1)), NONE, **SURE),
    choice("bin", option("wheels", span((1995, 1999), share=0.1)), NONE, **SURE),
    number("patent", {1950: 1, 1960: 101, 1970: 201}, 300, lag=5, **SURE),
    floor=0.001,
    outside=1e-6,
    verdict="range",
    years=tuple(model_year(year) for year in range(1940, 2000)),
    parts=(part("head", 0.0),),
)
TABLES = prepare(MARKS)


def told(readings, **rest):
    """The verdict on these readings."""
    return judge(TABLES, find(readings, **rest))


def test_run_ends_at_a_tenth_of_the_likeliest():
    assert run([0.04, 0.041, 0.4, 0.0, 0.3, 0.03]) == (1, 4)


def test_run_keeps_a_gap_inside():
    assert run([0.5, 0.0, 0.0, 0.5]) == (0, 3)


def test_run_of_what_is_ruled_out_is_everything():
    assert run([0.0, 0.0, 0.0]) == (0, 2)


def test_two_marks_bracket_the_years():
    verdict = told({"zip": "digits", "country": "western"})

    assert (verdict.range.since, verdict.range.until) == (1963, 1990)
    assert verdict.say == "1963 to 1990: extremely likely, 98 %"
    assert verdict.range.start_say == "Not before 1963: the zip (digits)."
    assert verdict.range.stop_say == "Not after 1990: the country (western)."


def test_range_has_the_share_of_its_years():
    verdict = told({"zip": "digits", "country": "western"})
    inside = sum(p for year, p in verdict.model_years if 1963 <= year <= 1990)

    assert verdict.range.probability == pytest.approx(inside, abs=1e-12)


@pytest.mark.parametrize(
    ("found", "say"),
    [
        ((0, 59), "any year from 1940 to 1999"),
        ((3, 59), "1943 or later"),
        ((0, 5), "1945 or earlier"),
        ((2, 2), "1942"),
        ((0, 0), "1940"),
        ((2, 5), "1942 to 1945"),
    ],
)
def test_open_ends_are_called_open(found, say):
    assert named(MARKS, found) == say


def test_end_of_a_fading_mark_is_hardly_an_end():
    """A patent goes on being printed, ever more seldom."""
    assert told({"patent": 101.0}).range.stop_say.startswith("Hardly after 197")
    assert (
        told({"patent": 101.0}).range.start_say == "Not before 1960: the patent (101)."
    )


def test_two_marks_that_set_one_end_are_both_named():
    verdict = told({"arrows": "solid", "bin": "wheels", "patent": 250.0})

    assert (
        verdict.range.start_say
        == "Not before 1995: the arrows (solid) and the bin (wheels)."
    )


def test_marks_that_never_met_raise_a_flag():
    verdict = told({"country": "western", "arrows": "solid"})
    [flag] = [each for each in verdict.flags if each.kind == "disagree"]

    assert "country (western) for 1949 to 1990" in flag.say
    assert "arrows (solid) for 1995 or later" in flag.say
    assert "repaired, issued again, or a copy" in flag.say


def test_marks_that_meet_in_few_years_raise_none():
    """They go together more seldom than by chance, and are just what narrows it."""
    verdict = told({"country": "western", "patent": 250.0, "zip": "digits"})

    assert not [each for each in verdict.flags if each.kind == "disagree"]


def test_readings_are_weighed_for_the_range():
    [weight, *_] = told({"zip": "digits", "country": "western"}).weights

    assert weight.factor > 1
    assert "evidence for 1963 to 1990" in weight.say


def test_bracketing_says_nothing_of_months_or_of_a_runner_up():
    verdict = told({"zip": "digits"})

    assert verdict.built_say == verdict.runner_up == ""
    assert verdict.built == ()


def test_before_any_reading_nothing_is_said():
    assert told({}).say == "nothing read yet"
    assert told({}).range.say == "any year from 1940 to 1999"


def test_reading_that_rules_nothing_out_leaves_all_years():
    verdict = told({"zip": "none"})

    assert verdict.say == "any year from 1940 to 1999 so far"
    assert verdict.range.start_say == verdict.range.stop_say == ""


def test_next_is_told_by_the_years_that_it_leaves():
    assert told({}).next[0].say.startswith("leaves about ")


def test_flag_of_a_range_waits_for_all_of_it():
    """Half of the range in the flag's years is not enough."""
    late = GuideFlag((Condition(years=(1970, 1999)),), "Late.")
    tables = prepare(replace(MARKS, flags=(late,)))

    assert not judge(tables, find({"zip": "digits"})).flags
    assert judge(tables, find({"patent": 250.0})).flags


def test_guide_of_years_has_no_range():
    tables = prepare(guide(*MARKS.clues[1:3]))

    assert judge(tables, find({"country": "western"})).range is None


@pytest.mark.parametrize(
    ("one", "other", "together"),
    [((0, 3), (3, 5), True), ((0, 3), (4, 5), False), ((4, 5), (0, 3), False)],
)
def test_runs_meet_in_a_year(one, other, together):
    assert meet(one, other) is together
