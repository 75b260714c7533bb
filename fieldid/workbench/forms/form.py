"""From the description of a table to its form, and from a form to a change of the text.

A field that says what it said when it was opened changes nothing, so a value is written
anew only if somebody changed it; until then its mistake, too, stays told.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import (  # type: ignore[import-untyped]
    Field,
    HiddenField,
    SelectChoice,
    SelectField,
    StringField,
    TextAreaField,
)

from fieldid.guides.refusals import Path
from fieldid.workbench.fields.clue import CLUE
from fieldid.workbench.fields.entries import Entry, Rows, Table
from fieldid.workbench.fields.kinds import ODD, SHARE, SHARES, plain
from fieldid.workbench.fields.pictures import Drawn, DrawnField, PictureField
from fieldid.workbench.text.drafts import Trouble
from fieldid.workbench.text.places import held
from fieldid.workbench.text.sameness import traits

OPEN = "\u2013"
"""What a list shows while nothing is chosen."""
SPARE = 1
"""Empty lines at the end of a list, to be filled in."""
MOST_ROWS = 60
"""A form that was made by hand may name any number of lines."""


@dataclass(frozen=True, slots=True)
class Slot:
    """One field of one form: its name there, where its value lies from the table on,
    and what it shows of the file.
    """

    name: str
    path: Path
    entry: Entry
    now: str


@dataclass(frozen=True, slots=True)
class Opened:
    """A table with a form to edit it: `path` leads to it in the guide's `data`."""

    table: Table
    path: Path
    data: Mapping[str, Any]
    slots: tuple[Slot, ...]
    form: Any

    def sent(self, slot: Slot) -> str:
        """What stands in the field of a slot."""
        return plain(self.form[slot.name].data or "")

    def is_changed(self, slot: Slot) -> bool:
        """Whether the field says something else than the file."""
        if slot.entry.kind.input == "line":
            # A browser takes the ends of lines out of such a field.
            return self.sent(slot).split() != slot.now.split()
        return self.sent(slot) != plain(slot.now)

    def slot(self, key: str) -> Slot:
        """The slot of a key that stands alone."""
        return next(each for each in self.slots if each.path == (key,))

    def input(self, key: str) -> Any:
        """The field of a key that stands alone."""
        return self.form[_name(Entry(key, "").path)]

    def lines(self, rows: Rows) -> list[list[Any]]:
        """The fields of a list, line by line."""
        found: dict[int, list[Any]] = {}
        for slot in self.slots:
            if slot.path[0] == rows.key and len(slot.path) > 2:
                found.setdefault(int(slot.path[1]), []).append(self.form[slot.name])
        return list(found.values())

    @property
    def first_share(self) -> str:
        """The name of the field where the words for shares are told."""
        kinds = (SHARE, SHARES)
        return next((s.name for s in self.slots if s.entry.kind in kinds), "")

    @property
    def alone(self) -> list[Any]:
        """The fields that stand in no list."""
        keys = [rows.key for rows in self.table.rows]
        return [self.form[each.name] for each in self.slots if each.path[0] not in keys]


def open_form(
    table: Table,
    path: Path,
    data: Mapping[str, Any],
    *,
    tag: str,
    sent: Mapping[str, str] | None = None,
    more: int = 0,
) -> Opened:
    """The form for a table of the guide; `sent` is what came from a browser, and `more`
    how many lines are wanted beside the spare ones.
    """
    there = held(data, path)
    there = there if isinstance(there, Mapping) else {}
    found = _slots(table, there, sent or {}, more)
    # What does not suit the guide is asked only where its file says something of it.
    slots = tuple(each for each in found if each.now or each.entry.is_asked(data))
    kind = type(
        "TableForm",
        (FlaskForm,),
        {
            "tag": HiddenField(default=tag),
            "was": HiddenField(default=traits(data, path)),
            **{slot.name: _input(slot, data) for slot in slots},
        },
    )
    return Opened(table, path, data, slots, kind())


def refuse(opened: Opened, troubles: Sequence[Trouble]) -> list[str]:
    """Puts each trouble to its field; returns what belongs to none."""
    left = []
    for trouble in troubles:
        slot = _slot_of(opened, trouble.rest)
        if slot is None:
            left.append(trouble.plain)
        else:
            tell(opened.form[slot.name], trouble.plain)
    return left


def slug(words: str, taken: Sequence[str] = ()) -> str:
    """An id made of words.

    >>> slug("Collar rings (été)"), slug("grip", ["grip", "grip-2"])
    ('collar-rings-ete', 'grip-3')
    """
    ascii_words = unicodedata.normalize("NFKD", words).encode("ascii", "ignore")
    made = "-".join(re.findall("[a-z0-9]+", ascii_words.decode().lower())[:6]) or "x"
    names = (made, *(f"{made}-{n}" for n in range(2, len(taken) + 3)))
    return next(name for name in names if name not in taken)


