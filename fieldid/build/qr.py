"""The address of an app as a code that phones read, on a page to print.

The standard's tables are long, and a mistake in them shows only on somebody's phone; so
`segno` makes the code, and another library reads it back in the tests.
"""

import ipaddress
import re
from urllib.parse import SplitResult, urlsplit

import segno
from flask import render_template
from markupsafe import Markup

from fieldid.errors import UsageError
from fieldid.paths import STATIC
from fieldid.web.app import create_app
from fieldid.web.phone import ALONE_POLICY

LONGEST = 300
"""Characters of an address; with more the squares get too small for a worn print."""
QUIET = 4
"""Squares of white around a code, as the standard (ISO/IEC 18004) asks for."""
SHEETS = ("css/tokens.css", "css/base.css", "onefile/address.css")

_TYPED = re.compile(r"[!-~]+")


def checked(address: str) -> str:
    """The address, if phones can keep an app from there; else a sentence why not."""
    if why := refused(address):
        raise UsageError(f"{address!r} is no address for phones: {why}")
    return address


def refused(address: str) -> str | None:
    """Why phones cannot keep an app from this address, or None."""
    if not _TYPED.fullmatch(address) or len(address) > LONGEST:
        return (
            f"it must be {LONGEST} characters at most, without blanks, written as "
            "browsers copy it from their address line."
        )
    try:
        parts = urlsplit(address)
        host, _ = parts.hostname, parts.port
    except ValueError:
        return "it is not written as an address is; copy it from a browser."
    return _refused(parts, host or "")


def _refused(parts: SplitResult, host: str) -> str | None:
    if parts.scheme not in ("http", "https") or not host:
        return "it must begin with https:// and name a host."
    if parts.scheme == "http" and not _is_this_machine(host):
        return (
            "from http:// browsers keep nothing, so the app would need a signal each "
            "time; use https instead."
        )
    if parts.username is not None or parts.password is not None:
        return "it holds a name or a password, which everybody could read."
    if parts.query or parts.fragment:
        return "leave out what begins with ? or #; the app starts from its folder."
    return None


def code(address: str) -> Markup:
    """The address as a picture in SVG, black on white in every theme."""
    rows = segno.make_qr(address, error="m").matrix
    side = len(rows) + 2 * QUIET
    dark = "".join(
        f"M{x + QUIET} {y + QUIET}h1v1h-1z"
        for y, row in enumerate(rows)
        for x, square in enumerate(row)
        if square
    )
    return Markup(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0} {0}" role="img" '
        'aria-label="QR code of the address" shape-rendering="crispEdges">'
        '<rect width="{0}" height="{0}" fill="#fff"/><path d="{1}" fill="#000"/></svg>'
    ).format(side, dark)


def page(address: str) -> str:
    """One sheet with the code and the address in words; a file of its own."""
    told = checked(address)
    styles = "\n".join((STATIC / sheet).read_text("utf-8") for sheet in SHEETS)
    with create_app(guides=()).app_context():
        return render_template(
            "address.html",
            policy=ALONE_POLICY,
            address=told,
            code=code(told),
            styles=Markup(styles),
        )


def _is_this_machine(host: str) -> bool:
    """Whether a browser keeps files from there even over plain http."""
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"
