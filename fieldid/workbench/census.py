"""The census of a guide: counts beside its shares, and the button that writes them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from pathlib import Path

from flask import (
    Blueprint,
    abort,
    current_app,
    flash,
    redirect,
    render_template,
    request,
    url_for,
)
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from fieldid.census.accept import accept, chosen, overruled
from fieldid.census.propose import Proposal
from fieldid.census.read import MAY, NEEDED, beside, columned, load
from fieldid.census.specimens import HOWS, Census
from fieldid.census.telling import (
    Told,
    counted_say,
    expects_say,
    named,
    passes_say,
    tell,
    unforeseen_say,
    verdict_say,
    when,
)
from fieldid.draw import svg
from fieldid.draw.intervals import interval
from fieldid.engine.guide import Guide
from fieldid.errors import ChangedError, FieldidError, GuideError, Problem, UsageError
from fieldid.guides.document import Document, opened, saved
from fieldid.guides.load import loads
from fieldid.workbench.place import place
from fieldid.workbench.words import so_many

FEW = 10
MOST = 80
"""A larger census takes longer than a page should: it is for the command."""

CHANGED = (
    "Nothing was undone: the guide was changed since the counts were written. "
    "Their shares can be changed one by one on the guide's page."
)

censuses = Blueprint("censuses", __name__, url_prefix="/guides/<guide>/census")
# What each guide was before counts were last written into it, until the server ends.
censuses.record(lambda state: state.app.extensions.update(before={}))


@dataclass(frozen=True, slots=True)
class Before:
    """The text of a guide before counts were written, and the tag of what they made."""

    text: str
    tag: str


@dataclass(frozen=True, slots=True)
class Row:
    """A line of the table: the span in words, its counts, and its chart."""

    name: str
    clue: str
    option: str
    when: str
    counted: str
    expects: str
    verdict: str
    chart: Markup
    ticked: bool


@censuses.get("/")
def page(guide: str) -> ResponseReturnValue:
    """What the census says of the guide."""
    path = _path(guide)
    try:
        document, found = _guide(path)
    except GuideError as error:
        return _without(guide, guide, error.problems, of_guide=True)
    try:
        told = _told(path, found) if beside(path).exists() else None
    except GuideError as error:
        return _without(guide, found.title, error.problems, of_guide=False)
    if told is None:
        return _page(guide, found.title, found=found)
    return _page(guide, found.title, found=found, told=told, tag=document.tag)


@censuses.post("/")
def write(guide: str) -> ResponseReturnValue:
    """Writes the counts that were ticked into the guide."""
    path = _path(guide)
    try:
        flash(_written(path, request.form.getlist("take"), request.form.get("tag")))
    except FieldidError as error:
        flash(f"Nothing was written. {error}")
    return redirect(url_for("censuses.page", guide=guide), 303)


@censuses.post("/undo")
def undo(guide: str) -> ResponseReturnValue:
    """Puts the guide back as it was before counts were last written into it."""
    path = _path(guide)
    try:
        flash(_undone(path))
    except FieldidError as error:
        flash(f"Nothing was undone. {error}")
    return redirect(url_for("censuses.page", guide=guide), 303)


def _undone(path: Path) -> str:
    before = _befores().get(path)
    if before is None:
        return "There is nothing to undo."
    document = opened(path)
    if document.tag != before.tag:
        return CHANGED
    saved(document, before.text)
    del _befores()[path]
    return "The guide is as it was before the counts were written."


def _befores() -> dict[Path, Before]:
    found: dict[Path, Before] = current_app.extensions["before"]
    return found


def _written(path: Path, names: Sequence[str], tag: str | None) -> str:
    """Writes them and says so."""
    document, found = _guide(path)
    if document.tag != tag:
        raise ChangedError(
            f"{path.name} was changed on disk since this page was opened; "
            "look at the counts again"
        )
    told = _told(path, found)
    if told is None:
        raise UsageError("The census is too large for a page.")
    taken = chosen(told.proposals, names)
    if not taken:
        raise UsageError("No count was ticked.")
    count = len(told.census.specimens)
    # The day on which it is accepted is that of this machine's calendar.
    made = accept(document, found, taken, specimens=count, on=date.today())
    _befores()[path] = Before(document.text, opened(path).tag)
    say = f"{so_many(len(taken), 'count was', 'counts were')} written."
    for each in overruled(made, taken):
        say += f" {each.name} counts no longer: another span covers its years."
    return say


def _path(guide: str) -> Path:
    """The file of a guide that is there."""
    return place().guides().get(guide) or abort(404)


def _guide(path: Path) -> tuple[Document, Guide]:
    document = opened(path)
    content, folder = document.text.encode(), path.parent
    return document, loads(content, file=str(path), stem=path.stem, folder=folder)


def _told(path: Path, guide: Guide) -> Told | None:
    """What the census comes to; None if it is too large for a page."""
    # By its name alone: where the folder lies changes nothing.
    census = replace(load(beside(path), guide), file=beside(path).name)
    return _worked_out(guide, census) if len(census.specimens) <= MOST else None


@lru_cache(maxsize=8)
def _worked_out(guide: Guide, census: Census) -> Told:
    """It takes seconds, and most often nothing changed since the last time."""
    return tell(guide, census)


def _page(
    name: str, title: str, *, found: Guide, told: Told | None = None, tag: str = ""
) -> ResponseReturnValue:
    proposals = told.proposals if told else ()
    # The options of a clue go together.
    clues = {each.clue for each in proposals if not each.agrees}
    rows = [(each, _row(found, each, ticked=each.clue in clues)) for each in proposals]
    path, before = beside(_path(name)), _befores().get(_path(name))
    return render_template(
        "workbench/census.html",
        guide=name,
        title=title,
        fiction=found.fiction,
        told=told,
        tag=tag,
        file=path.name,
        is_there=path.exists(),
        most=MOST,
        few=FEW,
        can_undo=bool(before and before.tag == tag),
        passes=passes_say(told) if told else "",
        disagree=[row for each, row in rows if not each.agrees],
        agree=[row for each, row in rows if each.agrees],
        unforeseen=[
            (*named(found, each), unforeseen_say(each)) for each in told.unforeseen
        ]
        if told
        else [],
        columns=",".join([*NEEDED, *MAY, *(clue.id for clue in columned(found))]),
        hows=HOWS,
    )


def _without(
    name: str, title: str, problems: Sequence[Problem], *, of_guide: bool
) -> ResponseReturnValue:
    """The page where the guide or the census has problems."""
    return render_template(
        "workbench/census_problems.html",
        guide=name,
        title=title,
        problems=problems,
        of_guide=of_guide,
    )


def _row(guide: Guide, each: Proposal, *, ticked: bool) -> Row:
    clue, option = named(guide, each)
    drawn = interval(each.low, each.high, count=each.proposed, share=each.expects)
    return Row(
        each.name,
        clue.name,
        option.label,
        when(option.seen[each.span]),
        counted_say(each),
        expects_say(each),
        verdict_say(each),
        Markup(svg(drawn)),
        ticked,
    )
