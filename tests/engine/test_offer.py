"""The offer: what a find is worth, by brute force and by hand, and what is said."""

import json
import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import make_offers
import offer_oracle
import offers
from bags import small_guide, small_set
from fieldid.engine import Find, Item, prepare
from fieldid.engine.deal import Deal
from fieldid.engine.guide import Members, Off, PartPrice, Prices, SetPrices
from fieldid.engine.offer import offer, starting
from fieldid.engine.worth import both
from kittiwake import GUIDE, random_find
from make import choice, find, guide, option, part, span
from make_vectors import differences

BAND = choice("band", option("black", span((1951, 1951))), option("red"), part="grip")
SMALL = guide(
    BAND,
    parts=(part("shaft", 0.2), part("grip", 0.3)),
    members=Members(("3", "4", "5", "W"), ("3", "4", "5", "W"), 0.0, (("W", 0.3),)),
    outside=0.0,
)
PRICES = Prices(
    "EUR",
    "",
    "",
    ((1951, 200.0), (1952, 100.0)),
    10.0,
    (("worn", Off(share=0.2)),),
    (PartPrice("shaft", Off(share=0.5)), PartPrice("grip", Off(20.0), 12.0)),
)
OF_SETS = replace(
    PRICES,
    set=SetPrices(
        ((1951, 900.0), (1952, 300.0)), missing=Off(share=0.1), stray=Off(share=0.6)
    ),
)
# As made for certain, so that sums can be followed by hand.
SURE = replace(SMALL, parts=(part("shaft", 0.0), part("grip", 0.0)))


def answer(under=SMALL, known=None, prices=PRICES, **deal):
    return offer(prepare(under), known or find(), prices=prices, deal=Deal(**{**deal}))


def bag(*members: str, **item) -> Find:
    return Find("plain", tuple(Item(member=member, **item) for member in members))


@pytest.mark.parametrize("size", [1, 2, 3])
@pytest.mark.parametrize("seed", range(10))
def test_worth_equals_brute_force(seed, size):
    under, dice = small_guide(seed), random.Random(seed)
    items = small_set(under, 300 + seed)[:size]
    prices, deal = offers.prices_by_lot(under, dice), Deal(90.0, 10.0, "worn", 5.0)
    told = [(dict(item.readings), item.gone, item.member) for item in items]
    wanted = (
        offer_oracle.one(under, told[0], prices, "worn")
        if size == 1
        else offer_oracle.several(under, told, prices, "worn")
    )
    found = offer(prepare(under), Find(under.id, items), prices=prices, deal=deal)
    bargain = (0.9, 9000 + 0.9 * 500)

    assert found.expected == pytest.approx(wanted.mean / 100 - 5, abs=1e-9)
    assert found.low == pytest.approx(wanted.at(0.1) / 100 - 5, abs=1e-9)
    assert found.high == pytest.approx(wanted.at(0.9) / 100 - 5, abs=1e-9)
    perfect = (wanted.knowing(*bargain) - wanted.better(*bargain)) / 100
    assert found.perfect == pytest.approx(perfect, abs=1e-9)


@pytest.mark.parametrize("seed", range(8))
def test_worth_of_many_parts_equals_brute_force(seed):
    """Six parts, three of which follow: the forest and not the parts one by one."""
    known = random_find(seed)
    [item] = known.items
    prices = offers.prices_by_lot(GUIDE, random.Random(seed))
    told = (dict(item.readings), item.gone, item.member)
    wanted = offer_oracle.one(GUIDE, told, prices)
    found = answer(GUIDE, known, prices)

    assert found.expected == pytest.approx(wanted.mean / 100, abs=1e-9)
    assert (found.low, found.high) == (wanted.at(0.1) / 100, wanted.at(0.9) / 100)


def test_parts_that_go_together_widen_the_range():
    """The same rates, but the grip goes when the shaft does: from the joint, not from
    each part by itself.
    """
    flat = replace(PRICES, worth=((1951, 200.0), (1952, 200.0)))
    apart = replace(SMALL, parts=(part("shaft", 0.15), part("grip", 0.15)))
    after = part("grip", 0.0, follows="shaft", share=1.0)
    together = replace(SMALL, parts=(part("shaft", 0.15), after))
    one, other = (answer(each, prices=flat) for each in (apart, together))

    assert one.expected == pytest.approx(other.expected)
    assert (one.low, one.high) == (100.0, 200.0)
    assert (other.low, other.high) == (88.0, 200.0)


