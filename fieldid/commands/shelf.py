"""Which guides a command works on: files, or the ids of those that come along."""

from collections.abc import Iterable
from pathlib import Path

from fieldid.engine.guide import Guide
from fieldid.errors import GuideError, Problem, UsageError, nearest
from fieldid.guides.load import load
from fieldid.paths import RULES


def shipped() -> list[Path]:
    """The guides that come with fieldid, by name."""
    return sorted(RULES.glob("*.toml"))


def path_of(name: str) -> Path:
    """The file of a guide that is named by its path or by its id."""
    known = {path.stem: path for path in shipped()}
    if name in known:
        return known[name]
    if name.endswith(".toml") or "/" in name:
        return Path(name)
    raise UsageError(f"there is no guide {name!r}; try {nearest(name, known)}")


def load_all(names: Iterable[str]) -> list[Guide]:
    """The guides by path or id, all shipped ones without any; every problem at once."""
    paths = [path_of(name) for name in names] or shipped()
    guides: list[Guide] = []
    problems: list[Problem] = []
    for path in paths:
        try:
            guides.append(load(path))
        except GuideError as error:
            problems += error.problems
    if problems:
        raise GuideError(problems)
    return guides
