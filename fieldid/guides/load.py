"""From a guide's file to a Guide, or to every problem of the file at once."""

from collections.abc import Iterator
from pathlib import Path

from fieldid.engine.guide import Guide
from fieldid.errors import GuideError, Problem
from fieldid.guides.check import check
from fieldid.guides.lines import line_of, lines
from fieldid.guides.read import Source, problem, read, source
from fieldid.guides.records import guide
from fieldid.guides.refusals import Finding, place, quote, refusal
from fieldid.guides.schema import examine


def load(path: Path | str) -> Guide:
    """The guide in a file whose name is the guide's id."""
    path = Path(path)
    return _guide(read(path), stem=path.stem)


def loads(content: bytes, *, file: str, stem: str | None = None) -> Guide:
    """The guide in a file's content; `stem` is the id that it must have, if any."""
    return _guide(source(content, file=file), stem=stem)


def _guide(found: Source, *, stem: str | None) -> Guide:
    try:
        data, refused = examine(found.table)
        refused += check(data)
        if ("id",) not in dict(refused):
            refused += _misnamed(data["id"], stem)
        problems = tuple(_problems(found, refused))
    except RecursionError as error:
        # A list in a list in a list, deeper than Python can follow.
        raise problem(found.file, 0, "too-deep") from error
    if problems:
        raise GuideError(problems)
    return guide(data)


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
        yield Problem(found.file, line, place(path), told.wrong, told.right)
