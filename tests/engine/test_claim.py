"""Claims: factors against a textbook and brute force, and each cited clue alone."""

import math
from dataclasses import replace

import pytest

from fieldid.engine.claim import claim, factor, fitting, odds, place
from fieldid.engine.find import Claim, Find, Item
from fieldid.engine.judge import judge
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare
from kittiwake import GUIDE, find
from make import choice, guide, model_year, option, part, span
from oracle import set_truth, truth

TABLES = prepare(GUIDE)
GOOD = {"rings": "green", "stamp": "C?18?", "numeral": "plain", "pad": 5.9}


def cited(readings, clue, *, gone=(), year=1952):
    """What one cited clue is said to be worth, of one object."""
    verdict = judge(TABLES, find(readings, gone, claim=Claim(year, (clue,))))
    return verdict.claim.cited[0]


def of_set(*items, cites=(), year=1952):
    """The claim on a set of the small guide; items as (member, readings)."""
    made = tuple(Item(tuple(a.items()), (), member) for member, a in items)
    return judge(TABLES, Find(GUIDE.id, made, Claim(year, cites))).claim


def test_factor_equals_the_textbook_example():
    """D. J. C. MacKay, Information Theory, Inference, and Learning Algorithms (2003),
    example 2.3, cited from memory: a disease that 1 in 100 has, a test that is right
    in 95 of 100 cases; after a positive one the disease has probability 0.16.
    """
    ill, well = (1951, 1951), (1952, 1952)
    test = choice(
        "test",
        option("positive", span(ill, share=0.95), span(well, share=0.05)),
        option("negative", span(ill, share=0.05), span(well, share=0.95)),
        misread=0.0,
    )
    tables = prepare(
        guide(
            test,
            floor=0.0,
            outside=0.0,
            years=(model_year(1951, volume=1.0), model_year(1952, volume=99.0)),
            parts=(part(replaced=0.0),),
        )
    )
    posterior = weigh(tables, Item((("test", "positive"),)))

    assert round(posterior.years[0], 2) == 0.16
    assert factor(tables, posterior, 0) == pytest.approx(0.95 / 0.05)


def test_factor_is_posterior_over_prior_odds():
    verdict = judge(TABLES, find(GOOD, claim=1952))

    want = truth(GUIDE, GOOD).years[1952]
    prior = truth(GUIDE, {}).years[1952]
    assert verdict.claim.bayes_factor == pytest.approx(
        want / (1 - want) / (prior / (1 - prior))
    )
    assert verdict.claim.say.startswith(
        "What was read is very strong evidence for 1952: that year fits "
    )


def test_odds_of_what_is_ruled_out_are_a_number():
    assert 0 < odds(TABLES, [0.0, 0.5, 0.5, 0.0, 0.0], (0, 0)) < 1e-100
    assert 1e100 < odds(TABLES, [1.0, 0.0, 0.0, 0.0, 0.0], (0, 0)) < math.inf


def test_unlikely_claim_is_flagged():
    verdict = judge(TABLES, find(GOOD, claim=1954))

    assert "claim" in [flag.kind for flag in verdict.flags]
    assert " evidence against 1954: that year fits " in verdict.claim.say


def test_claim_without_readings_weighs_nothing():
    weighed = judge(TABLES, find(claim=1952)).claim

    assert weighed.bayes_factor == pytest.approx(1)
    assert weighed.say == "What was read so far speaks neither for nor against 1952."


@pytest.mark.parametrize(
    ("readings", "clue", "sentence"),
    [
        (
            {"scoring": "lines"},
            "scoring",
            "Taken alone, the face scoring would prove next to nothing: "
            "any of 1951-1954.",
        ),
        (
            {"band": "S"},
            "band",
            "Taken alone, the grip band letter would be positive evidence against "
            "1952 and point to 1954.",
        ),
        (
            {"stamp": "C218A"},
            "stamp",
            "Taken alone, the hosel letters would be very strong evidence for 1952.",
        ),
    ],
)
def test_cited_clue_is_weighed_alone(readings, clue, sentence):
    found = cited({**GOOD, **readings}, clue)

    assert found.read
    assert found.say == sentence


