"""A drawing as plain data: nested tuples that any language turns into SVG."""

from html import escape

Node = tuple[str, tuple[tuple[str, str], ...], tuple["Node | str", ...]]
"""(tag, ((attribute, value), ...), (child, ...)); a child is a Node or text."""

Value = str | float
"""What an attribute is built from; numbers are rounded on the way in."""

TILE = 88
"""Side of an option's drawing, in units that are pixels on a small phone."""

LINE = 2.0
FINE = 1.75
"""Stroke widths of outlines and of details: both survive full sunlight."""


def tag(name: str, *children: Node | str, **attributes: Value) -> Node:
    """The node `<name ...>`; an underscore stands for a hyphen, save a last one.

    >>> tag("circle", class_="drawing__line", r=2.50)
    ('circle', (('class', 'drawing__line'), ('r', '2.5')), ())
    """
    pairs = ((_attribute(key), written(value)) for key, value in attributes.items())
    return name, tuple(pairs), children


def written(value: Value) -> str:
    """A value as attribute text; two decimals are finer than any screen.

    >>> written(1 / 3), written(4.0), written(-0.001)
    ('0.33', '4', '0')
    """
    if isinstance(value, str):
        return value
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def svg(node: Node | str) -> str:
    """The node as SVG text, everything escaped.

    >>> svg(tag("text", "W & T", x=1))
    '<text x="1">W &amp; T</text>'
    """
    if isinstance(node, str):
        return escape(node)
    name, attributes, children = node
    written_out = "".join(f' {key}="{escape(value)}"' for key, value in attributes)
    return f"<{name}{written_out}>{''.join(map(svg, children))}</{name}>"


def canvas(*children: Node, width: float = TILE, height: float = TILE) -> Node:
    """The `<svg>` root; hidden from screen readers, since the words stand beside it."""
    return tag(
        "svg",
        *children,
        class_="drawing",
        viewBox=f"0 0 {written(width)} {written(height)}",
        stroke_width=LINE,
        aria_hidden="true",
        focusable="false",
    )


def group(*children: Node, **attributes: Value) -> Node:
    """Nodes that move, turn or light up together."""
    return tag("g", *children, **attributes)


def sample(*children: Node) -> Node:
    """Letters that stand in a scene by way of example; another object has others."""
    return group(*children, class_="drawing__sample")


def line(d: str, **attributes: Value) -> Node:
    """An open stroke in ink."""
    return tag("path", class_="drawing__line", d=d, **attributes)


def body(d: str, **attributes: Value) -> Node:
    """A closed outline in ink, filled with paper."""
    return tag("path", class_="drawing__body", d=d, **attributes)


def tone(d: str, **attributes: Value) -> Node:
    """A flat shade without outline."""
    return tag("path", class_="drawing__tone", d=d, **attributes)


def solid(d: str, **attributes: Value) -> Node:
    """A flat shape in ink, without outline."""
    return tag("path", class_="drawing__ink", d=d, **attributes)


def black(d: str) -> Node:
    """A black thing: black on light and on dark paper, unlike ink."""
    return tag("path", class_="drawing__black", d=d)


def printed(*children: Node) -> Node:
    """What is printed in black on white: so on light and on dark paper."""
    return group(*children, class_="drawing__print")


def _attribute(key: str) -> str:
    return key.rstrip("_").replace("_", "-")
