"""Mistakes that a guide may have: twenty at once, and each by itself with its line."""

import re
from pathlib import Path

from make import plover

HERE = Path(__file__).parent / "guides"

# One mistake each, in different tables; what follows from one must not show.
TWENTY = (
    ('title = "Ember', 'titel = "Ember'),
    ("fiction = true", 'fiction = "yes"'),
    ('drawing = "iron"', 'drawing = "irno"'),
    ("outside = 0.03", "outside = 2"),
    ("volume = 1.5", "volume = -1"),
    ('replaced = "seldom"', 'replaced = "9/8"'),
    ('part = "shaft", share = 0.85', 'part = "shaf", share = 0.85'),
    ("seconds = 8", "secs = 8"),
    ("none = 0.8", "non = 0.8"),
    ('id = "green-ivory"', 'id = "Green Ivory"'),
    ('rings = ["green", "ivory"]', 'rings = ["grene", "ivory"]'),
    ('share = "rarely"', 'share = "mostly"'),
    ('from = "1952-05"', 'from = "1955-05"'),
    ("wear = 0.15", 'wear = "little"'),
    ('years = "1953-1955", mean', 'years = "1953-1959", mean'),
    ('spot = "hosel"', 'part_of = "head"'),
    ('alphabet = "ABCDEFGHJKLMX"', 'alphabet = "ABCDEFGHJKLMA"'),
    ('1952 = "18"', '1952 = "1B"'),
    ('kind = "plain"', 'kind = "weekday"'),
    ('usual = ["3", "4", "5"]', 'usual = ["3", "4", "7"]'),
    ('is = ["none"]', 'is = ["plain"]'),
    ('[[caution]]\nsay = "Have', '[[caution]]\nsay = 3 # "Have'),
)


def cases(name: str) -> list[str]:
    """The cases of a text file: blocks between blank lines, comments left out."""
    text = (HERE / name).read_text()
    text = re.sub("^#.*\n", "", text, flags=re.MULTILINE)
    return [block for block in text.strip().split("\n\n") if block]


def edited(block: str) -> tuple[str, list[str]]:
    """The guide that a case makes, and the lines that it expects."""
    marked = [line.partition(" ") for line in block.splitlines()]
    old = "\n".join(rest for mark, _, rest in marked if mark == "-")
    new = "\n".join(rest for mark, _, rest in marked if mark == "+")
    return plover((old, new)), [
        "".join(line) for line in marked if line[0] not in ("-", "+")
    ]