@pytest.mark.parametrize(
    ("clue", "reading", "sentence"),
    [
        (
            "scoring",
            "lines",
            "If read as on most 1952s (lines), the face scoring alone would prove "
            "next to nothing: any of 1951-1954.",
        ),
        (
            "stamp",
            "?218?",
            "If read as on most 1952s (?218?), the hosel letters alone would be "
            "very strong evidence for 1952.",
        ),
        (
            "pad",
            5.85,
            "If read as usual on 1952s (5.85 mm), the pad thickness alone would prove "
            "next to nothing: any of 1951-1952.",
        ),
    ],
)
def test_cited_clue_is_worth_something_before_it_is_read(clue, reading, sentence):
    """As much as if it showed what the claimed year mostly shows."""
    found = cited({}, clue)

    assert not found.read
    assert found.say == sentence
    assert found.factor == pytest.approx(cited({clue: reading}, clue).factor)


def test_what_could_not_be_told_was_not_read():
    assert cited({"scoring": None}, "scoring") == cited({}, "scoring")


def test_other_readings_change_no_cited_clue():
    assert cited(GOOD, "scoring") == cited({}, "scoring")


def test_less_than_half_is_most_often():
    rings = choice("rings", *(option(id, span(share=s)) for id, s in SHARES))
    tables = prepare(guide(rings))
    told = claim(tables, [Item()], weigh(tables, Item()), Claim(1951, ("rings",)))

    assert told.cited[0].say.startswith("If read as most often on 1951s (navy), ")


SHARES = (("green", 0.3), ("navy", 0.4), ("red", 0.3))


def test_clue_on_a_gone_part_cannot_be_read():
    found = cited({}, "rings", gone=["collar"])

    assert (found.read, found.factor) == (False, 1.0)
    assert found.say == "With the collar went the collar rings."


def test_silent_guide_supposes_nothing():
    """It has no size for 1954, and none for a member that is not known."""
    found = cited({}, "pad", year=1954)

    assert (found.read, found.factor) == (False, 1.0)
    assert found.say == (
        "The guide does not say what the pad thickness of a 1954 shows."
    )


def test_cited_clue_of_a_set_is_weighed_over_its_readers():
    weighed = of_set(
        ("7", {"stamp": "C218A", "pad": 7.0}),
        ("W", {"stamp": "C218A"}),
        cites=("stamp", "pad"),
    )

    alone = [({"stamp": "C218A"}, (), "7"), ({"stamp": "C218A"}, (), "W")]
    found, before = set_truth(GUIDE, alone), set_truth(GUIDE, [({}, (), "7")])
    after, prior = found.years[1952], before.years[1952]
    stamp, pad = weighed.cited
    assert stamp.factor == pytest.approx(
        after / (1 - after) / (prior / (1 - prior)), rel=1e-9
    )
    # A single reader is one object.
    assert pad.factor == pytest.approx(
        factor(TABLES, weigh(TABLES, Item((("pad", 7.0),), (), "7")), 1)
    )


def test_unread_clue_is_supposed_on_all_of_a_set():
    (found,) = of_set(("7", {}), ("W", {}), cites=("scoring",)).cited

    assert not found.read
    assert found.say.startswith(
        "If read on all of them as on most 1952s (lines), the face scoring alone would "
    )


def test_members_that_differ_are_supposed_each_its_own():
    """A wedge has a letter where the irons have a numeral."""
    (found,) = of_set(("7", {}), ("W", {}), cites=("numeral",)).cited

    assert found.say.startswith("If read on all of them as on most 1952s, the sole ")


def test_claim_on_a_set_is_the_sets():
    readings = {"stamp": "C218A"}
    weighed = of_set(("7", readings), ("W", readings))

    found = set_truth(GUIDE, [(readings, (), "7"), (readings, (), "W")])
    prior = set_truth(GUIDE, [({}, (), "7")]).years[1952]
    after = found.years[1952]
    assert weighed.bayes_factor == pytest.approx(
        after / (1 - after) / (prior / (1 - prior)), rel=1e-9
    )


def test_years_that_fit_half_as_well_share_a_reading():
    """However many of each were made: the shares are held against the prior."""
    tables = prepare(replace(GUIDE, outside=0.0))
    prior = [sum(tables.prior[start:stop]) for start, stop in tables.stretches]

    assert fitting(tables, prior) == [1951, 1952, 1953, 1954]
    halved = [p / (1, 1, 2, 2.01)[y] for y, p in enumerate(prior)]
    assert fitting(tables, halved) == [1951, 1952, 1953]


def test_place_is_counted_from_the_first_year():
    assert [place(TABLES, year) for year in (1951, 1954)] == [0, 3]
