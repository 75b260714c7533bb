"""The file of a guide as a page opens it, or the way to where it can be mended."""

from collections.abc import Mapping
from typing import Any

from flask import abort, flash, redirect, request, url_for

from fieldid.errors import GuideError
from fieldid.guides.document import Document, opened
from fieldid.workbench.gate.keeping import KeptError
from fieldid.workbench.place import place
from fieldid.workbench.text.drafts import tables
from fieldid.workbench.text.memory import remember

BROKEN = (
    "was changed on disk since this page was opened, and cannot be read any more "
    "(it is no TOML). Mend it as text first."
)


def read_guide(guide: str) -> Document:
    """The file of a guide that is there, as it is now."""
    path = place().guides().get(guide)
    if path is None:
        abort(404)
    try:
        document = opened(path)
    except GuideError as error:
        why = f"{path.name} {error.problems[0].wrong}."
        if request.method == "POST":
            shelf = (url_for("guides.shelf"), "To the list of guides")
            raise KeptError(why, shelf) from error
        flash(why)
        abort(redirect(url_for("guides.shelf")))
    remember(document)
    return document


def read_tables(guide: str) -> tuple[Document, Mapping[str, Any]]:
    """The file and its tables; what is no TOML can only be mended as text."""
    document = read_guide(guide)
    data = tables(document.text)
    if data is None:
        if request.method == "POST":
            raw = (url_for("guides.raw", guide=guide), "To the file as text")
            raise KeptError(f"{document.path.name} {BROKEN}", raw)
        flash("No form can show this guide until its text can be read again.")
        abort(redirect(url_for("guides.raw", guide=guide)))
    return document, data
