"""What the guides that are shipped ask to be drawn, and the style sheets behind it."""

import re
import subprocess
import sys
import tomllib

import pytest

from fieldid.draw import SCENES, SWATCHES, node, problems, scene, svg, swatches
from fieldid.paths import RULES, STATIC

GUIDES = [
    tomllib.loads(path.read_text("utf-8")) for path in sorted(RULES.glob("*.toml"))
]
CLUES = [
    pytest.param(guide, clue, id=f"{guide['id']}-{clue['id']}")
    for guide in GUIDES
    for clue in guide["clue"]
]

CLASSES = re.compile(r'class="([^"]+)"')
SCALED = re.compile(r"scale\(([0-9.]+)\)")
RULED = re.compile(r"\.([a-z_-]+) \{")

TELL_APART = """
import hashlib, sys
from fieldid.draw import scene, svg, swatches
text = svg(swatches()) + svg(scene("iron", lit=["collar"])) + svg(scene("wood"))
sys.stdout.write(hashlib.sha256(text.encode()).hexdigest())
"""


def picture(table):
    """The shape and the parameters that a guide's table names."""
    given = dict(table)
    return given.pop("shape"), tuple(given.items())


def pictures(clue):
    """Every picture of a clue: its own, and those of its options."""
    return [
        each["picture"] for each in (clue, *clue.get("option", ())) if "picture" in each
    ]


def css(name):
    return (STATIC / "css" / name).read_text("utf-8")


def weights(drawn, width=0.0, scale=1.0):
    """The width of every stroke in a drawing, as it comes out at tile size."""
    if isinstance(drawn, str):
        return []
    _, attributes, children = drawn
    own = dict(attributes)
    width = float(own.get("stroke-width", width))
    scale *= float((SCALED.findall(own.get("transform", "")) or ["1"])[-1])
    inked = (
        [width * scale]
        if own.get("class") in {"drawing__line", "drawing__body"}
        else []
    )
    return inked + [each for child in children for each in weights(child, width, scale)]


def test_there_are_guides_to_look_at():
    assert CLUES


@pytest.mark.parametrize(("guide", "clue"), CLUES)
def test_every_picture_draws(guide, clue):
    for each in pictures(clue):
        assert problems(picture(each)) == ()
        assert svg(node(picture(each))).startswith("<svg ")


@pytest.mark.parametrize(("guide", "clue"), CLUES)
def test_every_option_is_drawn(guide, clue):
    options = clue.get("option", ())

    assert [each["id"] for each in options if "picture" not in each] == []
    assert options or "picture" in clue


@pytest.mark.parametrize(("guide", "clue"), CLUES)
def test_no_two_options_look_alike(guide, clue):
    drawn = [node(picture(each["picture"])) for each in clue.get("option", ())]

    assert len(set(drawn)) == len(drawn)


@pytest.mark.parametrize(("guide", "clue"), CLUES)
def test_no_line_of_an_option_is_thin(guide, clue):
    """Tiles are looked at in full sun, at one pixel a unit or more."""
    for option in clue.get("option", ()):
        assert min(weights(node(picture(option["picture"]))), default=2) > 1.74


@pytest.mark.parametrize(("guide", "clue"), CLUES)
def test_every_spot_is_on_the_scene(guide, clue):
    assert clue["spot"] in SCENES[guide["drawing"]]


def test_every_colour_has_its_tokens():
    for name in SWATCHES:
        assert f"--swatch-{name}: #" in css("tokens.css")
        assert f"--swatch-{name}-marks: #" in css("tokens.css")
        assert f".swatch--{name} {{" in css("drawing.css")
        assert f".swatch__marks--{name} {{" in css("drawing.css")


def test_every_class_has_a_rule():
    drawn = [
        node(picture(each))
        for guide in GUIDES
        for clue in guide["clue"]
        for each in pictures(clue)
    ]
    text = "".join(map(svg, [*drawn, *map(scene, SCENES), swatches()]))
    used = {name for found in CLASSES.findall(text) for name in found.split()}

    # A spot that is not lit, and example letters, look like the rest of the drawing.
    plain = {"drawing__spot", "drawing__sample", "swatch"}

    assert used - plain - set(RULED.findall(css("drawing.css"))) == set()


def test_colours_live_in_tokens_alone():
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b|rgb|hsl", css("drawing.css")) == []


def test_drawing_is_alike_in_every_process():
    """Sets and hashes differ from process to process; a drawing must not."""
    seen = {
        subprocess.run(
            [sys.executable, "-c", TELL_APART],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(RULES.parent)},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }

    assert len(seen) == 1
