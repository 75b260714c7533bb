"""What one HTML page refers to, and what it offers to be referred to."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from bs4 import BeautifulSoup, Tag

LINKS = (
    "href",
    "src",
    "action",
    "formaction",
    "poster",
    "data",
    "xlink:href",
    "data-base",
)
REFERENCES = (
    "for",
    "form",
    "list",
    "headers",
    "popovertarget",
    "aria-activedescendant",
    "aria-controls",
    "aria-describedby",
    "aria-details",
    "aria-errormessage",
    "aria-flowto",
    "aria-labelledby",
    "aria-owns",
)
PAINT = re.compile(r"url\(#([^)]*)\)")
POLICY = "content-security-policy"


@dataclass(frozen=True, slots=True)
class Page:
    """A page's links as written, its ids, what refers to them, and what is inline.

    A fragment may name an id, or one of the `screens` that a script shows.
    """

    links: tuple[str, ...]
    ids: frozenset[str]
    screens: frozenset[str]
    repeated: tuple[str, ...]
    references: tuple[tuple[str, str], ...]
    inline: tuple[str, ...]
    has_policy: bool


def read_page(html: str) -> Page:
    """The page, read as browsers read it, templates included."""
    soup = BeautifulSoup(html, "html.parser")
    tags = soup.find_all(True)
    counted = Counter(str(tag["id"]) for tag in tags if tag.has_attr("id"))
    screens = (str(tag["data-screen"]) for tag in tags if tag.has_attr("data-screen"))
    return Page(
        links=tuple(link for tag in tags for link in _links(tag)),
        ids=frozenset(counted),
        screens=frozenset(screens),
        repeated=tuple(name for name, times in counted.items() if times > 1),
        references=tuple(pair for tag in tags for pair in _references(tag)),
        inline=tuple(words for tag in tags for words in _inline(tag)),
        has_policy=any(_is_policy(tag) for tag in soup.find_all("meta")),
    )


def _links(tag: Tag) -> Iterator[str]:
    for name in LINKS:
        if tag.has_attr(name):
            yield str(tag[name])
    if tag.has_attr("srcset"):
        for candidate in str(tag["srcset"]).split(","):
            yield candidate.split()[0]


def _references(tag: Tag) -> Iterator[tuple[str, str]]:
    for name in REFERENCES:
        value = tag.get(name, "")
        # The parser splits some of these lists by itself.
        text = " ".join(value) if isinstance(value, list) else str(value)
        yield from ((name, each) for each in text.split())
    for name, value in tag.attrs.items():
        yield from ((name, each) for each in PAINT.findall(str(value)))


def _inline(tag: Tag) -> Iterator[str]:
    if tag.name == "style":
        yield "a <style>"
    if tag.name == "script" and not tag.has_attr("src"):
        yield "a <script> without src"
    for name in tag.attrs:
        if name == "style" or name.startswith("on"):
            yield f"the attribute {name}={tag[name]!r}"


def _is_policy(tag: Tag) -> bool:
    return str(tag.get("http-equiv", "")).lower() == POLICY
