"""The gate of the workbench: a password, or nobody but this machine itself."""

import re
import time
from collections.abc import Callable
from ipaddress import ip_address

from flask import (
    Blueprint,
    Response,
    abort,
    current_app,
    g,
    make_response,
    redirect,
    render_template,
    request,
    session,
    url_for,
)
from flask.typing import ResponseReturnValue

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from werkzeug.exceptions import MisdirectedRequest
from wtforms import PasswordField  # type: ignore[import-untyped]
from wtforms.validators import InputRequired, Length  # type: ignore[import-untyped]

from fieldid.workbench.gate import passwords
from fieldid.workbench.gate.limits import Misses
from fieldid.workbench.gate.sessions import Sessions

OPEN = ("gate.sign_in", "gate.sign_out", "base.file", "base.dark", "base.picture")
"""The views that need nobody to be signed in."""
LITTLE = 16 * 1024
"""Bytes that are read from who was never signed in; a password is less."""
FORWARDED = ("Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP", "Via")
"""What a machine between writes: then the request is not of this one."""

WRONG = "This is not the password."
ENDED = (
    "The session has ended, by itself or because the server has started anew. "
    "Nothing was saved: sign in, and send it once more."
)
ELSEWHERE = (
    "Without a password the workbench answers this machine alone, by the address that "
    "“fieldid serve” printed."
)
OTHER_PAGE = "This was sent from a page of another site. Nothing was done."

_OWN = re.compile(r"(?:localhost|127(?:\.\d{1,3}){3}|\[::1\])(?::(?P<port>\d{1,5}))?")
"""What this machine is called by itself."""

gate = Blueprint("gate", __name__)


class Guard:
    """What the gate knows: the password's hash, who is inside, and who missed."""

    def __init__(
        self, password: str | None, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self.password = password
        self.sessions = Sessions(clock)
        self.misses = Misses(clock)


class SignInForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """The password, and nobody's name: there is one author."""

    password = PasswordField(
        "Password",
        description="The one that was chosen when the server was started.",
        validators=[
            InputRequired("Nothing came: type the password."),
            Length(max=passwords.MOST, message="No password is as long as this."),
        ],
        render_kw={"autocomplete": "current-password", "autofocus": True},
    )


@gate.before_app_request
def check() -> ResponseReturnValue | None:
    """Lets in, or leads to the sign-in; what was sent meanwhile is shown again."""
    guard = _guard()
    if guard.password is None:
        _refuse_strangers()
        g.inside = True
    elif guard.sessions.goes_on(_secret()):
        g.inside = True
    else:
        if not guard.sessions.knows(_secret()):
            request.max_content_length = LITTLE
        if request.endpoint not in OPEN:
            return _led_to_sign_in()
    return None


@gate.route("/sign-in", methods=["GET", "POST"])
def sign_in() -> ResponseReturnValue:
    """The form, and the way in with the right password."""
    guard = _guard()
    if g.get("inside"):
        return redirect(url_for("base.home"), 303)
    form = SignInForm()
    if not form.validate_on_submit():
        return _shown(form, 400 if form.errors else 200)
    if wait := guard.misses.begin(_address()):
        return _held(form, wait)
    # Without a password everybody is inside already.
    if not passwords.fits(form.password.data, str(guard.password)):
        form.password.errors = [WRONG]
        return _shown(form, 403)
    guard.misses.forgive(_address())
    return _let_in(guard)


@gate.post("/sign-out")
def sign_out() -> ResponseReturnValue:
    """The end of the session, also for a copy of its cookie."""
    _guard().sessions.end(_secret())
    session.clear()
    return redirect(url_for("gate.sign_in"), 303)


def is_inside() -> bool:
    """Whether the request came through the gate."""
    return bool(g.get("inside"))


def can_sign_out() -> bool:
    """Whether there is a session that can be ended."""
    return is_inside() and _guard().password is not None


def _let_in(guard: Guard) -> Response:
    """Begins a session, and goes on where the sign-in came between."""
    after = session.get("after") or url_for("base.home")
    # A form that was open when its session ended by itself can still be sent.
    token = session.get("csrf_token") if guard.sessions.knows(_secret()) else None
    guard.sessions.end(_secret())
    session.clear()
    session["secret"] = guard.sessions.begin()
    if token:
        session["csrf_token"] = token
    return make_response(redirect(after, 303))


def _led_to_sign_in() -> ResponseReturnValue:
    if request.method not in ("GET", "HEAD"):
        abort(401, ENDED)
    if request.endpoint:
        session["after"] = request.script_root + request.full_path.rstrip("?")
    return redirect(url_for("gate.sign_in"), 303)


def _held(form: SignInForm, wait: int) -> Response:
    """The form with how long nothing is tried, whatever is typed."""
    form.password.errors = [f"After so many misses nothing is tried for {_said(wait)}."]
    answer = _shown(form, 429)
    answer.headers["Retry-After"] = str(wait)
    return answer


def _shown(form: SignInForm, status: int) -> Response:
    return make_response(render_template("workbench/sign_in.html", form=form), status)


def _said(seconds: int) -> str:
    """A wait in words.

    >>> _said(1), _said(59), _said(61), _said(3600)
    ('1 second', '59 seconds', '2 minutes', '60 minutes')
    """
    if seconds < 60:
        return f"{seconds} second{'s' if seconds > 1 else ''}"
    return f"{-(-seconds // 60)} minutes"


def _refuse_strangers() -> None:
    """Refuses what was not sent from this machine to this machine by its own name.

    A page elsewhere can make its own name lead here; then that name is the host.
    """
    host = request.headers.get("Host", "")
    if not _is_own_host(host) or not ip_address(_address()).is_loopback:
        raise MisdirectedRequest(ELSEWHERE)
    if any(name in request.headers for name in FORWARDED):
        raise MisdirectedRequest(ELSEWHERE)
    origin = request.headers.get("Origin", "")
    if origin and origin != f"{request.scheme}://{host}":
        abort(403, OTHER_PAGE)


def _is_own_host(host: str) -> bool:
    found = _OWN.fullmatch(host)
    if not found:
        return False
    usual = "443" if request.is_secure else "80"
    return (found["port"] or usual) == str(request.environ["SERVER_PORT"])


def _address() -> str:
    """The address that the request came from."""
    return str(request.remote_addr).partition("%")[0]


def _secret() -> str | None:
    """The session's secret that the browser sent, signed."""
    found: str | None = session.get("secret")
    return found


def _guard() -> Guard:
    found: Guard = current_app.extensions["guard"]
    return found
