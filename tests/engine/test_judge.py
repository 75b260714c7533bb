"""The verdict: claims, reasons, red flags and sentences on small finds."""

import math
import re
from dataclasses import replace
from types import SimpleNamespace

import pytest

from fieldid.engine.claim import factor
from fieldid.engine.find import Claim, Find, Item
from fieldid.engine.flags import raised
from fieldid.engine.guide import Code, Condition, Field, GuideFlag
from fieldid.engine.judge import judge
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare
from fieldid.engine.reasons import Conflict, conflicts
from fieldid.engine.saying import Case, built, level, runner_up
from fieldid.engine.words import percent
from kittiwake import GUIDE, NUMERAL, STAMP, find, random_find
from make import choice, guide, model_year, option, part, span
from make import find as plain
from oracle import truth

TABLES = prepare(GUIDE)
GOOD = {"rings": "green", "stamp": "C?18?", "numeral": "plain", "pad": 5.9}


def evenly(*numbers, clues=(), volumes=None):
    """Tables of as many invented years, each made in the same number or as said."""
    years = tuple(
        replace(model_year(year), volume=volume)
        for year, volume in zip(numbers, volumes or [1.0] * len(numbers), strict=True)
    )
    return prepare(guide(*clues, parts=(part(), part("grip")), years=years))


TELLS = choice("toe", option("a", span((1951, 1954))), option("b", span((1955, 1958))))
EIGHT = range(1951, 1959)


def kinds(verdict):
    return [flag.kind for flag in verdict.flags]


def said(verdict):
    return [flag.say for flag in verdict.flags]


def test_nothing_read_says_so():
    verdict = judge(TABLES, find())

    assert verdict.say == "nothing read yet"
    assert verdict.flags == verdict.weights == ()
    assert verdict.claim is None


def test_good_readings_lead_to_the_year():
    verdict = judge(TABLES, find(GOOD))

    assert verdict.leading == 1952
    assert verdict.say.startswith("1952: ")
    assert dict(verdict.model_years)[1952] > 0.9


def test_undo_restores_the_verdict():
    before = judge(TABLES, find(GOOD))
    judge(TABLES, find({**GOOD, "band": "S"}))

    assert judge(TABLES, find(GOOD)) == before


@pytest.mark.parametrize("seed", range(8))
def test_build_months_equal_brute_force(seed):
    item = random_find(seed).items[0]

    verdict = judge(TABLES, replace(find(), items=(item,)))

    want = truth(GUIDE, dict(item.readings), item.gone, item.member)
    assert [t for t, _ in verdict.built] == list(want.built)
    assert [p for _, p in verdict.built] == pytest.approx(list(want.built.values()))


def test_build_months_are_told_with_the_likeliest():
    verdict = judge(TABLES, find({"stamp": "C???A"}))

    assert verdict.built_say == (
        "built between March 1951 and March 1954, most likely about March 1951"
    )


def test_a_single_build_month_is_no_stretch():
    verdict = judge(TABLES, find({"stamp": "C218A"}))

    assert verdict.built_say == "built about March 1952"


def test_part_more_likely_replaced_is_flagged():
    verdict = judge(TABLES, find({**GOOD, "rings": "none"}))

    assert "replaced" in kinds(verdict)
    assert verdict.replaced[2].say.startswith("replaced: ")
    assert verdict.replaced[1].say.startswith("original: ")


def test_gone_part_is_flagged():
    verdict = judge(TABLES, find(GOOD, gone=["grip"]))

    assert kinds(verdict) == ["gone"]
    assert verdict.replaced[0].say == "gone"
    assert verdict.replaced[0].probability == pytest.approx(1)


def test_part_that_never_spoke_is_not_missed():
    """No clue lies on the grip."""
    tables = evenly(*EIGHT, clues=(TELLS,))

    assert kinds(judge(tables, plain(gone=["grip"]))) == []
    assert kinds(judge(tables, plain(gone=["head"]))) == ["gone"]


def test_reading_on_gone_part_changes_nothing():
    """Not the odds, not a red flag of the guide, not a cited proof."""
    claim = Claim(1952, ("rings",))

    with_it = judge(TABLES, find({"rings": "none"}, ["collar"], claim=claim))

    assert with_it == judge(TABLES, find({}, ["collar"], claim=claim))


