"""The app as one HTML file that asks for nothing, for desktops and Android.

A page that is opened from a disk may load nothing beside it, so its styles, its script
and its guides lie in it, and its policy names the first two by their hashes. It has no
log, because such a page has no address of its own to keep anything at.
"""

import base64
import re
from collections.abc import Iterable
from pathlib import Path

from flask import render_template
from markupsafe import Markup

from fieldid.build.page import read_page
from fieldid.build.precache import integrity
from fieldid.build.site import refuse_twins
from fieldid.build.slim import slim, tight
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError
from fieldid.guides.pack import dump
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web.app import create_app
from fieldid.web.icons import icon
from fieldid.web.phone import JOINED, SHEET, picture
from fieldid.web.script import alone
from fieldid.web.theme import FOLLOWING, TOKENS, following

ENTRY = "onefile/app.js"
STAND_INS = {
    f"phone/{name}.js": f"onefile/{name.rpartition('/')[2]}.js"
    for name in ("shelf", "keeping", "failing", "furnish", "guests/known")
}
"""What reaches for the network or the store in the app, and what does not."""
LATE = ("seller",)
"""Of the sheets that the app asks for later, those of screens that are here too."""
OWN_SHEET = "onefile/onefile.css"
THEME = "workbench/theme.js"
"""Runs before the app: the page follows the system until somebody chooses."""

_ENDS = re.compile(r"</(?:script|style)|<!--", re.IGNORECASE)


def one_file(
    guides: Iterable[Guide], *, static: Path = STATIC, templates: Path = TEMPLATES
) -> bytes:
    """The page with these guides in it; the same guides give the same bytes."""
    shelf = tuple(guides)
    refuse_twins([guide.id for guide in shelf])
    theme = (static / THEME).read_text("utf-8")
    script = tight(theme + alone(static, ENTRY, STAND_INS))
    styles = _styles(static)
    app = create_app(guides=shelf, static=static, templates=templates)
    with app.app_context():
        page = render_template(
            "onefile.html",
            alone=True,
            theme=FOLLOWING,
            guides=shelf,
            picture=picture,
            icon=_data(icon().encode()),
            policy=policy(script, styles),
            styles=_inlined(styles),
            script=_inlined(script),
            packs=[(guide.id, packed(guide)) for guide in shelf],
        )
    _refuse_leaks(page)
    return page.encode()


def policy(script: str, styles: str) -> str:
    """What the page may do: run its one script, look as it does, and nothing else."""
    return "; ".join(
        (
            "default-src 'none'",
            f"script-src '{integrity(script.encode())}'",
            f"style-src '{integrity(styles.encode())}'",
            # The icon alone.
            "img-src data:",
            "base-uri 'none'",
            "form-action 'none'",
            "require-trusted-types-for 'script'",
            "trusted-types 'none'",
        )
    )


def packed(guide: Guide) -> Markup:
    """A guide as it lies in the page: no text in it can end the element around it."""
    return Markup(dump(guide).decode().replace("<", r"\u003c"))


def _styles(static: Path) -> str:
    sheets = (*(f"css/{name}.css" for name in (*JOINED[SHEET], *LATE)), OWN_SHEET)
    texts = [(static / sheet).read_text("utf-8") for sheet in sheets]
    # Behind all others, since rules that weigh the same are told apart by their order.
    joined = "\n".join([*texts, following((static / TOKENS).read_text("utf-8"))])
    return slim(SHEET, joined.encode()).decode()


def _inlined(text: str) -> Markup:
    """The text inside its element, which must not end before it does."""
    if found := _ENDS.search(text):
        raise BuildError(f"one file: {found[0]!r} would end the element that holds it")
    return Markup(text)


def _data(picture: bytes) -> str:
    return f"data:image/svg+xml;base64,{base64.b64encode(picture).decode()}"


def _refuse_leaks(html: str) -> None:
    """Refuses a page that points outside itself, or at nothing in it."""
    page = read_page(html)
    # What scripts fill in stands empty, and "#offer" the styles leave out.
    inside = {"", "#offer", *(f"#{name}" for name in page.ids | page.screens)}
    for link in page.links:
        if link not in inside and not link.startswith("data:"):
            raise BuildError(f"one file: {link!r} is not in it")
