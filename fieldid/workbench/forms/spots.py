"""Where on its drawing a clue is lit that names no place itself."""

from collections.abc import Mapping
from typing import Any

from fieldid.guides.edit import put
from fieldid.guides.refusals import Path
from fieldid.workbench.fields.entries import spots
from fieldid.workbench.text.drafts import tables
from fieldid.workbench.text.places import held

WHOLE = "whole"


def spot_for(data: Mapping[str, Any], part: object) -> str | None:
    """The place to name for a clue on a part; None if the part's own will do.

    >>> spot_for({"drawing": "reel"}, "lid"), spot_for({"drawing": "reel"}, "spool")
    ('whole', None)
    """
    known = [name for name, _ in spots(data)]
    return WHOLE if WHOLE in known and part not in known else None


def with_spots(text: str, path: Path) -> str:
    """The text in which each clue that was left without a place, at `path` or below
    it, has one that is on the drawing.
    """
    data = tables(text) or {}
    clues = data.get("clue")
    for place, clue in enumerate(clues if isinstance(clues, list) else ()):
        at: Path = ("clue", place)
        if at[: len(path)] != path or not isinstance(held(clue, ("part",)), str):
            continue
        spot = spot_for(data, clue["part"])
        if spot and "spot" not in clue:
            text = put(text, (*at, "spot"), spot)
    return text
