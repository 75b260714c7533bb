"""What drawings have in common, drawn once."""

import re

from fieldid.draw import SCENES, scene, shared, svg, swatches
from fieldid.draw.nodes import tag

LONG = tag("path", d="M0 0" + "h9v9" * 99)


def put_back(node, found):
    """The drawing with what `<use>` names in its place."""
    name, attributes, children = node
    if name == "use":
        shape = found[dict(attributes)["href"].removeprefix("#")]
        named, pairs, inside = put_back(shape, found)
        return named, tuple(p for p in pairs if p[0] != "id"), inside
    kept = (
        each if isinstance(each, str) else put_back(each, found) for each in children
    )
    return name, attributes, tuple(kept)


def test_every_drawing_stays_the_same():
    lit = {
        (name, spot): scene(name, lit=[spot])
        for name, spots in SCENES.items()
        for spot in spots
    }
    common, slim = shared(lit)
    found = {dict(node[1])["id"]: node for node in common}

    assert common
    assert {key: put_back(node, found) for key, node in slim.items()} == lit


def test_lit_scenes_share_most_of_their_bytes():
    for name, spots in SCENES.items():
        drawn = {spot: scene(name, lit=[spot]) for spot in spots}
        common, slim = shared(drawn)
        before = sum(len(svg(node)) for node in drawn.values())
        after = sum(len(svg(node)) for node in (*common, *slim.values()))

        assert after < 0.7 * before, name


def test_what_comes_once_or_is_short_stays():
    short = tag("path", d="M0 0H9")
    drawings = {"a": tag("svg", LONG, short), "b": tag("svg", short)}

    assert shared(drawings) == ((), drawings)


def test_inner_node_of_a_shared_one_is_not_named():
    """It stands in one place only, once the outer one does."""
    outer = tag("g", LONG)
    common, slim = shared({name: tag("svg", outer) for name in "ab"})

    assert [node[2] for node in common] == [(LONG,)]
    assert svg(slim["a"]) == '<svg><use href="#s1"></use></svg>'


def test_only_used_swatches_are_put_into_a_page():
    assert re.findall(r'id="(.*?)"', svg(swatches({"red"}))) == ["swatch-red"]
