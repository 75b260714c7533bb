"""What is told by colour can be told by any eyes, in grey and in print as well.

Two colours are apart from a distance of ten on, which is our choice: one is what an eye
just notices when they lie side by side, and answers are compared with an old object in
poor light. Where some eyes see less than that, the marks of the patterns tell.
"""

import io
import itertools

import numpy as np
import pytest
import resvg_py
from PIL import Image

from colour import EYES, apart, ciede2000, contrast, seen
from fieldid.draw.swatches import SIDE, SWATCHES
from tokens import SCREENS, colours

APART = 10.0
TEXT, GRAPHICS = 4.5, 3.0
"""WCAG 2.2, 1.4.3 and 1.4.11."""
UNLIKE = 0.45
"""So much of the ink of two patterns differs, however one is shifted: our choice."""
PIXELS = 4
"""Of a pattern's drawing, a unit."""

READ = (
    ("ink", "paper"),
    ("ink", "sheet"),
    ("ink", "tint"),
    ("ink-soft", "paper"),
    ("ink-soft", "sheet"),
    ("ink-soft", "tint"),
    ("accent", "paper"),
    ("accent", "sheet"),
    ("on-ink", "ink"),
    ("on-accent", "accent"),
    ("swatch-print", "swatch-white"),
)
"""Words, and what they stand on."""

DRAWN = (
    ("accent", "paper"),
    ("accent", "sheet"),
    ("accent", "faint"),
    ("accent", "tint"),
    ("ink", "faint"),
    ("rule", "paper"),
    ("rule", "sheet"),
    ("drawing-ink", "drawing-paper"),
    ("drawing-ink", "drawing-tone"),
    ("drawing-leader", "drawing-paper"),
    ("drawing-lit", "drawing-lit-paper"),
    ("drawing-lit", "drawing-lit-tone"),
)
"""Lines and fillings that one has to see, and what they stand on: edges of fields, bars
in their troughs, curves, the lines of a drawing.
"""

TOLD = (
    ("accent", "ink"),
    ("drawing-lit", "drawing-ink"),
)
"""What means two things: the leading year and the others, the part to look at and the
rest.
"""


# The data that the authors give to try a program with, some for each turn of it.
@pytest.mark.parametrize(
    ("one", "other", "wanted"),
    [
        ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
        ((50, -1.3802, -84.2814), (50, 0, -82.7485), 1.0),
        ((50, 0, 0), (50, -1, 2), 2.3669),
        ((50, 2.49, -0.001), (50, -2.49, 0.0009), 7.1792),
        ((50, 2.49, -0.001), (50, -2.49, 0.0011), 7.2195),
        ((50, 2.5, 0), (50, 0, -2.5), 4.3065),
        ((50, 2.5, 0), (73, 25, -18), 27.1492),
        ((50, 2.5, 0), (56, -27, -3), 31.9030),
        ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
        ((22.7233, 20.0904, -46.694), (23.0331, 14.973, -42.5619), 2.0373),
        ((2.0776, 0.0795, -1.135), (0.9033, -0.0636, -0.5514), 0.9082),
    ],
)
def test_distance_is_that_of_its_authors(one, other, wanted):
    assert ciede2000(one, other) == pytest.approx(wanted, abs=5e-5)
    assert ciede2000(other, one) == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize("eyes", EYES)
def test_grey_stays_grey_to_any_eyes(eyes):
    """Each row of a matrix adds up to one; a figure that is copied wrongly does not."""
    for row in EYES[eyes]:
        assert sum(row) == pytest.approx(1, abs=2e-6)


@pytest.mark.parametrize(
    ("eyes", "mixed"), [("no red", ("#f00", "#6d5f00")), ("no blue", ("#fff", "#fff"))]
)
def test_colour_is_mixed_as_published(eyes, mixed):
    """Red is a dark olive to who has no red: 0.152, 0.115 and 0 of linear light."""
    given, taken = mixed

    assert seen(given, eyes) == pytest.approx(seen(taken), abs=0.005)


def test_contrast_is_that_of_the_guidelines():
    """A grey that is known to be the lightest on white, and the next one."""
    assert contrast("#767676", "#fff") >= TEXT > contrast("#777777", "#fff")


