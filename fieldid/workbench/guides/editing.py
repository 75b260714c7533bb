"""One table of a guide at a time: its form, its mistakes at their fields, its saving.

No form breaks a guide that is whole. In one that has mistakes a form is saved if those
on its own page are mended, so that twenty are mended form by form.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from flask import abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from fieldid.errors import ChangedError, WriteError
from fieldid.guides.document import Document, saved
from fieldid.guides.edit import added
from fieldid.guides.refusals import Path
from fieldid.guides.shares import WORDS
from fieldid.guides.written import dotted
from fieldid.workbench.fields.clue import KINDS
from fieldid.workbench.fields.entries import Table
from fieldid.workbench.fields.kinds import MisreadError
from fieldid.workbench.fields.new import NEW_CLUES
from fieldid.workbench.fields.tables import ALONE, NEW
from fieldid.workbench.forms.changes import changed, new_table
from fieldid.workbench.forms.form import Opened, open_form, refuse
from fieldid.workbench.forms.naming import (
    NAMED,
    id_of,
    named_by,
    tell_name_twice,
    words_of,
)
from fieldid.workbench.forms.renames import carried, renamed
from fieldid.workbench.forms.spots import with_spots
from fieldid.workbench.forms.yearorder import in_order
from fieldid.workbench.gate.keeping import (
    REFILLED,
    KeptError,
    is_from_before,
    refilled,
    wish,
)
from fieldid.workbench.judging.chosen import chosen
from fieldid.workbench.judging.preview import preview
from fieldid.workbench.text.differing import Differing, differing
from fieldid.workbench.text.drafts import Draft, Trouble, draft, is_worse, tables
from fieldid.workbench.text.memory import remembered
from fieldid.workbench.text.places import (
    address,
    counted,
    from_address,
    held,
    is_table,
    named,
    table_for,
)
from fieldid.workbench.text.reading import read_tables
from fieldid.workbench.text.sameness import is_same, traits

CHANGED = (
    "The file was changed on disk since this page was opened. What was changed stands "
    "below, and beside it what you would change. To save yours into the file as it is "
    "now, press “Save once more”."
)
MOVED = (
    "The file was changed on disk since this page was opened, and something else "
    "stands in this place now. What was changed stands below, and so does what you had "
    "typed: find its new place in the guide, and type it there."
)


@dataclass(frozen=True, slots=True)
class Edited:
    """A guide's file with the form on one of its tables."""

    guide: str
    document: Document
    opened: Opened
    is_new: bool

    @property
    def path(self) -> Path:
        """Where the table lies, or will lie."""
        return self.opened.path

    @property
    def name(self) -> str:
        """What tells the table from its neighbours; empty of the guide itself."""
        return named(held(self.opened.data, self.path)) if self.path else ""


@refilled
def table(guide: str, where: str) -> ResponseReturnValue:
    """The form on a table of the guide, and what was sent with it."""
    document, data = read_tables(guide)
    path = from_address(where)
    if not is_table(path):
        abort(404)
    if held(data, path) is None and dotted(path) not in ALONE:
        if request.method == "POST":
            raise _lost(guide, document)
        abort(404)
    return _answer(guide, document, data, path, table_for(path, data), is_new=False)


@refilled
def add(guide: str, where: str) -> ResponseReturnValue:
    """The form for a new table at the end of a list."""
    document, data = read_tables(guide)
    path = from_address(where)
    there = held(data, path)
    many = len(there) if isinstance(there, list) else 0
    if not is_table((*path, many)) or held(data, path[:-1]) is None:
        abort(404)
    name = dotted(path)
    if name != "clue":
        wanted = NEW[name]
    elif (kind := request.args.get("kind", "")) in NEW_CLUES:
        wanted = NEW_CLUES[kind]
    else:
        return render_template("workbench/kinds.html", guide=guide, kinds=KINDS)
    return _answer(guide, document, data, (*path, many), wanted, is_new=True)


def _answer(
    guide: str,
    document: Document,
    data: Mapping[str, Any],
    path: Path,
    wanted: Table,
    *,
    is_new: bool,
) -> ResponseReturnValue:
    do = wish("preview", "more") if request.method == "POST" else ""
    form = open_form(
        wanted, path, data, tag=document.tag, sent=request.form, more=int(do == "more")
    )
    edited = Edited(guide, document, form, is_new)
    if not do:
        before = draft(document.text, document.path)
        left = refuse(form, _own(edited, before.troubles))
        return _page(edited, before, left=left)
    if is_from_before() and form.form.tag.data != document.tag:
        abort(409)
    before = draft(document.text, document.path)
    if do == "save" and is_from_before():
        return _page(edited, before, left=[REFILLED], status=409)
    if do == "more":
        return _page(edited, before)
    return _sent(edited, do)


def _lost(guide: str, document: Document) -> KeptError:
    """What was sent is of a table that stands in its place no more."""
    return KeptError(
        MOVED,
        (url_for("guides.guide", guide=guide), "Open the guide anew"),
        different=differing(document, tag=request.form.get("tag", ""), own=None),
    )


