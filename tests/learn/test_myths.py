"""What is often cited, held against what it is worth."""

import pytest

from fieldid.engine import prepare
from fieldid.learn.myths import most, myths
from make import choice, guide, measure, model_year, option, part, span

YEARS = tuple(model_year(year) for year in range(1951, 1955))
WHOLE = part("head", 0.0)


def telling(id, **more):
    """Another option each year."""
    options = [option(str(y.year), span((y.year, y.year))) for y in YEARS]
    return choice(id, *options, **more)


def vague(id, **more):
    """Every option in every year, one of them a little oftener in the first."""
    dots = option("dots", span((1951, 1951)), span((1952, 1954), share=0.8))
    return choice(id, dots, option("lines", span()), **more)


def found(*clues):
    told = myths(prepare(guide(*clues, years=YEARS, parts=(WHOLE,))))
    return (
        [each.worth.clue.id for each in told.weak],
        [each.worth.clue.id for each in told.humble],
    )


def test_popular_clue_that_says_little_is_a_myth():
    assert found(vague("face", popular=True), telling("code"), telling("sole")) == (
        ["face"],
        ["code"],
    )


def test_popular_clue_that_says_much_is_none():
    assert found(telling("code", popular=True), vague("face"), vague("grip")) == (
        [],
        [],
    )


def test_guide_without_popular_clues_names_none():
    assert found(telling("code"), vague("face")) == ([], [])


def test_weakest_comes_first():
    weaker = choice("cap", option("a", span()), option("b", span()), popular=True)

    weak, _ = found(
        vague("face", popular=True),
        weaker,
        telling("code"),
        telling("sole"),
        telling("ring"),
    )

    assert weak == ["cap", "face"]


def test_most_is_the_largest_factor_by_hand():
    """Two years, one option each, m = 0.02, no floor to speak of: 0.98 to 0.02."""
    clue = choice(
        "ring",
        option("red", span((1951, 1951))),
        option("blue", span((1952, 1952))),
    )
    tables = prepare(guide(clue, parts=(WHOLE,), floor=1e-9, outside=0.0))

    assert most(tables, clue) == pytest.approx(0.98 / 0.02, rel=1e-6)


def test_answers_that_tell_nothing_favour_no_year():
    clue = choice("ring", option("red", span()), option("blue", span()))

    assert most(prepare(guide(clue, outside=0.0)), clue) == 1.0


def test_what_is_measured_has_no_such_factor():
    clue = measure("width")

    assert most(prepare(guide(clue)), clue) is None
