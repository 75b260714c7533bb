"""A table of a guide is moved among its neighbours, or taken out."""

from collections.abc import Sequence
from dataclasses import replace

from flask import abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from fieldid.errors import ChangedError, WriteError
from fieldid.guides.document import saved
from fieldid.guides.edit import drop, moved
from fieldid.guides.refusals import Path
from fieldid.workbench.text.drafts import Trouble, draft, is_worse
from fieldid.workbench.text.places import (
    address,
    from_address,
    held,
    is_table,
    named,
    table_for,
)
from fieldid.workbench.text.reading import read_tables


def move(guide: str, where: str) -> ResponseReturnValue:
    """Moves a table among its neighbours."""
    step = -1 if request.form.get("step") == "up" else 1
    return _rearranged(guide, where, step)


def out(guide: str, where: str) -> ResponseReturnValue:
    """Asks whether to take a table out, and takes it out."""
    if request.method == "GET":
        document, data = read_tables(guide)
        path = from_address(where)
        if not is_table(path) or not path or held(data, path) is None:
            abort(404)
        after = draft(drop(document.text, path), document.path)
        in_the_way = is_worse(draft(document.text, document.path), after)
        return render_template(
            "workbench/out.html",
            troubles=_placed(after.troubles, path) if in_the_way else (),
            address=address,
            guide=guide,
            document=document,
            path=path,
            where=where,
            table=table_for(path, data),
            name=named(held(data, path)),
        )
    return _rearranged(guide, where, 0)


def _placed(troubles: Sequence[Trouble], path: Path) -> list[Trouble]:
    """The mistakes of a text without a table, each with its place in the one that has
    it: there its neighbours stand one place further on.
    """
    n, last = len(path) - 1, path[-1]
    found = []
    for each in troubles:
        home = each.home
        if home[:n] == path[:n] and len(home) > n and isinstance(last, int):
            place = home[n]
            assert isinstance(place, int)
            home = (*home[:n], place + (place >= last), *home[n + 1 :])
        found.append(replace(each, home=home))
    return found


def _rearranged(guide: str, where: str, step: int) -> ResponseReturnValue:
    """Moves a table by a step, or takes it out; both only if nothing gets worse."""
    document, data = read_tables(guide)
    path = from_address(where)
    if not is_table(path) or not path or held(data, path) is None:
        abort(404)
    back = redirect(url_for("guides.guide", guide=guide))
    if request.form.get("tag") != document.tag:
        flash(f"Nothing was done: {document.path.name} was changed on disk meanwhile.")
        return back
    if step and not isinstance(path[-1], int):
        abort(404)
    text = moved(document.text, path, step) if step else drop(document.text, path)
    before, after = (draft(each, document.path) for each in (document.text, text))
    if is_worse(before, after):
        wrong = after.troubles[0]
        flash(f"Nothing was done, since it would not fit: {wrong.place}: {wrong.plain}")
        return back
    try:
        saved(document, text)
    except (ChangedError, WriteError) as error:
        flash(f"{error}. Nothing was done.")
    else:
        flash("Moved." if step else "Taken out.")
    return back
