"""What several drawings of one page have in common, drawn once and shown by `<use>`.

A shape that is part of many drawings so costs its bytes once. Only whole nodes are
shared, in the order in which they are drawn, so every drawing looks as before; a lit
place lights what is shown in it, since its colours are inherited.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from typing import TypeVar

from fieldid.draw.nodes import Node, svg, tag

SHORTEST = 300
"""A shorter node stays: what stands there twice is packed to less than two names."""

Key = TypeVar("Key")


def shared(drawings: Mapping[Key, Node]) -> tuple[tuple[Node, ...], dict[Key, Node]]:
    """The nodes that come more than once, each with an id, and the drawings with
    `<use>` in their place.

    >>> line = tag("path", d="M0 0" + "h9v9" * 99)
    >>> found, drawn = shared({"a": tag("svg", line), "b": tag("svg", line)})
    >>> [dict(node[1])["id"] for node in found], svg(drawn["a"])
    (['s1'], '<svg><use href="#s1"></use></svg>')
    """
    counted = _counted(drawings.values())
    often = [node for node, times in counted.items() if times > 1 and _is_long(node)]
    names = {node: f"s{place}" for place, node in enumerate(often, start=1)}
    found = tuple(_named(node, names) for node in often)
    return found, {key: _inside(node, names) for key, node in drawings.items()}


def _counted(drawings: Iterable[Node]) -> Counter[Node]:
    """How often each node stands somewhere if those around it are drawn once."""
    counted: Counter[Node] = Counter()
    waiting = list(drawings)
    while waiting:
        for child in _nodes(waiting.pop(0)):
            counted[child] += 1
            if counted[child] == 1:
                waiting.append(child)
    return counted


def _nodes(node: Node) -> Iterator[Node]:
    return (child for child in node[2] if not isinstance(child, str))


def _is_long(node: Node) -> bool:
    return len(svg(node)) > SHORTEST


def _named(node: Node, names: Mapping[Node, str]) -> Node:
    name, attributes, children = _inside(node, names)
    return name, (("id", names[node]), *attributes), children


def _inside(node: Node, names: Mapping[Node, str]) -> Node:
    """The node with what is shared inside it only named."""
    name, attributes, children = node
    return name, attributes, tuple(_shown(child, names) for child in children)


def _shown(child: Node | str, names: Mapping[Node, str]) -> Node | str:
    if isinstance(child, str):
        return child
    if child in names:
        return tag("use", href=f"#{names[child]}")
    return _inside(child, names)