def _slots(
    table: Table, there: Mapping[str, Any], sent: Mapping[str, str], more: int
) -> Iterator[Slot]:
    for entry in table.entries:
        yield _slot((), entry, there)
    for rows in table.rows:
        known = there.get(rows.key)
        # One table may stand alone where several may stand in a list.
        lines = [known] if isinstance(known, Mapping) else known
        lines = lines if isinstance(lines, list) else []
        for place in range(_count(rows, len(lines), sent) + more):
            line = lines[place] if place < len(lines) else {}
            line = line if isinstance(line, Mapping) else {}
            for entry in (*rows.entries, *_odd(line, rows.entries, ())):
                yield _slot((rows.key, place), entry, line)
    if table is CLUE:
        # What else belongs to it, its kind would say.
        return
    lists = [*table.lists, *(rows.key for rows in table.rows)]
    for entry in _odd(there, table.entries, lists):
        yield _slot((), entry, there)


def _slot(base: Path, entry: Entry, there: Mapping[str, Any]) -> Slot:
    path = (entry.key,) if entry.kind is ODD else entry.path
    value = held(there, path)
    now = "" if value is None else entry.kind.show(value)
    return Slot(_name((*base, *path)), (*base, *path), entry, now)


def _name(path: Path) -> str:
    """A field's name, which is also its id in the page."""
    return "at." + ".".join(_ODD_CHARACTER.sub("_", str(key)) for key in path)


def _count(rows: Rows, known: int, sent: Mapping[str, str]) -> int:
    """How many lines there are: those of the file and a spare one, or all that came."""
    start = f"at.{rows.key}."
    places = [
        name.removeprefix(start).split(".")[0]
        for name in sent
        if name.startswith(start)
    ]
    came = [int(place) + 1 for place in places if place.isdecimal() and len(place) < 4]
    least = 2 if rows.key == "option" else SPARE
    return min(max(known + least, *came, 0), known + MOST_ROWS)


def _odd(
    there: Mapping[str, Any], entries: Sequence[Entry], lists: Sequence[str]
) -> list[Entry]:
    """The keys that are not known, which can be emptied and so taken out."""
    known = [*lists, *(entry.path[0] for entry in entries)]
    others = [key for key in there if key not in known]
    hint = "This key is not known here. Empty the field to take it out."
    return [Entry(key, f"“{key}”", hint, ODD) for key in others]


def _input(slot: Slot, data: Mapping[str, Any]) -> Any:
    kind, entry = slot.entry.kind, slot.entry
    words: dict[str, Any] = {"default": slot.now, "description": entry.hint}
    if kind.input == "picture":
        return PictureField(entry.label, **words)
    if kind.input in ("pick", "drawn"):
        left = "left open" if entry.drawn else OPEN
        choices = [] if entry.is_needed else [("", left)]
        choices += entry.choices(data) if entry.choices else ()
        if slot.now and slot.now not in dict(choices):
            choices.append((slot.now, f"{slot.now} (not known)"))
        return _one_of(entry, choices, data, words)
    typed: dict[str, Any] = {"autocomplete": "off"}
    if kind.input == "area":
        rows = min(max(slot.now.count("\n") + 2, len(slot.now) // 60 + 1, 2), 14)
        return TextAreaField(entry.label, render_kw={"rows": rows, **typed}, **words)
    if kind.mode != "text":
        typed["inputmode"] = kind.mode
    if kind.words:
        typed["list"] = "words"
    return StringField(entry.label, render_kw=typed, **words)


def _one_of(
    entry: Entry,
    choices: Sequence[tuple[str, str]],
    data: Mapping[str, Any],
    words: Mapping[str, Any],
) -> Any:
    if not entry.drawn:
        return pick(entry.label, choices, validate_choice=False, **words)
    drawn = partial(entry.drawn, data)
    return pick_drawn(entry.label, choices, drawn=drawn, **words)


def pick_drawn(
    label: str, choices: Sequence[tuple[str, str]], *, drawn: Drawn, **words: Any
) -> Any:
    """A row of drawings with their words, one of which is chosen."""
    made = [SelectChoice(value, said) for value, said in choices]
    return DrawnField(label, drawn=drawn, choices=made, **words)


def pick(label: str, choices: Sequence[tuple[str, str]], **words: Any) -> Any:
    """A list of values and their words, one of which is chosen."""
    made = [SelectChoice(value, said) for value, said in choices]
    return SelectField(label, choices=made, **words)


def tell(input: Field, sentence: str) -> None:
    """Puts a sentence to a field."""
    input.errors = [*input.errors, sentence]


def _slot_of(opened: Opened, rest: Path) -> Slot | None:
    """The field of what was refused: the one that holds it, or the first one in it."""
    if not rest:
        return opened.slots[0]
    round_it = [each for each in opened.slots if each.path == rest[: len(each.path)]]
    if round_it:
        return max(round_it, key=lambda slot: len(slot.path))
    return next((each for each in opened.slots if each.path[: len(rest)] == rest), None)


_ODD_CHARACTER = re.compile(r"[^A-Za-z0-9_-]")
