"""The bundle: every file of the phone app, named by the hash of all of them."""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from fieldid.build import budget
from fieldid.build.folder import place
from fieldid.build.precache import PAGE, WORKER, entries, fill
from fieldid.build.seal import seal
from fieldid.build.slim import slim
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web import headers
from fieldid.web.app import create_app
from fieldid.web.phone import LIVE, Shelf, addresses

PAGES = ".html"


@dataclass(frozen=True, slots=True)
class Bundle:
    """All files by their path, and the build that their folder is named by."""

    build: str
    files: dict[str, bytes]

    def write(self, folder: Path) -> None:
        """Put the bundle into a folder, with a compressed copy beside each text."""
        place(self.whole(), self.build, folder)

    def whole(self) -> dict[str, bytes]:
        """All files, with a compressed copy beside each text that it makes smaller."""
        return self.files | budget.compressed(self.files)

    def budget(self) -> tuple[str, ...]:
        """What a phone must fetch, a line for each kind."""
        return budget.lines(self.files)


def bundle(
    guides: Iterable[Guide], *, static: Path = STATIC, templates: Path = TEMPLATES
) -> Bundle:
    """The bundle of these guides, sealed: nothing in it points outside or nowhere."""
    shelf = tuple(guides)
    refuse_twins([guide.id for guide in shelf])
    asked = _asked(shelf, static, templates)
    build = identity(asked.rest | asked.pages)
    files = {_renamed(path, build): body for path, body in asked.rest.items()}
    files |= {
        path: page.replace(asked.name.encode(), build.encode())
        for path, page in asked.pages.items()
    }
    files["_headers"] = headers.written().encode()
    files[WORKER] = fill(files[WORKER], build, entries(files))
    seal(files)
    return Bundle(build, files)


def identity(files: Mapping[str, bytes]) -> str:
    """The name of a build: any change to a file or to the header policy changes it."""
    listed = "".join(
        f"{path} {hashlib.sha256(body).hexdigest()}\n"
        for path, body in sorted(files.items())
    )
    whole = f"{listed}{headers.written()}"
    return hashlib.sha256(whole.encode()).hexdigest()[:12]


def refuse_twins(ids: list[str]) -> None:
    """Refuses to build from nothing, or from two guides of one name."""
    if not ids:
        raise BuildError("There is no guide to build from.")
    for i, name in enumerate(ids):
        if name in ids[:i]:
            raise BuildError(f"The guide {name!r} is named twice; name it once.")


@dataclass(frozen=True, slots=True)
class _Asked:
    """What the live application answers: the pages, which name the folder of their
    build, and all else.

    Nobody knows that name yet, so the pages bear another one: the hash of all else,
    the guides among it, which none of their texts can hold.
    """

    name: str
    pages: dict[str, bytes]
    rest: dict[str, bytes]


def _asked(guides: tuple[Guide, ...], static: Path, templates: Path) -> _Asked:
    def answers(build: str, *, pages: bool) -> dict[str, bytes]:
        app = create_app(
            guides=guides, build=build, static=static, templates=templates, testing=True
        )
        client = app.test_client()
        files = {}
        for address in addresses(Shelf(guides, static, build)):
            path = address or PAGE
            if path.endswith(PAGES) is pages:
                answer = client.get(f"/{address}")
                if answer.status_code != 200:
                    raise BuildError(f"/{address} answers {answer.status}")
                files[path] = slim(path, answer.data)
        return files

    rest = answers(LIVE, pages=False)
    name = identity(rest)
    return _Asked(name, answers(name, pages=True), rest)


def _renamed(path: str, build: str) -> str:
    live = f"v/{LIVE}/"
    return f"v/{build}/{path.removeprefix(live)}" if path.startswith(live) else path
