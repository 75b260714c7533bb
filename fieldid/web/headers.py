"""One table of headers, put on every answer, whoever gave it."""

import re
from collections.abc import Callable, Iterable
from typing import Any
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

POLICY = (
    ("default-src", "'none'"),
    ("script-src", "'self'"),
    ("style-src", "'self'"),
    ("img-src", "'self' blob:"),
    ("connect-src", "'self'"),
    ("manifest-src", "'self'"),
    ("worker-src", "'self'"),
    ("base-uri", "'none'"),
    ("form-action", "'none'"),
    ("frame-ancestors", "'none'"),
    ("require-trusted-types-for", "'script'"),
    ("trusted-types", "fieldid"),
)
"""What a page may load, run and send: its own files, and nothing else."""

HEADER_ONLY = ("frame-ancestors",)
"""What browsers ignore in a `<meta>`, with a complaint."""

HEADERS = (
    ("X-Content-Type-Options", "nosniff"),
    # Not no-referrer: a form's token is checked against the page it came from.
    ("Referrer-Policy", "same-origin"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    # Sharing is not named: pages of one's own may share anyway, and browsers that
    # cannot share complain about the word.
    (
        "Permissions-Policy",
        "camera=(), microphone=(), geolocation=(), payment=(), usb=()",
    ),
)

IMMUTABLE = "public, max-age=31536000, immutable"
FRESH = "no-cache"
NEVER = "no-store"

BUILT = re.compile(r"/v/[0-9a-f]{12}/")
"""What never changes, because its address carries the hash of all contents."""
FORMS = re.compile(r"/(judge|workbench)(/|$)")
"""What holds a form, and a person's find: sent to this server, kept nowhere."""
SANDBOXED = re.compile(r"/workbench/photos/")
"""What came from a stranger: shown as a picture, and nothing else even if opened."""
PLAIN = re.compile(r"/workbench/static/")
"""The style sheets and scripts of those pages, which hold nobody's secret."""


def sealed(inner: WSGIApplication) -> WSGIApplication:
    """The application with the table's headers in place of its own."""

    def outer(environ: WSGIEnvironment, start: StartResponse) -> Iterable[bytes]:
        # An application that is mounted may be sealed too, and sees half of its path.
        path = environ.get("SCRIPT_NAME", "") + environ.get("PATH_INFO", "")

        def start_sealed(
            status: str, headers: list[tuple[str, str]], *error: Any
        ) -> Callable[[bytes], object]:
            ours = [*policy(path), ("Cache-Control", caching(path, status))]
            named = {name.lower() for name, _ in ours}
            theirs = [pair for pair in headers if pair[0].lower() not in named]
            return start(status, [*theirs, *ours], *error)

        return inner(environ, start_sealed)

    return outer


def policy(path: str) -> tuple[tuple[str, str], ...]:
    """The headers of an address, all but how long it may be kept."""
    return (("Content-Security-Policy", _policy_text(path)), *HEADERS)


def caching(path: str, status: str) -> str:
    """How long an answer may be kept; a mistake is never kept.

    >>> caching("/v/0123456789ab/app.js", "404 NOT FOUND")
    'no-store'
    """
    secret = FORMS.match(path) and not PLAIN.match(path)
    if secret or status[:1] not in "23":
        return NEVER
    return IMMUTABLE if BUILT.match(path) else FRESH


def meta() -> str:
    """The policy for a `<meta>`, for hosts that send no headers of ours."""
    return "; ".join(
        f"{name} {value}" for name, value in POLICY if name not in HEADER_ONLY
    )


def written() -> str:
    """The table as the `_headers` file that several static hosts read."""
    return "\n".join(
        [
            "/*",
            *(f"  {name}: {value}" for name, value in policy("/")),
            # Each address gets its caching from one pattern: hosts join what matches.
            *(f"{path}\n  Cache-Control: {FRESH}" for path in ("/", "/sw.js")),
            f"/v/*\n  Cache-Control: {IMMUTABLE}",
            "",
        ]
    )


def _policy_text(path: str) -> str:
    if SANDBOXED.match(path):
        return "default-src 'none'; sandbox"
    rules = dict(POLICY)
    if FORMS.match(path):
        rules["form-action"] = "'self'"
    return "; ".join(f"{name} {value}" for name, value in rules.items())