def _sent(edited: Edited, do: str) -> ResponseReturnValue:
    document, form = edited.document, edited.opened.form
    before = draft(document.text, document.path)
    tag = str(form.tag.data or "")
    stale = tag != document.tag
    if stale:
        was = str(form.was.data or "")
        if not is_same(was, edited.opened.data, edited.path):
            raise _lost(edited.guide, document)
        _take_over(edited)
    try:
        text = _text(edited)
    except MisreadError:
        return _page(edited, before, status=400)
    text, path = _in_place(edited, text)
    after = draft(text, document.path)
    if do == "preview":
        return _page(edited, before, after)
    if stale:
        form.tag.data = document.tag
        form.was.data = traits(edited.opened.data, edited.path)
        different = differing(document, tag=tag, own=text)
        return _page(edited, before, left=[CHANGED], different=different, status=409)
    own = _own(edited, after.troubles, path)
    if own or is_worse(before, after):
        left = refuse(edited.opened, own)
        others = [each for each in after.troubles if not _own(edited, [each], path)]
        return _page(edited, before, left=left, others=others, status=400)
    try:
        saved(document, text)
    except (ChangedError, WriteError) as error:
        return _page(edited, before, left=[f"{error}. Nothing was saved."], status=409)
    more = carried(document.path, edited.opened.data, edited.path, text)
    flash(f"Saved. {more}".strip())
    return redirect(url_for("guides.table", guide=edited.guide, where=address(path)))


def _take_over(edited: Edited) -> None:
    """Puts what somebody else changed meanwhile where this form changed nothing."""
    base = tables(remembered(edited.opened.form.tag.data or ""))
    if base is None:
        return
    was = open_form(edited.opened.table, edited.path, base, tag="", sent=request.form)
    before = {slot.name: slot for slot in was.slots}
    for slot in edited.opened.slots:
        if slot.name in before and not was.is_changed(before[slot.name]):
            edited.opened.form[slot.name].data = slot.now


def _text(edited: Edited) -> str:
    """The guide's text with what the form says."""
    form, path = edited.opened, edited.path
    text = edited.document.text
    tell_name_twice(form)
    if edited.is_new:
        made = named_by(new_table(form), path, form.data)
        text = added(text, path[:-1], made)
        return with_spots(text, path) if len(path) == 2 else text
    if path and path[-2:-1] and path[-2] in NAMED and not form.input("id").data:
        form.input("id").data = id_of(words_of(form), path, form.data)
    text = renamed(changed(form, text), form.data, path)
    is_redrawn = not path and form.is_changed(form.slot("drawing"))
    is_clue = path[:1] == ("clue",) and len(path) == 2
    return with_spots(text, path) if is_redrawn or is_clue else text


def _in_place(edited: Edited, text: str) -> tuple[str, Path]:
    """The text with a model year that is new or another one in its place by year, and
    the path to it there.
    """
    slots = edited.opened.slots[:2]
    if edited.path[:1] == ("model_year",) and any(map(edited.opened.is_changed, slots)):
        return in_order(text, edited.path)
    return text, edited.path


def _own(
    edited: Edited, troubles: Sequence[Trouble], path: Path | None = None
) -> list[Trouble]:
    """Those that are told on this page, which lies at `path` in the text that was
    looked at; of a new table all that is in it.
    """
    path = edited.path if path is None else path
    found = []
    for each in troubles:
        whole = (*each.home, *each.rest)
        inside = edited.is_new and whole[: len(path)] == path
        if inside or each.home == path:
            found.append(replace(each, home=edited.path, rest=whole[len(path) :]))
    return found


def _page(
    edited: Edited,
    before: Draft,
    after: Draft | None = None,
    *,
    left: Sequence[str] = (),
    others: Sequence[Trouble] = (),
    different: Differing | None = None,
    status: int = 200,
) -> ResponseReturnValue:
    # What is new is in no guide before it is looked at.
    at = () if edited.is_new and after is None else edited.path
    shown = preview(before, after or before, at, chosen(edited.guide))
    page = render_template(
        "workbench/table.html",
        guide=edited.guide,
        edited=edited,
        form=edited.opened.form,
        table=edited.opened.table,
        children=_children(edited),
        above=_above(edited),
        before=before,
        preview=shown,
        left=left,
        others=others,
        different=different,
        wrong=_wrong(edited, left, others),
        is_looked_at=after is not None,
        words=WORDS,
        address=address,
    )
    return page, status


def _wrong(
    edited: Edited, left: Sequence[str], others: Sequence[Trouble]
) -> list[tuple[str, str]]:
    """All mistakes for the summary, each with the id or the page it leads to."""
    form = edited.opened.form
    found = [("", sentence) for sentence in left]
    for input in form:
        found += [(f"#{input.id}", f"{input.label.text}: {e}") for e in input.errors]
    for trouble in others:
        where = address(trouble.home)
        to = url_for("guides.table", guide=edited.guide, where=where)
        found.append((to, f"{trouble.place}: {trouble.plain}"))
    return found


def _above(edited: Edited) -> tuple[str, str] | None:
    """The address and the noun of the table that this one lies in, if it has a page."""
    path = edited.path
    above = path[:-2] if path and isinstance(path[-1], int) else path[:-1]
    if not above:
        return None
    return address(above), table_for(above, edited.opened.data).noun.lower()


def _children(edited: Edited) -> list[tuple[str, list[tuple[str, str]]]]:
    """The lists below the table: their key, and name and address of each in them."""
    if edited.is_new or not edited.path:
        return []
    found = []
    for key in edited.opened.table.lists:
        path = (*edited.path, key)
        there = held(edited.opened.data, path)
        lines = there if isinstance(there, list) else []
        named_ones = [
            (named(each) or counted(path, i), address((*path, i)))
            for i, each in enumerate(lines)
        ]
        found.append((key, named_ones))
    return found
