"""The posterior of a set, held against two references and its own laws."""

import math
import sys
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import make
import network
from bags import MEMBERS, settled, small_guide, small_set
from fieldid.engine.find import Item
from fieldid.engine.guide import Code, Field, Members
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare
from fieldid.engine.sets import weigh_set
from kittiwake import GUIDE
from oracle import LIKELIHOODS, cells, set_truth, sources

SEEDS = range(30)
seeds = st.integers(0, 10**6)
laws = settings(max_examples=50, deadline=None)


def close(x):
    return pytest.approx(x, abs=1e-9, rel=1e-9)


def plain(items):
    """The items as the references take them."""
    return [(dict(item.readings), item.gone, item.member) for item in items]


def weighed(seed):
    guide = small_guide(seed)
    return weigh_set(prepare(guide), small_set(guide, seed))


@pytest.mark.parametrize("seed", SEEDS)
def test_set_equals_brute_force(seed):
    guide = small_guide(seed)
    items = small_set(guide, seed)

    got = weigh_set(prepare(guide), items)

    want = set_truth(guide, plain(items))
    assert list(got.years) == close(list(want.years.values()))
    assert got.outside == close(want.outside)
    assert list(got.stray) == close(want.stray)
    assert list(got.whole_set) == close(list(want.whole_set.values()))
    assert got.log_evidence == close(want.log_evidence)


@pytest.mark.parametrize("seed", SEEDS)
def test_item_never_seen_equals_brute_force(seed):
    guide = small_guide(seed)
    items = small_set(guide, seed)

    got = weigh_set(prepare(guide), items)

    for i in range(len(items)):
        rest = [*items[:i], *items[i + 1 :]]
        want = set_truth(guide, plain(rest))
        assert list(got.without[i]) == close([*want.years.values(), want.outside])


@pytest.mark.parametrize("seed", SEEDS)
def test_set_equals_inference_library(seed):
    """Source: pyAgrum's lazy propagation on the same network, exact inference."""
    guide = small_guide(seed)
    items = small_set(guide, seed)

    got = weigh_set(prepare(guide), items)

    cell, stray, whole_set, evidence = network.set_posterior(guide, plain(items))
    assert list(got.cells) == close(cell)
    assert list(got.stray) == close(stray)
    assert list(got.whole_set) == close(whole_set)
    assert got.log_evidence == close(math.log(evidence))


@laws
@given(seeds)
def test_probabilities_sum_to_one(seed):
    got = weighed(seed)

    assert sum(got.cells) == close(1)
    assert sum(got.years) + got.outside == close(1)
    assert [sum(years) for years in got.without] == close([1] * len(MEMBERS))
    assert all(-1e-12 <= p <= 1 + 1e-12 for p in (*got.stray, *got.whole_set))


@laws
@given(seeds)
def test_worlds_come_apart_by_item(seed):
    """What an item says times what all the rest says is what all say."""
    assert_apart(weighed(seed))


def assert_apart(got):
    for one, others in zip(got.standing, got.others, strict=True):
        for (fits, _), mean, rest, world in zip(
            one.fits, one.means, others, got.worlds, strict=True
        ):
            says = [(1 - one.stray) * x + one.stray * mean for x in fits]
            assert [x * y for x, y in zip(says, rest, strict=True)] == close(world)


def test_worlds_are_those_that_can_be():
    """The shaft follows the head, grip and collar the shaft; the head stays."""
    parts = (
        replace(GUIDE.parts[0], whole_set=0.2),
        GUIDE.parts[1],
        replace(GUIDE.parts[2], share=0.0),
        replace(GUIDE.parts[3], whole_set=0.4),
    )

    worlds = prepare(replace(GUIDE, parts=parts)).worlds

    told = {world.whole: world.prior for world in worlds}
    none, grip = (False, False, False, False), (True, False, False, False)
    shaft, both = (False, False, False, True), (True, False, False, True)
    assert told == {
        none: close(0.6 * 0.8),
        grip: close(0.6 * 0.2),
        shaft: close(0.4 * 0.3),
        both: close(0.4 * 0.7),
    }


@laws
@given(seeds, st.permutations(range(len(MEMBERS))))
def test_permuting_members_permutes_the_answer(seed, order):
    guide = small_guide(seed)
    items = small_set(guide, seed)
    tables = prepare(guide)

    got = weigh_set(tables, items)
    moved = weigh_set(tables, [items[i] for i in order])

    assert list(moved.cells) == close(list(got.cells))
    assert list(moved.whole_set) == close(list(got.whole_set))
    assert moved.log_evidence == close(got.log_evidence)
    assert list(moved.stray) == close([got.stray[i] for i in order])
    for place, i in enumerate(order):
        assert list(moved.without[place]) == close(list(got.without[i]))


@laws
@given(seeds, st.integers(0, len(MEMBERS) - 1), st.integers(0, 4))
def test_unread_clue_changes_nothing(seed, i, k):
    guide = small_guide(seed)
    items = list(small_set(guide, seed))
    tables = prepare(guide)
    clue = guide.clues[k].id
    rest = tuple(r for r in items[i].readings if r[0] != clue)
    silent = [*items[:i], replace(items[i], readings=rest), *items[i + 1 :]]
    untold = replace(items[i], readings=(*rest, (clue, None)))

    told = weigh_set(tables, [*items[:i], untold, *items[i + 1 :]])

    assert told == weigh_set(tables, silent)


@laws
@given(seeds, st.integers(0, len(MEMBERS) - 1))
def test_set_with_silent_others_equals_one_object(seed, i):
    guide = settled(small_guide(seed))
    item = replace(small_set(guide, seed)[i], gone=())
    tables = prepare(guide)
    items = [Item(member=member) for member in MEMBERS]

    got = weigh_set(tables, [*items[:i], item, *items[i + 1 :]])

    want = weigh(tables, item)
    assert list(got.cells) == close(list(want.cells))
    assert list(got.years) == close(list(want.years))
    assert got.log_evidence == close(want.log_evidence)
    assert got.stray == (0, 0, 0)
    assert got.whole_set == (0, 0, 0)


