"""What to look at next on a set, against brute force: every reading tried out."""

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bags import MEMBERS, settled, small_guide, small_set
from fieldid.engine.find import Item
from fieldid.engine.gain import entropy, prospects
from fieldid.engine.guide import Choice, Code, Measure, Number
from fieldid.engine.measure import CUTS, STEPS
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare
from fieldid.engine.setgain import set_prospects
from fieldid.engine.sets import weigh_set
from fieldid.engine.special import round9
from kittiwake import GUIDE as KITTIWAKE
from make import number
from oracle import clean, set_truth

seeds = st.integers(0, 10**6)
laws = settings(max_examples=50, deadline=None)
ANYTHING = {"claimed": None, "away": False, "without": (), "photos": False}


def ranked(guide, items, **limits):
    tables = prepare(guide)
    return set_prospects(
        tables, items, weigh_set(tables, items), **{**ANYTHING, **limits}
    )


def asked(guide, items, kind, **limits):
    """The prospects of one kind of clue, in the order of items and clues."""
    found = ranked(guide, items, **limits)
    found = [each for each in found if isinstance(guide.clues[each.k].kind, kind)]
    return sorted(found, key=lambda each: (each.item, each.k))


def years(guide, items, extra=None):
    """log P and the probability of each model year and outside, by brute force."""
    plain = [[dict(item.readings), item.gone, item.member] for item in items]
    if extra:
        i, clue, a = extra
        plain[i][0][clue.id] = a
    truth = set_truth(guide, plain)
    return truth.log_evidence, [*truth.years.values(), truth.outside]


def expected(guide, items, prospect, readings, aim=list):
    """Bits from learning which of the readings it is, or that it is another one."""
    clue = guide.clues[prospect.k]
    before, whole = years(guide, items)
    rest, bits = whole, entropy(aim(whole))
    for a in readings:
        after, told = years(guide, items, (prospect.item, clue, a))
        share = math.exp(after - before)
        bits -= share * entropy(aim(told))
        rest = [x - share * y for x, y in zip(rest, told, strict=True)]
    left = [max(x, 0.0) for x in rest]
    return (1 - clue.unreadable) * (bits - sum(left) * entropy(aim(left)))


def close(x):
    return pytest.approx(x, abs=1e-9)


@pytest.mark.parametrize("seed", range(12))
def test_gain_of_choices_equals_brute_force(seed):
    """With strays and clues on parts that may be replaced on the whole set."""
    guide = small_guide(seed)
    items = small_set(guide, seed)
    for prospect in asked(guide, items, Choice):
        options = [o.id for o in guide.clues[prospect.k].kind.options]

        assert prospect.bits == close(expected(guide, items, prospect, options))


@pytest.mark.parametrize("seed", range(12))
def test_gain_of_codes_equals_brute_force(seed):
    guide = small_guide(seed)
    items = small_set(guide, seed)
    for prospect in asked(guide, items, Code):
        readings = clean(guide, guide.clues[prospect.k])

        assert prospect.bits == close(expected(guide, items, prospect, readings))


@pytest.mark.parametrize("lag", [0.0, 1.5])
@pytest.mark.parametrize("seed", range(4))
def test_gain_of_numbers_equals_brute_force(seed, lag):
    """A serial, with a lag a patent, in place of the code; every number tried out."""
    guide = small_guide(seed)
    first = {1949: 1, 1950: 3, 1951: 4}
    clues = [
        number("stamp", first, 6, part=clue.part, lag=lag)
        if isinstance(clue.kind, Code)
        else clue
        for clue in guide.clues
    ]
    items = tuple(
        replace(item, readings=tuple((c, a) for c, a in item.readings if c != "stamp"))
        for item in small_set(guide, seed)
    )
    guide = replace(guide, clues=tuple(clues))
    found = asked(guide, items, Number)

    assert found
    for prospect in found:
        numbers = range(1, 7)
        assert prospect.bits == close(expected(guide, items, prospect, numbers))


@pytest.mark.parametrize("seed", range(3))
def test_gain_of_measures_equals_brute_force(seed):
    """Cut at the deciles of what brute force predicts for each step of the range."""
    guide = small_guide(seed)
    items = small_set(guide, seed)
    prospect = asked(guide, items, Measure)[0]
    readings = _deciles(guide, items, prospect)

    assert prospect.bits == close(expected(guide, items, prospect, readings))


