"""The bundle: every file of the phone app, named by the hash of all of them."""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from fieldid.build import budget
from fieldid.build.folder import place
from fieldid.build.precache import PAGE, WORKER, entries, fill
from fieldid.build.seal import seal
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web import headers
from fieldid.web.app import create_app
from fieldid.web.phone import LIVE, Shelf, addresses


@dataclass(frozen=True, slots=True)
class Bundle:
    """All files by their path, and the build that their folder is named by."""

    build: str
    files: dict[str, bytes]

    def write(self, folder: Path) -> None:
        """Put the bundle into a folder, with a compressed copy beside each text."""
        place(self.files | budget.compressed(self.files), self.build, folder)

    def budget(self) -> tuple[str, ...]:
        """What a phone must fetch, a line for each kind."""
        return budget.lines(self.files)


def bundle(
    guides: Iterable[Guide], *, static: Path = STATIC, templates: Path = TEMPLATES
) -> Bundle:
    """The bundle of these guides, sealed: nothing in it points outside or nowhere."""
    shelf = tuple(guides)
    # Pages name the folder of their build, so they are asked for twice: once to learn
    # its name from the contents, once with it.
    build = identity(_asked(shelf, LIVE, static, templates))
    files = _asked(shelf, build, static, templates)
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


def _asked(
    guides: tuple[Guide, ...], build: str, static: Path, templates: Path
) -> dict[str, bytes]:
    """What the live application answers at every address of the phone."""
    app = create_app(
        guides=guides, build=build, static=static, templates=templates, testing=True
    )
    client = app.test_client()
    files = {}
    for address in addresses(Shelf(guides, static, build)):
        answer = client.get(f"/{address}")
        if answer.status_code != 200:
            raise BuildError(f"/{address} answers {answer.status}")
        files[address or PAGE] = answer.data
    return files