def test_long_codes_do_not_underflow_together():
    """Two readings, each less likely than the smallest number's square root."""
    field = Field("works", "plain", 120, "ABCDEFGHJKLMNPQRSTUVWXYZ0123456789")
    long = [replace(STAMP, id=i, kind=Code((field,))) for i in ("one", "other")]
    readings = {clue.id: "A" * 120 for clue in long}

    found = conflicts(
        prepare(replace(GUIDE, clues=tuple(long))), find(readings).items[0]
    )

    assert found == []


def test_disagreeing_readings_are_named_in_pairs():
    verdict = judge(TABLES, find({"numeral": "plain", "stamp": "L321A"}))

    [flag] = [flag for flag in verdict.flags if flag.kind == "disagree"]
    assert flag.about == ("numeral", "stamp")
    assert flag.say == (
        "Two readings disagree: sole numeral (plain) for 1951-1952, "
        "hosel letters (L321A) for 1953."
    )
    assert flag.ask == "Did anyone ever work on the head?"


def test_disagreements_of_one_question_are_one_flag():
    """Each on the same part, and each against the first."""
    early, late = span((1951, 1951)), span((1952, 1952))
    clues = [choice(name, option("a", early), option("b", late)) for name in "xyz"]
    tables = evenly(1951, 1952, clues=clues)

    verdict = judge(tables, plain({"x": "a", "y": "b", "z": "b"}))

    [flag] = [flag for flag in verdict.flags if flag.kind == "disagree"]
    assert flag.about == ("x", "y", "z")
    assert flag.say == (
        "Readings disagree: x (a) for 1951, against y (b) for 1952; z (b) for 1952."
    )
    assert flag.ask == "Did anyone ever work on the head?"


def test_disagreements_without_a_reading_in_common_are_told_in_pairs():
    spans = [span((year, year)) for year in (1951, 1952)]
    clues = [choice(i, option("a", spans[0]), option("b", spans[1])) for i in "wxyz"]
    tables = evenly(1951, 1952, clues=clues)
    item = plain({"w": "a", "x": "b", "y": "a", "z": "b"}).items[0]
    clashes = [Conflict(0, 1, 9.0), Conflict(2, 3, 9.0)]

    posterior = weigh(tables, item)
    flag, *_ = raised(tables, item, posterior, clashes, (0, 0))
    assert "".join(flag.say) == (
        "Readings disagree: w (a) for 1951, x (b) for 1952; "
        "y (a) for 1951, z (b) for 1952."
    )


def test_parts_that_disagree_in_turn_are_asked_about_once():
    """One part's clues stand on both sides of the other's."""
    spans = [span((year, year)) for year in (1951, 1952)]
    clues = [
        choice(i, option("a", spans[0]), option("b", spans[1]), part=part)
        for i, part in (("x", "head"), ("y", "grip"), ("z", "head"))
    ]
    tables = evenly(1951, 1952, clues=clues)
    item = plain({"x": "a", "y": "b", "z": "a"}).items[0]
    clashes = [Conflict(0, 1, 9.0), Conflict(1, 2, 9.0)]

    flags = raised(tables, item, weigh(tables, item), clashes, (0, 0))
    assert [flag.ask for flag in flags if flag.kind == "disagree"] == [
        ("Did anyone ever work on the head or the grip", "?")
    ]


def test_disagreeing_parts_are_both_asked_about():
    verdict = judge(TABLES, find({"rings": "red", "stamp": "A118A"}))

    [flag] = [flag for flag in verdict.flags if flag.kind == "disagree"]
    assert flag.ask == "Did anyone ever work on the head or the collar?"


def test_conflict_equals_brute_force():
    """P(a) P(b) / P(a, b), each from the oracle's log evidence."""
    readings = {"rings": "red", "stamp": "A118A"}
    [clash] = conflicts(TABLES, find(readings).items[0])

    alone = [truth(GUIDE, {c: a}).log_evidence for c, a in readings.items()]
    both = truth(GUIDE, readings).log_evidence
    assert clash.times == pytest.approx(math.exp(sum(alone) - both))


