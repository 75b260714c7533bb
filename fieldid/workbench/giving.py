"""A guide as one file, for somebody to add on a phone: what `fieldid give` writes."""

from flask import Blueprint, abort, flash, redirect, url_for
from flask.typing import ResponseReturnValue

from fieldid.errors import FieldidError
from fieldid.guides import given
from fieldid.workbench.publishing import as_file
from fieldid.workbench.text.drafts import draft
from fieldid.workbench.text.reading import read_guide
from fieldid.workbench.words import so_many

giving = Blueprint("giving", __name__, url_prefix="/guides/<guide>/give")


@giving.get("/<name>.txt")
def file(guide: str, name: str) -> ResponseReturnValue:
    """The file, which is called as its guide; a guide with mistakes is none to give."""
    if name != guide:
        abort(404)
    document = read_guide(guide)
    found = draft(document.text, document.path)
    if found.guide is None:
        flash(f"It was not given: it has {so_many(len(found.troubles), 'mistake')}.")
        return redirect(url_for("guides.guide", guide=guide), 303)
    try:
        # Text, and called so: of JSON phones hand on only some.
        body = given.written(found.guide)
        return as_file(body, "text/plain; charset=utf-8", f"{guide}.txt")
    except FieldidError as error:
        flash(f"It was not given. {error}")
        return redirect(url_for("guides.guide", guide=guide), 303)
