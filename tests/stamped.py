"""Reads the stamped letters of a drawing back."""

from functools import cache
from re import findall

from fieldid.draw.letters import GAP, HIGH, STROKES, WIDE, breadth, moved

BLANKS = 4
"""No word in a drawing has more."""


def spelled(drawn: str) -> list[str]:
    """The words that are stamped in a drawing, in its order; an O is read as a nought.

    >>> from fieldid.draw.letters import word
    >>> from fieldid.draw.nodes import svg
    >>> spelled(svg(word("F6 24", middle=(0, 0), height=6)))
    ['F6 24']
    """
    read = (_read(path) for path in findall(r' d="([^"]*)"', drawn))
    return [word for word in read if word]


def _read(path: str) -> str:
    # A letter has at least one stroke of its own.
    longest = path.count("M") + BLANKS
    texts = (_read_as(path, length) for length in range(1, longest + 1))
    return next((text.strip() for text in texts if text.strip()), "")


def _read_as(path: str, length: int) -> str:
    """The path as a word of so many letters; empty if it is none."""
    left = -breadth(" " * length, HIGH) / 2
    text = ""
    for at in range(length):
        drawn = _drawn(left + at * (WIDE + GAP))
        # A letter may begin as another does, which is shorter then.
        begun = max(filter(path.startswith, drawn), key=len)
        text += drawn[begun]
        path = path.removeprefix(begun)
    return "" if path else text


@cache
def _drawn(left: float) -> dict[str, str]:
    """What each letter that begins there is drawn with."""
    return {
        moved(strokes, left, -HIGH / 2): letter for letter, strokes in STROKES.items()
    }
