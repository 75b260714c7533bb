"""The room of the inbox: files dropped, finds looked at one by one, and decided on."""

from datetime import UTC, datetime

from flask import Blueprint, Response, abort, flash, redirect, render_template
from flask import url_for as address_of
from flask.typing import ResponseReturnValue

from fieldid.engine.range import decades
from fieldid.engine.words import called, day
from fieldid.errors import FieldidError, InboxError
from fieldid.guides.load import load
from fieldid.inbox import deciding, looking
from fieldid.inbox.choice import named
from fieldid.inbox.looking import Decision, Kept, kept, photo
from fieldid.inbox.taking import Taken, take
from fieldid.inbox.values import written
from fieldid.workbench.gate.keeping import home
from fieldid.workbench.gate.limits import up_to
from fieldid.workbench.inbox.accepting import accept_form, put, specimens_of
from fieldid.workbench.inbox.entering import enter, leave, rows_of
from fieldid.workbench.inbox.forms import (
    MOST_MEGABYTES,
    AcceptForm,
    DropForm,
    RefuseForm,
)
from fieldid.workbench.inbox.judged import Judged, judged_of
from fieldid.workbench.judging.told import items_told
from fieldid.workbench.place import place

LARGEST = 2**53
"""No database numbers further."""
NOTHING = "Nothing came: choose a file of finds."
SHOWN = 20
"""So many refused finds of a file are listed."""

inboxes = Blueprint("inboxes", __name__)
inboxes.add_app_template_filter(decades)
inboxes.add_app_template_filter(lambda member, guide: called(guide, member), "called")
inboxes.add_app_template_filter(lambda time: day(time[:10]), "day_of")


@inboxes.get("/inbox")
def shelf() -> ResponseReturnValue:
    """The finds that wait, those decided on, and where files are dropped."""
    return _shelf(DropForm())


@inboxes.post("/inbox")
@up_to(MOST_MEGABYTES)
def drop() -> ResponseReturnValue:
    """Takes in files, and says what became of each."""
    form = DropForm()
    files = [file for file in form.files.data or () if file]
    if not files:
        form.files.errors = [NOTHING]
        return _shelf(form, status=400)
    told: list[Taken | tuple[str, str]] = []
    for file in files:
        name = str(file.filename or "")
        try:
            told.append(take(place().inbox, file.stream, name=name, now=_now()))
        except InboxError as error:
            told.append((name[-100:] or "A file", str(error)))
    return _shelf(DropForm(formdata=None), told=tuple(told))


@inboxes.get(f"/inbox/<int(max={LARGEST}):number>")
def find(number: int) -> ResponseReturnValue:
    """One find with its photos and its verdict, and what may become of it."""
    return _find(_kept(number))


@inboxes.post(f"/inbox/<int(max={LARGEST}):number>/accept")
def accept(number: int) -> ResponseReturnValue:
    """Puts the find into the census of its guide."""
    here = _kept(number)
    judged = judged_of(here.entry)
    if not (judged.path and judged.guide and judged.find):
        abort(409, f"{judged.why} Nothing was done.")
    path, guide = judged.path, judged.guide
    form = accept_form(here, judged)
    specimens = specimens_of(form, judged.find, guide) if form.validate() else ()
    if not specimens:
        return _find(here, judged=judged, accepting=form, status=400)
    try:
        deciding.accept(
            place().inbox,
            number,
            rows=rows_of(guide, specimens),
            now=_now(),
            write=lambda: enter(path, guide, specimens),
        )
    except FieldidError as error:
        put(form, error)
        return _find(here, judged=judged, accepting=form, status=409)
    names = ", ".join(f"“{specimen.name}”" for specimen in specimens)
    flash(f"Find {number} is in the census of {guide.title} as {names}.")
    return _onward(here)


@inboxes.post(f"/inbox/<int(max={LARGEST}):number>/refuse")
def refuse(number: int) -> ResponseReturnValue:
    """Keeps why a find was refused."""
    here, form = _kept(number), RefuseForm(prefix="refuse")
    if not form.validate():
        return _find(here, refusing=form, status=400)
    try:
        reason = str(form.reason.data).strip()
        deciding.refuse(place().inbox, number, reason=reason, now=_now())
    except InboxError as error:
        form.reason.errors = [str(error)]
        return _find(here, refusing=form, status=409)
    flash(f"Find {number} is refused.")
    return _onward(here)


@inboxes.post(f"/inbox/decisions/<int(max={LARGEST}):number>/undo")
def undo(number: int) -> ResponseReturnValue:
    """Takes a decision back; an accepted find leaves the census."""
    try:
        made = deciding.undo(place().inbox, number, now=_now(), unwrite=_unwrite)
    except FieldidError as error:
        abort(409, _sentence(error))
    flash(f"The decision on find {made.find} is undone: it waits again.")
    return redirect(address_of("inboxes.find", number=made.find), 303)


@inboxes.get(f"/photos/<int(max={LARGEST}):number>")
def picture(number: int) -> ResponseReturnValue:
    """A photo by its number: a picture of one kind, whatever it says it is."""
    content = photo(place().inbox, number)
    if content is None:
        abort(404)
    return Response(content, content_type="image/jpeg")


@inboxes.errorhandler(InboxError)
def unusable(error: InboxError) -> ResponseReturnValue:
    """Why the inbox cannot be used."""
    return (
        render_template(
            "workbench/error.html",
            title="The inbox",
            sentence=str(error),
            links=(home(),),
            different=None,
            typed=(),
        ),
        503,
    )


def _shelf(
    form: DropForm,
    *,
    told: tuple[Taken | tuple[str, str], ...] = (),
    status: int = 200,
) -> ResponseReturnValue:
    return (
        render_template(
            "workbench/inbox.html",
            form=form,
            files=told,
            shelf=looking.shelf(place().inbox),
            most=SHOWN,
            named=named,
        ),
        status,
    )


def _find(
    here: Kept,
    *,
    judged: Judged | None = None,
    accepting: AcceptForm | None = None,
    refusing: RefuseForm | None = None,
    status: int = 200,
) -> ResponseReturnValue:
    judged = judged or judged_of(here.entry)
    waits = here.decision is None
    return (
        render_template(
            "workbench/inbox_find.html",
            here=here,
            entry=here.entry,
            name=named(here.number, here.entry),
            judged=judged,
            items=tuple(items_told(here.entry.find, judged.guide)),
            accepting=accepting
            or (accept_form(here, judged) if waits and judged.find else None),
            refusing=refusing or (RefuseForm(prefix="refuse") if waits else None),
        ),
        status,
    )


def _kept(number: int) -> Kept:
    here = kept(place().inbox, number)
    if here is None:
        abort(404, "There is no such find in the inbox.")
    return here


def _unwrite(made: Decision) -> None:
    """Takes an accepted find out of the census of its guide."""
    guide = _kept(made.find).entry.guide
    path = place().guides().get(guide)
    if path is None:
        raise InboxError(
            f"Its census cannot be read: there is no guide “{guide}” here."
        )
    leave(path, load(path), made.rows)


def _onward(here: Kept) -> ResponseReturnValue:
    """To the next find that waits, or back to the list."""
    number = here.next or here.previous
    if number is None:
        return redirect(address_of("inboxes.shelf"), 303)
    return redirect(address_of("inboxes.find", number=number), 303)


def _sentence(error: FieldidError) -> str:
    return f"{error}{'' if str(error).endswith('.') else '.'} Nothing was done."


def _now() -> str:
    return written(datetime.now(UTC))
