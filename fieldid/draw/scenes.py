"""The whole object as a line drawing, in which each place to look can be lit."""

from collections.abc import Collection, Iterable, Iterator

from fieldid.draw.iron import iron
from fieldid.draw.nodes import Node
from fieldid.draw.reel import reel
from fieldid.draw.thing import thing
from fieldid.draw.wood import wood

_DRAWN = {
    "iron": iron(),
    "unmarked-iron": iron(marked=False),
    "wood": wood(),
    "reel": reel(),
    "thing": thing(),
}

SPOT, LIT = "drawing__spot", "drawing__spot drawing__spot--lit"


def scene(name: str, *, lit: Collection[str] = ()) -> Node:
    """The drawing of a known scene, with some of its spots lit."""
    return _lighted(_DRAWN[name], lit)


def still(name: str) -> Node:
    """The drawing of a known scene where nothing is ever lit: its spots go, and what
    they hold stays where it is.
    """
    tag, attributes, children = _DRAWN[name]
    return tag, attributes, tuple(_spotless(children))


def spots(node: Node | str) -> tuple[str, ...]:
    """The names of the places in a drawing that can be lit, in drawing order."""
    if isinstance(node, str):
        return ()
    _, attributes, children = node
    own = tuple(value for key, value in attributes if key == "data-spot")
    return tuple(dict.fromkeys(own + sum(map(spots, children), ())))


def _lighted(node: Node, lit: Collection[str]) -> Node:
    name, attributes, children = node
    if any(("data-spot", spot) in attributes for spot in lit):
        attributes = tuple((k, LIT if v == SPOT else v) for k, v in attributes)
    return (
        name,
        attributes,
        tuple(
            child if isinstance(child, str) else _lighted(child, lit)
            for child in children
        ),
    )


def _spotless(nodes: Iterable[Node | str]) -> Iterator[Node | str]:
    for node in nodes:
        if isinstance(node, str):
            yield node
            continue
        name, attributes, children = node
        inner = tuple(_spotless(children))
        if dict(attributes).get("class") == SPOT:
            yield from inner
        else:
            yield name, attributes, inner


SCENES: dict[str, tuple[str, ...]] = {
    name: spots(drawn) for name, drawn in _DRAWN.items()
}
"""Scene name -> the places that can be lit."""
