"""What is held against a page in each of its states: each check gives sentences, one a
barrier; none means that it has found nothing.
"""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache

from playwright.sync_api import Page

import checkers
from access.scripts import script

WIDE, HIGH = 390, 844
NARROW, LOW = 320, 568
STEPS = 4
"""So often a window is made higher; what grows with it for ever is none of ours."""
LARGE = 32
"""Pixels of text set twice as large as usual."""

# Of what axe knows, its rules for WCAG 2.2 A and AA and its habits that are good.
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
COLOURS, SIZES = ("color-contrast",), ("target-size",)


@dataclass(frozen=True)
class Look:
    """A way in which people have their screen, and what may go wrong in it."""

    name: str
    rules: tuple[str, ...] = ()
    """Of axe, where it is asked; none named are all of them."""
    theme: str = "light"
    media: dict[str, str] = field(default_factory=dict)
    width: int = WIDE
    text: int = LARGE // 2


LOOKS = (
    Look("light"),
    Look("dark", COLOURS, theme="dark"),
    Look("more contrast", COLOURS, media={"contrast": "more"}),
    Look("forced colours", media={"forced_colors": "active"}),
    Look("large text", text=LARGE),
    Look("narrow", SIZES, width=NARROW),
)
# Once what has changed was laid out.
WHOLE = """() => new Promise((go) => requestAnimationFrame(() =>
  requestAnimationFrame(() => go(document.documentElement.scrollHeight))))"""
PLAIN = {"contrast": "no-preference", "forced_colors": "none"}

# Points of a photo lie where they lie, and any of them can be chosen by a button, too.
# A row of members is pushed along under the one that stays.
EXCUSED = re.compile(r'^target-size: <button class="(handle|row__cell)\b')

AXE = script("axe")

CHOSEN = script("chosen")

CUT = script("cut")


def barriers(page: Page, looks: tuple[Look, ...] = LOOKS) -> list[str]:
    """What axe and our own eyes find in each look, named by it."""
    found = [
        f"{look.name}: {each}" for look in looks for each in _barriers_of(page, look)
    ]
    page.set_viewport_size({"width": WIDE, "height": HIGH})
    return found


def _barriers_of(page: Page, look: Look) -> list[str]:
    with wearing(page, look):
        if look.name == "forced colours":
            return page.evaluate(CHOSEN)
        if look.name == "large text":
            return page.evaluate(CUT)
        found = axe(page, look.rules)
        return found + page.evaluate(CUT) if look.width == NARROW else found


def axe(page: Page, rules: tuple[str, ...] = ()) -> list[str]:
    """What axe-core objects to."""
    if not page.evaluate("typeof axe === 'object'"):
        page.evaluate(_source())
    found = page.evaluate(AXE, [TAGS, rules])
    return [each for each in found if not EXCUSED.search(each)]


@cache
def _source() -> str:
    return checkers.path(checkers.AXE).read_text("utf-8")


@contextmanager
def wearing(page: Page, look: Look) -> Iterator[None]:
    """The page in this look, all of it in sight, so that no bar lies over anything.

    The window stays as large, for the next look at the same page.
    """
    page.emulate_media(**{**PLAIN, **look.media})
    page.evaluate("(it) => { document.documentElement.dataset.theme = it }", look.theme)
    if look.text == LARGE:
        _set_text(page, LARGE)
    if page.viewport_size["width"] != look.width:
        page.set_viewport_size({"width": look.width, "height": HIGH})
    _unfold(page)
    try:
        yield
    finally:
        page.emulate_media(**PLAIN)
        page.evaluate("document.documentElement.dataset.theme = 'light'")
        if look.text == LARGE:
            _set_text(page, LARGE // 2)


def _unfold(page: Page) -> None:
    """Makes the window as high as the page, which may grow with it."""
    for _ in range(STEPS):
        whole, window = page.evaluate(WHOLE), page.viewport_size
        if whole <= window["height"]:
            return
        page.set_viewport_size({**window, "height": whole})


def _set_text(page: Page, size: int) -> None:
    """Sets the size of text as the browser's settings do."""
    session = page.context.new_cdp_session(page)
    session.send("Page.setFontSizes", {"fontSizes": {"standard": size}})
    session.detach()
