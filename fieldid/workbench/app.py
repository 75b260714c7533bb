"""The workbench's own application: its gate, its rooms, and what all pages share."""

import secrets
from collections.abc import Iterator
from pathlib import Path

from flask import (
    Blueprint,
    Flask,
    Response,
    abort,
    current_app,
    redirect,
    request,
    send_file,
    url_for,
)
from flask.typing import ResponseReturnValue

# The library does not say its types.
from flask_wtf.csrf import CSRFProtect  # type: ignore[import-untyped]
from jinja2 import StrictUndefined

from fieldid.engine.words import capital, percent
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web.icons import icon
from fieldid.web.judging import named
from fieldid.web.phone import TYPES
from fieldid.web.theme import FOLLOWING, TOKENS, following
from fieldid.web.told import ALWAYS, told_parts
from fieldid.workbench.audit.room import audits
from fieldid.workbench.census import censuses
from fieldid.workbench.fields.drawn import swatches
from fieldid.workbench.gate.guard import Guard, can_sign_out, gate, is_inside
from fieldid.workbench.gate.labelled import label_name, labelled
from fieldid.workbench.gate.limits import most
from fieldid.workbench.gate.refusing import refusing
from fieldid.workbench.gate.sessions import Cookies
from fieldid.workbench.giving import giving
from fieldid.workbench.guides.room import guides
from fieldid.workbench.inbox.room import inboxes
from fieldid.workbench.phone import Phone
from fieldid.workbench.place import Place
from fieldid.workbench.publishing import publishing
from fieldid.workbench.words import so_many

MEGABYTE = 1024 * 1024
MOST_MEGABYTES = 2
MOST_FIELDS = 5000
"""A form of a large guide has some hundreds."""

ROOMS: tuple[Blueprint, ...] = (guides, giving, audits, censuses, inboxes, publishing)
"""The blueprints of the rooms, a line each."""
NAVIGATION = (
    ("Guides", "guides.shelf"),
    ("Inbox", "inboxes.shelf"),
    ("Publish", "publishing.page"),
)
"""What every page leads to: its words, and the view; those without one are left out."""
FILES = ("css/*.css", "workbench/**/*.js", "phone/**/*.js")
"""The style sheets and scripts that pages may ask for, in the folder static/."""

base = Blueprint("base", __name__)


def create_workbench(
    *,
    rules: Path,
    inbox: Path,
    phone: Phone,
    password: str | None,
    testing: bool = False,
) -> Flask:
    """The application, to be mounted at /workbench inside `sealed`.

    `password` is a hash that fieldid.workbench.gate.passwords made; with None nobody is
    asked for one.
    """
    app = Flask(__name__, static_folder=None, template_folder=str(TEMPLATES))
    app.config.update(
        TESTING=testing,
        SECRET_KEY=secrets.token_hex(32),
        SESSION_COOKIE_PATH="/workbench",
        SESSION_COOKIE_SAMESITE="Strict",
        # A form can be sent as long as its session lasts.
        WTF_CSRF_TIME_LIMIT=None,
        MAX_CONTENT_LENGTH=MOST_MEGABYTES * MEGABYTE,
        MAX_FORM_MEMORY_SIZE=MOST_MEGABYTES * MEGABYTE,
        MAX_FORM_PARTS=MOST_FIELDS,
    )
    app.jinja_env.undefined = StrictUndefined
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.add_template_filter(capital)
    app.add_template_filter(percent)
    app.add_template_filter(named)
    app.add_template_filter(told_parts)
    app.jinja_env.globals["always"] = ALWAYS
    app.add_template_filter(so_many)
    app.add_template_global(label_name)
    app.add_template_global(labelled)
    app.add_template_global(swatches)
    app.extensions |= {
        "guard": Guard(password),
        "place": Place(rules, inbox),
        "phone": phone,
        "files": _files(STATIC),
    }
    app.session_interface = Cookies()
    app.context_processor(_common)
    # What guards a request stands in this order: the gate, the size, the form's token.
    for room in (gate, base, refusing, *ROOMS):
        app.register_blueprint(room)
    CSRFProtect(app)
    return app


@base.before_app_request
def limit() -> None:
    """Lets a view that was marked for it take more than a form is."""
    if is_inside() and request.endpoint:
        view = current_app.view_functions[request.endpoint]
        request.max_content_length = most(view, usual=MOST_MEGABYTES) * MEGABYTE


@base.get("/")
def home() -> ResponseReturnValue:
    """The first page is the first of those in the navigation."""
    return redirect(next(_navigation())[1], 303)


@base.get("/static/<path:name>")
def file(name: str) -> ResponseReturnValue:
    """A style sheet or a script, looked up among those that there are."""
    path: Path | None = current_app.extensions["files"].get(name)
    if path is None:
        abort(404)
    return send_file(path, mimetype=TYPES[path.suffix], conditional=True)


@base.get("/static/css/following.css")
def dark() -> Response:
    """The dark colours for whoever follows the system."""
    tokens: Path = current_app.extensions["files"][TOKENS]
    made = Response(following(tokens.read_text("utf-8")), mimetype=TYPES[".css"])
    made.add_etag()
    made.make_conditional(request)
    return made


@base.get("/icon.svg")
def picture() -> Response:
    """The app's icon, which is drawn in code."""
    return Response(icon(), mimetype=TYPES[".svg"])


def _files(static: Path) -> dict[str, Path]:
    return {
        path.relative_to(static).as_posix(): path
        for pattern in FILES
        for path in static.glob(pattern)
    }


def _common() -> dict[str, object]:
    """What every page is given."""
    inside = is_inside()
    return {
        "theme": FOLLOWING,
        "navigation": tuple(_navigation()) if inside else (),
        "can_sign_out": can_sign_out(),
    }


def _navigation() -> Iterator[tuple[str, str, bool]]:
    """Words and address of each page of the navigation, and whether it is open."""
    for words, view in NAVIGATION:
        if view in current_app.view_functions:
            address = url_for(view)
            here = (request.script_root + request.path).startswith(address)
            yield words, address, here