@laws
@given(seeds)
def test_unread_members_are_strays_as_often_as_any(seed):
    guide = small_guide(seed)
    items = [*small_set(guide, seed)[:2], Item(member="W")]

    got = weigh_set(prepare(guide), items)

    assert got.stray[2] == close(dict(guide.members.stray_for)["W"])


def test_what_is_gone_tells_items_apart():
    tables = prepare(GUIDE)
    items = [Item(member="7"), Item((), ("grip",), "W")]

    got = weigh_set(tables, items)

    assert got.log_evidence == close(weigh(tables, items[1]).log_evidence)
    assert got.log_evidence < 0


def test_part_always_replaced_on_all_says_nothing_of_the_year():
    """Its clues then tell one source, whatever they show."""
    parts = tuple(replace(p, whole_set=1.0) for p in GUIDE.parts if p.id == "collar")
    parts = tuple(p for p in GUIDE.parts if p.id != "collar") + parts
    tables = prepare(replace(GUIDE, parts=parts))
    items = [Item((("rings", "green"),), (), member) for member in ("7", "W")]

    got = weigh_set(tables, items)

    assert list(got.cells) == close(list(tables.prior))
    assert got.whole_set == close((0, 0, 0, 1))
    silent = weigh_set(tables, [Item(member=member) for member in ("7", "W")])
    assert got.log_evidence < silent.log_evidence


TEN = tuple("23456789WS")


def at_a_hundredth(*, members, clues, outside, stray):
    """Items with so many readings, each near 0.01 under every hypothesis."""
    codes = ((1951, "17"), (1952, "18"))
    number = Field("n", "model-year", 2, "0123456789", 0.01, codes)
    numbers = make.guide(
        *(make.code(f"number-{k}", number, misread=0.1) for k in range(clues)),
        parts=(make.part(replaced=0.1, whole_set=0.1),),
        members=Members(TEN, stray=stray),
        outside=outside,
    )
    read = ("00", "33", "55", "99")
    return numbers, [
        Item(
            tuple((c.id, read[(k + m) % 4]) for k, c in enumerate(numbers.clues)),
            member=member,
        )
        for m, member in enumerate(TEN[:members])
    ]


@pytest.mark.parametrize(
    "shape",
    [
        {"members": 10, "clues": 17, "outside": 0.02, "stray": 0.0},
        {"members": 10, "clues": 17, "outside": 0.02, "stray": 0.04},
        # As likely outside as replaced on all: lifted differently often, as a whole
        # and member by member.
        {"members": 10, "clues": 37, "outside": 2.0**-37, "stray": 0.0},
        {"members": 3, "clues": 120, "outside": 2.0**-120, "stray": 0.0},
    ],
)
def test_readings_at_a_hundredth_do_not_underflow(shape):
    """The reference adds logarithms, which cannot underflow."""
    numbers, items = at_a_hundredth(**shape)

    got = weigh_set(prepare(numbers), items)

    want = _log_terms(numbers, items)
    total = _log_sum(want.values())
    assert got.log_evidence == close(total)
    assert total < math.log(sys.float_info.min)
    on_all = _log_sum(w for (_, replaced), w in want.items() if replaced)
    assert math.log(got.whole_set[0]) == close(on_all - total)
    assert got.outside == close(_outside(want))
    assert got.without[0][-1] == close(_outside(_log_terms(numbers, items[1:])))
    assert sum(got.cells) == close(1)
    assert_apart(got)


def _outside(terms):
    outside = _log_sum(w for (c, _), w in terms.items() if c is None)
    return math.exp(outside - _log_sum(terms.values()))


def _log_terms(numbers, items):
    """Logarithm of the weight of each cell (None: outside), the part replaced on the
    whole set or not.
    """
    stray = numbers.members.stray
    prior = {c: math.log((1 - numbers.outside) * c[2]) for c in cells(numbers)}
    prior[None] = math.log(numbers.outside)
    fits = [_log_fits(numbers, item) for item in items]
    strays = [_log_sum(prior[c] + fit[c] for c in prior) for fit in fits]
    on_all = math.log(0.1)
    for clue in numbers.clues:
        read = [dict(item.readings)[clue.id] for item in items]
        on_all += _log_sum(
            math.log(w) + sum(math.log(like(a)) for a in read)
            for w, like in sources(numbers, clue)
        )
    terms = {}
    for c in prior:
        terms[c, True] = prior[c] + on_all
        terms[c, False] = prior[c] + math.log(0.9)
        for fit, own in zip(fits, strays, strict=True):
            both = [math.log(1 - stray) + fit[c]]
            both += [math.log(stray) + own] if stray else []
            terms[c, False] += _log_sum(both)
    return terms


def _log_fits(numbers, item):
    """Logarithm of what one item says of each cell."""
    made = dict.fromkeys([*cells(numbers), None], 0.0)
    later = 0.0
    for clue in numbers.clues:
        orig, rep, out = LIKELIHOODS[Code](numbers, clue, None)
        a = dict(item.readings)[clue.id]
        made = {c: x + math.log(orig(a, c) if c else out(a)) for c, x in made.items()}
        later += math.log(rep(a))
    return {
        c: _log_sum((math.log(0.9) + x, math.log(0.1) + later)) if c else x
        for c, x in made.items()
    }


def _log_sum(terms):
    terms = list(terms)
    return max(terms) + math.log(sum(math.exp(x - max(terms)) for x in terms))
