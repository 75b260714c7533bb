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


def paths_of(names: Iterable[str]) -> list[Path]:
    """The files of guides that are named by path, by folder or by id; all shipped ones
    without any name.
    """
    return [path for name in names for path in _paths(name)] or shipped()


def _paths(name: str) -> list[Path]:
    is_id = any(path.stem == name for path in shipped())
    if is_id or not Path(name).is_dir():
        return [path_of(name)]
    found = sorted(Path(name).glob("*.toml"))
    if not found:
        raise UsageError(f"there is no guide in {name}: no file there ends in .toml")
    return found


def load_all(names: Iterable[str]) -> list[Guide]:
    """The guides that are named, as above; every problem at once."""
    paths = paths_of(names)
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
