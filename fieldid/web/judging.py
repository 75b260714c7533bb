"""The page that judges a find on the server: a form in, one call, a verdict out."""

import re
from collections.abc import Mapping

from flask import Blueprint, Flask, current_app, render_template
from flask.blueprints import BlueprintSetupState

# The library does not say its types.
from flask_wtf.csrf import CSRFError, CSRFProtect  # type: ignore[import-untyped]
from werkzeug.exceptions import RequestEntityTooLarge

from fieldid.engine import Tables, judge
from fieldid.engine.find import Verdict
from fieldid.engine.guide import Guide
from fieldid.engine.range import decades
from fieldid.engine.words import called, capital, percent
from fieldid.errors import FindError
from fieldid.guides import finds
from fieldid.web.forms import FindForm
from fieldid.web.prepared import tables_of
from fieldid.web.told import ALWAYS, told_parts

MOST_MEGABYTES = 2

SEVERAL = (
    "These are several finds, and this page judges one at a time. "
    "The command “fieldid judge” takes any number of them, one a line."
)
TOO_LARGE = (
    f"This is larger than {MOST_MEGABYTES} MB, and a find is a few hundred bytes. "
    "Nothing was read: choose the file that the app saved."
)
STALE = (
    "This form was not sent from this page, or the server has started anew since. "
    "Nothing was judged: send it once more from here."
)

judging = Blueprint("judging", __name__)


@judging.route("/judge", methods=["GET", "POST"])
def page() -> tuple[str, int]:
    """The form, and the verdict on the find that was sent with it."""
    form, tables = FindForm(), _tables()
    if not form.validate_on_submit():
        return _shown(form, 400 if form.errors else 200)
    content, guides = form.content(), [each.guide for each in tables.values()]
    try:
        find = finds.load(content, guides, name=form.name)
    except FindError as error:
        form.refuse(SEVERAL if is_several(content) else f"{error}.")
        return _shown(form, 400)
    found = tables[find.guide]
    return _shown(form, 200, guide=found.guide, verdict=judge(found, find))


@judging.app_errorhandler(RequestEntityTooLarge)
def too_large(error: RequestEntityTooLarge) -> tuple[str, int]:
    """A sentence beside an empty form, because nothing was read."""
    return _refused(FindForm(formdata=None), TOO_LARGE, 413)


@judging.app_errorhandler(CSRFError)
def stale(error: CSRFError) -> tuple[str, int]:
    """A sentence beside the same form with a fresh token."""
    return _refused(FindForm(), STALE, 400)


def is_several(content: bytes) -> bool:
    """Whether this is a list of finds, or a find a line.

    >>> is_several(b'[{"a": 1}]'), is_several(b'{"a": 1}\\n{"a": 2}\\n')
    (True, True)
    >>> is_several(b'{"a": [\\n]}')
    False
    """
    lines = [line.strip() for line in content.splitlines() if line.strip()]
    whole = [line for line in lines if line[:1] == b"{" and line[-1:] == b"}"]
    return content.lstrip()[:1] == b"[" or len(lines) == len(whole) > 1


def _shown(form: FindForm, status: int, **given: object) -> tuple[str, int]:
    """The page, with the guide and the verdict if they are given."""
    return render_template("judge.html", form=form, **given), status


def _refused(form: FindForm, sentence: str, status: int) -> tuple[str, int]:
    form.refuse(sentence)
    return _shown(form, status)


def _called(member: str, guide: Guide) -> str:
    """What a member is called, with the member first as filters want it."""
    return called(guide, member)


def _tables() -> Mapping[str, Tables]:
    """What was prepared from each guide when the application was made."""
    found: Mapping[str, Tables] = current_app.extensions["judging"]
    return found


def named(verdict: Verdict) -> str:
    """The year that leads, or both where two lead alike, as the verdict says it."""
    year = verdict.leading
    found = re.search(rf"(\d+ or )?{year}( or \d+)?", verdict.say)
    return found[0] if found else str(year)


def _set_up(state: BlueprintSetupState) -> None:
    """Prepares the guides of the application, and guards its forms."""
    app: Flask = state.app  # type: ignore[assignment]  # it is no blueprint's blueprint
    guides = app.extensions["fieldid"].guides
    app.extensions["judging"] = {guide.id: tables_of(guide) for guide in guides}
    app.config["MAX_CONTENT_LENGTH"] = MOST_MEGABYTES * 1024 * 1024
    # A find pasted as text may be as long as one in a file.
    app.config["MAX_FORM_MEMORY_SIZE"] = app.config["MAX_CONTENT_LENGTH"]
    app.add_template_filter(percent)
    app.add_template_filter(decades)
    app.add_template_filter(named)
    app.add_template_filter(told_parts)
    app.jinja_env.globals["always"] = ALWAYS
    app.add_template_filter(capital)
    app.add_template_filter(_called, "called")
    CSRFProtect(app)


judging.record(_set_up)
