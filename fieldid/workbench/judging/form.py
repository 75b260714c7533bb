"""The form in which an author types what was read off one object: a field for each
clue, part by part, and what it says as a find.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import BooleanField, StringField, TextAreaField  # type: ignore[import-untyped]
from wtforms.validators import Length  # type: ignore[import-untyped]

from fieldid.engine.guide import FORMAT, Choice, Clue, Guide, Measure, Number, Part
from fieldid.engine.words import called, capital
from fieldid.guides.items import can_be_gone
from fieldid.guides.readings import misfit
from fieldid.workbench.fields.kinds import number, plain
from fieldid.workbench.fields.wording import said as worded
from fieldid.workbench.forms.form import OPEN, pick, tell
from fieldid.workbench.forms.units import is_unit, not_in
from fieldid.workbench.judging.told import CANNOT_TELL

CANNOT = "?"
"""What stands for "can't tell"; no answer and no number is called so."""
LONGEST = 80

_TYPED = {"autocomplete": "off"}
_SHORT = Length(max=LONGEST, message=f"At most {LONGEST} letters.")


@dataclass(frozen=True, slots=True)
class PartAsked:
    """A part, the box that says it is gone, and its clues; None: nothing could explain
    that it is gone.
    """

    name: str
    gone: Any
    clues: tuple[Any, ...]


def try_form(guide: Guide) -> Any:
    """The form for one object, or for a find that is pasted as text."""
    fields: dict[str, Any] = {
        "name": StringField(
            "What to call it",
            [_SHORT],
            description="Left empty, it is numbered.",
            render_kw=_TYPED,
        ),
        "pasted": TextAreaField(
            "A find as text",
            description="As the app saves it, from the first { to the last }.",
            render_kw={"rows": 4, "spellcheck": "false"},
        ),
    }
    if guide.members:
        members = [(each, capital(called(guide, each))) for each in guide.members.all]
        fields["member"] = pick(
            "Which of the set it is",
            [("", OPEN), *members],
            description="Left open: not known.",
            validate_choice=False,
        )
    for part in _losable(guide):
        fields[f"gone-{part.id}"] = BooleanField("It is gone")
    for clue in guide.clues:
        fields[f"clue-{clue.id}"] = _asked(clue)
    return type("TryForm", (FlaskForm,), fields)()


def parts_asked(guide: Guide, form: Any) -> Iterator[PartAsked]:
    """The fields of the form, part by part."""
    losable = [part.id for part in _losable(guide)]
    for part in guide.parts:
        clues = [clue for clue in guide.clues if clue.part == part.id]
        if clues or part.id in losable:
            gone = form[f"gone-{part.id}"] if part.id in losable else None
            fields = tuple(form[f"clue-{clue.id}"] for clue in clues)
            yield PartAsked(capital(part.name), gone, fields)


def is_blank(guide: Guide, form: Any) -> bool:
    """Whether nothing at all is said of an object."""
    return not any(_said(form, clue) for clue in guide.clues) and not _gone(guide, form)


def typed_find(guide: Guide, form: Any) -> dict[str, object]:
    """The find that the form says; each mistake is told at its field."""
    gone = _gone(guide, form)
    readings: dict[str, object] = {}
    for clue in guide.clues:
        said, field = _said(form, clue), form[f"clue-{clue.id}"]
        if said and clue.part in gone:
            tell(field, "The part is gone, so leave this open: nothing is read off it.")
        elif said:
            readings[clue.id], wrong = _reading(clue, said)
            if wrong:
                tell(field, wrong)
    item: dict[str, object] = {"readings": readings, "gone": gone}
    if guide.members and (member := plain(form["member"].data or "")):
        item["member"] = member
        if member not in guide.members.all:
            tell(form["member"], "There is no such member in the set.")
    return {"format": FORMAT, "guide": guide.id, "items": [item]}


def _losable(guide: Guide) -> list[Part]:
    """The parts that one object can be without."""
    parts = {part.id: part for part in guide.parts}
    return [each for each in guide.parts if can_be_gone(each, parts, in_set=False)]


def _asked(clue: Clue) -> Any:
    if isinstance(clue.kind, Choice):
        answers = [(option.id, option.label) for option in clue.kind.options]
        choices = [("", OPEN), *answers, (CANNOT, CANNOT_TELL)]
        return pick(clue.ask, choices, validate_choice=False)
    words = dict(_TYPED)
    if isinstance(clue.kind, Measure):
        hint = f"In {clue.kind.unit}; ? where it can’t be told."
        words["inputmode"] = "decimal"
    elif isinstance(clue.kind, Number):
        hint = "The number; ? where it can’t be told."
    else:
        hint = "As it stands there, with ? for a letter or digit that can’t be read."
    return StringField(clue.ask, [_SHORT], description=hint, render_kw=words)


def _said(form: Any, clue: Clue) -> str:
    return plain(form[f"clue-{clue.id}"].data or "")


def _gone(guide: Guide, form: Any) -> list[str]:
    return [each.id for each in _losable(guide) if form[f"gone-{each.id}"].data]


def _reading(clue: Clue, said: str) -> tuple[object, str]:
    """A reading as a find has it, and why it is none."""
    if said == CANNOT:
        return None, ""
    value: object = said
    if isinstance(clue.kind, Measure):
        size = _SIZE.fullmatch(said)
        if not size:
            return said, f"{said} is no size; would be right: {_example(clue.kind)}"
        if not is_unit(size["unit"], clue.kind.unit):
            return said, not_in(said, clue.kind.unit)
        value = _measured(size)
    elif isinstance(clue.kind, Number):
        value = number(said)
    refused = misfit(value, clue)
    return value, worded(refused.code, refused.words) if refused else ""


def _measured(size: re.Match[str]) -> object:
    """A size, with its error if one stands beside it."""
    value = number(size["value"])
    return {"value": value, "error": number(size["error"])} if size["error"] else value


def _example(kind: Measure) -> str:
    return f"a number, as {(kind.low + kind.high) / 2:.3g}, in {kind.unit}"


_AMOUNT = (
    r"[0-9]{1,3}(?: [0-9]{3}){1,4}|[0-9]{1,15}(?:[.,][0-9]{1,15})?|[.,][0-9]{1,15}"
)
_SIZE = re.compile(
    rf"(?P<value>-?(?:{_AMOUNT}))\s*(?:(?:±|\+-)\s*(?P<error>{_AMOUNT}))?\s*"
    r"(?P<unit>(?:[^\d\s.,±+-][^\d±]*)?)"
)
