"""Nodes and the SVG text that they become."""

import html5lib
import pytest

from fieldid.draw import SCENES, node, scene, svg, swatches
from fieldid.draw.nodes import tag, written
from fieldid.draw.swatches import SWATCHES

DRAWN = [swatches(), *(scene(name) for name in SCENES), node(("cap", ()))]


def names(drawn):
    """Every attribute name in a drawing."""
    if isinstance(drawn, str):
        return set()
    _, attributes, children = drawn
    return {key for key, _ in attributes}.union(*map(names, children))


def test_attributes_are_escaped():
    assert svg(tag("text", x='"<&')) == '<text x="&quot;&lt;&amp;"></text>'


def test_children_are_escaped():
    assert svg(tag("text", "<script>")) == "<text>&lt;script&gt;</text>"


def test_last_underscore_is_dropped():
    assert tag("g", class_="a", stroke_width=2)[1] == (
        ("class", "a"),
        ("stroke-width", "2"),
    )


@pytest.mark.parametrize(
    ("value", "text"), [(2.0, "2"), (0.125, "0.12"), (-0.0001, "0"), (100, "100")]
)
def test_numbers_are_short(value, text):
    assert written(value) == text


@pytest.mark.parametrize("drawn", DRAWN)
def test_no_style_attribute_is_drawn(drawn):
    """The pages forbid inline styles, so a style attribute would do nothing."""
    assert "style" not in names(drawn)


@pytest.mark.parametrize("drawn", DRAWN)
def test_drawings_are_decorative(drawn):
    assert dict(drawn[1])["aria-hidden"] == "true"


@pytest.mark.parametrize("drawn", DRAWN)
def test_text_parses_strictly(drawn):
    html5lib.HTMLParser(strict=True).parseFragment(svg(drawn))


def test_every_swatch_has_its_own_pattern():
    assert len(set(SWATCHES.values())) == len(SWATCHES)


def test_swatch_ids_are_prefixed():
    (_, _, patterns) = swatches()[2][0]

    assert [dict(each[1])["id"] for each in patterns] == [
        f"swatch-{name}" for name in SWATCHES
    ]