def test_agreeing_readings_are_not_named():
    assert conflicts(TABLES, find(GOOD).items[0]) == []


def test_strange_object_looks_like_none_of_these():
    strange = {"rings": "red", "numeral": "plain", "pad": 11.5, "stamp": "X999A"}
    tables = prepare(replace(GUIDE, outside=0.4))

    verdict = judge(tables, find(strange))

    assert kinds(verdict)[0] == "outside"
    assert verdict.leading is None
    assert verdict.say.startswith("looks like none of these: ")


def test_weights_leave_one_reading_out():
    """The factor of all readings over the factor without the one."""
    verdict = judge(TABLES, find(GOOD))

    rest = {c: a for c, a in GOOD.items() if c != "stamp"}
    y = 1
    full = factor(TABLES, weigh(TABLES, find(GOOD).items[0]), y)
    without = factor(TABLES, weigh(TABLES, find(rest).items[0]), y)
    [weight] = [w for w in verdict.weights if w.clue == "stamp"]
    assert weight.factor == pytest.approx(full / without)
    assert weight.say.startswith(
        "Hosel letters (C?18?): very strong evidence for 1952, "
    )


def test_weights_stand_in_clue_order():
    backwards = dict(reversed(GOOD.items()))

    verdict = judge(TABLES, find(backwards))

    assert [w.clue for w in verdict.weights] == ["rings", "numeral", "pad", "stamp"]


def test_guide_flag_waits_for_its_option():
    assert "No rings." in said(judge(TABLES, find({"rings": "none"})))
    assert "No rings." not in said(judge(TABLES, find({"rings": "green"})))


def test_guide_flag_needs_all_its_conditions():
    """A special order, and a leading year of 1951 or 1952."""
    assert "A special order." in said(judge(TABLES, find({"stamp": "X118A"})))
    assert "A special order." not in said(judge(TABLES, find({"stamp": "X321A"})))
    assert "A special order." not in said(judge(TABLES, find({"stamp": "?118A"})))


@pytest.mark.parametrize(
    ("reading", "sentence"),
    [({"pad": 4.9}, "Worn thin."), ({"length": 961.0}, "Longer than made.")],
)
def test_guide_flag_waits_for_a_size(reading, sentence):
    assert sentence in said(judge(TABLES, find(reading)))
    assert sentence not in said(judge(TABLES, find({"pad": 5.0, "length": 960.0})))


def test_guide_flag_waits_for_a_replaced_part():
    assert "A later shaft." in said(judge(TABLES, find(gone=["shaft"])))
    assert "A later shaft." not in said(judge(TABLES, find()))


def test_condition_without_content_never_holds():
    guide = replace(GUIDE, flags=(GuideFlag((Condition(part="head"),), "No."),))

    assert said(judge(prepare(guide), find())) == []


def test_nothing_left_is_said():
    guide = replace(GUIDE, clues=(NUMERAL,))

    settled = judge(prepare(guide), find({"numeral": "plain"}))

    assert settled.exhausted == "The clues cannot tell 1951 from 1952 any further."


def test_settled_year_needs_no_more():
    everything = {**GOOD, "scoring": "lines", "length": None, "band": "Q"}

    verdict = judge(TABLES, find(everything))

    assert verdict.next == ()
    assert verdict.exhausted == "Nothing left to look at would change this."


def test_single_model_year_has_no_runner_up():
    guide = replace(GUIDE, years=GUIDE.years[:1])

    verdict = judge(prepare(guide), find({"rings": "green"}))

    assert verdict.runner_up == ""
    assert verdict.leading == 1951


def test_runner_up_names_what_would_separate():
    verdict = judge(TABLES, find({"numeral": "plain"}))

    assert verdict.runner_up.endswith(
        "the hosel letters would best tell 1952 from 1951"
    )


def test_weak_lead_is_not_leaned_to():
    tables = evenly(*EIGHT, clues=(TELLS,), volumes=range(8, 0, -1))

    verdict = judge(tables, plain(gone=["grip"]))

    assert verdict.say == "cannot tell yet: 1951 leads with 22 %"
    assert verdict.runner_up.startswith("1952, 19 %")


