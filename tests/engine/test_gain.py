"""Information gain: a published example, two libraries, and brute force."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sklearn.metrics import mutual_info_score
from sklearn.tree import DecisionTreeClassifier

from fieldid.engine.find import Item
from fieldid.engine.gain import (
    Prospect,
    best_first,
    between,
    entropy,
    gain,
    prospects,
    separator,
)
from fieldid.engine.guide import Choice
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare
from kittiwake import GUIDE, find, random_find
from oracle import truth

TABLES = prepare(GUIDE)
# Source: T. Mitchell, Machine Learning (1997), table 3.2, "play tennis".
TENNIS = {
    column: row.split()
    for column, row in {
        "outlook": "sunny sunny overcast rain rain rain overcast sunny sunny rain "
        "sunny overcast overcast rain",
        "temperature": "hot hot hot mild cool cool cool mild cool mild mild mild hot "
        "mild",
        "humidity": "high high high high normal normal normal high normal normal "
        "normal high normal high",
        "wind": "weak strong weak weak weak strong strong weak weak weak strong strong "
        "weak strong",
        "play": "no no yes yes yes no yes no yes yes yes yes yes no",
    }.items()
}


def counts(names, classes):
    return [
        [
            sum(n == name and c == kind for n, c in zip(names, classes, strict=True))
            for kind in dict.fromkeys(classes)
        ]
        for name in dict.fromkeys(names)
    ]


def ranked(item, **limits):
    limits = {"claimed": None, "away": False, "without": (), **limits}
    return prospects(TABLES, item, weigh(TABLES, item), **limits)


def named(found):
    return [GUIDE.clues[prospect.k].id for prospect in found]


@pytest.mark.parametrize(
    ("attribute", "published"),
    [("outlook", 0.246), ("humidity", 0.151), ("wind", 0.048), ("temperature", 0.029)],
)
def test_gain_equals_published_example(attribute, published):
    """Source: Mitchell (1997), section 3.4.2, which cuts the third place."""
    found = gain(counts(TENNIS[attribute], TENNIS["play"]))

    assert found == pytest.approx(published, abs=1e-3)
    assert found == pytest.approx(
        mutual_info_score(TENNIS[attribute], TENNIS["play"]) / math.log(2)
    )


def test_entropy_equals_published_example():
    """Source: Mitchell (1997), section 3.4.1.1: Entropy([9+, 5-]) = 0.940."""
    assert entropy([9, 5]) == pytest.approx(0.940, abs=5e-4)


@given(st.lists(st.integers(1, 50), min_size=2, max_size=9))
def test_entropy_equals_decision_tree_impurity(classes):
    """Source: scikit-learn's DecisionTreeClassifier(criterion="entropy")."""
    labels = [i for i, n in enumerate(classes) for _ in range(n)]
    tree = DecisionTreeClassifier(criterion="entropy", max_depth=1)
    tree.fit([[0]] * len(labels), labels)

    assert entropy(classes) == pytest.approx(tree.tree_.impurity[0])


@pytest.mark.parametrize("seed", range(12))
def test_gain_equals_brute_force(seed):
    """Every reading of every choice tried out on the oracle."""
    item = random_find(seed).items[0]
    found = {GUIDE.clues[p.k].id: p for p in ranked(item)}
    before = truth(GUIDE, dict(item.readings), item.gone, item.member)
    for clue in GUIDE.clues:
        if clue.id not in found or not isinstance(clue.kind, Choice):
            continue
        expected = 0.0
        for option in clue.kind.options:
            readings = {**dict(item.readings), clue.id: option.id}
            after = truth(GUIDE, readings, item.gone, item.member)
            share = math.exp(after.log_evidence - before.log_evidence)
            expected += share * entropy([*after.years.values(), after.outside])
        fall = entropy([*before.years.values(), before.outside]) - expected
        bits = (1 - clue.unreadable) * fall
        assert found[clue.id].bits == pytest.approx(bits, abs=1e-9)
        assert found[clue.id].bits_per_second == pytest.approx(
            bits / clue.seconds, abs=1e-9
        )


@given(st.integers(0, 10**6))
def test_outcomes_are_a_distribution(seed):
    item = random_find(seed).items[0]
    posterior = weigh(TABLES, item)
    for prospect in ranked(item):
        columns = [sum(column) for column in zip(*prospect.rows, strict=True)]
        assert columns == pytest.approx([*posterior.years, posterior.outside], abs=1e-9)
        assert prospect.bits >= -1e-12


def test_ranking_is_by_gain_squared_per_second():
    """Source: Tan and Schlimmer (1990): the square of the gain over the cost."""
    seconds = {clue.id: clue.seconds for clue in GUIDE.clues}
    found = ranked(Item())

    pull = [each.bits**2 / seconds[GUIDE.clues[each.k].id] for each in found]
    assert pull == sorted(pull, reverse=True)
    assert len(found) == len(GUIDE.clues)


def test_one_telling_look_goes_before_quick_ones():
    """A clue of 0.9 bits in 5 seconds, beside one of 0.4 in 2: by bits a second the
    quick one would come first.
    """
    telling = Prospect(0, 0, 0.9, 0.9 / 5, ())
    quick = Prospect(1, 0, 0.4, 0.4 / 2, ())

    assert best_first([quick, telling]) == [telling, quick]


def test_answered_clues_are_not_asked_again():
    item = find({"rings": None, "scoring": "dots"}).items[0]

    assert not {"rings", "scoring"} & set(named(ranked(item)))


def test_clues_on_gone_parts_are_not_asked():
    assert "rings" not in named(ranked(find(gone=["collar"]).items[0]))


def test_only_what_shows_from_away_is_asked_there():
    assert named(ranked(Item(), away=True)) == ["scoring"]


def test_clues_without_their_tool_are_left_out():
    assert "pad" not in named(ranked(Item(), without=("callipers",)))


def test_claim_changes_what_is_aimed_at():
    """A clue that splits the other years only is worth nothing for the claim."""
    years, claim = (
        {GUIDE.clues[p.k].id: p.bits for p in ranked(Item(), claimed=place)}
        for place in (None, 3)
    )

    assert all(claim[clue] <= years[clue] + 1e-12 for clue in years)
    assert claim["numeral"] < years["numeral"]


@pytest.mark.parametrize(
    ("years", "clue"), [((0, 1), "stamp"), ((2, 3), "stamp"), ((1, 3), "numeral")]
)
def test_separator_is_the_sharpest_clue(years, clue):
    """The hosel letters name the year, but can be hard to read."""
    assert named([separator(TABLES, ranked(Item()), *years)]) == [clue]


def test_separator_passes_over_what_is_hard_to_read():
    hard = replace(GUIDE.clues[5], unreadable=0.99)
    tables = prepare(replace(GUIDE, clues=(*GUIDE.clues[:5], hard, GUIDE.clues[6])))

    assert separator(tables, ranked(Item()), 0, 1).k != 5


def test_rows_of_two_years_are_weighed_by_their_share():
    """A clear split of two years that hold half of all is worth half a bit."""
    rows = [(0.25, 0.0, 0.25), (0.0, 0.25, 0.25)]

    assert between(rows, 0, 1) == 0.5


def test_nothing_separates_without_clues():
    assert separator(TABLES, [], 0, 1) is None


def test_certain_columns_have_no_entropy():
    assert entropy([0.0, 0.0]) == 0
    assert gain([[1.0, 0.0]]) == 0
