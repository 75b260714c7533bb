"""A guide as the text that it is, with its mistakes by line."""

from collections.abc import Sequence

from flask import abort, flash, redirect, render_template, url_for
from flask.typing import ResponseReturnValue

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import HiddenField, TextAreaField  # type: ignore[import-untyped]

from fieldid.errors import ChangedError, WriteError
from fieldid.guides.document import Document, saved
from fieldid.workbench.gate.keeping import REFILLED, is_from_before, refilled, wish
from fieldid.workbench.judging.chosen import chosen
from fieldid.workbench.judging.preview import preview
from fieldid.workbench.text.differing import Differing, differing
from fieldid.workbench.text.drafts import Draft, draft
from fieldid.workbench.text.places import address
from fieldid.workbench.text.reading import read_guide

CHANGED = (
    "The file was changed on disk since this page was opened. "
    "What was changed stands below, and beside it what saving yours would change; the "
    "file as it is now is in the second field. Take over what you want to keep, then "
    "save once more: your text then stands in place of the other."
)
KEPT = "Saved with its mistakes. The app shows this guide once they are mended."


class RawForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """The whole text of a guide."""

    tag = HiddenField()
    text = TextAreaField(
        "The guide’s file",
        description="As rules/README.md describes it.",
        render_kw={"rows": 30, "spellcheck": "false", "autocomplete": "off"},
    )


@refilled
def raw(guide: str) -> ResponseReturnValue:
    """The text, and what was sent in its place."""
    document = read_guide(guide)
    form = RawForm()
    if not form.is_submitted():
        form.tag.data, form.text.data = document.tag, document.text
        return _page(guide, form, document, draft(document.text, document.path))
    text = _sent(form, document)
    after = draft(text, document.path)
    do = wish("preview", "anyway")
    if do == "preview":
        return _page(guide, form, document, after)
    tag = str(form.tag.data or "")
    if is_from_before():
        if tag != document.tag:
            abort(409)
        return _page(guide, form, document, after, sentences=[REFILLED], status=409)
    if tag != document.tag:
        form.tag.data = document.tag
        return _page(
            guide,
            form,
            document,
            after,
            sentences=[CHANGED],
            different=differing(document, tag=tag, own=text),
            status=409,
        )
    if after.troubles and do != "anyway":
        return _page(guide, form, document, after, can_keep=True, status=400)
    return _saved(guide, form, document, after)


def _sent(form: RawForm, document: Document) -> str:
    """The text with the ends of lines that files have, and the last one."""
    text = str(form.text.data or "").replace("\r\n", "\n").replace("\r", "\n")
    # The browser sends it with what the file may not have had at its end.
    same = text.rstrip("\n") == document.text.rstrip("\n")
    return document.text if same else text


def _saved(
    guide: str, form: RawForm, document: Document, after: Draft
) -> ResponseReturnValue:
    try:
        saved(document, after.text)
    except (ChangedError, WriteError) as error:
        sentence = f"{error}. Nothing was saved."
        return _page(guide, form, document, after, sentences=[sentence], status=409)
    flash(KEPT if after.troubles else "Saved.")
    return redirect(url_for("guides.raw", guide=guide))


def _page(
    guide: str,
    form: RawForm,
    document: Document,
    shown: Draft,
    *,
    sentences: Sequence[str] = (),
    different: Differing | None = None,
    can_keep: bool = False,
    status: int = 200,
) -> ResponseReturnValue:
    before = draft(document.text, document.path)
    lines = shown.text.split("\n")
    page = render_template(
        "workbench/raw.html",
        guide=guide,
        form=form,
        shown=shown,
        sentences=sentences,
        different=different,
        can_keep=can_keep,
        lines=lines,
        theirs=document.text if different else "",
        address=address,
        preview=preview(before, shown, (), chosen(guide)),
    )
    return page, status
