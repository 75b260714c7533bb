"""From a guide's picture (a shape's name and parameters) to its drawing."""

from collections.abc import Iterator

from fieldid.draw.collar import collar
from fieldid.draw.cover import cover
from fieldid.draw.drum import cage, drum, knob
from fieldid.draw.eras import back, balance, ball, groove, joint
from fieldid.draw.grip import cap, grip
from fieldid.draw.head import face, numeral, toe
from fieldid.draw.marks import diamond, printed
from fieldid.draw.measuring import gauge, length, ruler, section
from fieldid.draw.nodes import Node
from fieldid.draw.params import Shape, checks, instead, needed
from fieldid.draw.reelfoot import engraved, foot, layouts
from fieldid.draw.reelworks import guard, pouch, wheel
from fieldid.draw.shaft import label, shaft
from fieldid.draw.signs import arrows, barcode, care, dustbin
from fieldid.draw.stamps import backstamp, hosel, stamp
from fieldid.draw.whipping import whipping
from fieldid.draw.woodhead import crown, insert, plate

Picture = tuple[str, tuple[tuple[str, object], ...]]

SHAPES: dict[str, Shape] = {
    shape.__name__: shape
    for shape in (
        arrows,
        back,
        backstamp,
        balance,
        ball,
        barcode,
        cage,
        cap,
        care,
        collar,
        cover,
        crown,
        diamond,
        drum,
        dustbin,
        engraved,
        face,
        foot,
        gauge,
        grip,
        groove,
        guard,
        hosel,
        insert,
        joint,
        knob,
        label,
        layouts,
        length,
        numeral,
        plate,
        pouch,
        printed,
        ruler,
        section,
        shaft,
        stamp,
        toe,
        wheel,
        whipping,
    )
}


def node(picture: Picture) -> Node:
    """The drawing of a picture that has no problems."""
    shape, parameters = picture
    return SHAPES[shape](**dict(parameters))


def problems(picture: Picture) -> tuple[str, ...]:
    """All that is wrong with a picture, each as "what is wrong; what would be right".

    >>> problems(("colar", ()))
    ("the shape 'colar' is not known; use 'collar'",)
    >>> problems(("collar", (("rings", ("green", "ivroy")),)))
    ("rings: 'ivroy' is not known; use 'ivory'",)
    """
    name, parameters = picture
    if name not in SHAPES:
        right = instead(name, SHAPES)
        return (f"the shape {name!r} is not known; use {right}",)
    given = dict(parameters)
    return (*_missing(name, given), *_unfit(name, given))


def _missing(name: str, given: dict[str, object]) -> Iterator[str]:
    for parameter in needed(SHAPES[name]):
        if parameter not in given:
            yield f"the shape {name!r} needs a value; use {parameter} = ..."


def _unfit(name: str, given: dict[str, object]) -> Iterator[str]:
    known = checks(SHAPES[name])
    for parameter, value in given.items():
        if parameter not in known:
            right = instead(parameter, known)
            yield f"the shape {name!r} has no {parameter!r}; use {right}"
        elif wrong := known[parameter].wrong(value):
            yield f"{parameter}: {wrong}"