def test_offers_are_what_python_says():
    """The finds, prices and deals are drawn again too; the phone runs the same."""
    stored = json.loads(make_offers.FILE.read_text())
    made = [make_offers.made(guide) for guide in offers.guides()]

    assert list(differences(stored, json.loads(json.dumps(made)))) == []


def test_sum_by_hand_is_the_worth():
    """Half are 1951; 200 or 100, less half for the shaft and 12 for the grip."""
    found = answer()

    assert found.expected == pytest.approx(150 - 0.2 * (100 + 50) / 2 - 0.3 * 12)


def test_part_that_is_gone_takes_off():
    found = answer(known=find(gone=["shaft"]), under=replace(SMALL, clues=(BAND,)))

    assert found.expected == pytest.approx(150 - 75 - 0.3 * 12)


def test_year_without_a_price_is_worth_the_other():
    found = answer(SURE, prices=replace(PRICES, worth=((1951, 200.0),)))

    assert (found.low, found.high) == (10.0, 200.0)
    assert found.expected == pytest.approx(105.0)


def test_none_of_these_is_worth_the_other():
    found = answer(replace(SURE, outside=0.5))

    assert found.expected == pytest.approx(0.5 * 150 + 0.5 * 10)


def test_condition_and_costs_come_off():
    found = answer(SURE, condition="worn", costs=15.0)

    assert found.expected == pytest.approx(0.8 * 150 - 15)
    assert (found.low, found.high) == (0.8 * 100 - 15, 0.8 * 200 - 15)


DEAR = replace(
    PRICES,
    worth=(),
    other=30.0,
    parts=(PartPrice("shaft", Off(24.0)), PartPrice("grip", Off(18.0))),
)


def test_part_takes_off_what_it_says():
    """However much the others would take off, were they replaced too."""
    one = part("grip", 0.0)
    found = answer(replace(SMALL, parts=(part("shaft", 0.2), one)), prices=DEAR)

    assert found.expected == pytest.approx(30 - 0.2 * 24)


def test_parts_together_take_off_no_more_than_all():
    """Of 30, the shaft takes 24 and the grip 18: 30 where both are replaced."""
    found = answer(prices=DEAR)
    lost = 0.2 * 0.7 * 24 + 0.8 * 0.3 * 18 + 0.2 * 0.3 * 30

    assert found.expected == pytest.approx(30 - lost)
    assert found.low == 6.0


def test_parts_of_an_item_spare_the_others():
    """An iron that is worth nothing leaves the rest of its set what it was."""
    gone = Item(member="3", gone=("shaft", "grip"))
    known = Find("plain", (gone, Item(member="4")))
    found = answer(
        replace(SURE, parts=(part("shaft", 1e-9), part("grip", 1e-9))), known, DEAR
    )

    assert found.expected == pytest.approx(30.0, abs=1e-5)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10**6), st.floats(0, 1), st.floats(0, 400))
def test_dearer_part_never_raises_the_worth(seed, share, more):
    """Nor does a stray that takes off more, in an object or a set."""
    under, dice = small_guide(seed % 20), random.Random(seed)
    items = small_set(under, seed)[: 1 + seed % 3]
    prices = offers.prices_by_lot(under, dice)
    dearer = [
        replace(prices, parts=tuple(dearest(p, share, more) for p in prices.parts)),
        *(
            replace(
                prices,
                parts=tuple(
                    dearest(p, share, more) if p == one else p for p in prices.parts
                ),
            )
            for one in prices.parts
        ),
    ]
    if prices.set:
        stray = raised(prices.set.stray, share, more)
        dearer.append(replace(prices, set=replace(prices.set, stray=stray)))
    tables, known = prepare(under), Find(under.id, items)
    before = offer(tables, known, prices=prices, deal=Deal()).expected

    for each in dearer:
        after = offer(tables, known, prices=each, deal=Deal()).expected
        assert after <= before + 1e-9


def dearest(price: PartPrice, share: float, more: float) -> PartPrice:
    """The part with more taken off, and nothing that it could be put right for."""
    return PartPrice(price.part, raised(price.off, share, more), None)


def raised(off: Off, share: float, more: float) -> Off:
    return Off(off.amount + more, off.share + (1 - off.share) * share)


def test_member_that_is_missing_takes_off():
    """Of a set sold as 3 to wedge one is lacking; wedges were bought apart."""
    whole = answer(SURE, bag("3", "4", "5"), OF_SETS)
    lacking = answer(SURE, bag("3", "4"), OF_SETS)

    assert whole.expected == pytest.approx(600.0)
    assert lacking.expected == pytest.approx(0.9 * 600.0)


