"""Pictures are chosen by seeing them, and come back into the file as they were."""

import tomllib

import pytest

from fieldid.draw import SCENES, SHAPES
from fieldid.workbench.fields.drawn import GROUPS, by_group, pictured
from make import plover

OPTION = "/guides/plover/table/clue/0/option/0"
OTHER = "/guides/plover/table/clue/0/option/2"
CLUE = "/guides/plover/table/clue/0"
RINGS = 'rings = ["green", "ivory"]'


def option(desk, place):
    return tomllib.loads(desk.text("plover"))["clue"][0]["option"][place]


def tiles(desk, name):
    """Value and picture of each radio button of a name."""
    found = {}
    for each in desk.page.select(f"[name='{name}']"):
        assert each["type"] == "radio"
        (label,) = desk.page.select(f"label[for='{each['id']}']")
        assert label.text.strip()
        found[each["value"]] = label.select_one("svg")
    return found


def test_every_shape_is_seen(desk):
    shown = tiles(desk.open(OPTION), "at.picture.shape")

    assert [*shown] == ["", *(name for _, *shapes in GROUPS for name in shapes)]
    assert sorted(shown) == sorted(["", *SHAPES])
    assert all(shown[name] for name in SHAPES)
    assert len({str(each) for each in shown.values()}) == len(SHAPES) + 1


def test_shapes_stand_below_what_they_are_for(desk):
    picker = desk.open(OPTION).page.select_one("[id='at.picture'] details")

    groups = picker.select("fieldset")
    assert [each.legend.text for each in groups] == [words for words, *_ in GROUPS]
    for group, (_, *shapes) in zip(groups, GROUPS, strict=True):
        assert [each["value"] for each in group.select("input")] == shapes


def test_every_place_is_seen_lit(desk):
    shown = tiles(desk.open(CLUE), "at.spot")

    assert [*shown] == ["", *SCENES["iron"]]
    lit = {
        name: each.select(".drawing__spot--lit") for name, each in shown.items() if each
    }
    assert lit.keys() == {*SCENES["iron"]}
    for name, spots in lit.items():
        assert {each["data-spot"] for each in spots} == {name}


@pytest.mark.parametrize("address", ["/guides/plover/table/guide", "/guides/new"])
def test_every_drawing_is_seen(desk, address):
    name = "drawing" if address.endswith("new") else "at.drawing"
    shown = tiles(desk.open(address), name)

    assert {*SCENES} == {each for each in shown if shown[each]}


def test_every_example_can_be_drawn():
    shapes = [each for _, group in by_group() for each in group]

    assert [name for name, svg in shapes if "<svg" not in svg] == []
    assert len(shapes) == len(SHAPES)


def test_values_are_drawn_into_the_picture(desk):
    shown = tiles(desk.open(OPTION), "at.picture.collar.profile")

    assert len({str(each) for each in shown.values()}) == len(shown) == 4
    assert all("green" in str(each) for each in shown.values())
    assert desk.page.select_one("[name='at.picture.collar.rings']")["value"] == (
        "green, ivory"
    )


@pytest.mark.parametrize("said", ['profile = "straight", ' + RINGS, "rings = []"])
def test_untouched_picture_stays_as_it_is(desk, said):
    """Byte for byte, in an order and with a default that nobody would type."""
    odd = plover((RINGS, said))
    desk.write("plover", odd)
    desk.open(OPTION).send(label="green over cream")

    assert desk.text("plover") == odd.replace("green over ivory", "green over cream")


def test_shape_is_chosen_and_then_told(desk):
    desk.open(OTHER).send("preview", picture__shape="toe")
    assert desk.page.select_one("[data-particulars=toe]")
    assert "checked" not in str(desk.page.select("[name='at.picture.toe.line_of']"))
    desk.send(picture__toe__line_of="round")

    assert option(desk, 2)["picture"] == {"shape": "toe", "line_of": "round"}


def test_what_is_needed_is_told_at_the_picture(desk):
    desk.open(OTHER).send(picture__shape="toe")

    assert desk.status == 400
    assert "a choice below for its line of" in desk.errors()["at.picture"]
    assert tiles(desk, "at.picture.toe.line_of")


def test_other_shape_takes_nothing_along(desk):
    desk.open(OPTION).send(picture__shape="grip")

    assert option(desk, 0)["picture"] == {"shape": "grip"}


def test_usual_value_is_not_written(desk):
    desk.open(OPTION).send(picture__collar__pin="none", picture__collar__rings="navy")

    assert option(desk, 0)["picture"] == {"shape": "collar", "rings": ["navy"]}


def test_picture_is_taken_out(desk):
    desk.open(OPTION).send(picture__shape="")

    assert "picture" not in option(desk, 0)


@pytest.mark.parametrize(
    ("picture", "told"),
    [
        ('{ shape = "colar", ' + RINGS + " }", "colar"),
        ('{ shape = "collar", rings = ["pink"] }', "pink"),
        ('{ shape = "collar", hue = "red" }', "hue"),
        ('"collar"', "a shape of those below"),
        ("3", "a shape of those below"),
        ('{ rings = ["green"] }', "a shape of those below"),
    ],
)
def test_odd_picture_is_kept_until_mended(desk, picture, told):
    """Whatever stands in the file is told, and another field can be saved beside it."""
    broken = plover(('{ shape = "collar", ' + RINGS + " }", picture))
    desk.write("plover", broken)
    desk.open(OPTION)
    assert told in desk.errors()["at.picture"]
    desk.send()
    assert desk.text("plover") == broken
    desk.open(OPTION).send(picture__shape="")

    assert "picture" not in option(desk, 0)


def test_unknown_particular_can_be_taken_out(desk):
    desk.write("plover", plover((RINGS, 'hue = "red"')))
    desk.open(OPTION).send(picture__collar__hue="")

    assert option(desk, 0)["picture"] == {"shape": "collar"}


def test_what_cannot_be_drawn_has_no_picture():
    assert pictured("toe", {}) is None
    assert pictured("toe", {"line_of": "round"}) is not None
    assert pictured("tow", {}) is None
