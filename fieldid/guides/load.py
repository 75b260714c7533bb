"""From a guide's file to a Guide, or to every problem of the file at once."""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from fieldid.engine.guide import Guide
from fieldid.errors import GuideError, Problem, nearest
from fieldid.guides.check import check
from fieldid.guides.include import clashes, joined
from fieldid.guides.lines import line_of, lines
from fieldid.guides.read import Source, problem, read, source
from fieldid.guides.records import guide
from fieldid.guides.refusals import Finding, place, quote, refusal
from fieldid.guides.schema import examine


def load(path: Path | str) -> Guide:
    """The guide in a file whose name is the guide's id; what it includes lies beside
    it.
    """
    path = Path(path)
    return _guide(read(path), stem=path.stem, beside=_beside(path.parent))


def loads(
    content: bytes, *, file: str, stem: str | None = None, folder: Path | None = None
) -> Guide:
    """The guide in a file's content; `stem` is the id that it must have, if any.

    What it includes lies in the `folder`; without one there is nothing to include.
    """
    beside = _beside(folder) if folder else {}
    return _guide(source(content, file=file), stem=stem, beside=beside)


def _beside(folder: Path) -> dict[str, Path]:
    """The guides of a folder by id."""
    return {path.stem: path for path in sorted(folder.glob("*.toml"))}


def _guide(found: Source, *, stem: str | None, beside: dict[str, Path]) -> Guide:
    try:
        data, refused = examine(found.table)
        refused += check(data)
        if "id" in data and ("id",) not in dict(refused):
            refused += _misnamed(data["id"], stem)
    except RecursionError as error:
        # A list in a list in a list, deeper than Python can follow.
        raise problem(found.file, 0, "too-deep") from error
    others, told = _others(data, stem or data.get("id", ""), beside)
    problems = tuple(_problems(found, refused + told))
    if problems:
        raise GuideError(problems)
    return joined(guide(data), others)


def _others(
    data: dict[str, Any], own: str, beside: dict[str, Path]
) -> tuple[list[Guide], list[Finding]]:
    """The guides that are included, or why they cannot be."""
    others: list[Guide] = []
    told: list[Finding] = []
    names = data.get("include", ())
    for i, name in enumerate(names):
        if name not in beside:
            words = {"value": quote(name), "nearest": nearest(name, beside)}
            told.append((("include", i), refusal("include-missing", **words)))
        elif circle := _circle([own, name], beside):
            words = {"chain": ", ".join(circle)}
            told.append((("include", i), refusal("include-circle", **words)))
        else:
            try:
                others.append(load(beside[name]))
            except GuideError as error:
                words = {"value": quote(name), "count": str(len(error.problems))}
                told.append((("include", i), refusal("include-broken", **words)))
    if len(others) == len(names):
        own_clues = [clue["id"] for clue in data.get("clue", ()) if "id" in clue]
        told += clashes(own_clues, others)
    return others, told


def _circle(chain: Sequence[str], beside: dict[str, Path]) -> Sequence[str]:
    """The chain of guides up to one that stands in it before; empty if there is none.

    What cannot be read includes nothing here; it is refused when it is loaded.
    """
    if chain[-1] in chain[:-1]:
        return chain
    if chain[-1] not in beside:
        return ()
    try:
        included = examine(read(beside[chain[-1]]).table)[0].get("include", ())
    except GuideError:
        return ()
    found = (_circle([*chain, name], beside) for name in included)
    return next((circle for circle in found if circle), ())


def _misnamed(name: str, stem: str | None) -> list[Finding]:
    if stem in (None, name):
        return []
    told = refusal("file-name", value=quote(name), stem=quote(stem))
    return [(("id",), told)]


def _problems(found: Source, refused: list[Finding]) -> Iterator[Problem]:
    """Each refusal with its line."""
    if not refused:
        return
    where = lines(found.text)
    for path, told in refused:
        line = line_of(where, path)
        key = place(path)
        yield Problem(
            found.file, line, key, told.wrong, told.right, told.code, told.words
        )
