"""The line of each key of a TOML text, for messages that say where."""

import re
from bisect import bisect_right

from fieldid.guides.refusals import Path
from fieldid.guides.walk import Walk


def lines(text: str) -> dict[Path, int]:
    """The line of every key, table and list element; the whole text is line 1."""
    starts = [0] + [match.end() for match in re.finditer("\n", text)]
    return {path: bisect_right(starts, at) for path, at in Walk(text).first.items()}


def line_of(found: dict[Path, int], path: Path) -> int:
    """The line of a path, or of the nearest table round a key that is missing."""
    at: Path = ()
    for key in path:
        if (*at, key) in found:
            at = (*at, key)
        # One table may stand alone where several may stand in a list.
        elif key != 0:
            break
    return found[at]
