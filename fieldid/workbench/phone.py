"""The phone app as it is served, and how it is built again meanwhile."""

import os
import shutil
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from threading import Lock, Thread
from typing import Literal
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Flask, current_app, render_template

from fieldid.build.site import Bundle, bundle
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError, FieldidError
from fieldid.paths import TEMPLATES
from fieldid.web.app import create_app

BROKEN = (
    "The app could not be built, by a mistake of fieldid and not of yours: "
    "the terminal where “fieldid serve” runs says what happened."
)


@dataclass(frozen=True, slots=True)
class State:
    """What the phone app is doing; `say` tells why the last build failed, or what was
    left out of it.
    """

    name: Literal["idle", "building", "failed"]
    say: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class Served:
    """A whole bundle, and the guides that it is of."""

    guides: tuple[Guide, ...]
    bundle: Bundle


class Phone:
    """The phone app, served from its last whole bundle.

    `read` gives the guides of a build, and `files` what they are read from. Each
    bundle gets a folder of its own inside `work`, because answers that are on their
    way come from the one before; `out` is given a copy.
    """

    def __init__(
        self,
        read: Callable[[], Sequence[Guide]],
        work: Path,
        out: Path | None = None,
        *,
        files: Callable[[], Iterable[Path]] = tuple,
    ) -> None:
        self._read = read
        self._files = files
        self._tried = self._mark()
        self._work = work
        self._out = out
        self._lock = Lock()
        self._number = 0
        self._app: WSGIApplication = _nothing()
        self.served: Served | None = None
        self.state = State("idle")

    def __call__(
        self, environ: WSGIEnvironment, start: StartResponse
    ) -> Iterable[bytes]:
        """Answers from the bundle that is whole when the request comes."""
        return self._app(environ, start)

    def make(self, guides: Sequence[Guide] | None = None) -> None:
        """Builds the app and serves it from then on; a FieldidError leaves the old."""
        if guides is None:
            # Before they are read, so that no change meanwhile is lost.
            self._tried = self._mark()
            guides = self._read()
        made = bundle(guides)
        try:
            folder = self._written(made)
        except OSError as error:
            what = f"The app could not be written: {error.strerror}."
            raise BuildError(what) from error
        self._app = create_app(guides=guides, build=made.build, bundle=folder)
        self.served = Served(tuple(guides), made)

    @property
    def changed(self) -> bool:
        """Whether guides are others than when the app was last built, or tried to."""
        return self._mark() != self._tried

    def rebuild(self) -> bool:
        """Begins to build in the background; False if that goes on already."""
        with self._lock:
            if self.state.name == "building":
                return False
            self.state = State("building")
        Thread(target=self._rebuild, name="phone", daemon=True).start()
        return True

    def _rebuild(self) -> None:
        try:
            self.make()
        except FieldidError as error:
            self.state = State("failed", str(error))
        except BaseException:
            self.state = State("failed", BROKEN)
            raise
        else:
            self.state = State("idle")

    def _mark(self) -> tuple[tuple[Path, bytes], ...]:
        """The guides' files with the hashes of what is in them."""
        return tuple((path, _hash(path)) for path in self._files())

    def _written(self, made: Bundle) -> Path:
        """The folder of the bundle, which also has what open pages still ask for."""
        last, number = self._folder(self._number), self._number + 1
        folder = self._folder(number)
        # What an earlier attempt left, which was cut short.
        shutil.rmtree(folder, ignore_errors=True)
        if last.is_dir():
            # Files are replaced and never changed, so that both may have the same one.
            shutil.copytree(last, folder, copy_function=os.link)
        made.write(folder)
        if self._out:
            made.write(self._out)
        self._number = number
        shutil.rmtree(self._folder(number - 2), ignore_errors=True)
        return folder

    def _folder(self, number: int) -> Path:
        return self._work / str(number)


def phone() -> Phone:
    """The phone app that is served beside the workbench that answers the request."""
    found: Phone = current_app.extensions["phone"]
    return found


def _nothing() -> Flask:
    """What is served while there is no guide: a page that says so."""
    app = Flask(__name__, static_folder=None, template_folder=str(TEMPLATES))
    app.add_url_rule("/", view_func=lambda: render_template("nothing.html"))
    return app


def _hash(path: Path) -> bytes:
    """The hash of a file; of none if it cannot be read."""
    try:
        return sha256(path.read_bytes()).digest()
    except OSError:
        return b""
