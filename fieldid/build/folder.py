"""A bundle in its folder: written whole, and nobody else's files touched.

The marker names every file that a build wrote; only those are ever removed. Files of
the build before stay, for pages that are still open.
"""

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from fieldid.build.precache import WORKER
from fieldid.errors import BuildError

MARKER = ".fieldid"
HEADING = "fieldid bundle 1: this folder is written by `fieldid build`"


@dataclass(frozen=True, slots=True)
class Written:
    """What the marker says: the build, the one before it, and the files of both."""

    build: str
    before: str
    paths: tuple[str, ...]


NOTHING = Written("", "", ())


def place(files: Mapping[str, bytes], build: str, folder: Path) -> None:
    """Make the folder hold these files; what is unchanged is left as it is."""
    old = _marked(folder)
    before = old.before if old.build == build else old.build
    spared = [path for path in old.paths if before and _is_of(path, before)]
    now = tuple(sorted({*files, *spared}))
    # A build that is cut short must be known for ours by the next one.
    _write(folder / MARKER, _text(Written(build, before, (*old.paths, *files))))
    for path in sorted(files, key=_last_comes_the_worker):
        _write(folder / path, files[path])
    for path in sorted({*old.paths} - {*now}):
        _remove(folder, path)
    _write(folder / MARKER, _text(Written(build, before, now)))


def _last_comes_the_worker(path: str) -> tuple[bool, bool, str]:
    """Phones learn of a build by its worker, so all else must be there before it;
    and pages name unchanging files, so those come first.
    """
    return path == WORKER, not path.startswith("v/"), path


def _marked(folder: Path) -> Written:
    """What an earlier build wrote here; refuses a folder that is not ours."""
    if folder.exists() and not folder.is_dir():
        raise BuildError(f"{folder} is a file; name a folder for the bundle")
    marker = folder / MARKER
    if marker.is_file():
        return _read(marker)
    if folder.is_dir() and any(folder.iterdir()):
        raise BuildError(
            f"{folder} holds files that fieldid did not write; "
            "name an empty or a new folder, so that nothing of yours is lost"
        )
    return NOTHING


def _read(marker: Path) -> Written:
    match = _FORM.fullmatch(marker.read_text("utf-8", "replace"))
    paths = tuple(match["paths"].splitlines()) if match else ()
    if not match or not all(map(_is_inside, paths)):
        raise BuildError(
            f"{marker} is not as fieldid wrote it; "
            "name another folder, or remove this one yourself"
        )
    return Written(match["build"], match["before"], paths)


_FORM = re.compile(
    rf"{re.escape(HEADING)}\nbuild (?P<build>\w*)\nbefore (?P<before>\w*)\n"
    r"(?P<paths>(?:.+\n)*)"
)


def _text(written: Written) -> bytes:
    heads = (HEADING, f"build {written.build}", f"before {written.before}")
    return "".join(f"{line}\n" for line in (*heads, *sorted({*written.paths}))).encode()


def _is_of(path: str, build: str) -> bool:
    return path.startswith(f"v/{build}/")


def _is_inside(path: str) -> bool:
    parts = PurePosixPath(path).parts
    return bool(parts) and ".." not in parts and not path.startswith("/")


def _write(path: Path, body: bytes) -> None:
    """Put the body in place at once, or leave a file that has it already."""
    if path.is_file() and path.read_bytes() == body:
        return
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        partial = path.with_name(path.name + ".partial")
        partial.write_bytes(body)
        os.replace(partial, path)
    except OSError as error:
        raise BuildError(f"{path} could not be written: {error.strerror}") from error


def _remove(folder: Path, path: str) -> None:
    """Remove a leftover, and the folders that it leaves empty."""
    (folder / path).unlink(missing_ok=True)
    for above in (folder / path).parents:
        if above == folder or any(above.iterdir()):
            return
        above.rmdir()
