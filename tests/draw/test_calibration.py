"""The calibration chart: what is told lies right, what is true lies up."""

import pytest

from fieldid.draw.calibration import LEFT, SIDE, TOP, calibration
from fieldid.draw.nodes import svg

POINTS = ((0.5, 0.25, 0.1, 0.4), (1.0, 1.0, 0.9, 1.0))


def nodes(name):
    _, _, children = calibration(POINTS)
    return [dict(attributes) for tag, attributes, _ in children if tag == name]


def test_point_lies_where_both_meet():
    first, last = nodes("circle")

    assert float(first["cx"]) == pytest.approx(LEFT + SIDE / 2)
    assert float(first["cy"]) == pytest.approx(TOP + 0.75 * SIDE)
    assert (float(last["cx"]), float(last["cy"])) == (LEFT + SIDE, TOP)


def test_interval_stands_upright_through_its_point():
    drawn = [each["d"] for each in nodes("path") if each["class"] == "chart__curve"]
    x = LEFT + SIDE / 2

    assert f"M{x:g} {TOP + 0.9 * SIDE:g}L{x:g} {TOP + 0.6 * SIDE:g}" in drawn


def test_slanting_line_is_where_both_are_the_same():
    drawn = [each["d"] for each in nodes("path")]

    assert f"M{LEFT:g} {TOP + SIDE:g}L{LEFT + SIDE:g} {TOP:g}" in drawn


def test_chart_is_hidden_and_stays_on_its_picture():
    drawn = calibration(POINTS)
    wide, high = map(float, dict(drawn[1])["viewBox"].split()[2:])

    assert 'aria-hidden="true"' in svg(drawn)
    for text in nodes("text"):
        assert 0 < float(text["x"]) < wide
        assert 0 < float(text["y"]) < high
