"""What fits on a card: 190 mm wide, so high that Letter takes it, in two columns.

Heights are in millimetres, reckoned with the letters of a broad face; with a narrower
one some room is left.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import zip_longest

SIZES = (10.5, 10.0, 9.5, 9.0, 8.5)
"""Letters in points, the largest first."""
HEIGHT = 259.0
"""Letter without its edges; A4 is longer."""
WIDTH, COLUMN = 190.0, 93.0
POINT = 0.3528
"""Millimetres."""
LEADING = 1.15
BROAD, BOLD, FIGURES = 0.54, 0.62, 0.57
"""How wide a letter is on average, in heights of letters."""
TITLE = 8.0
"""The title, and the lines and spaces that part it from the steps."""
SMALL = 7.5
"""Letters at the foot."""
GAPS = 2.4
"""What stands free above and below a step."""
PICTURE, ASIDE = 2.4, 3.2
"""How high an answer is at least, and how wide a drawing with the gap after it, in
heights of letters.
"""
END = "1951 50 %, or 1952"
"""The longest that an answer leads to."""
YEARS = 28.0
"""What the years beside a mark take."""


def hold(column: float, steps: Iterable[float]) -> bool:
    """Whether two columns hold steps of these heights, none of which breaks.

    >>> hold(10, [6, 6, 3]), hold(10, [6, 3, 6, 3])
    (True, True)
    >>> hold(10, [6, 6, 6])
    False
    """
    left = [column, column]
    for height in steps:
        while left and height > left[0]:
            left.pop(0)
        if not left:
            return False
        left[0] -= height
    return True


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet with letters of some size."""

    size: float

    @property
    def line(self) -> float:
        """The height of a line."""
        return self.size * POINT * LEADING

    def column(self, head: str, foot: Sequence[str]) -> float:
        """How high a column is, between the head and the foot."""
        small = Sheet(SMALL)
        below = sum(small.lines(text, WIDTH) for text in foot) * small.line + GAPS
        above = TITLE + self.lines(head, WIDTH) * self.line
        return HEIGHT - above - below

    def step(self, ask: str, answers: Sequence[tuple[str, bool]]) -> float:
        """A question with its answers, two beside each other, drawn or not; each has
        what it leads to on a line of its own.
        """
        heights = [self._answer(*answer) for answer in answers]
        rows = zip_longest(heights[::2], heights[1::2], fillvalue=0.0)
        return self.asked(ask) + sum(map(max, rows))

    def marks(self, ask: str, labels: Sequence[str]) -> float:
        """A question with marks, which have their years beside them."""
        told = sum(self.lines(label, COLUMN - YEARS) for label in labels)
        return self.asked(ask) + told * self.line

    def read(self, ask: str, told: Sequence[str]) -> float:
        """A question with what stands for which years."""
        lines = sum(self.lines(text, COLUMN) for text in told)
        return self.asked(ask) + lines * self.line

    def asked(self, ask: str) -> float:
        """The question alone, with the space around it."""
        return GAPS + self.lines(ask, COLUMN, BOLD) * self.line

    def lines(self, text: str, width: float, wide: float = BROAD) -> int:
        """How many lines a text takes.

        >>> Sheet(8.5).lines("How is the club's number cut into the sole?", COLUMN)
        1
        """
        return max(1, math.ceil(len(text) * wide * self.size * POINT / width))

    def _answer(self, label: str, drawn: bool) -> float:
        letter = self.size * POINT
        width = COLUMN / 2 - 1 - ASIDE * letter * drawn
        lines = self.lines(label, width) + self.lines(END, width, FIGURES)
        return max(PICTURE * letter, lines * self.line)
