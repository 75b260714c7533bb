"""The app taken down: a folder whose worker removes the app from phones, and no find.

A worker outlives its site: a phone that has the app goes on with it, signal or none,
until it is given a worker that retires. That is the worker as it is written, before a
build fills it: it removes the files that a worker keeps, and itself. What a person has
kept lies elsewhere and is never touched; the page offers it as a file.
"""

from collections.abc import Iterable
from pathlib import Path

from flask import render_template

from fieldid.build.precache import PAGE, WORKER
from fieldid.build.seal import seal
from fieldid.build.site import Bundle, identity
from fieldid.build.slim import slim, tight
from fieldid.engine.guide import Guide
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web import headers
from fieldid.web.app import create_app
from fieldid.web.icons import icon
from fieldid.web.phone import LIVE
from fieldid.web.phone import WORKER as LIVE_WORKER
from fieldid.web.script import alone

ENTRY = "takedown/app.js"
SHEET = "css/takedown.css"
SHEETS = ("css/tokens.css", "css/base.css", "css/finds.css", "takedown/takedown.css")


def take_down(
    guides: Iterable[Guide], *, static: Path = STATIC, templates: Path = TEMPLATES
) -> Bundle:
    """What stands in place of the app; `guides` are those whose prices it looks for."""
    shelf = tuple(guides)
    styles = b"\n".join((static / sheet).read_bytes() for sheet in SHEETS)
    unchanging = {
        ENTRY: tight(alone(static, ENTRY)).encode(),
        SHEET: slim(SHEET, styles),
    }
    loose = {
        WORKER: slim(WORKER, (static / LIVE_WORKER).read_bytes()),
        "icon.svg": icon().encode(),
    }
    page = _page(shelf, LIVE, static, templates)
    build = identity({**unchanging, **loose, PAGE: page})
    files = {
        **{f"v/{build}/{path}": body for path, body in unchanging.items()},
        **loose,
        # It names the folder of its build, so it is made again with its name.
        PAGE: _page(shelf, build, static, templates),
        "_headers": headers.written().encode(),
    }
    seal(files)
    return Bundle(build, files)


def _page(
    guides: tuple[Guide, ...], build: str, static: Path, templates: Path
) -> bytes:
    app = create_app(guides=guides, build=build, static=static, templates=templates)
    with app.app_context():
        page = render_template("takedown.html", guides=guides, entry=ENTRY, sheet=SHEET)
    return slim(PAGE, page.encode())
