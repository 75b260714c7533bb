"""Where each key of a TOML text stands: path to line number.

`tomllib` keeps no positions. This walks a text that `tomllib` has accepted, so it
need not ask whether the text is TOML, only where its keys and values are.
"""

import re
import tomllib
from bisect import bisect_right

from fieldid.guides.refusals import Path


def lines(text: str) -> dict[Path, int]:
    """The line of every key, table and list element; the whole text is line 1."""
    return _Walk(text).lines


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


class _Walk:
    """One pass over the tokens of a text."""

    def __init__(self, text: str) -> None:
        self.lines: dict[Path, int] = {(): 1}
        self._starts = [0] + [m.end() for m in re.finditer("\n", text)]
        self._tokens = [(m[0], m.start()) for m in _TOKEN.finditer(text)]
        self._tokens.append(("", len(text)))
        self._next = 0
        self._counts: dict[Path, int] = {}
        table: Path = ()
        while self._skip():
            if self._token == "[":
                table = self._header()
            else:
                self._pair(table)

    @property
    def _token(self) -> str:
        return self._tokens[self._next][0]

    def _take(self) -> str:
        self._next += 1
        return self._tokens[self._next - 1][0]

    def _skip(self) -> bool:
        """Passes blank lines and comments; whether anything is left."""
        while self._token == "\n" or self._token.startswith("#"):
            self._next += 1
        return self._token != ""

    def _note(self, path: Path) -> None:
        line = bisect_right(self._starts, self._tokens[self._next][1])
        self.lines.setdefault(path, line)

    def _header(self) -> Path:
        """`[table]` or `[[table]]`, and the path that its keys lie under."""
        self._take()
        many = self._token == "["
        if many:
            self._take()
        path = self._keys((), closed_by="]")
        if many:
            count = self._counts.get(path, 0)
            self._counts[path] = count + 1
            path = (*path, count)
            self._note(path)
            self._take()
        self._take()
        return path

    def _pair(self, table: Path) -> None:
        """`key = value`."""
        path = self._keys(table, closed_by="=")
        self._take()
        self._value(path)

    def _keys(self, path: Path, *, closed_by: str) -> Path:
        """A dotted key; a list of tables on the way means its last one."""
        while self._token != closed_by:
            if path in self._counts:
                path = (*path, self._counts[path] - 1)
            if self._token != ".":
                path = (*path, _plain(self._token))
                self._note(path)
            self._take()
        return path

    def _value(self, path: Path) -> None:
        if self._token == "[":
            self._list(path)
        elif self._token == "{":
            self._inline(path)
        else:
            while self._token not in _ENDS and not self._token.startswith("#"):
                self._take()

    def _list(self, path: Path) -> None:
        self._take()
        place = 0
        while self._skip() and self._token != "]":
            self._note((*path, place))
            self._value((*path, place))
            place += 1
            self._skip()
            if self._token == ",":
                self._take()
        self._take()

    def _inline(self, path: Path) -> None:
        self._take()
        while self._skip() and self._token != "}":
            self._pair(path)
            self._skip()
            if self._token == ",":
                self._take()
        self._take()


def _plain(key: str) -> str:
    """A key without its quotes and escapes."""
    return next(iter(tomllib.loads(f"{key} = 0"))) if key[0] in "\"'" else key


_ENDS = ("\n", ",", "]", "}", "")
_TOKEN = re.compile(
    r'"""(?:\\[\s\S]|(?!""")[^\\])*"{3,5}'
    r"|'''(?:(?!''')[\s\S])*'{3,5}"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|#[^\n]*|\n|[\[\]{}=,.]"
    r"|[^\s\[\]{}=,.#\"']+"
)