def test_years_that_are_all_level_are_told_as_such():
    verdict = judge(evenly(*EIGHT, clues=(TELLS,)), plain(gone=["grip"]))

    assert verdict.say == "nothing tells the years apart yet"
    assert verdict.runner_up == verdict.exhausted == ""


def test_nothing_is_left_to_wait_for_where_all_is_seen():
    """With the head gone nothing can be looked at any more."""
    verdict = judge(evenly(*EIGHT, clues=(TELLS,)), plain(gone=["head"]))

    assert verdict.say == "nothing tells the years apart"
    assert verdict.exhausted == "The clues cannot tell these years apart any further."


def test_years_that_are_level_at_the_top_are_counted():
    """After the toe nothing is left to look at."""
    verdict = judge(evenly(*EIGHT, clues=(TELLS,)), plain({"toe": "a"}))

    assert verdict.say == "cannot tell: 4 years are level at 23 %"
    assert verdict.runner_up == ""


def test_years_that_are_nearly_level_say_so():
    tables = evenly(*EIGHT, clues=(TELLS,), volumes=[50, 48, 50, 48, 9, 9, 9, 9])

    verdict = judge(tables, plain(gone=["grip"]))

    assert verdict.say == "cannot tell yet: 4 years are level at 21 % or just below"


def test_none_of_these_is_told_before_years_that_are_level():
    tables = evenly(*EIGHT, clues=(TELLS,))
    posterior = replace(weigh(tables, plain().items[0]), outside=0.3)
    told = Case(tables, plain().items, posterior, (), 0, 1)

    assert runner_up(told) == "none of these, 30 %"


def test_advice_says_time_and_tools():
    advice = {n.clue: n.say for n in judge(TABLES, find()).next}

    assert advice["pad"].endswith("; 40 seconds; callipers")
    assert advice["stamp"].startswith("tells 1951 from ")
    assert advice["stamp"].endswith("; 15 seconds; no tools")


def test_single_year_advice_splits_it_from_anything():
    guide = replace(GUIDE, years=GUIDE.years[:1], outside=0.5)

    advice = {n.clue: n.say for n in judge(prepare(guide), find()).next}

    assert advice["stamp"].startswith("tells 1951 from anything else; ")


def test_item_of_unknown_reading_is_never_invented():
    """An item without readings and gone parts is the prior itself."""
    assert judge(TABLES, find()).log_evidence == pytest.approx(0)
    assert weigh(TABLES, Item()).outside == pytest.approx(0.02)


def test_part_that_nobody_looked_at_is_not_called_original():
    states = {s.part: s for s in judge(TABLES, find({"pad": 5.9})).replaced}

    assert states["head"].say.startswith("original: ")
    assert states["collar"].say == "not looked at"
    assert 0 < states["collar"].probability < 0.5


def test_clue_that_cannot_be_told_is_no_look_at_its_part():
    states = {s.part: s for s in judge(TABLES, find({"rings": None})).replaced}

    assert states["collar"].say == "not looked at"


def test_nothing_read_has_no_build_date():
    assert judge(TABLES, find()).built_say == ""
    assert judge(TABLES, find({"pad": 5.9})).built_say != ""


def test_year_under_even_odds_is_said_to_be_so():
    """Over a third is "about as likely as not" on the scale, and jars beside 35 %."""
    weak = judge(TABLES, find({"pad": 5.25}))
    _, share = max(weak.model_years, key=lambda year: year[1])

    assert 0.33 < share < 0.5
    assert weak.say.endswith(" %, so more likely another")


def test_none_of_these_stands_before_a_less_likely_second_year():
    verdict = judge(TABLES, find({"pad": 9.9}))
    ranked = sorted((p for _, p in verdict.model_years), reverse=True)

    assert ranked[1] < verdict.outside < 0.5
    assert verdict.runner_up.startswith("none of these, ")
    assert ", then 195" in verdict.runner_up