def test_stray_takes_off_its_share():
    """Each of three counts for a third of the set, and a stray for 0.4 of that."""
    strays = replace(SURE.members, stray=0.25)
    found = answer(replace(SURE, members=strays), bag("3", "4", "5"), OF_SETS)

    assert found.expected == pytest.approx(600 * (1 - 0.25 * 0.6))


def test_stray_that_is_often_bought_apart_takes_off_nothing():
    often = replace(SURE.members, stray_for=tuple((m, 0.3) for m in "345W"))
    found = answer(replace(SURE, members=often), bag("3", "4", "5"), OF_SETS)

    assert found.expected == pytest.approx(600.0)


def test_set_without_a_price_is_worth_its_members():
    found = answer(SURE, bag("3", "4"), PRICES)

    assert (found.low, found.high) == (200.0, 400.0)


def test_part_replaced_on_a_whole_set_takes_off_on_each():
    whole = replace(SURE, parts=(part("shaft", 0.0, whole_set=0.5), part("grip", 0.0)))
    flat = replace(PRICES, worth=((1951, 100.0), (1952, 100.0)))
    found = answer(whole, bag("3", "4"), flat)

    assert (found.low, found.high) == (100.0, 200.0)
    assert found.expected == pytest.approx(150.0)


def test_margin_lowers_the_walk_away_price():
    assert answer(SURE).walk == 150.0
    assert answer(SURE, margin=25.0).walk == 113.0
    assert answer(SURE, margin=100.0).walk == 0.0


@pytest.mark.parametrize(
    ("deal", "advice", "say"),
    [
        (
            {"asked": 80.0},
            "buy",
            "Buy: the 80.00 EUR asked is no more than it is worth to you.",
        ),
        (
            {"asked": 80.0, "margin": 25.0},
            "buy",
            "Buy: the 80.00 EUR asked leaves you the 25 % that you want.",
        ),
        (
            {"asked": 180.0},
            "offer",
            "Offer up to 150 EUR: the 180 EUR asked is more than it is worth to you.",
        ),
        (
            {"asked": 120.0, "margin": 25.0},
            "offer",
            "Offer up to 113 EUR: the 120 EUR asked would not leave you the 25 % that "
            "you want.",
        ),
        ({}, "offer", "Offer up to 150 EUR: if you pay more, expect to lose by it."),
        (
            {"margin": 20.0},
            "offer",
            "Offer up to 120 EUR: if you pay more, expect less than the 20 % that you "
            "want.",
        ),
        (
            {"asked": 250.0},
            "walk",
            "Walk away: the 250 EUR asked is more than it is worth to you, even where "
            "it turns out well.",
        ),
        (
            {"asked": 160.0, "margin": 25.0},
            "walk",
            "Walk away: the 160 EUR asked would not leave you the 25 % that you want, "
            "even where it turns out well.",
        ),
        (
            {"asked": 10.0, "costs": 200.0},
            "walk",
            "Walk away: after all costs it is worth nothing to you.",
        ),
        (
            {"asked": 10.0, "margin": 100.0},
            "walk",
            "Walk away: no price leaves you the 100 % that you want.",
        ),
    ],
)
def test_advice_has_its_reason(deal, advice, say):
    found = answer(SURE, **deal)

    assert (found.advice, found.say) == (advice, say)


def test_range_is_said_in_money():
    assert answer(SURE).range_say == (
        "On average it is worth 150 EUR to you, and four times in five between 100 EUR "
        "and 200 EUR."
    )
    assert answer(SURE, prices=replace(PRICES, worth=())).range_say == (
        "It is worth 10.00 EUR to you."
    )
    rare = replace(SURE, outside=0.05)
    flat = replace(PRICES, worth=((1951, 90.0), (1952, 90.0)))
    assert answer(rare, prices=flat).range_say == (
        "On average it is worth 86.00 EUR to you, and mostly 90.00 EUR."
    )


def test_note_says_that_it_is_no_appraisal():
    given = replace(PRICES, date="2026-02-01", source="Invented.")

    assert answer().note == "This is arithmetic on your own prices, not an appraisal."
    assert answer(prices=given).note == (
        "This is arithmetic on this guide's invented prices of 1 February 2026, which "
        "you can change to your own, not an appraisal."
    )


def test_without_prices_nothing_is_advised():
    found = answer(prices=starting(SMALL), asked=10.0)

    assert (found.advice, found.range_say) == ("", "")
    assert found.say == "Say first what each model year is worth to you."


def test_without_a_price_asked_no_look_is_weighed():
    found = answer()

    assert (found.perfect, found.perfect_say, found.looks) == (None, "", ())
    assert found.looks_say.startswith("Say what is asked")


