"""The words for short names: of a clue's answers, and of all that a list offers."""

from collections.abc import Mapping, Sequence
from typing import Any

from fieldid.guides.refusals import Path
from fieldid.workbench.text.places import asked_at, held, table_for

Options = Sequence[tuple[str, str]]


def answers_at(data: Any, home: Path, rest: Path, clue: object = None) -> Options:
    """Short name and words of each answer that a place in a table may name; `clue` is
    the one that a red flag waits for, if that is not as in the guide's `data`.
    """
    if home[2:3] == ("option",) and "like" in rest:
        return _options(data, home[:3])
    if home[:1] == ("clue",) and rest[:1] == ("replacement",):
        return _options(data, (*home, "option"))
    if home[:1] == ("flag",) and "is" in rest:
        return _of_clue(data, clue or _waited_for(data, home, rest))
    return ()


def words_at(data: Any, home: Path, rest: Path) -> Mapping[str, str]:
    """What a form shows in place of each short name that may stand there."""
    _, entry = asked_at(table_for(home, data), rest)
    listed = entry.choices(data) if entry and entry.choices and data else ()
    found = (*answers_at(data, home, rest), *listed)
    # Words of two are none: they would not say which is meant.
    words = [each for _, each in found]
    return {name: each for name, each in found if words.count(each) == 1}


def _waited_for(data: Any, home: Path, rest: Path) -> Any:
    """The clue of a line that a red flag waits for, which may stand alone."""
    line = held(data, (*home, *rest[: rest.index("is")]))
    return held(line or held(data, (*home, "when")), ("clue",))


def _of_clue(data: Any, clue: object) -> Options:
    clues = held(data, ("clue",))
    for place, each in enumerate(clues if isinstance(clues, list) else ()):
        if held(each, ("id",)) == clue:
            return _options(data, ("clue", place, "option"))
    return ()


def _options(data: Any, path: Path) -> Options:
    found = held(data, path)
    pairs = [
        (held(each, ("id",)), held(each, ("label",)))
        for each in (found if isinstance(found, list) else ())
    ]
    return [(id, str(words)) for id, words in pairs if isinstance(id, str) and words]
