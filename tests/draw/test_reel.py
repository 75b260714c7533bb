"""A reel's drawings show what differs, and what its number clues read."""

from math import hypot
from re import findall

import pytest

from fieldid.draw import node, svg
from fieldid.draw.drum import HOLES, KNOBS, MIDDLE, WAY
from fieldid.draw.reelfoot import ENDS, foot
from fieldid.draw.reelworks import TEETH, check
from stamped import spelled


def drawn(shape, **given):
    return svg(node((shape, tuple(given.items()))))


def corners(text, of):
    """The points of all outlines of one class."""
    found = findall(rf'class="{of}" d="([^"]+)"', text)
    return [
        (float(x), float(y))
        for d in found
        for x, y in findall(r"(-?[\d.]+) (-?[\d.]+)(?=[A-Z ]|$)", d)
    ]


@pytest.mark.parametrize(
    ("holes", "count"),
    [("none", 0), ("small", 11), ("large", 5), ("petals", 7), ("slots", 5)],
)
def test_holes_are_as_many_as_said(holes, count):
    """One place of each ring is the knob's."""
    assert drawn("drum", holes=holes).count("drawing__cut") == count


@pytest.mark.parametrize("holes", HOLES)
def test_no_hole_is_under_the_knob(holes):
    knob = MIDDLE[0], MIDDLE[1] + WAY + 1
    points = corners(drawn("drum", holes=holes), "drawing__cut")

    assert all(hypot(x - knob[0], y - knob[1]) > 7 for x, y in points)


@pytest.mark.parametrize("knob", KNOBS)
def test_knob_stands_on_the_drum(knob):
    assert drawn("knob", form=knob).count(f'd="{KNOBS[knob]}"') == 1


@pytest.mark.parametrize("ends", ENDS)
def test_both_ends_of_a_foot_are_alike(ends):
    text = svg(foot(ends=ends))

    assert text.count(ENDS[ends]) == 4
    assert text.count("scale(1 -1)") == 2


@pytest.mark.parametrize("teeth", TEETH)
def test_tooth_points_at_the_pawl_gap(teeth):
    """The lowest point of a wheel is a gap, into which the pawl reaches."""
    count, tall, _, crest = TEETH[teeth]
    points = corners(svg(check(teeth)), "drawing__cut")

    assert len(points) == count * (4 if crest else 2)
    assert points[0] == (44, 70 - tall)


def test_number_is_spelled_on_rim_and_plate():
    assert spelled(drawn("engraved", place="rim", number="12086")) == [*"12086"]
    assert spelled(drawn("engraved", place="plate", number="9")) == ["PAT", "9"]


def test_second_layout_stands_below_the_first():
    names = (("year", "bench"), ("week", "year"))
    text = drawn("layouts", stamps=(("R", "4"), ("27", "55")), names=names)

    assert 'viewBox="0 0 176 176"' in text
    assert spelled(text.split("translate(0 88)")[0]) == ["R", "4"]
    assert spelled(text.split("translate(0 88)")[1]) == ["27", "55"]
