"""Where each key, value and table of a TOML text stands, by its path.

`tomllib` keeps no positions. This walks a text that `tomllib` has accepted, so it
need not ask whether the text is TOML, only where its keys and values are.
"""

import re
import tomllib
from dataclasses import dataclass

from fieldid.guides.refusals import Path


@dataclass(frozen=True, slots=True)
class Piece:
    """A pair or an element of a list: its key, its value, and where that ends; an
    element has no key, and starts at its value.
    """

    start: int
    value: int
    stop: int


@dataclass(frozen=True, slots=True)
class Section:
    """A header with the pairs below it: the `[` of the header, the end of its line,
    and where the next section starts. The root's header is empty.
    """

    path: Path
    start: int
    body: int
    stop: int


class Walk:
    """One pass over the tokens of a text.

    `first` is where each path is first named, `pieces` and `sections` are in the order
    of the text.
    """

    def __init__(self, text: str) -> None:
        self.first: dict[Path, int] = {(): 0}
        self.pieces: dict[Path, Piece] = {}
        self.sections: list[Section] = []
        self._tokens = [(m[0], m.start()) for m in _TOKEN.finditer(text)]
        self._tokens.append(("", len(text)))
        self._next = 0
        self._counts: dict[Path, int] = {}
        self._read(len(text))

    def _read(self, end: int) -> None:
        heads: list[tuple[Path, int, int]] = [((), 0, 0)]
        while self._skip():
            if self._token == "[":
                heads.append(self._header())
            else:
                self._pair(heads[-1][0])
        stops = [start for _, start, _ in heads[1:]] + [end]
        self.sections = [
            Section(*head, stop) for head, stop in zip(heads, stops, strict=True)
        ]

    @property
    def _token(self) -> str:
        return self._tokens[self._next][0]

    @property
    def _at(self) -> int:
        return self._tokens[self._next][1]

    @property
    def _ended(self) -> int:
        """Where the token before this one ends."""
        text, start = self._tokens[self._next - 1]
        return start + len(text)

    def _take(self) -> str:
        self._next += 1
        return self._tokens[self._next - 1][0]

    def _skip(self) -> bool:
        """Passes blank lines and comments; whether anything is left."""
        while self._token == "\n" or self._token.startswith("#"):
            self._next += 1
        return self._token != ""

    def _note(self, path: Path) -> None:
        self.first.setdefault(path, self._at)

    def _header(self) -> tuple[Path, int, int]:
        """`[table]` or `[[table]]`: the path that its keys lie under, and its ends."""
        start = self._at
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
        return path, start, self._ended

    def _pair(self, table: Path) -> None:
        """`key = value`."""
        start = self._at
        path = self._keys(table, closed_by="=")
        self._take()
        value = self._at
        self._value(path)
        self.pieces[path] = Piece(start, value, self._ended)

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
            start = self._at
            self._note((*path, place))
            self._value((*path, place))
            self.pieces[(*path, place)] = Piece(start, start, self._ended)
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


def line_start(text: str, at: int) -> int:
    """Where the line begins."""
    return text.rfind("\n", 0, at) + 1


def line_end(text: str, at: int) -> int:
    """Past the end of the line, with the comment that stands on it."""
    found = text.find("\n", at)
    return found + 1 if found >= 0 else len(text)


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
