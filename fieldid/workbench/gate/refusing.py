"""Plain pages for what is not answered, and what was typed kept in them."""

from collections.abc import Iterator
from http import HTTPStatus
from urllib.parse import quote

from flask import (
    Blueprint,
    Response,
    current_app,
    g,
    redirect,
    render_template,
    request,
    url_for,
)

# The library does not say its types.
from flask_wtf.csrf import CSRFError  # type: ignore[import-untyped]
from werkzeug.exceptions import (
    HTTPException,
    MethodNotAllowed,
    NotFound,
    RequestEntityTooLarge,
)
from werkzeug.routing import RequestRedirect
from werkzeug.wrappers import Response as AnyResponse

from fieldid.workbench.gate.keeping import EARLIER, KeptError, can_refill, home
from fieldid.workbench.gate.labelled import asked

STALE = f"{EARLIER} Open it anew, and send it from there."
ANEW = "Open this page anew"
SENTENCES = {
    400: "This is not what a page of the workbench sends. Nothing was done.",
    403: "This is not allowed. Nothing was done.",
    404: "There is no such page here.",
    405: "This page is not asked for in this way. Nothing was done.",
    500: (
        "This is a mistake of fieldid, not yours. "
        "Files are as they were before, or as they were meant to be, never half. "
        "The terminal where “fieldid serve” runs says what happened."
    ),
}
"""What is said where the refusal brings no sentence of its own."""
TITLES = {
    401: "Not signed in",
    409: "Nothing was saved",
    413: "Too large",
    421: "Not from this machine",
}
"""Where the words of the standard do not say it to a person."""

refusing = Blueprint("refusing", __name__)


@refusing.app_errorhandler(HTTPException)
def refused(error: HTTPException) -> AnyResponse:
    """The page of a refusal, under its own status and headers."""
    if isinstance(error, MethodNotAllowed) and request.method in ("GET", "HEAD"):
        return redirect(_page_above(), 303)
    code = error.code or 500
    if isinstance(error, CSRFError) and (page := _refilled()):
        return page
    answer = Response(
        render_template(
            "workbench/error.html",
            title=_title(error, code),
            sentence=_sentence(error, code),
            links=_links(error),
            different=getattr(error, "different", None),
            typed=tuple(_typed(error)),
        ),
        code,
        content_type="text/html; charset=utf-8",
    )
    for name, value in error.get_headers():
        if name != "Content-Type":
            answer.headers[name] = value
    return answer


def _refilled() -> AnyResponse | None:
    """The form with what was sent and a token that is good; None if its page shows
    none, or what it was opened with has changed.
    """
    view = current_app.view_functions[request.endpoint] if request.endpoint else None
    if not can_refill(view) or "csrf_token" not in request.form:
        return None
    assert view is not None
    g.from_before = True
    try:
        said = view(**(request.view_args or {}))
        return current_app.make_response(said)  # type: ignore[arg-type]  # no view here waits
    except HTTPException:
        return None


def _links(error: HTTPException) -> list[tuple[str, str]]:
    """Where to go on, each with its words."""
    if isinstance(error, KeptError):
        return list(error.links)
    again = [(_own_page(), ANEW)] if isinstance(error, CSRFError) else []
    return [*again, home()]


def _own_page() -> str:
    """The page that a form was sent from, or the one above what was asked for."""
    rule = request.url_rule
    if rule is None or "GET" not in (rule.methods or ()):
        return _page_above()
    kind = {"kind": request.args["kind"]} if "kind" in request.args else {}
    return url_for(rule.endpoint, **{**(request.view_args or {}), **kind})


def _page_above() -> str:
    """The page from which what lies at this address is done: a reload, or a link that
    was kept, leads there.
    """
    known = current_app.create_url_adapter(request)
    steps = request.path.strip("/").split("/")
    for n in range(len(steps) - 1, 0, -1):
        path = "/" + "/".join(steps[:n])
        try:
            known.match(path, method="GET")  # type: ignore[union-attr]  # inside a request there is one
        except RequestRedirect:
            return f"{request.script_root}{quote(path)}/"
        except (NotFound, MethodNotAllowed):
            continue
        return request.script_root + quote(path)
    return f"{request.script_root}/"


def _title(error: HTTPException, code: int) -> str:
    if isinstance(error, CSRFError):
        return TITLES[409]
    return TITLES.get(code, HTTPStatus(code).phrase.capitalize())


def _sentence(error: HTTPException, code: int) -> str:
    if isinstance(error, CSRFError):
        return STALE
    if isinstance(error, RequestEntityTooLarge):
        most = (request.max_content_length or 0) // (1024 * 1024)
        return f"No more than {most} MB are taken here. Nothing was read."
    # What the library says of these is not for a person.
    own = error.description if error.description != type(error).description else None
    return own or SENTENCES.get(code, "Nothing was done.")


def _typed(error: HTTPException) -> Iterator[tuple[str, str]]:
    """What was typed into a form that cannot be taken, so that it is not lost."""
    if request.method == "POST" and error.code in (400, 401, 404, 409):
        yield from asked(_fields(error))


def _fields(error: HTTPException) -> list[tuple[str, str]]:
    try:
        return list(request.form.items(multi=True))
    except HTTPException:
        return []
