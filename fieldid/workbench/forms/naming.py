"""Short names for what has none yet, made of its words."""

from collections.abc import Mapping
from typing import Any

from flask import request

from fieldid.guides.refusals import Path
from fieldid.workbench.fields.kinds import MisreadError
from fieldid.workbench.forms.form import Opened, slug, tell
from fieldid.workbench.text.places import held

_IDLE = (
    *("what", "which", "is", "are", "was", "were", "the", "a", "an", "on", "of", "how"),
    *("do", "does", "it", "there"),
)


TWICE = "There is a part of this name already."
NAMED = ("part", "clue", "option")
"""Tables that have a short name."""


def is_alike(one: str, other: str) -> bool:
    """Whether two names are one to whoever reads them.

    >>> is_alike("Shaft ", "shaft"), is_alike("shaft", "head")
    (True, False)
    """
    return one.casefold().split() == other.casefold().split()


def tell_name_twice(opened: Opened) -> None:
    """Tells the name of a part at its field if another part has it; a MisreadError."""
    path = opened.path
    if path[:-1] != ("part",) or not opened.is_changed(opened.slot("name")):
        return
    name = opened.sent(opened.slot("name"))
    for place, each in enumerate(held(opened.data, ("part",)) or ()):
        if place != path[-1] and is_alike(str(held(each, ("name",))), name):
            tell(opened.input("name"), TWICE)
            raise MisreadError(TWICE)


def named_by(made: dict[str, Any], path: Path, data: Any) -> dict[str, Any]:
    """A new table with the short names that it and its answers lack."""
    kind = path[-2]
    if kind == "clue":
        asked = request.args["kind"]
        made = {"kind": asked, **made}
        taken: list[str] = []
        for option in made.get("option", ()):
            option["id"] = slug(str(option.get("label", "")), taken)
            taken.append(option["id"])
    if kind in NAMED and "id" not in made:
        made = {"id": id_of(made, path, data), **made}
    return made


def words_of(form: Opened) -> dict[str, str]:
    """The words of a table that has a form, by key."""
    return {str(slot.path[0]): form.sent(slot) for slot in form.slots}


def id_of(words: Mapping[str, Any], path: Path, data: Any) -> str:
    """A short name for a table, out of its words, that no neighbour has."""
    there = held(data, path[:-1])
    others = [each for i, each in enumerate(there or ()) if i != path[-1]]
    taken = [str(each.get("id")) for each in others if isinstance(each, Mapping)]
    said = next((str(words[k]) for k in ("name", "label", "ask") if words.get(k)), "")
    telling = [word for word in said.split() if word.lower().strip("?") not in _IDLE]
    return slug(" ".join(telling[:4]) or said, taken)
