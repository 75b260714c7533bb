"""What a page of Markdown holds: the few forms of it that our pages use."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
SPAN = re.compile(r"`([^`\n]+)`")
LINK = re.compile(r"!?\[[^\]]*\]\(([^)\s]+)\)")
COMMENT = re.compile(r"<!--.*?-->", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Block:
    """A fenced block: its language, its text, and where it begins on the page."""

    language: str
    text: str
    at: int


@dataclass(frozen=True, slots=True)
class Span:
    """A piece of code in a sentence, and where it begins on the page."""

    text: str
    at: int


def blocks(page: str) -> list[Block]:
    return [Block(found[1], found[2], found.start()) for found in FENCE.finditer(page)]


def spans(page: str) -> list[Span]:
    """The code in sentences and tables; blocks count as white."""
    white = FENCE.sub(lambda found: re.sub(r"\S", " ", found[0]), page)
    return [Span(found[1], found.start()) for found in SPAN.finditer(white)]


def links(page: str) -> list[str]:
    """Where the page points to, as it is written."""
    return LINK.findall(FENCE.sub("", page))


def anchors(page: str) -> set[str]:
    """The names of the headings, as hosts of such pages make them."""
    headings = re.findall(r"^#+ (.+)$", FENCE.sub("", page), re.MULTILINE)
    bare = (re.sub(r"[^\w\- ]", "", heading.lower()) for heading in headings)
    return {heading.replace(" ", "-") for heading in bare}


def lines(page: str) -> Iterator[str]:
    """The lines of sentences: no blocks, tables, headings or comments."""
    for line in COMMENT.sub("", FENCE.sub("", page)).splitlines():
        if line.strip() and not re.match(r"#|\||!\[", line):
            yield line


def words(page: str) -> int:
    """How many words somebody reads: a piece of code is one, an address none.

    A block and a table are looked at and not read, but for a map, whose lines are
    sentences.
    """
    page = re.sub(r"^\|.*$", "", page, flags=re.MULTILINE)
    read = FENCE.sub(lambda found: found[2] if not found[1] else "", page)
    read = SPAN.sub("code", re.sub(r"!\[.*?\]\(.*?\)", "", read))
    read = re.sub(r"\]\([^)]*\)|<[^>]*>", "", read)
    return len([word for word in read.split() if re.search(r"\w", word)])
