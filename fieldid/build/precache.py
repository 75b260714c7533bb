"""What the service worker keeps: every file with its hash, written into sw.js."""

import base64
import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass

from fieldid.errors import BuildError

PAGE = "index.html"
WORKER = "sw.js"
UNKEPT = (WORKER, "_headers")
"""What is for browsers and servers alone, and must never come from a cache."""
SERVERS = tuple(f"/css/{name}.css" for name in ("form", "verdict", "judge"))
"""Styles of pages that only a server can answer with."""

BUILD_LINE = 'const BUILD = "dev";'
FILES_LINE = "const FILES = [];"


@dataclass(frozen=True, slots=True)
class Entry:
    """One file to keep: its address, its hash as browsers check it, its size."""

    url: str
    sha256: str
    bytes: int


def entries(files: Mapping[str, bytes]) -> tuple[Entry, ...]:
    """All files of a bundle that a phone keeps, sorted by address."""
    return tuple(
        Entry(url, integrity(files[path]), len(files[path]))
        for url, path in sorted((address(path), path) for path in files)
        if is_kept(path)
    )


def is_kept(path: str) -> bool:
    """Whether a phone keeps the file.

    >>> is_kept("v/1/css/app.css"), is_kept("sw.js"), is_kept("v/1/css/judge.css")
    (True, False, False)
    """
    return path not in UNKEPT and not path.endswith(SERVERS)


def fill(script: bytes, build: str, kept: tuple[Entry, ...]) -> bytes:
    """The worker with its two constants."""
    text = script.decode()
    listed = ",\n".join(f"  {json.dumps(asdict(entry))}" for entry in kept)
    for line, filled in (
        (BUILD_LINE, f"const BUILD = {json.dumps(build)};"),
        (FILES_LINE, f"const FILES = [\n{listed},\n];"),
    ):
        if text.splitlines().count(line) != 1:
            raise BuildError(f"{WORKER}: the line {line!r} must stand there once")
        text = text.replace(line, filled)
    return text.encode()


def address(path: str) -> str:
    """How a page asks for a file; the page itself is asked for as its folder.

    >>> address("index.html"), address("icon.svg")
    ('./', 'icon.svg')
    """
    return "./" if path == PAGE else path


def integrity(body: bytes) -> str:
    """The hash as `integrity` wants it.

    >>> integrity(b"")
    'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='
    """
    return "sha256-" + base64.b64encode(hashlib.sha256(body).digest()).decode()
