"""Drawings to choose from: each shape by an example, each value as it changes a
picture, each whole object, each place lit on it.
"""

from collections.abc import Mapping
from functools import lru_cache
from inspect import signature

from markupsafe import Markup

from fieldid import draw
from fieldid.draw.params import (
    COLOUR,
    Check,
    Number,
    OneOf,
    Several,
    Stamped,
    Words,
    checks,
    examples,
    needed,
)

BARE = ("", "none", ())
"""Defaults that leave a shape with nothing particular to see."""
COLOURS = ("green", "ivory")
GROUPS = (
    (
        "Marks, stamps and codes",
        *("stamp", "hosel", "backstamp", "printed", "diamond", "layouts", "barcode"),
        *("arrows", "care", "dustbin"),
    ),
    ("Sizes", "ruler", "gauge", "section", "length", "balance", "ball"),
    ("Heads of iron, and putters", "toe", "face", "back", "numeral", "groove", "joint"),
    ("Heads of wood", "crown", "insert", "plate"),
    (
        "Collar, cover, shaft and grip",
        *("collar", "cover", "whipping", "shaft", "label", "grip", "cap"),
    ),
    (
        "Reels",
        *("drum", "cage", "knob", "foot", "engraved", "guard", "wheel", "pouch"),
    ),
)
"""What shapes are for, and then those shapes: so a picture is looked for."""


@lru_cache(maxsize=1)
def by_group() -> tuple[tuple[str, tuple[tuple[str, Markup], ...]], ...]:
    """What shapes are for, and each of those shapes with an example of it."""
    return tuple(
        (words, tuple((name, _svg(name, _example(name))) for name in shapes))
        for words, *shapes in GROUPS
    )


def pictured(shape: str, given: Mapping[str, object]) -> Markup | None:
    """The picture with what is given of it; None while it cannot be drawn."""
    if draw.problems((shape, tuple(given.items()))):
        return None
    return _svg(shape, given)


def changed(shape: str, given: Mapping[str, object], key: str, value: object) -> Markup:
    """The picture as it is, but for one value; what cannot be drawn is as in the
    example.
    """
    fit = {each: check.wrong for each, check in checks(draw.SHAPES[shape]).items()}
    own = {k: v for k, v in given.items() if k in fit and not fit[k](v)}
    return _svg(shape, {**_needed(shape), **own, key: value})


@lru_cache(maxsize=256)
def object_lit(drawing: str, spot: str = "") -> Markup | None:
    """A whole object, with a place lit; None if there is no such drawing."""
    if drawing not in draw.SCENES:
        return None
    return Markup(draw.svg(draw.scene(drawing, lit=[spot] if spot else [])))


@lru_cache(maxsize=1)
def swatches() -> Markup:
    """What the colours of all pictures are painted with, once a page."""
    return Markup(draw.svg(draw.swatches()))


def _svg(shape: str, given: Mapping[str, object]) -> Markup:
    return Markup(draw.svg(draw.node((shape, tuple(given.items())))))


def _example(shape: str) -> dict[str, object]:
    """What is needed, and what would else be bare; the shape's own examples stay."""
    made, own = draw.SHAPES[shape], examples(draw.SHAPES[shape])
    telling = {
        key: _value(check)
        for key, check in checks(made).items()
        if signature(made).parameters[key].default in BARE and key not in own
    }
    return {**telling, **_needed(shape)}


def _needed(shape: str) -> dict[str, object]:
    made = draw.SHAPES[shape]
    return {key: _value(checks(made)[key]) for key in needed(made)}


def _value(check: Check) -> object:
    """A value that fits and shows something."""
    match check:
        case OneOf(words):
            return next(word for word in words if word not in BARE)
        case Number(low, high):
            return round(low + (high - low) * 0.4)
        case Stamped(most):
            return "A17"[:most]
        case Words(most):
            return "words"[:most]
        case Several(each, most, least):
            if each == COLOUR:
                return COLOURS[:most]
            return (_value(each),) * max(least, 1)
    raise LookupError(check)
