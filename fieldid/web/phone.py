"""Every file of the phone app at its address, live; the build keeps what they answer.

Addresses are relative in every page, so that a bundle works in any folder of a host.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from flask import Blueprint, Response, abort, current_app, render_template
from markupsafe import Markup

from fieldid import __version__, draw
from fieldid.engine.guide import Guide
from fieldid.engine.range import brackets
from fieldid.guides.pack import dump
from fieldid.web.card import UNTOLD, card, foot
from fieldid.web.examples import examples
from fieldid.web.headers import meta
from fieldid.web.icons import CUTS, icon, png
from fieldid.web.lesson import Lesson, lesson
from fieldid.web.marks import rows
from fieldid.web.paperpictures import pictures
from fieldid.web.script import ENTRY, SCRIPTS, script
from fieldid.web.tree import clues, tree

LIVE = "dev"
"""What stands for the build in addresses that are answered live."""
WORKER = "phone/sw.js"
EARLY = "phone/early.js"
SHEET = "css/app.css"
LATER = "css/later.css"
JOINED = {
    SHEET: (
        "tokens",
        "base",
        "drawing",
        "phone",
        "home",
        "look",
        "typed",
        "places",
        "set",
        "verdict",
    ),
    LATER: ("seller", "finds", "wants", "offer", "sizing", "practice"),
}
"""The app's style sheets in two files, each in this order: the second is asked for by
the script that needs it."""
ALONE = (
    *("tokens", "base", "form", "drawing", "tree", "guide", "card", "verdict", "judge"),
)
"""Style sheets of the pages beside the app."""
ALONE_POLICY = "default-src 'none'; style-src 'unsafe-inline'"
"""What a page that is a file of its own may do: look as it does, and nothing else."""
CARD = ("tokens", "base", "drawing", "card")
"""Those of the sheet for a pocket."""
NAMED = (*JOINED, *(f"css/{name}.css" for name in ALONE), EARLY, *SCRIPTS)
"""The style sheets and scripts that pages and scripts name."""
COLOUR = "#f4ecd8"
TYPES = {
    ".css": "text/css",
    ".html": "text/html",
    ".js": "text/javascript",
    ".json": "application/json",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".webmanifest": "application/manifest+json",
}
"""What each kind of file is sent as, here and from a bundle."""

phone = Blueprint("phone", __name__)


@dataclass(frozen=True, slots=True)
class Shelf:
    """What the pages are made of: guides, the folder of scripts and styles, the build.

    `build` names the folder `v/<build>/` in which everything lies that never changes.
    """

    guides: tuple[Guide, ...]
    static: Path
    build: str

    @property
    def base(self) -> str:
        """The folder of unchanging files, as pages write it."""
        return f"v/{self.build}/"


def addresses(shelf: Shelf) -> tuple[str, ...]:
    """Every address of the phone app; the page itself is the empty one.

    The pages of a guide follow one another, since they share what is worked out.
    """
    unchanging = [
        *(f"guides/{guide.id}.json" for guide in shelf.guides),
        "vectors.json",
        *NAMED,
    ]
    return (
        "",
        "sw.js",
        "manifest.webmanifest",
        "icon.svg",
        *CUTS,
        *(
            f"{kind}-{guide.id}.html"
            for guide in shelf.guides
            for kind in ("card", "guide", "tree")
        ),
        *(shelf.base + path for path in unchanging),
    )


@phone.get("/")
def index() -> str:
    """The one page of the app, its first screen ready to read."""
    shelf = _shelf()
    return render_template(
        "phone/index.html",
        guides=shelf.guides,
        entry=ENTRY,
        sheet=SHEET,
        picture=picture,
    )


@phone.get("/tree-<guide_id>.html")
def questions(guide_id: str) -> str:
    """A guide's questions, or its marks, on one page that needs no scripts."""
    guide = _guide(_shelf(), guide_id)
    if brackets(guide):
        return render_template(
            "phone/marks.html",
            guide=guide,
            rows=rows(guide),
            pictures=pictures(guide.clues),
        )
    root = tree(guide)
    return render_template(
        "phone/tree.html", guide=guide, root=root, pictures=pictures(clues(root))
    )


@phone.get("/guide-<guide_id>.html")
def lessons(guide_id: str) -> str:
    """What a guide teaches, on a page that needs no scripts."""
    guide = _guide(_shelf(), guide_id)
    learnt = lesson(guide)
    return render_template(
        "phone/guide.html",
        guide=guide,
        lesson=learnt,
        pictures=pictures(guide.clues, scene=guide.drawing, lit=_lit(learnt)),
        drawn=drawn,
    )