@pytest.mark.parametrize("screen", SCREENS)
def test_words_can_be_read(screen):
    found = colours(screen)
    low = [pair for pair in READ if contrast(*(found[it] for it in pair)) < TEXT]

    assert low == []


@pytest.mark.parametrize("screen", SCREENS)
def test_lines_can_be_seen(screen):
    assert too_faint(colours(screen)) == []


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize("eyes", EYES)
def test_what_differs_looks_different(screen, eyes):
    found = colours(screen)
    alike = [pair for pair in TOLD if apart(*(found[it] for it in pair), eyes) < APART]

    assert alike == []


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize("eyes", EYES)
def test_swatches_can_be_told_apart(screen, eyes):
    assert alike(colours(screen), eyes) == []


def test_patterns_differ_wherever_they_begin():
    tiles = {name: tile(name) for name in SWATCHES}
    near = [
        (one, other)
        for one, other in itertools.combinations(SWATCHES, 2)
        if unlike(tiles[one], tiles[other]) < UNLIKE
    ]

    assert near == []


def too_faint(found: dict[str, str]) -> list[tuple[str, str]]:
    """The pairs of which one can hardly be seen on the other."""
    return [pair for pair in DRAWN if contrast(*(found[it] for it in pair)) < GRAPHICS]


def alike(found: dict[str, str], eyes: str) -> list[str]:
    """The pairs of swatches that these eyes cannot tell apart, neither by the colour
    nor by marks on it; who sees all colours is to need no marks.
    """
    bare = [
        name
        for name, strokes in SWATCHES.items()
        if strokes and contrast(*_marked(found, name), eyes) < GRAPHICS
    ]
    return [
        f"{one} and {other}"
        for one, other in itertools.combinations(SWATCHES, 2)
        if apart(found[f"swatch-{one}"], found[f"swatch-{other}"], eyes) < APART
        and (eyes == "any eye" or {one, other} & {*bare})
    ]


def _marked(found: dict[str, str], name: str) -> tuple[str, str]:
    return found[f"swatch-{name}"], found[f"swatch-{name}-marks"]


def tile(name: str) -> np.ndarray:
    """A pattern in black and white: where it has a mark."""
    wide = SIDE * PIXELS
    drawn = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE} {SIDE}"'
        f' width="{wide}" height="{wide}"><rect width="8" height="8" fill="#fff"/>'
        f'<path d="{SWATCHES[name]}" fill="none" stroke="#000" stroke-width="1.5"'
        ' stroke-linecap="round"/></svg>'
    )
    picture = Image.open(io.BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=drawn))))
    return np.asarray(picture.convert("L")) < 128


def unlike(one: np.ndarray, other: np.ndarray) -> float:
    """The share of what is marked by either pattern and not by both, where they lie
    over each other best.
    """
    ink = sum(map(sum, one)) + sum(map(sum, other))
    both = max(
        np.count_nonzero(one & np.roll(other, (down, across), (0, 1)))
        for down in range(len(one))
        for across in range(len(one))
    )
    return (ink - 2 * both) / (ink - both)


# What the checks object to, done on purpose.


def test_red_beside_green_of_one_lightness_is_seen():
    """Alike to who lacks red or green, where their marks were as faint as they."""
    found = colours("light") | {
        "swatch-red": "#a35d2c",
        "swatch-green": "#6f7a2b",
        "swatch-red-marks": "#a86030",
        "swatch-green-marks": "#747f2f",
    }

    assert "green and red" not in alike(found, "any eye")
    assert "green and red" in alike(found, "no green")
    assert "green and red" in alike(found, "grey")


def test_two_swatches_of_one_colour_are_seen():
    """Marks do not excuse it: who sees colours expects them to mean something."""
    found = colours("light") | {"swatch-red": colours("light")["swatch-green"]}

    assert "green and red" in alike(found, "any eye")


def test_faint_rule_is_seen():
    assert ("rule", "paper") in too_faint(colours("light") | {"rule": "#ddd0b4"})


def test_pattern_that_was_only_shifted_is_seen():
    assert unlike(tile("red"), np.roll(tile("red"), 6, 1)) < UNLIKE
