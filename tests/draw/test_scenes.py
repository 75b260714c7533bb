"""The whole object, and the places on it that can be lit."""

import pytest

from fieldid.draw import SCENES, scene, still, svg

PLACES = [(name, spot) for name, spots in SCENES.items() for spot in spots]
LIT = "drawing__spot drawing__spot--lit"


def lit(drawn):
    """The names of the groups that are lit."""
    if isinstance(drawn, str):
        return []
    attributes = dict(drawn[1])
    own = [attributes["data-spot"]] if attributes.get("class") == LIT else []
    return own + [name for child in drawn[2] for name in lit(child)]


@pytest.mark.parametrize("name", SCENES)
def test_nothing_is_lit_unasked(name):
    assert lit(scene(name)) == []


@pytest.mark.parametrize(("name", "spot"), PLACES)
def test_only_the_named_spot_is_lit(name, spot):
    assert set(lit(scene(name, lit=[spot]))) == {spot}


@pytest.mark.parametrize(("name", "spot"), PLACES)
def test_lighting_changes_classes_alone(name, spot):
    lighted = svg(scene(name, lit=[spot]))

    assert lighted.replace(LIT, "drawing__spot") == svg(scene(name))


def test_spots_are_named_once():
    assert all(len(set(spots)) == len(spots) for spots in SCENES.values())


def shapes(drawn, around=()):
    """What is drawn in order, each with the groups around it that move or ink it."""
    if isinstance(drawn, str):
        return [(around, drawn)]
    name, attributes, children = drawn
    own = tuple(each for each in attributes if each[0] not in ("class", "data-spot"))
    if name != "g":
        around = (*around, (name, attributes))
    elif own:
        around = (*around, own)
    alone = [] if children else [around]
    return alone + [each for child in children for each in shapes(child, around)]


@pytest.mark.parametrize("name", SCENES)
def test_what_is_never_lit_looks_the_same_without_spots(name):
    drawn = still(name)

    assert shapes(drawn) == shapes(scene(name))
    assert "spot" not in svg(drawn)
