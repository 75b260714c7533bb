"""A guide as the phone gets it: plain data that mirrors the records field for field.

Whatever has an order is a list, so that no language can sort it anew. Pictures and
the object's drawing go along as drawn, because the phone draws nothing by itself.
"""

import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from fieldid import draw
from fieldid.engine.guide import Choice, Code, Guide, Measure, Number


def pack(guide: Guide) -> dict[str, Any]:
    """The guide as lists, texts and numbers, with the drawing as `scene`, and in `own`
    the options that look different on each object, as they do so.
    """
    packed: dict[str, Any] = plain(guide)
    scene = plain(draw.scene(guide.drawing))
    return packed | {"scene": scene, "own": [list(row) for row in _own(guide)]}


def dump(guide: Guide) -> bytes:
    """The packed guide as JSON: the same guide is always the same bytes."""
    text = json.dumps(
        pack(guide), ensure_ascii=False, allow_nan=False, separators=(",", ":")
    )
    return text.encode()


def plain(value: Any) -> Any:
    """A record as a dictionary of its fields, a tuple as a list, all the way down."""
    if isinstance(value, tuple):
        return [plain(each) for each in value]
    if not is_dataclass(value):
        return value
    mirrored = {
        field.name: _drawn(field.name, getattr(value, field.name))
        for field in fields(value)
    }
    # The one place where a field may hold one of several records.
    if isinstance(value, Choice | Measure | Code | Number):
        return {"name": type(value).__name__.lower(), **mirrored}
    return mirrored


def _own(guide: Guide) -> Iterator[tuple[str, str, str | None, Any]]:
    """Clue, option, member (none: any) and drawing, where the option's picture bears by
    way of example what differs: another member's number, a code for another clue.
    """
    worn = any(isinstance(clue.kind, Code) for clue in guide.clues)
    members = guide.members.all if guide.members else ()
    for clue in guide.clues:
        for option in clue.kind.options if isinstance(clue.kind, Choice) else ():
            if option.picture is None:
                continue
            usual = draw.node(option.picture)
            for member in (None, *members):
                picture = draw.owned(option.picture, number=member, worn=worn)
                drawn = draw.node(picture)
                if drawn != usual:
                    yield clue.id, option.id, member, plain(drawn)
                usual = drawn if member is None else usual


def _drawn(name: str, value: Any) -> Any:
    return plain(draw.node(value) if name == "picture" and value else value)
