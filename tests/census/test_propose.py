"""Which specimens count for which span, and what is said of the counts."""

import random

import pytest

from confirmed import MIXED, census, rings, specimen
from fieldid.census.interval import against, interval
from fieldid.census.learn import learn
from fieldid.census.propose import proposals, unforeseen
from fieldid.engine import prepare
from fieldid.engine.guide import Members
from fieldid.guides.load import load
from fieldid.paths import RULES
from make import choice, guide, model_year, option, part, span
from specimens import specimen as drawn_by_lot

SURE = (part("head", 0.0),)


def proposed(found, *specimens):
    tables = prepare(found)
    return {
        each.name: each for each in proposals(tables, learn(tables, census(*specimens)))
    }


def capped(*options, **rest):
    """A guide of two years whose one clue is always right."""
    rest.setdefault("years", (model_year(1951), model_year(1952)))
    return guide(choice("cap", *options, misread=0.0), parts=SURE, **rest)


def test_specimens_of_the_span_are_looked_at():
    found = proposed(
        capped(option("plain", span((1951, 1951), share=0.5)), option("star")),
        specimen(1951, cap="plain"),
        specimen(1951, cap="star"),
        specimen(1951, cap=None),
        specimen(1952, cap="plain"),
    )
    [each] = found.values()

    assert (each.name, each.count, each.specimens) == ("cap.plain.1", "1/2", 2)
    assert (each.seen, each.looked) == pytest.approx((1, 2))
    assert each.proposed == 1.5 / 3
    assert (each.low, each.high) == pytest.approx(interval(1, 2))


def test_widest_share_is_the_one_that_counts():
    """As in the engine: where two spans cover a year, the larger share holds."""
    found = proposed(
        capped(
            option("plain", span((1951, 1951), share=0.5), span(share=0.3)),
            option("star", span(share=0.5)),
        ),
        *(specimen(1951, cap="plain") for _ in range(4)),
        *(specimen(1952, cap="star") for _ in range(3)),
    )

    assert found["cap.plain.1"].count == "4/4"
    assert found["cap.plain.2"].count == "0/3"
    assert found["cap.star.1"].count == "3/7"


def test_months_of_fading_count_for_none():
    """A year of twelve months of which the last three are the fade."""
    short = capped(
        option("plain", span(until="1951-09", fade=3, share=0.8)),
        option("star", span((1952, 1952), share=0.8)),
        years=(model_year(1951), model_year(1952)),
    )
    found = proposed(short, *(specimen(1951, cap="plain") for _ in range(8)))
    each = found["cap.plain.1"]

    assert each.seen == pytest.approx(each.looked)
    assert 0 < each.looked < 8
    assert each.looked == pytest.approx(8 * 9 / 12, abs=0.5)


def test_member_that_is_not_known_counts_for_no_members_span():
    split = capped(
        option(
            "plain", span(share=0.5, members=("W",)), span(share=0.4, excluded=("W",))
        ),
        option("star", span(share=0.5)),
        members=Members(("3", "W")),
    )
    found = proposed(
        split,
        specimen(1951, cap="plain", member="W"),
        specimen(1951, cap="plain", member="3"),
        specimen(1951, cap="plain"),
    )

    assert found["cap.plain.1"].count == "1/1"
    assert found["cap.plain.2"].count == "2/2"
    assert found["cap.star.1"].count == "0/3"


def test_span_without_specimens_is_not_proposed():
    found = proposed(rings(), specimen(1951, rings="green", cap="plain"))

    assert "cap.star.1" not in found
    assert "cap.plain.1" in found


def test_less_than_half_a_specimen_is_none():
    """A count in whole specimens would say 0 of 0."""
    split = capped(
        option("plain", span((1951, 1951))), option("star", span((1952, 1952)))
    )
    found = proposed(split, specimen({1951: 0.5, 1952: 0.5}, cap="plain"))

    assert set(found) == {"cap.plain.1"}


def test_expectation_takes_all_options_together():
    """Two options with a share of .6 each are as likely as each other."""
    found = proposed(
        capped(option("plain", span(share=0.6)), option("star", span(share=0.6))),
        *(specimen(1951, cap="plain") for _ in range(5)),
        *(specimen(1951, cap="star") for _ in range(5)),
    )

    assert found["cap.plain.1"].share == 0.6
    assert found["cap.plain.1"].expects == pytest.approx(0.5)
    assert found["cap.plain.1"].agrees


def test_factor_is_against_what_the_guide_expects():
    found = proposed(
        capped(option("plain", span(share=0.9)), option("star", span(share=0.1))),
        *(specimen(1951, cap="plain") for _ in range(3)),
        *(specimen(1951, cap="star") for _ in range(7)),
    )
    each = found["cap.plain.1"]

    assert each.factor == pytest.approx(against(3, 10, 0.91 / 1.02), rel=1e-6)
    assert not each.agrees


def test_disagreements_come_first_and_strongest():
    tables = prepare(rings())
    more = census(*MIXED.specimens, *(specimen(1953, cap="plain") for _ in range(6)))
    found = proposals(tables, learn(tables, more))
    order = [(each.agrees, -round(each.factor, 9)) for each in found]

    assert order == sorted(order)
    assert found[0].name == "cap.star.1"
    assert not found[0].agrees
    assert found[-1].agrees


def test_what_no_span_foresees_is_told():
    tables = prepare(
        capped(option("plain", span((1951, 1951))), option("star", span()))
    )
    seen = [specimen(1952, cap="plain") for _ in range(3)]
    [told] = unforeseen(tables, learn(tables, census(*seen)))

    assert (told.clue, told.option, told.years) == ("cap", "plain", (1952,))
    assert (told.seen, told.looked) == pytest.approx((3, 3))


def test_what_is_seen_once_may_be_a_slip():
    tables = prepare(
        capped(option("plain", span((1951, 1951))), option("star", span()))
    )

    assert unforeseen(tables, learn(tables, census(specimen(1952, cap="plain")))) == ()


def test_true_guide_is_seldom_contradicted():
    """Of specimens drawn from the guide's records, without the engine; the interval is
    one of 95 %, and most counts are small.
    """
    found = load(RULES / "wrackham-teale-dotterel.toml")
    dice = random.Random(3)
    seen = []
    while len(seen) < 90:
        drawn = drawn_by_lot(found, dice, dice.choice(found.members.all))
        if drawn.year:
            year = drawn.year if dice.random() < 0.8 else None
            item = {"member": drawn.member, "name": str(len(seen))}
            seen.append(specimen(year, **item, **dict(drawn.readings)))
    told = proposed(found, *seen)

    assert len(told) > 90
    assert sum(not each.agrees for each in told.values()) < 0.08 * len(told)
