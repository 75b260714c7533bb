"""A guide as the phone gets it: plain data that mirrors the records field for field.

Whatever has an order is a list, so that no language can sort it anew. Pictures and
the object's drawing go along as drawn, because the phone draws nothing by itself.
"""

import json
from dataclasses import fields, is_dataclass
from typing import Any

from fieldid import draw
from fieldid.engine.guide import Choice, Code, Guide, Measure, Number


def pack(guide: Guide) -> dict[str, Any]:
    """The guide as lists, texts and numbers, with the drawing as `scene`."""
    packed: dict[str, Any] = plain(guide)
    return packed | {"scene": plain(draw.scene(guide.drawing))}


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


def _drawn(name: str, value: Any) -> Any:
    return plain(draw.node(value) if name == "picture" and value else value)
