"""Whether a bundle is whole: every link, picture, script and id is inside it.

A phone without signal cannot fetch what was forgotten, and a browser that keeps to
the policy will not load what is elsewhere.
"""

import json
import posixpath
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import unquote, urldefrag

from fieldid.build.page import Page, read_page
from fieldid.build.precache import PAGE
from fieldid.errors import BuildError

_CSS_LINK = re.compile(
    r"""url\(\s*["']?([^"')]*)["']?\s*\)|@import\s+["']([^"']*)["']"""
)
_JS_COMMENT = re.compile(r"/\*.*?\*/|(?<![:\"'`])//[^\n]*", re.DOTALL)
# `import ... from "./x.js"`, `export ... from "./x.js"` and `import "./x.js"`.
_JS_IMPORT = re.compile(
    r"""^\s*(?:(?:import|export)\b[\w\s{},*$]*\bfrom|import)\s*["']([^"'\n]+)["']""",
    re.MULTILINE,
)
# `import("./x.js")`
_JS_ASKED = re.compile(r"""\bimport\(\s*["']([^"'`\n]+)["']\s*\)""")
_JS_DATA = re.compile(r"""new URL\(\s*["']([^"'`]+)["']\s*,\s*import\.meta\.url""")
_JS_ELSEWHERE = re.compile(r"""["'`]((?:[a-z][a-z+.-]*:)?//[^"'`\s]+)["'`]""")
_PAINT = re.compile(r"url\(#([^)]*)\)")

NAMES = ("http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink")
"""What looks like an address and is the name of a vocabulary."""


@dataclass(frozen=True, slots=True)
class Link:
    """A link as it is written in the file at `path`."""

    path: str
    written: str


def seal(files: Mapping[str, bytes]) -> None:
    """Refuse a bundle that points outside itself or at nothing, naming each place."""
    pages = {
        path: read_page(body.decode())
        for path, body in files.items()
        if path.endswith(".html")
    }
    problems = [
        *(problem for path, page in pages.items() for problem in _torn(path, page)),
        *(_broken(link, files, pages) for link in _links(files, pages)),
        *_unpainted(files, pages),
    ]
    found = list(dict.fromkeys(problem for problem in problems if problem))
    if found:
        raise BuildError("\n".join(found))


def _links(files: Mapping[str, bytes], pages: Mapping[str, Page]) -> Iterator[Link]:
    """Every link of every file, in the order of the files."""
    for path, body in files.items():
        if path in pages:
            written: Iterable[str] = pages[path].links
        elif path.endswith(".css"):
            found = _CSS_LINK.findall(body.decode())
            written = (url or other for url, other in found)
        elif path.endswith(".js"):
            written = _script_links(body.decode())
        elif path.endswith(".webmanifest"):
            written = _manifest_links(json.loads(body))
        else:
            continue
        yield from (Link(path, each) for each in written)


def _script_links(script: str) -> Iterator[str]:
    bare = _JS_COMMENT.sub("", script)
    yield from _JS_IMPORT.findall(bare)
    yield from _JS_ASKED.findall(bare)
    yield from _JS_DATA.findall(bare)
    yield from (found for found in _JS_ELSEWHERE.findall(bare) if found not in NAMES)


def _manifest_links(manifest: Any) -> Iterator[str]:
    """The addresses at any depth of the manifest."""
    if isinstance(manifest, dict):
        for key, value in manifest.items():
            if key in ("src", "url", "start_url", "scope") and isinstance(value, str):
                yield value
            yield from _manifest_links(value)
    elif isinstance(manifest, list):
        for value in manifest:
            yield from _manifest_links(value)


def _broken(
    link: Link, files: Mapping[str, bytes], pages: Mapping[str, Page]
) -> str | None:
    """What is wrong with a link, or None."""
    place = f"{link.path}: {link.written!r}"
    if re.match(r"[a-z][a-z0-9+.-]*:|/", link.written, re.IGNORECASE):
        return f"{place} is an address outside the bundle; use a relative one"
    address, fragment = urldefrag(link.written)
    target = _target(link.path, address)
    if target not in files and not _is_folder(target, files):
        return f"{place} is not in the bundle; no file is at {target!r}"
    if fragment and target in pages and not _is_anchor(fragment, pages[target]):
        return f"{place} points at nothing; no id in {target} is {fragment!r}"
    return None


def _is_anchor(fragment: str, page: Page) -> bool:
    """Whether it names an id, or a screen, alone or with what is to be shown there."""
    return fragment in page.ids or fragment.partition("/")[0] in page.screens


def _target(path: str, address: str) -> str:
    """The file that an address in the file at `path` means."""
    if not address:
        return path
    # A query changes what a file does, not which file it is.
    bare = unquote(address.partition("?")[0])
    joined = posixpath.normpath(posixpath.join(posixpath.dirname(path), bare))
    return PAGE if joined == "." else joined


def _is_folder(target: str, files: Mapping[str, bytes]) -> bool:
    return any(path.startswith(f"{target}/") for path in files)


def _torn(path: str, page: Page) -> Iterator[str]:
    """What is wrong inside one page."""
    for name in page.repeated:
        yield f"{path}: the id {name!r} is used twice"
    for attribute, name in page.references:
        if name not in page.ids:
            yield f"{path}: {attribute}={name!r} names no id of the page"
    for inline in page.inline:
        yield f"{path}: {inline} would be refused by the policy; use a file"
    if not page.has_policy:
        yield f"{path}: no <meta> carries the policy, for hosts that send no headers"


def _unpainted(files: Mapping[str, bytes], pages: Mapping[str, Page]) -> Iterator[str]:
    """Pictures of guides, which are drawn into the page, and fillings it lacks."""
    for path, body in files.items():
        if "/guides/" in path and PAGE in pages:
            for name in dict.fromkeys(_PAINT.findall(body.decode())):
                if name not in pages[PAGE].ids:
                    yield f"{path}: 'url(#{name})' names no id of {PAGE}"
