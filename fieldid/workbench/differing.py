"""Two texts side by side, where they differ."""

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher


@dataclass(frozen=True, slots=True)
class Difference:
    """Lines that differ, from a line on: those of one text, and those of the other."""

    line: int
    one: str
    other: str


def differences(one: str, other: str) -> tuple[Difference, ...]:
    """Each place where the lines differ.

    >>> differences("a\\nb\\nc", "a\\nB\\nc")
    (Difference(line=2, one='b', other='B'),)
    """
    a, b = one.split("\n"), other.split("\n")
    return tuple(
        Difference(i + 1, _text(a[i:j]), _text(b[k:n]))
        for tag, i, j, k, n in SequenceMatcher(None, a, b, False).get_opcodes()
        if tag != "equal"
    )


def _text(lines: Sequence[str]) -> str:
    return "\n".join(lines)
