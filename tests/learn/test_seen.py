"""What changed when, against guides that are small enough to work out by hand."""

import pytest

from fieldid.engine import prepare
from fieldid.engine.guide import Members, Size
from fieldid.learn.seen import changes, seen, sizes
from make import choice, guide, measure, model_year, option, span

YEARS = (model_year(1951), model_year(1952), model_year(1953))


def shares(clue, **more):
    told = seen(prepare(guide(clue, years=YEARS, **more)), clue)
    return {each.option.id: [round(x, 4) for x in each.shares] for each in told}


def changed(clue, y, **more):
    tables = prepare(guide(clue, years=YEARS, **more))
    return [
        ([each.option.id for each in change.new], [o.id for o in change.gone])
        for change in changes(tables)[y]
    ]


RINGS = choice(
    "rings",
    option("red", span((1951, 1952))),
    option("blue", span((1952, 1953), share=0.25)),
    option("none"),
)


def test_shares_are_those_of_each_year():
    """In 1952 red is four times as common as blue, without the guide's floor."""
    assert shares(RINGS) == {
        "red": [1.0, 0.8, 0.0],
        "blue": [0.0, 0.2, 1.0],
        "none": [0.0, 0.0, 0.0],
    }


def test_change_within_a_year_counts_by_months():
    """Red until March, blue from April on."""
    clue = choice(
        "rings",
        option("red", span(until="1952-03")),
        option("blue", span(since="1952-04")),
    )

    assert shares(clue) == {"red": [1.0, 0.25, 0.0], "blue": [0.0, 0.75, 1.0]}


def test_share_is_the_mean_of_all_members():
    clue = choice(
        "rings",
        option("red", span((1951, 1953), excluded=("W",))),
        option("blue", span((1951, 1953), members=("W",))),
    )

    assert shares(clue, members=Members(("3", "4", "W")))["blue"] == [0.3333] * 3


def test_new_and_gone_are_told_of_the_year_before():
    assert changed(RINGS, 1) == [(["blue"], [])]
    assert changed(RINGS, 2) == [([], ["red"])]


def test_first_year_has_changed_nothing():
    assert changed(RINGS, 0) == []


@pytest.mark.parametrize("y", [1, 2])
def test_silence_of_the_guide_is_no_change(y):
    clue = choice(
        "rings", option("red", span((1951, 1951))), option("blue", span((1953, 1953)))
    )

    assert changed(clue, y) == []


def test_what_is_no_choice_has_no_options():
    clue = measure("width")

    assert seen(prepare(guide(clue)), clue) == ()
    assert changed(clue, 1) == []


def test_rise_by_a_quarter_is_told():
    """Blue comes in at a fifth and is all there is in the year after."""
    tables = prepare(guide(RINGS, years=YEARS))
    more = [[each.option.id for each in c.more] for y in changes(tables) for c in y]

    assert more == [[], ["blue"]]


def test_sizes_are_those_of_each_year():
    clue = measure(
        "width",
        Size((1951, 1951), 20.0, 0.5),
        Size((1952, 1952), 22.0, 0.5, members=("W",)),
        Size((1952, 1952), 21.0, 0.5),
    )

    assert sizes(prepare(guide(clue, years=YEARS)), clue) == (20.0, 21.0, None)
    assert sizes(prepare(guide(RINGS, years=YEARS)), RINGS) == (None,) * 3
