"""The engine against an open table: 101 animals, 16 traits, 7 types."""

from statistics import fmean

import pytest

from fieldid.engine import prepare
from zoo import (
    ANIMALS,
    COUNTS,
    TRAITS,
    answer_bits,
    by_animal,
    by_share,
    play,
    tree_questions,
    type_bits,
)

NAMES = ("by-share", "by-animal")


@pytest.fixture(scope="module", params=[by_share, by_animal], ids=NAMES)
def games(request):
    """One game for each animal."""
    tables = prepare(request.param())
    return [play(tables, animal) for animal in ANIMALS]


def test_table_is_the_known_one():
    """Source: R. Forsyth's own count of the types, with the data."""
    assert (len(ANIMALS), len(TRAITS)) == (101, 16)
    assert sorted(COUNTS.values()) == [4, 5, 8, 10, 13, 20, 41]


def test_every_animal_gets_its_type(games):
    assert [game.told for game in games] == [animal["type"] for animal in ANIMALS]


def test_all_seven_types_are_reached(games):
    assert {game.told for game in games} == COUNTS.keys()


def test_no_question_is_asked_twice(games):
    assert all(len(set(game.asked)) == len(game.asked) for game in games)


def test_answers_hold_the_bits_of_the_type(games):
    """Whoever is told all types was told so much; a question about legs has six
    answers, so that the number of questions alone may lie below.
    """
    assert fmean(answer_bits(game) for game in games) >= type_bits()


def test_no_more_questions_than_the_tree(games):
    """It asks about legs by a bound: at most two, or more?"""
    asked = fmean(len(game.asked) for game in games)

    assert asked <= fmean(tree_questions(one_by_one=False))


def test_knowing_the_animals_beats_the_finer_tree():
    """Its questions about legs, "six?", are still yes or no; ours has six answers."""
    tables = prepare(by_animal())
    asked = fmean(len(play(tables, animal).asked) for animal in ANIMALS)

    assert asked < fmean(tree_questions(one_by_one=True))
