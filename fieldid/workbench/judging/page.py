"""Finds to try a guide on: out of the inbox, typed, or pasted as text; each with its
verdict.
"""

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from flask import flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from fieldid.engine import judge
from fieldid.engine.find import Verdict
from fieldid.engine.guide import Guide
from fieldid.errors import FindError, InboxError
from fieldid.guides import finds
from fieldid.inbox import choice
from fieldid.web.prepared import tables_of
from fieldid.workbench.fields.kinds import plain
from fieldid.workbench.forms.form import tell
from fieldid.workbench.judging.chosen import (
    MOST,
    Chosen,
    choose,
    chosen,
    forget,
    several,
)
from fieldid.workbench.judging.form import is_blank, parts_asked, try_form, typed_find
from fieldid.workbench.judging.told import ItemTold, items_told
from fieldid.workbench.place import place
from fieldid.workbench.text.drafts import draft
from fieldid.workbench.text.reading import read_guide

BLANK = "Nothing is filled in: say one thing at least that was seen on the object."
UNPASTED = "Nothing came: paste the text of a find."
Wrong = list[tuple[str, str]]
"""What is wrong with what was sent: each mistake with the id of its field."""


@dataclass(frozen=True, slots=True)
class Tried:
    """A chosen find: its place among them, what was read, and its verdict, or why it
    has none any more.
    """

    place: int
    name: str
    items: tuple[ItemTold, ...]
    verdict: Verdict | None
    why: str = ""


def tries(guide: str) -> ResponseReturnValue:
    """The chosen finds with their verdicts, and the forms that add one."""
    document = read_guide(guide)
    loaded = draft(document.text, document.path).guide
    if loaded is None:
        flash("Nothing can be judged with a guide that has mistakes.")
        return redirect(url_for("guides.guide", guide=guide))
    form = try_form(loaded)
    offered, unusable = _offered(loaded)
    wrong: Wrong = []
    if form.is_submitted():
        do = request.form.get("do", "")
        if do.startswith("forget-"):
            forget(guide, int(do[7:]) if do[7:].isdecimal() else -1)
        elif do == "inbox":
            wrong = _ticked(guide, offered, request.form.getlist("take"))
        else:
            wrong = _taken(loaded, form, do)
        if not wrong:
            return redirect(url_for("guides.tries", guide=guide))
    page = render_template(
        "workbench/tries.html",
        guide=guide,
        loaded=loaded,
        form=form,
        parts=tuple(parts_asked(loaded, form)),
        wrong=wrong,
        tried=tuple(_tried(loaded, chosen(guide)))[::-1],
        offered=_left(guide, offered),
        unusable=unusable,
        most=MOST,
    )
    return page, 400 if wrong else 200


def _offered(guide: Guide) -> tuple[tuple[choice.Chosen, ...], str]:
    """The finds of the inbox that the guide can judge, and why there are none."""
    try:
        return choice.chosen(place().inbox, guide), ""
    except InboxError as error:
        return (), str(error)


def _left(guide: str, offered: Sequence[choice.Chosen]) -> list[tuple[int, str]]:
    """Those that were not chosen yet: their numbers and names."""
    names = [each.name for each in chosen(guide)]
    found = ((each.number, _called(each)) for each in offered)
    return [(number, name) for number, name in found if name not in names]


def _called(each: choice.Chosen) -> str:
    """Finds of one title stay apart by their numbers."""
    own = f"No. {each.number}"
    return f"{each.title}, {own}" if each.title != f"Find {each.number}" else own


def _ticked(guide: str, offered: Sequence[choice.Chosen], numbers: list[str]) -> Wrong:
    """Keeps the finds of the inbox that were ticked; else why not."""
    known = {str(each.number): each for each in offered}
    sentence = ""
    if not numbers:
        sentence = "No find was ticked."
    elif len(numbers) > MOST:
        sentence = f"Choose at most {MOST} at once."
    elif not known.keys() >= {*numbers}:
        sentence = "One of these finds cannot be judged by this guide as it is."
    if sentence:
        return [("inbox", sentence)]
    for each in map(known.__getitem__, numbers):
        source = json.dumps(finds.find_json(each.find)).encode()
        choose(guide, _called(each), source)
    return []


def _taken(guide: Guide, form: Any, do: str) -> Wrong:
    """Keeps what was typed or pasted; else every mistake with its field."""
    form.validate()
    pasted = plain(form["pasted"].data or "")
    # Enter in a field presses the first button, also of whoever pasted a text.
    is_pasted = do == "paste" or (bool(pasted) and is_blank(guide, form))
    if not is_pasted and is_blank(guide, form):
        return [(f"clue-{guide.clues[0].id}", BLANK)]
    source = pasted if is_pasted else json.dumps(typed_find(guide, form))
    if is_pasted and not pasted:
        tell(form["pasted"], UNPASTED)
    if wrong := _told(form):
        return wrong
    try:
        found = several(source.encode(), guide)
    except FindError as error:
        tell(form["pasted"], f"{error}.")
        return _told(form)
    name = plain(form["name"].data or "") or _numbered(chosen(guide.id))
    for i, find in enumerate(found):
        known = name if len(found) == 1 else f"{name}, {i + 1}"
        choose(guide.id, known, json.dumps(finds.find_json(find)).encode())
    flash(f"{name} is judged below.")
    return []


def _told(form: Any) -> Wrong:
    """Every mistake that is told at a field."""
    return [
        (field.id, f"{_asking(field.label.text)} {each}")
        for field in form
        for each in field.errors
    ]


def _asking(label: str) -> str:
    return label if label.endswith("?") else f"{label}:"


def _numbered(known: Sequence[Chosen]) -> str:
    """A name that no other has, and none had that is still here."""
    numbers = [_NUMBERED.fullmatch(each.name) for each in known]
    last = max((int(each[1]) for each in numbers if each), default=0)
    return f"Find {last + 1}"


def _tried(guide: Guide, known: Sequence[Chosen]) -> Iterator[Tried]:
    """Each chosen find under the guide as it is now."""
    for at, each in enumerate(known):
        try:
            find = finds.load(each.source, [guide])
        except FindError as error:
            yield Tried(at, each.name, (), None, f"{error}.")
            continue
        items = tuple(items_told(finds.find_json(find), guide))
        yield Tried(at, each.name, items, judge(tables_of(guide), find))


_NUMBERED = re.compile(r"Find ([0-9]{1,9})")
