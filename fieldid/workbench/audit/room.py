"""The audit of a guide: begun here, watched, and its figures with their charts."""

from collections.abc import Sequence
from pathlib import Path

from flask import Blueprint, abort, flash, jsonify, redirect, render_template, url_for
from flask.blueprints import BlueprintSetupState
from flask.typing import ResponseReturnValue

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import IntegerField, SelectChoice, SelectField  # type: ignore[import-untyped]
from wtforms.validators import InputRequired, ValidationError  # type: ignore[import-untyped]

from fieldid.audit.run import SEED, Run, usual
from fieldid.engine.guide import Guide
from fieldid.errors import GuideError, Problem
from fieldid.guides.document import opened
from fieldid.guides.load import loads
from fieldid.workbench.audit.auditor import Auditor, auditor
from fieldid.workbench.audit.page import shown
from fieldid.workbench.audit.summary import summary
from fieldid.workbench.place import place

COUNTS = (50, 200, 1000, 5000)
LAST_SEED = 2**31
BUSY = "Another audit goes on; begin this one when it is done."

audits = Blueprint("audits", __name__, url_prefix="/guides/<guide>/audit")


@audits.record_once
def _prepare(state: BlueprintSetupState) -> None:
    state.app.extensions["auditor"] = Auditor()


def _seed_fits(form: FlaskForm, seed: IntegerField) -> None:
    """The library's own check fails on numbers that are too large for a float."""
    if seed.data is not None and not 0 <= seed.data <= LAST_SEED:
        raise ValidationError(f"A whole number from 0 to {LAST_SEED:,}.")


class AuditForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """How many specimens, and which."""

    specimens = SelectField(
        "Specimens",
        coerce=int,
        choices=[SelectChoice(count, f"{count:,}") for count in COUNTS],
        description="More take longer and leave less to chance.",
    )
    seed = IntegerField(
        "Seed",
        [InputRequired("Please give a whole number."), _seed_fits],
        default=SEED,
        description="The same number draws the same specimens, another one others.",
        render_kw={"min": 0, "max": LAST_SEED},
    )


@audits.get("")
def page(guide: str) -> ResponseReturnValue:
    """How the audit goes, or what it found, and the form that begins one."""
    path = _path(guide)
    job = auditor().job
    if job and job.name == guide:
        title = job.run.tables.guide.title
        return render_template(
            "workbench/auditing.html", guide=guide, title=title, percent=job.percent
        )
    return _page(path, AuditForm())


@audits.post("")
def begin(guide: str) -> ResponseReturnValue:
    """Begins an audit of the guide as its file says now."""
    path, form = _path(guide), AuditForm()
    if not form.validate():
        return _page(path, form), 400
    try:
        tag, found = _guide(path)
    except GuideError:
        return redirect(url_for("audits.page", guide=guide), 303)
    if auditor().job:
        flash(BUSY)
    else:
        run = Run(found, specimens=form.specimens.data, seed=form.seed.data)
        if not auditor().begin(guide, tag, run):
            flash(BUSY)
    return redirect(url_for("audits.page", guide=guide), 303)


@audits.post("/stop")
def stop(guide: str) -> ResponseReturnValue:
    """Stops it; what was found so far is shown."""
    _path(guide)
    auditor().stop(guide)
    return redirect(url_for("audits.page", guide=guide), 303)


@audits.get("/progress")
def progress(guide: str) -> ResponseReturnValue:
    """How much is done, for the script of the page; null if nothing goes on."""
    _path(guide)
    job = auditor().job
    return jsonify(job.percent if job and job.name == guide else None)


def _page(path: Path, form: AuditForm) -> str:
    name = path.stem
    try:
        tag, found = _guide(path)
    except GuideError as error:
        return _with_problems(name, error.problems)
    if not form.is_submitted():
        form.specimens.data = usual(found)
    last = auditor().found(name)
    return render_template(
        "workbench/audit.html",
        guide=name,
        title=found.title,
        form=form,
        last=last,
        say=summary(last.audit) if last and last.audit else "",
        shown=shown(last.audit) if last and last.audit else None,
        changed=bool(last and last.tag != tag),
    )


def _with_problems(name: str, problems: Sequence[Problem]) -> str:
    return render_template(
        "workbench/audit_problems.html", guide=name, problems=problems
    )


def _path(guide: str) -> Path:
    """The file of a guide that is there."""
    return place().guides().get(guide) or abort(404)


def _guide(path: Path) -> tuple[str, Guide]:
    document = opened(path)
    content, folder = document.text.encode(), path.parent
    return document.tag, loads(content, file=str(path), stem=path.stem, folder=folder)