def test_look_is_held_against_its_time():
    """A black band has 0.9706 of the 1951s and half of the others: it leaves
    0.4853 * 200 + 0.25 * 100 - 0.7353 * 160 to whoever buys where it is black.
    """
    cheap = answer(SURE, asked=160.0, hour=36.0)
    dear = answer(SURE, asked=160.0, hour=36_000.0)

    assert cheap.looks_say == "Look at the band before you decide."
    assert dear.looks_say == "Nothing left to look at is worth its time: decide now."
    [look] = cheap.looks
    assert (look.time, look.per_minute) == (0.1, pytest.approx(6 * look.worth))
    assert look.say == (
        "Reading the band is worth 4.41 EUR to this decision: worth its 10 seconds, "
        "which cost you 0.10 EUR."
    )
    assert "not worth its 10 seconds, which cost you 100 EUR." in dear.looks[0].say
    assert answer(SURE, asked=160.0).looks[0].say.endswith("and takes 10 seconds.")


def test_look_must_be_worth_stooping_for():
    """Where no hour has a price: more than a hundredth of what is asked."""
    clear, faint = (
        answer(replace(SURE, clues=(replace(BAND, unreadable=u),)), asked=160.0)
        for u in (0.6, 0.7)
    )

    assert (clear.looks[0].worth > 1.6, faint.looks[0].worth < 1.6) == (True, True)
    assert (clear.looks[0].pays, faint.looks[0].pays) == (True, False)
    assert clear.looks_say == "Look at the band before you decide."
    assert faint.looks_say == (
        "What is left to look at is worth little to this decision: decide now."
    )


def test_nothing_to_look_at_is_said():
    found = answer(replace(SURE, clues=()), asked=160.0)

    assert found.looks_say == "There is nothing more to look at: decide now."


def test_looks_begin_with_the_most_a_minute():
    slow = replace(BAND, id="slow", name="slow", seconds=90.0)
    found = answer(replace(SURE, clues=(slow, BAND)), asked=160.0)

    assert [look.clue for look in found.looks] == ["band", "slow"]
    assert found.looks[0].worth == found.looks[1].worth


def test_look_that_changes_nothing_says_so():
    found = answer(SURE, asked=5.0)

    assert found.looks_say == (
        "What is left to look at would hardly change what you decide."
    )
    assert found.looks[0].say == (
        "Whatever the band shows, you would hardly decide otherwise."
    )
    assert found.perfect_say.startswith("If you knew everything about it")


def test_reading_that_cannot_be_told_is_worth_less():
    half = replace(SURE, clues=(replace(BAND, unreadable=0.5),))
    sure, unsure = (answer(each, asked=160.0).looks[0] for each in (SURE, half))

    assert unsure.worth == pytest.approx(sure.worth / 2)


def test_limits_leave_out_looks():
    tools = replace(SURE, clues=(replace(BAND, needs="callipers", photo=""),))
    tables, deal = prepare(tools), Deal(asked=160.0)
    limits = ({"away": True}, {"without": ("callipers",)}, {"photos": True}, {})
    found = [offer(tables, find(), prices=PRICES, deal=deal, **each) for each in limits]

    assert [len(each.looks) for each in found] == [0, 0, 0, 1]


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10**6))
def test_order_of_taps_changes_no_offer(seed):
    under, dice = small_guide(seed % 20), random.Random(seed)
    items = small_set(under, seed)[: 1 + seed % 3]
    turned = tuple(replace(item, readings=item.readings[::-1]) for item in items)
    tables, prices = prepare(under), offers.prices_by_lot(under, dice)
    deal = Deal(asked=50.0)
    first, second = (
        offer(tables, Find(under.id, each), prices=prices, deal=deal)
        for each in (items, turned)
    )

    assert first == second


@given(
    st.lists(st.tuples(st.integers(0, 9), st.floats(0.01, 1)), min_size=1),
    st.lists(st.tuples(st.integers(0, 9), st.floats(0.01, 1)), min_size=1),
)
def test_losses_together_keep_mean_and_weight(a, b):
    def weight(losses):
        return sum(p for _, p in losses)

    def mean(losses):
        return sum(x * p for x, p in losses) / weight(losses)

    found = both(tuple(a), tuple(b))

    assert [x for x, _ in found] == sorted({x + y for x, _ in a for y, _ in b})
    assert weight(found) == pytest.approx(weight(a) * weight(b))
    assert mean(found) == pytest.approx(mean(a) + mean(b))
