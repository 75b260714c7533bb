"""Finds to try a guide on: out of the inbox, typed, or pasted as text; each with its
verdict.
"""

import json
from collections.abc import Sequence
from typing import Any

from flask import flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import StringField, TextAreaField  # type: ignore[import-untyped]
from wtforms.validators import Length  # type: ignore[import-untyped]

from fieldid.engine import judge
from fieldid.engine.find import Verdict
from fieldid.engine.guide import FORMAT, Choice, Clue, Guide, Measure, Number
from fieldid.errors import FindError, InboxError
from fieldid.guides import finds
from fieldid.inbox import choice
from fieldid.web.prepared import tables_of
from fieldid.workbench.chosen import MOST, choose, chosen, forget, several
from fieldid.workbench.drafts import draft
from fieldid.workbench.forms import OPEN, pick
from fieldid.workbench.kinds import number, plain
from fieldid.workbench.place import place
from fieldid.workbench.reading import read_guide

CANNOT, GONE = "?cannot", "?gone"
"""What may be chosen beside the answers; no id begins with a question mark."""


def tries(guide: str) -> ResponseReturnValue:
    """The chosen finds with their verdicts, and the forms that add one."""
    document = read_guide(guide)
    loaded = draft(document.text, document.path).guide
    if loaded is None:
        flash("Nothing can be judged with a guide that has mistakes.")
        return redirect(url_for("guides.guide", guide=guide))
    form = _form(loaded)
    offered, unusable = _offered(loaded)
    sentence = ""
    if form.is_submitted():
        do = request.form.get("do", "")
        if do.startswith("forget-"):
            forget(guide, int(do[7:]) if do[7:].isdecimal() else -1)
            return redirect(url_for("guides.tries", guide=guide))
        if do == "inbox":
            sentence = _ticked(guide, offered, request.form.getlist("take"))
        else:
            sentence = _taken(loaded, form, do)
        if not sentence:
            return redirect(url_for("guides.tries", guide=guide))
    page = render_template(
        "workbench/tries.html",
        guide=guide,
        loaded=loaded,
        form=form,
        sentence=sentence,
        judged=[(each.name, *_judged(loaded, each.source)) for each in chosen(guide)],
        offered=_left(guide, offered),
        unusable=unusable,
        most=MOST,
    )
    return page, 400 if sentence else 200


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


def _ticked(guide: str, offered: Sequence[choice.Chosen], numbers: list[str]) -> str:
    """Keeps the finds of the inbox that were ticked; the sentence says why not."""
    known = {str(each.number): each for each in offered}
    if not numbers:
        return "No find was ticked."
    if len(numbers) > MOST:
        return f"Choose at most {MOST} at once."
    if not known.keys() >= {*numbers}:
        return "One of these finds cannot be judged by this guide as it is."
    for each in map(known.__getitem__, numbers):
        source = json.dumps(finds.find_json(each.find)).encode()
        choose(guide, _called(each), source)
    return ""


def _form(guide: Guide) -> Any:
    """A field for each clue, and one for pasted text."""
    fields: dict[str, Any] = {
        "name": StringField(
            "What to call it",
            [Length(max=80)],
            description="Left empty, it is numbered.",
            render_kw={"autocomplete": "off"},
        ),
        "member": StringField(
            "Member of the set",
            [Length(max=80)],
            description="Left empty: not known.",
            render_kw={"autocomplete": "off"},
        ),
        "pasted": TextAreaField(
            "Or a find as text",
            description="As the app exports it, from the first { to the last }.",
            render_kw={"rows": 4, "spellcheck": "false"},
        ),
    }
    if guide.members is None:
        del fields["member"]
    for clue in guide.clues:
        fields[f"clue-{clue.id}"] = _asked(clue)
    return type("TryForm", (FlaskForm,), fields)()


def _asked(clue: Clue) -> Any:
    if isinstance(clue.kind, Choice):
        answers = [(option.id, option.label) for option in clue.kind.options]
        ways = [(CANNOT, "can’t tell"), (GONE, "the part is gone")]
        choices = [("", OPEN), *answers, *ways]
        return pick(clue.ask, choices, validate_choice=False)
    if isinstance(clue.kind, Measure):
        hint = f"In {clue.kind.unit}."
    elif isinstance(clue.kind, Number):
        hint = "The number."
    else:
        hint = "As it stands there, ? for what cannot be read."
    return StringField(
        clue.ask, [Length(max=80)], description=hint, render_kw={"autocomplete": "off"}
    )


def _taken(guide: Guide, form: Any, do: str) -> str:
    """Keeps what was sent; the sentence says why not."""
    if not form.validate():
        return "A text is longer than a reading can be."
    name = plain(form["name"].data or "") or f"Find {len(chosen(guide.id)) + 1}"
    source = (
        (form["pasted"].data or "").encode() if do == "paste" else _typed(guide, form)
    )
    try:
        found = several(source, guide)
    except FindError as error:
        return f"{error}."
    for i, find in enumerate(found):
        known = name if len(found) == 1 else f"{name}, {i + 1}"
        choose(guide.id, known, json.dumps(finds.find_json(find)).encode())
    return ""


def _typed(guide: Guide, form: Any) -> bytes:
    """The typed readings as a find."""
    readings: dict[str, object] = {}
    gone: list[str] = []
    for clue in guide.clues:
        said = plain(form[f"clue-{clue.id}"].data or "")
        if said == GONE:
            gone += [clue.part] if clue.part not in gone else []
        elif said:
            readings[clue.id] = _reading(clue, said)
    item: dict[str, object] = {"readings": readings, "gone": gone}
    member = plain(form["member"].data or "") if guide.members else ""
    if member:
        item["member"] = member
    return json.dumps({"format": FORMAT, "guide": guide.id, "items": [item]}).encode()


def _reading(clue: Clue, said: str) -> object:
    if said == CANNOT:
        return None
    return number(said) if isinstance(clue.kind, Measure | Number) else said


def _judged(guide: Guide, source: bytes) -> tuple[Verdict | None, str]:
    """The verdict, or why the find does not fit the guide any more."""
    try:
        return judge(tables_of(guide), finds.load(source, [guide])), ""
    except FindError as error:
        return None, f"{error}."
