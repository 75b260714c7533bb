"""Plain pages for what is not answered, and what was typed kept in them."""

from collections.abc import Iterator
from http import HTTPStatus
from urllib.parse import quote

from flask import (
    Blueprint,
    Response,
    current_app,
    redirect,
    render_template,
    request,
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

from fieldid.workbench.labelled import asked

STALE = (
    "This form was not sent from a page of this workbench, or the server has started "
    "anew since. Nothing was saved: open the page anew, and send it from there."
)
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
TITLES = {401: "Not signed in", 413: "Too large", 421: "Not from this machine"}
"""Where the words of the standard do not say it to a person."""

refusing = Blueprint("refusing", __name__)


@refusing.app_errorhandler(HTTPException)
def refused(error: HTTPException) -> AnyResponse:
    """The page of a refusal, under its own status and headers."""
    if isinstance(error, MethodNotAllowed) and request.method in ("GET", "HEAD"):
        return redirect(_page_above(), 303)
    code = error.code or 500
    answer = Response(
        render_template(
            "workbench/error.html",
            title=TITLES.get(code, HTTPStatus(code).phrase.capitalize()),
            sentence=_sentence(error, code),
            typed=tuple(_typed(error)),
        ),
        code,
        content_type="text/html; charset=utf-8",
    )
    for name, value in error.get_headers():
        if name != "Content-Type":
            answer.headers[name] = value
    return answer


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
    if request.method == "POST" and error.code in (400, 401):
        yield from asked(_fields(error))


def _fields(error: HTTPException) -> list[tuple[str, str]]:
    try:
        return list(request.form.items(multi=True))
    except HTTPException:
        return []
