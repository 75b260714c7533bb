"""A guide left out of the app, taken in again, deleted, and put back.

Each is a move of its file and its census; nothing that is in them is ever lost.
"""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from flask import abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from fieldid.census.read import beside
from fieldid.errors import FieldidError, GuideError, TakenError, WriteError
from fieldid.guides.document import Document, opened, relocated
from fieldid.workbench.place import LEFT_OUT, place
from fieldid.workbench.text.drafts import tables, title_of
from fieldid.workbench.text.places import held
from fieldid.workbench.text.reading import read_guide

DELETED = "deleted"
"""The folder of the guides that were deleted, each in one of its own with a number."""
NEXT = "From the next build on the app is {}."


@dataclass(frozen=True, slots=True)
class Deleted:
    """A guide that was deleted, and where its file lies now."""

    number: int
    path: Path
    title: str

    @property
    def name(self) -> str:
        """Its short name."""
        return self.path.stem


def leave_out(guide: str) -> ResponseReturnValue:
    """Leaves a guide out of the app."""
    document = read_guide(guide)
    why = _held_by(document) or _holds(document)
    if guide in place().left_out():
        why = "It is left out already."
    if not why:
        folder = place().rules / LEFT_OUT
        why = _moved(document, folder / document.path.name)
    _tell(why, f"It is left out. {NEXT.format('made without it')}")
    return redirect(url_for("guides.guide", guide=guide), 303)


def take_in(guide: str) -> ResponseReturnValue:
    """Takes a guide into the app that was left out."""
    document = read_guide(guide)
    why = _held_by(document)
    if guide not in place().left_out():
        why = "It is in the app already."
    if not why:
        why = _moved(document, place().rules / document.path.name)
    _tell(why, f"It is taken in. {NEXT.format('made with it')}")
    return redirect(url_for("guides.guide", guide=guide), 303)


def delete(guide: str) -> ResponseReturnValue:
    """Asks whether to delete a guide, and deletes it."""
    document = read_guide(guide)
    if request.method == "GET":
        census = beside(document.path)
        return render_template(
            "workbench/delete.html",
            guide=guide,
            title=title_of(document, guide),
            document=document,
            census=census.name if census.exists() else "",
            why=_held_by(document),
        )
    why = _held_by(document) or _moved(document, _free(document.path))
    _tell(why, f"{title_of(document, guide)} is deleted; it can be put back below.")
    if why:
        return redirect(url_for("guides.guide", guide=guide), 303)
    return redirect(url_for("guides.shelf"), 303)


def put_back(number: int) -> ResponseReturnValue:
    """Puts a guide back that was deleted, to where it lay."""
    found = {each.number: each for each in deleted(place().rules)}.get(number)
    if found is None:
        abort(404)
    folder = place().rules / DELETED / str(number)
    if found.name in place().guides():
        why = f"There is a guide {found.name} here already."
    else:
        why = _carried(found.path, place().rules / found.path.relative_to(folder))
    _tell(why, f"{found.title} is put back.")
    if why:
        return redirect(url_for("guides.shelf"), 303)
    for emptied in (folder / LEFT_OUT, folder):
        with suppress(OSError):
            emptied.rmdir()
    return redirect(url_for("guides.guide", guide=found.name), 303)


def deleted(rules: Path) -> tuple[Deleted, ...]:
    """The guides that were deleted and can be put back, the last one first."""
    return tuple(sorted(_deleted(rules), key=lambda each: -each.number))


def _deleted(rules: Path) -> Iterator[Deleted]:
    for path in (rules / DELETED).glob("**/*.toml"):
        number = path.relative_to(rules / DELETED).parts[0]
        if number.isdecimal():
            yield Deleted(int(number), path, _title(path))


def _title(path: Path) -> str:
    try:
        return title_of(opened(path), path.stem)
    except GuideError:
        return path.stem


def _free(path: Path) -> Path:
    """A place of its own for a guide that is deleted, from which it finds back."""
    rules = place().rules
    numbers = [each.number for each in _deleted(rules)]
    folder = rules / DELETED / str(max(numbers, default=0) + 1)
    return folder / path.relative_to(rules)


def _moved(document: Document, to: Path) -> str:
    """Moves a guide if it is as its page was opened with; the sentence says why not."""
    if request.form.get("tag") != document.tag:
        return f"{document.path.name} was changed on disk since this page was opened."
    return _carried(document.path, to, tag=document.tag)


def _carried(path: Path, to: Path, *, tag: str | None = None) -> str:
    """Moves a guide's file with its census; the sentence says why not."""
    census = beside(path)
    try:
        _made(to.parent)
        if beside(to).exists():
            raise TakenError(f"{beside(to).name} is there already")
        relocated(path, to, tag=tag)
        if census.exists():
            relocated(census, beside(to))
    except FieldidError as error:
        return f"{error}."
    return ""


def _made(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        what = f"{folder.name} can be no folder: {error.strerror}"
        raise WriteError(what) from error


def _held_by(document: Document) -> str:
    """Why a guide has to stay where it is: others take over its clues."""
    path = document.path
    names = [
        other.stem
        for other in sorted(path.parent.glob("*.toml"))
        if other != path and path.stem in _includes(other)
    ]
    if not names:
        return ""
    return (
        f"Clues of it are taken over by {', '.join(names)}, which would then lack them."
    )


def _holds(document: Document) -> str:
    """Why a guide cannot lie elsewhere: it takes over clues of those beside it."""
    if not _names(document):
        return ""
    return "It takes over clues of other guides, and has to stay beside them."


def _includes(path: Path) -> list[Any]:
    try:
        return _names(opened(path))
    except GuideError:
        return []


def _names(document: Document) -> list[Any]:
    names = held(tables(document.text), ("include",))
    return names if isinstance(names, list) else []


def _tell(why: str, done: str) -> None:
    flash(f"Nothing was done. {why}" if why else done)
