"""What a person does on the phone, step by step, in Playwright."""

import re
import time
from collections.abc import Callable
from typing import TypeVar

from playwright.sync_api import Locator, Page, expect

T = TypeVar("T")

LONGEST = 30
"""Seconds in which a state must have come."""
FRAME = "() => new Promise(requestAnimationFrame)"
READY = re.compile("ready for no signal", re.IGNORECASE)


def open_kept(page: Page, url: str) -> None:
    """Opens the app and waits until the badge is earned."""
    page.goto(url)
    expect(page.locator("[data-ready]")).to_have_text(READY)


def start(page: Page) -> None:
    page.get_by_role("link", name="Start looking").first.click()
    expect(heading(page)).to_be_visible()


def heading(page: Page):
    return page.locator("[data-screen=look] [data-heading]")


def status(page: Page) -> str:
    return page.locator("[data-status]").inner_text()


def tap(page: Page, answer: str) -> None:
    """Taps an answer, and waits until the question has changed."""
    _answer(page, page.locator("label.answer", has_text=answer))


def choose(page: Page, option: str) -> None:
    """Taps the answer that is this option of the guide, whatever its words are."""
    _answer(page, page.locator(f"label.answer:has(input[value='{option}'])"))


def _answer(page: Page, answer: Locator) -> None:
    before = heading(page).inner_text()
    answer.first.click()
    expect(heading(page)).not_to_have_text(before)


def tap_first(page: Page) -> str:
    """Answers whatever is asked with the first answer there is; the question."""
    asked = heading(page).inner_text()
    if page.locator(".keypad").count() or page.locator("#size").count():
        tap(page, "Can’t tell")
    else:
        page.locator("label.answer").first.click()
        expect(heading(page)).not_to_have_text(asked)
    return asked


def go_to_verdict(page: Page) -> None:
    page.get_by_role("link", name="Verdict", exact=True).click()
    expect(page.locator("[data-screen=verdict] [data-heading]")).to_be_visible()


def ground(page: Page) -> str:
    """The colour that all lies on."""
    return page.evaluate("getComputedStyle(document.body).backgroundColor")


def follow_system(page: Page) -> tuple[str, str]:
    """Sees that a page is as dark as the system, until dark is chosen; what it lies on
    in light and in dark.
    """
    dark = ground(page)
    box = page.get_by_label("Dark")
    expect(box).to_be_checked()
    page.emulate_media(color_scheme="light")
    expect(box).not_to_be_checked()
    light = ground(page)
    assert light != dark
    box.check()
    assert ground(page) == dark
    return light, dark


def go(page: Page, address: str) -> None:
    """Goes to a screen of the app by its address, as a link in it would."""
    page.evaluate("(address) => { location.hash = address }", address)
    expect(page.locator("main h1:visible")).to_have_count(1)


def arrive(page: Page, address: str) -> None:
    """Goes to a screen, and waits for its heading, which has the focus then."""
    page.evaluate("() => document.activeElement.blur()")
    go(page, address)
    expect(page.locator("main h1:visible")).to_be_focused()


def until(page: Page, seen: Callable[[], T]) -> T:
    """What is seen as soon as it is anything; looked for once a frame of the page."""
    end = time.monotonic() + LONGEST
    while not (found := seen()):
        assert time.monotonic() < end, f"still {found!r}"
        page.evaluate(FRAME)
    return found


def add_set(page: Page, *beside: str) -> None:
    """Says that it is a set as it was sold, with these members beside, and goes on."""
    page.get_by_role("link", name="One of a set?").click()
    page.get_by_role("button", name="As it was sold").click()
    for member in beside:
        page.locator(f".tile[data-member='{member}']").click()
    page.get_by_role("link", name="Next question").click()
    expect(heading(page)).to_be_visible()


def member(page: Page, at: str):
    """A cell of the row of members, by its number or "All"."""
    return page.locator("[data-row] .row__cell").filter(
        has=page.locator(".row__number", has_text=re.compile(f"^{at}$"))
    )


def read(page: Page, clue: str, option: str, of: str = "") -> None:
    """Answers a clue's question with an option, of one member where one is named."""
    go(page, f"#look/{clue}/{of}" if of else f"#look/{clue}")
    choose(page, option)