@phone.get("/card-<guide_id>.html")
def pocket(guide_id: str) -> str:
    """A guide on one sheet of paper."""
    return card_page(_guide(_shelf(), guide_id))


@phone.get("/manifest.webmanifest")
def manifest() -> Response:
    """What a phone needs to put the app on its home screen.

    It has no id: a relative one would be the same for all apps of a shared host.
    """
    named = {
        "name": "fieldid: which year is it?",
        "short_name": "fieldid",
        "description": "Which model year an old object most likely is.",
        "lang": "en",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": COLOUR,
        "theme_color": COLOUR,
        "icons": [
            {
                "src": name,
                "sizes": f"{cut.side}x{cut.side}",
                "type": "image/png",
                "purpose": cut.purpose,
            }
            for name, cut in CUTS.items()
            if cut.purpose
        ],
    }
    return _answer("manifest.webmanifest", json.dumps(named, indent=2).encode())


@phone.get("/icon.svg")
def drawn_icon() -> Response:
    """The icon for browsers that draw it themselves."""
    return _answer("icon.svg", icon().encode())


@phone.get("/<any({}):name>".format(", ".join(f'"{name}"' for name in CUTS)))
def cut_icon(name: str) -> Response:
    """The icon in one of the sizes that systems ask for."""
    return _answer(name, png(CUTS[name]))


@phone.get("/sw.js")
def worker() -> Response:
    """The service worker as written, which keeps nothing; the build fills it."""
    return _answer("sw.js", (_shelf().static / WORKER).read_bytes())


@phone.get("/v/<build>/guides/<guide_id>.json")
def packed(build: str, guide_id: str) -> Response:
    """A guide as the phone reads it."""
    return _answer("guide.json", dump(_guide(_shelf(build), guide_id)))


@phone.get("/v/<build>/vectors.json")
def vectors(build: str) -> Response:
    """Worked examples under every guide, for checking a phone's arithmetic."""
    worked = [examples(guide) for guide in _shelf(build).guides]
    return _answer("vectors.json", _compact(worked))


@phone.get("/v/<build>/<path:path>")
def unchanging(build: str, path: str) -> Response:
    """A script or a style sheet."""
    shelf = _shelf(build)
    if path not in NAMED:
        abort(404)
    if path in SCRIPTS:
        return _answer(path, script(shelf.static, path).encode())
    if path in JOINED:
        sheets = (shelf.static / f"css/{name}.css" for name in JOINED[path])
        return _answer(path, b"\n".join(sheet.read_bytes() for sheet in sheets))
    return _answer(path, (shelf.static / path).read_bytes())


def common() -> dict[str, object]:
    """What every page is given."""
    return {
        "base": _shelf().base,
        "early": EARLY,
        "policy": meta(),
        "swatches": Markup(draw.svg(draw.swatches())),
        "version": __version__,
    }


def picture(guide: Guide) -> Markup:
    """The guide's object, drawn to be recognised."""
    return drawn(draw.still(guide.drawing))


def card_page(guide: Guide, *, styles: str = "") -> str:
    """The sheet as a page of the app, or with all its styles as a file of its own."""
    made = card(guide)
    alone = {"policy": ALONE_POLICY} if styles else {}
    return render_template(
        "phone/card.html",
        **alone,
        guide=guide,
        card=made,
        pictures=pictures(made.clues),
        styles=Markup(styles),
        sheets=CARD,
        foot=foot(guide),
        untold=UNTOLD,
    )


def _lit(learnt: Lesson) -> Iterator[tuple[str, ...]]:
    """The places that are lit together on a guide's page."""
    yield from (each.spots for each in learnt.parts)
    yield from ((each.row.clue.spot,) for each in learnt.clues if each.row.clue.spot)


def drawn(node: draw.Node) -> Markup:
    """A drawing as it stands in a page."""
    return Markup(draw.svg(node))


def _shelf(build: str | None = None) -> Shelf:
    """What the application was made with; another build's files are not here."""
    shelf: Shelf = current_app.extensions["fieldid"]
    if build not in (None, shelf.build):
        abort(404)
    return shelf


def _guide(shelf: Shelf, guide_id: str) -> Guide:
    for guide in shelf.guides:
        if guide.id == guide_id:
            return guide
    abort(404)


def _compact(data: object) -> bytes:
    """Data as JSON without idle blanks."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).encode()


def _answer(name: str, body: bytes) -> Response:
    return Response(body, mimetype=TYPES[PurePosixPath(name).suffix])
