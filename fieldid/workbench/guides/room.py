"""The room of the guides: the list of them, each with its tables, and its addresses."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from flask import Blueprint, render_template
from flask.typing import ResponseReturnValue

from fieldid.engine.guide import Guide
from fieldid.errors import GuideError
from fieldid.guides.document import opened
from fieldid.guides.warnings import warnings
from fieldid.workbench.fields.tables import TABLES
from fieldid.workbench.guides import editing, raw, rearranging, removing, starting
from fieldid.workbench.judging.chosen import keep_chosen
from fieldid.workbench.judging.page import tries
from fieldid.workbench.place import place
from fieldid.workbench.text.drafts import Draft, draft, tables, title_of
from fieldid.workbench.text.memory import keep_memory
from fieldid.workbench.text.places import address, counted, held, named
from fieldid.workbench.text.reading import read_guide
from fieldid.workbench.words import so_many

LISTS = (
    ("model_year", "Model years"),
    ("part", "Parts"),
    ("clue", "Clues"),
    ("flag", "Red flags"),
    ("caution", "Cautions"),
)
SINGLES = (
    ("model", "Figures for the whole guide"),
    ("set", "Set"),
    ("prices", "Prices"),
)

guides = Blueprint("guides", __name__, url_prefix="/guides")
keep_chosen(guides)
keep_memory(guides)


@dataclass(frozen=True, slots=True)
class Shelved:
    """A guide of the list; without a draft it cannot even be read."""

    id: str
    title: str
    draft: Draft | None
    say: str
    warnings: tuple[str, ...]
    is_left_out: bool


@dataclass(frozen=True, slots=True)
class Line:
    """A table in the list of its guide: its name, what more to say, its address."""

    name: str
    more: str
    where: str
    wrong: bool


def shelf() -> ResponseReturnValue:
    """All guides, with their problems and warnings."""
    found = [_shelved(name) for name in place().guides()]
    return render_template(
        "workbench/guides.html",
        guides=found,
        deleted=removing.deleted(place().rules),
        address=address,
    )


def guide(guide: str) -> ResponseReturnValue:
    """One guide: its problems, its warnings, and every table that it has."""
    document = read_guide(guide)
    data = tables(document.text) or {}
    found = draft(document.text, document.path)
    lists = [(key, words, _lines(data, key, found)) for key, words in LISTS]
    singles = [
        (key, words, isinstance(data.get(key), Mapping)) for key, words in SINGLES
    ]
    return render_template(
        "workbench/guide.html",
        guide=guide,
        title=title_of(document, guide),
        draft=found,
        warnings=_warnings(found.guide),
        readable=bool(data),
        lists=lists,
        singles=singles,
        tag=document.tag,
        is_left_out=guide in place().left_out(),
        address=address,
        nouns={key: TABLES[key].noun.lower() for key, _ in LISTS},
    )


def _shelved(name: str) -> Shelved:
    is_left_out = name in place().left_out()
    try:
        document = opened(place().guides()[name])
    except (GuideError, KeyError) as error:
        return Shelved(name, name, None, str(error), (), is_left_out)
    found = draft(document.text, document.path)
    title = title_of(document, name)
    return Shelved(name, title, found, "", _warnings(found.guide), is_left_out)


def _warnings(found: Guide | None) -> tuple[str, ...]:
    return _worked_out(found) if found else ()


@lru_cache(maxsize=64)
def _worked_out(found: Guide) -> tuple[str, ...]:
    """A large guide takes a moment, and most are as they were a minute ago."""
    return warnings(found)


def _lines(data: Mapping[str, Any], key: str, found: Draft) -> Sequence[Line]:
    there = held(data, (key,))
    lines = there if isinstance(there, list) else []
    wrong = {trouble.home[:2] for trouble in found.troubles}
    return [
        Line(
            named(table) or counted((key,), place),
            _more(table) if isinstance(table, Mapping) else "",
            address((key, place)),
            (key, place) in wrong,
        )
        for place, table in enumerate(lines)
    ]


def _more(table: Mapping[str, Any]) -> str:
    """What a list says of a table beside its name."""
    said = []
    if "ask" in table and "kind" in table:
        options = table.get("option")
        count = len(options) if isinstance(options, list) else 0
        said = [str(table["kind"]), f"on {table.get('part', 'no part')}"]
        said += [so_many(count, "answer")] if count else []
    if "replaced" in table:
        said.append(f"replaced: {table['replaced']}")
    built = table.get("built")
    if isinstance(built, list) and len(built) == 2:
        said.append(f"built {built[0]} to {built[1]}")
    return ", ".join(said)


ADDRESSES = (
    ("/", "shelf", shelf, ("GET",)),
    ("/new", "new", starting.new, ("GET", "POST")),
    ("/<guide>/", "guide", guide, ("GET",)),
    ("/<guide>/leave-out", "leave_out", removing.leave_out, ("POST",)),
    ("/<guide>/take-in", "take_in", removing.take_in, ("POST",)),
    ("/<guide>/delete", "delete", removing.delete, ("GET", "POST")),
    ("/deleted/<int:number>/back", "put_back", removing.put_back, ("POST",)),
    ("/<guide>/raw", "raw", raw.raw, ("GET", "POST")),
    ("/<guide>/finds", "tries", tries, ("GET", "POST")),
    ("/<guide>/table/<path:where>", "table", editing.table, ("GET", "POST")),
    ("/<guide>/add/<path:where>", "add", editing.add, ("GET", "POST")),
    ("/<guide>/move/<path:where>", "move", rearranging.move, ("POST",)),
    ("/<guide>/out/<path:where>", "out", rearranging.out, ("GET", "POST")),
)
"""Every page of the room: its address, its name, its view and what it answers to."""
for _rule, _endpoint, _view, _methods in ADDRESSES:
    guides.add_url_rule(_rule, _endpoint, _view, methods=_methods)
