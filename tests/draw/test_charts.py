"""Charts: what is drawn is as large as its number, and stays on the picture."""

import re

import pytest

from fieldid.draw.charts import AXIS, BAND, EDGE, ROW, WIDTH, bars, curve, matrix, spans
from fieldid.draw.nodes import svg

YEARS = tuple(range(1951, 1957))


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


def of_class(nodes, name):
    return [node for node in nodes if node.get("class") == name]


def words(node):
    return re.findall(r"<text[^>]*>([^<]*)</text>", svg(node))


def box(node):
    return [float(x) for x in dict(node[1])["viewBox"].split()]


def test_longest_bar_fills_the_width():
    made = bars([("a", 2.0, "2"), ("b", 0.5, "0.5"), ("c", 0.0, "0")])
    widths = [
        float(bar["width"]) for bar in of_class(found(made, "rect"), "chart__solid")
    ]

    assert widths == [WIDTH - 2 * EDGE, (WIDTH - 2 * EDGE) / 4, 0.0]


def test_bars_of_nothing_are_no_fault():
    assert words(bars([("a", 0.0, "0")])) == ["a", "0"]
    assert words(bars([])) == []


def test_band_is_as_high_as_its_share():
    made = spans(YEARS, [("red", (0, 0, 1, 0.5, 0.5, 0))])
    (band,) = of_class(found(made, "path"), "chart__solid")
    foot = 18 + BAND
    wide = (WIDTH - 2 * EDGE) / len(YEARS)

    steps = re.findall(r"V([\d.]+)H([\d.]+)", band["d"])
    assert [(foot - float(v), float(h)) for v, h in steps] == [
        (0, pytest.approx(EDGE + 2 * wide, abs=0.1)),
        (BAND, pytest.approx(EDGE + 3 * wide, abs=0.1)),
        (BAND / 2, pytest.approx(EDGE + 5 * wide, abs=0.1)),
        (0, pytest.approx(EDGE + 6 * wide, abs=0.1)),
    ]


def test_few_years_are_all_named():
    assert words(spans(YEARS, [("red", (0,) * 6)]))[1:] == [
        "51",
        "52",
        "53",
        "54",
        "55",
        "56",
    ]


def test_many_years_are_named_in_round_numbers():
    years = tuple(range(1840, 2027))

    assert words(spans(years, [("red", (1,) * len(years))]))[1:] == [
        "1850",
        "1900",
        "1950",
        "2000",
    ]


def test_square_is_as_large_as_its_number():
    """By area: an eye compares areas."""
    made = matrix(("1951", "1952"), ((1.0, 0.0), (0.25, 0.75)))
    squares = of_class(found(made, "rect"), "chart__solid")
    side = (WIDTH - 34 - EDGE) / 2 - 2

    areas = [float(square["width"]) * float(square["height"]) for square in squares]
    assert areas == pytest.approx([side**2, side**2 / 4, 0.75 * side**2], rel=1e-3)


def test_curve_is_as_high_as_its_shares():
    made = curve([("0", 0.0), ("1", 0.5), ("2", 1.0)])
    heights = [float(dot["cy"]) for dot in found(made, "circle")]

    assert heights[0] - heights[2] == pytest.approx(200)
    assert heights[1] == pytest.approx((heights[0] + heights[2]) / 2)
    assert words(made) == ["0", "0", "50", "1", "100", "2"]


@pytest.mark.parametrize(
    "made",
    [
        bars([("a", 1.0, "1.00")] * 20),
        spans(YEARS, [("red", (1,) * 6)] * 9),
        spans(tuple(range(1840, 2027)), [("red", (1,) * 187)]),
        spans((1951,), [("red", (1,))]),
        matrix(tuple(map(str, range(1950, 1966))), [[1 / 16] * 16] * 16),
        curve([(str(i), 1.0) for i in range(11)]),
        curve([("0", 1.0)]),
    ],
    ids=["bars", "spans", "many", "one", "matrix", "curve", "point"],
)
def test_nothing_is_drawn_outside_the_picture(made):
    """But for what a group moves, which is counted in rows."""
    _, _, width, height = box(made)

    assert width == WIDTH
    for _, attributes, children in made[2]:
        moved = dict(attributes).get("transform", "translate(0 0)")
        down = float(moved.split()[1].rstrip(")"))
        for name, own, _ in [each for each in children if not isinstance(each, str)]:
            at = dict(own)
            if name == "rect":
                assert 0 <= float(at["x"]) <= width - float(at["width"]) + 0.01
                assert down + float(at["y"]) + float(at["height"]) <= height + 0.01
            if name == "text":
                assert 0 <= float(at["x"]) <= width
                assert 8 <= down + float(at["y"]) <= height


def test_chart_has_room_for_each_row():
    assert box(spans(YEARS, [("red", (1,) * 6)] * 3))[3] == 3 * ROW + AXIS
