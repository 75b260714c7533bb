"""Charts: what is drawn is as large as its number, and stays on the picture."""

import re
from itertools import pairwise

import pytest

from fieldid.draw.charts import (
    BAR,
    EDGE,
    LEFT,
    LINES,
    SMALL,
    TOP,
    WIDTH,
    apart,
    band,
    bar,
    curve,
    lines,
    matrix,
)
from fieldid.draw.nodes import svg

YEARS = tuple(range(1951, 1957))
PHONE = 296
"""Pixels that a chart has on a phone of 320."""


def found(node, tag):
    """The nodes of this kind, wherever they stand, with their attributes."""
    name, attributes, children = node
    own = [dict(attributes)] if name == tag else []
    inner = [
        each
        for child in children
        if not isinstance(child, str)
        for each in found(child, tag)
    ]
    return own + inner


def words(node):
    return re.findall(r"<text[^>]*>([^<]*)</text>", svg(node))


def box(node):
    return [float(x) for x in dict(node[1])["viewBox"].split()]


def squares(node):
    """Where the squares of a matrix stand, and how long their sides are."""
    [drawn] = [p for p in found(node, "path") if p["class"] == "chart__solid"]
    return [
        tuple(map(float, each))
        for each in re.findall(r"M([\d.]+) ([\d.]+)h([\d.]+)", drawn["d"])
    ]


@pytest.mark.parametrize("length", [0.0, 0.25, 1.0])
def test_bar_is_as_long_as_its_number(length):
    made = bar(length)
    [path] = found(made, "path")

    assert box(made) == [0, 0, BAR, 1]
    assert float(re.search(r"H([\d.]+)", path["d"])[1]) == BAR * length


def test_band_is_as_high_as_its_share():
    made = band((0, 0, 1, 0.5, 0.5, 0))
    [path] = found(made, "path")
    steps = re.findall(r"V([\d.]+)H([\d.]+)", path["d"])

    assert box(made) == [0, 0, 6, 1]
    assert [(1 - float(v), int(h)) for v, h in steps] == [
        (0, 2),
        (1, 3),
        (0.5, 5),
        (0, 6),
    ]


def test_band_stands_above_lines_of_its_years():
    [used] = found(band((1,) * 6), "use")
    drawn = dict(lines(YEARS)[1])

    assert used["href"] == f"#{LINES}" == f"#{drawn['id']}"
    assert re.findall(r"M(\d+) 0V1", drawn["d"]) == list("0123456")


def test_many_years_have_lines_at_round_ones():
    years = tuple(range(1840, 2027))
    drawn = dict(lines(years)[1])
    at = [int(y) for y in re.findall(r"M(\d+) 0V1", drawn["d"])]

    assert apart(years) == 50
    assert [years[y] for y in at[1:-1]] == [1850, 1900, 1950, 2000]
    assert (at[0], at[-1]) == (0, len(years))


def test_square_is_as_large_as_its_number():
    """By area: an eye compares areas."""
    made = matrix(("1951", "1952"), ((1.0, 0.0), (0.25, 0.75)))
    side = (WIDTH - LEFT - EDGE) / 2

    areas = [edge**2 for _, _, edge in squares(made)]
    full = (side - 2) ** 2
    assert areas == pytest.approx([full, full / 4, 0.75 * full], rel=1e-3)
    amid = [(x + e / 2, y + e / 2) for x, y, e in squares(made)]
    first, second = (LEFT + side / 2, LEFT + 1.5 * side)
    assert [x for x, _ in amid] == pytest.approx([first, first, second], abs=0.02)
    assert amid[2][1] == pytest.approx(TOP + 1.5 * side, abs=0.02)


def test_matrix_of_many_years_names_some():
    names = tuple(map(str, range(1950, 1990)))
    told = words(matrix(names, [[1 / 40] * 40] * 40))

    assert told[:3] == ["50", "53", "56"]


def test_curve_is_as_high_as_its_shares():
    made = curve([("0", 0.0), ("1", 0.5), ("2", 1.0)])
    heights = [float(dot["cy"]) for dot in found(made, "circle")]

    assert heights[0] - heights[2] == pytest.approx(200)
    assert heights[1] == pytest.approx((heights[0] + heights[2]) / 2)
    assert words(made) == ["0", "0", "50", "1", "100", "2"]


LETTERED = {
    "matrix": matrix(tuple(map(str, range(1950, 1966))), [[1 / 16] * 16] * 16),
    "curve": curve([(str(i), 1.0) for i in range(11)]),
    "point": curve([("0", 1.0)]),
}


@pytest.mark.parametrize("made", LETTERED.values(), ids=LETTERED)
def test_letters_are_large_enough_on_a_phone(made):
    sizes = {float(text["font-size"]) for text in found(made, "text")}

    assert sizes == {SMALL}
    assert SMALL * PHONE / WIDTH >= 13


@pytest.mark.parametrize("made", LETTERED.values(), ids=LETTERED)
def test_letters_stand_on_the_picture(made):
    _, _, width, height = box(made)
    wide = 0.64 * SMALL

    assert width == WIDTH
    for text, words_of in zip(found(made, "text"), words(made), strict=True):
        x, long = float(text["x"]), wide * len(words_of)
        left = x - (long if text["text-anchor"] == "end" else long / 2)
        assert left >= 0
        assert left + long <= width
        assert SMALL * 0.75 <= float(text["y"]) <= height


def test_letters_of_a_curve_stand_apart():
    xs = sorted({float(t["x"]) for t in found(LETTERED["curve"], "text")})

    assert min(b - a for a, b in pairwise(xs)) >= 3 * 0.64 * SMALL - 1
