"""A guide's text as it would be: the guide, or what is wrong with it and where."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256
from pathlib import Path as FilePath
from typing import Any

from fieldid.engine.guide import Guide
from fieldid.errors import GuideError
from fieldid.guides.document import Document
from fieldid.guides.load import loads
from fieldid.guides.refusals import Path
from fieldid.workbench.fields.wording import plainly
from fieldid.workbench.text.answers import words_at
from fieldid.workbench.text.places import home_of, path_of, spoken


@dataclass(frozen=True, slots=True)
class Trouble:
    """A mistake: the line it is on (0: none), the table it is edited in, where in that
    table, and what to tell: as the file's checks say it, and place and all as a form
    does.
    """

    line: int
    home: Path
    rest: Path
    key: str
    say: str
    place: str
    plain: str


@dataclass(frozen=True, slots=True)
class Draft:
    """A text that is looked at but not kept: its guide, or its troubles."""

    text: str
    guide: Guide | None
    troubles: tuple[Trouble, ...]


def draft(text: str, path: FilePath) -> Draft:
    """The text as if it were the file at the path."""
    # It may include any guide that lies beside it.
    others = sorted(each for each in path.parent.glob("*.toml") if each != path)
    return _worked_out(text, path, tuple((each, _hash(each)) for each in others))


def _hash(path: FilePath) -> bytes:
    try:
        return sha256(path.read_bytes()).digest()
    except OSError:
        return b""


@lru_cache(maxsize=64)
def _worked_out(
    text: str, path: FilePath, others: tuple[tuple[FilePath, bytes], ...]
) -> Draft:
    """Most pages look at the same text many times, and a large one takes a moment."""
    try:
        guide = loads(text.encode(), file=path.name, stem=path.stem, folder=path.parent)
    except GuideError as error:
        return Draft(text, None, tuple(_troubles(error, tables(text))))
    return Draft(text, guide, ())


def tables(text: str) -> Mapping[str, Any] | None:
    """The tables of a text; None if it is not TOML, and no form can edit it."""
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError):
        return None


def title_of(document: Document, name: str) -> str:
    """The title that a guide's text gives it; without one, the name of its file."""
    title = (tables(document.text) or {}).get("title")
    return title if isinstance(title, str) and title.strip() else name


def is_worse(before: Draft, after: Draft) -> bool:
    """Whether a change breaks a guide that was whole. In one that was not, a mistake
    that is mended may bring others to light, so their number says nothing.
    """
    return bool(after.troubles) and not before.troubles


def _troubles(error: GuideError, data: Mapping[str, Any] | None) -> list[Trouble]:
    found = []
    for problem in error.problems:
        home, rest = home_of(path_of(problem.key))
        say = f"{problem.wrong}; would be right: {problem.right}"
        place = spoken(data, home, rest)
        plain = plainly(problem, words_at(data, home, rest))
        found.append(Trouble(problem.line, home, rest, problem.key, say, place, plain))
    return found