def _deciles(guide, items, prospect):
    clue = guide.clues[prospect.k]
    before, _ = years(guide, items)
    low, width = clue.kind.low, (clue.kind.high - clue.kind.low) / STEPS
    cuts, run = [low], 0.0
    for i in range(STEPS):
        step = (low + i * width, low + (i + 1) * width)
        run += math.exp(years(guide, items, (prospect.item, clue, step))[0] - before)
        if run >= len(cuts) / CUTS - 1e-9 or i + 1 == STEPS:
            cuts.append(step[1])
    return [*pairwise(cuts)]


@pytest.mark.parametrize("seed", range(6))
def test_gain_for_a_claim_equals_brute_force(seed):
    guide = small_guide(seed)
    items = small_set(guide, seed)

    def for_and_against(years):
        return [years[1], sum(years) - years[1]]

    for prospect in asked(guide, items, Choice, claimed=1):
        options = [o.id for o in guide.clues[prospect.k].kind.options]
        bits = expected(guide, items, prospect, options, for_and_against)

        assert prospect.bits == close(bits)


@laws
@given(seeds)
def test_outcomes_are_a_distribution(seed):
    guide = small_guide(seed)
    items = small_set(guide, seed)
    posterior = weigh_set(prepare(guide), items)
    whole = pytest.approx([*posterior.years, posterior.outside], abs=1e-9)

    for prospect in ranked(guide, items):
        assert [sum(column) for column in zip(*prospect.rows, strict=True)] == whole
        assert prospect.bits >= -1e-12


@laws
@given(seeds, st.integers(0, len(MEMBERS) - 1))
def test_set_with_silent_others_ranks_as_one_object(seed, i):
    guide = settled(small_guide(seed))
    item = replace(small_set(guide, seed)[i], gone=())
    tables = prepare(guide)
    items = [Item(member=member) for member in MEMBERS]
    items[i] = item

    found = [each for each in ranked(guide, items) if each.item == i]

    want = prospects(tables, item, weigh(tables, item), **ANYTHING)
    assert sorted((a.k, a.bits) for a in found) == [
        (b.k, close(b.bits)) for b in sorted(want, key=lambda each: each.k)
    ]


@laws
@given(seeds, st.permutations(range(len(MEMBERS))))
def test_permuting_members_permutes_the_prospects(seed, order):
    guide = small_guide(seed)
    items = small_set(guide, seed)

    bits = {(each.item, each.k): each.bits for each in ranked(guide, items)}

    for each in ranked(guide, [items[i] for i in order]):
        assert each.bits == close(bits[order[each.item], each.k])


def test_ties_keep_order_of_items_then_clues():
    """Nothing read, and two clues that are the same but for their names."""
    scoring = KITTIWAKE.clues[1]
    guide = replace(KITTIWAKE, clues=(scoring, replace(scoring, id="again")))

    found = ranked(guide, [Item((), (), "7"), Item((), (), "W")])

    assert [(each.item, each.k) for each in found] == [(0, 0), (0, 1), (1, 0), (1, 1)]
    assert len({round9(each.bits) for each in found}) == 1


def test_answered_and_gone_are_not_asked_of_that_item():
    items = [Item((("rings", None),), ("head",), "7"), Item((), (), "W")]

    asked = {
        (each.item, KITTIWAKE.clues[each.k].id) for each in ranked(KITTIWAKE, items)
    }

    assert asked == {(0, "length"), (0, "band")} | {(1, c.id) for c in KITTIWAKE.clues}


def test_limits_leave_clues_out():
    items = [Item((), (), "7"), Item((), (), "W")]
    shown = replace(KITTIWAKE.clues[0], photo="Square on")
    pictured = replace(KITTIWAKE, clues=(shown, *KITTIWAKE.clues[1:]))

    assert {each.k for each in ranked(pictured, items, photos=True)} == {0}
    assert {each.k for each in ranked(pictured, items, away=True)} == {1}
    assert 3 not in {each.k for each in ranked(pictured, items, without=("callipers",))}


def test_clue_on_part_replaced_on_all_tells_nothing():
    """Whatever the collars show, it is the same source for all of them."""
    parts = tuple(
        replace(part, whole_set=float(part.id == "collar")) for part in KITTIWAKE.parts
    )
    items = [Item((("rings", "red"),), (), "7"), Item((), (), "W")]

    found = ranked(replace(KITTIWAKE, parts=parts), items)

    (rings,) = [each for each in found if each.k == 0]
    assert rings.bits == pytest.approx(0, abs=1e-12)
    shares = [sum(row) for row in rings.rows]
    assert max(shares) == shares[2] > 0.9
