"""What every screen keeps to: its width, thumbs, the keyboard, a screen reader."""

import pytest
from playwright.sync_api import expect

from steps import add_set, arrive, heading, open_kept, start

SIZES = [(390, 844), (320, 568)]
SCREENS = (
    "#look",
    "#look/hosel-code",
    "#look/pad",
    "#look/pad/?",
    "#places",
    "#set",
    "#claim",
    "#seller",
    "#offer",
    "#verdict",
    "#verdict/6",
)


def drawn(page, screen):
    """Goes to a screen, and waits until it is whole: an offer is read from the disk."""
    arrive(page, screen)
    if screen == "#offer":
        expect(page.locator("[data-screen=offer] [data-own]").first).to_be_visible()


@pytest.mark.parametrize("size", [*SIZES, (1280, 800)], ids=lambda size: str(size[0]))
def test_nothing_is_wider_than_the_screen(standing, visit, size):
    page = visit(size)
    open_kept(page, standing.url)
    start(page)

    add_set(page, "2", "W")
    for screen in ("#home", *SCREENS):
        drawn(page, screen)
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= size[0], screen


@pytest.fixture(scope="module")
def narrow(chromium, standing):
    """A set of two on the smallest phone: its screens are drawn anew each time."""
    with chromium.new_context(viewport={"width": 320, "height": 568}) as context:
        page = context.new_page()
        open_kept(page, standing.url)
        start(page)
        add_set(page, "2", "W")
        yield page


@pytest.mark.parametrize("screen", SCREENS)
def test_everything_to_tap_is_large_enough(narrow, screen):
    """WCAG 2.2, 2.5.5: 44 by 44 CSS pixels; links within a sentence excepted."""
    arrive(narrow, "#home")
    drawn(narrow, screen)

    small = narrow.evaluate(
        """() => [...document.querySelectorAll(
            "main a, .row a, button, select, label:not([for]), summary")]
          .filter((e) => e.checkVisibility() && !e.closest("p") && !e.closest("svg"))
          .map((e) => [e.textContent.trim(), e.getBoundingClientRect()])
          .filter(([, box]) => box.width < 44 || box.height < 44)
          .map(([text, box]) => `${text} ${box.width}x${box.height}`)"""
    )

    assert small == []


def test_keyboard_alone_reaches_a_verdict(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    before = heading(page).inner_text()
    expect(heading(page)).to_be_focused()

    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    expect(heading(page)).not_to_have_text(before)
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent.trim()") == "Verdict":
            break
    page.keyboard.press("Enter")

    expect(page.locator("[data-screen=verdict] [data-heading]")).to_be_visible()


def test_ribbon_and_bar_scroll_away_on_a_low_screen(standing, visit):
    """A phone on its side has no room for both; upright they stay in sight again. Two
    apps that share a screen are made lower bit by bit.
    """
    page = visit()
    open_kept(page, standing.url)
    start(page)
    sides = page.locator("[data-lead], [data-bar]")
    held = "all => all.map((each) => getComputedStyle(each).position)"
    assert sides.evaluate_all(held) == ["sticky", "fixed"]

    page.set_viewport_size({"width": 568, "height": 320})
    expect(page.locator("body")).to_have_class("crowded")
    assert sides.evaluate_all(held) == ["static", "static"]

    page.set_viewport_size({"width": 390, "height": 844})
    expect(page.locator("body")).not_to_have_class("crowded")
    assert sides.evaluate_all(held) == ["sticky", "fixed"]

    page.set_viewport_size({"width": 390, "height": 500})
    page.set_viewport_size({"width": 390, "height": 320})
    expect(page.locator("body")).to_have_class("crowded")


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size[0]))
def test_the_end_of_a_page_lies_above_the_bar(standing, visit, size):
    page = visit(size)
    open_kept(page, standing.url)
    start(page)
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    last, bar = (
        page.locator(each).bounding_box()
        for each in ("[data-screen=look]", "[data-bar]")
    )

    assert last["y"] + last["height"] <= bar["y"] + 1