def test_likeliest_year_comes_next_where_none_of_these_leads():
    """Or who is told of a second year alone would take it for the likelier one."""
    strange = {"rings": "red", "numeral": "plain", "pad": 11.5, "stamp": "X999A"}
    verdict = judge(prepare(replace(GUIDE, outside=0.4)), find(strange))
    (first, p), (second, q) = sorted(verdict.model_years, key=lambda each: -each[1])[:2]

    assert verdict.leading is None
    assert verdict.runner_up.startswith(
        f"{first}, {percent(p)}, then {second}, {percent(q)}"
    )


def test_settled_claim_leaves_the_year_to_look_for():
    """Or a claim that the readings rule out would hide every clue that is left."""
    told = {"stamp": "C?17?"}
    open_ = judge(TABLES, find(told))
    claimed = judge(TABLES, replace(find(told), claim=Claim(1952)))

    assert claimed.exhausted == open_.exhausted == ""
    assert claimed.next == open_.next


def test_likeliest_month_is_named_only_where_it_stands_out():
    level = tuple((t, 0.1) for t in range(600, 610))
    peaked = tuple((t, 0.55 if t == 604 else 0.05) for t in range(600, 610))

    assert built(level) == "built between January 50 and October 50"
    assert built(peaked).endswith(", most likely about May 50")


def test_likeliest_month_lies_in_the_stretch():
    """A month of under five per cent is the likeliest of many, and is cut off."""
    months = ((600, 0.048), *((t, 0.034) for t in range(601, 629)))

    assert built(months) == "built between February 50 and April 52"


def test_two_years_told_as_alike_are_both_named():
    years = tuple(replace(year, volume=1.0) for year in GUIDE.years[:2])
    tables = prepare(replace(GUIDE, years=years, clues=(NUMERAL,)))

    assert judge(tables, find({"numeral": "plain"})).say == "1951 or 1952: 50 % each"
    leaning = judge(tables, find({"numeral": "letter"}))
    assert leaning.say == "leaning to 1951 or 1952: 38 % each"
    # A year that leads as much as the other is no runner-up.
    assert not re.search("195[12]", leaning.runner_up)


def test_years_told_as_alike_are_level():
    shares = SimpleNamespace(years=[0.33, 0.33, 0.33, 0.01])

    assert level(shares) == (0, 1, 2)
    assert level(SimpleNamespace(years=[0.31, 0.01, 0.32, 0.36])) == ()
    assert level(SimpleNamespace(years=[0.01, 0.494, 0.01, 0.486])) == (1, 3)


def test_years_of_a_long_guide_are_level_by_their_odds():
    """Each has so little that what is ruled out is told within a point of it."""
    shares = SimpleNamespace(years=[0.0125] * 78 + [0.0] * 20 + [0.02])

    assert level(shares) == ()
    assert level(SimpleNamespace(years=shares.years[:-1])) == tuple(range(78))


def test_unlikely_runner_up_is_still_told_by_what_is_left():
    """How unlikely a year is does not keep a clue from telling it."""
    verdict = judge(TABLES, find({**GOOD, "stamp": "C218A"}))

    assert verdict.model_years[1][1] > 0.9
    assert "no clue left" not in verdict.runner_up


def test_no_clue_is_left_that_a_look_would_contradict():
    for seed in range(60):
        verdict = judge(TABLES, Find(GUIDE.id, random_find(seed).items[:1]))
        _, _, lack = verdict.runner_up.partition("no clue left would tell ")
        pair = sorted(lack.split(" from "))
        told = [re.findall(r"\d{4}", each.say) for each in verdict.next]
        assert pair not in told


def test_nothing_read_of_a_part_raises_no_flag():
    """That such parts are usually replaced is said, and is no finding."""
    usual = [
        replace(part, replaced=0.8) if part.id == "collar" else part
        for part in GUIDE.parts
    ]
    tables = prepare(replace(GUIDE, parts=tuple(usual)))

    bare = judge(tables, find({"pad": 5.9}))
    states = {state.part: state.say for state in bare.replaced}
    read = judge(tables, find({"pad": 5.9, "rings": "none"}))

    assert states["collar"] == "not looked at; such parts are usually replaced"
    assert not [flag for flag in bare.flags if flag.kind == "replaced"]
    assert [flag.about for flag in read.flags if flag.kind == "replaced"] == [
        ("collar",)
    ]
