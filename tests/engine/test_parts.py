"""The forest of parts, held against enumeration."""

from itertools import product

import pytest

import make
from fieldid.engine.parts import forest, pair, worlds
from kittiwake import GUIDE

FOREST = forest(GUIDE)
PLACES = range(len(GUIDE.parts))


def test_parents_come_before_followers():
    order = [GUIDE.parts[p].id for p in FOREST.order]

    assert order == ["head", "shaft", "grip", "collar"]


def test_follower_goes_with_its_parent():
    assert FOREST.rates[2] == (0.1, 0.85)


def following(**rates):
    """A grip that seldom goes with its shaft, and often by itself."""
    shaft = make.part("shaft", whole_set=0.2)
    grip = make.part("grip", replaced=0.3, follows="shaft", share=0.05, **rates)
    return make.guide(parts=(shaft, grip))


def test_follower_keeps_its_own_rate_at_least():
    assert forest(following()).rates[1] == (0.3, 0.3)


def test_follower_keeps_its_rate_on_a_whole_set():
    guide = following(whole_set=0.4)

    priors = {world.whole: world.prior for world in worlds(guide, forest(guide))}

    assert priors[True, True] == pytest.approx(0.2 * 0.4)
    assert sum(priors.values()) == pytest.approx(1)


@pytest.mark.parametrize(("p", "q"), list(product(PLACES, PLACES)))
def test_pair_equals_enumeration(p, q):
    want = [0.0] * 4
    for states in product((0, 1), repeat=len(GUIDE.parts)):
        share = 1.0
        for i in PLACES:
            parent = FOREST.parent[i]
            rate = FOREST.rates[i][0 if parent is None else states[parent]]
            share *= rate if states[i] else 1 - rate
        want[2 * states[p] + states[q]] += share

    assert pair(FOREST, p, q) == pytest.approx(want)
