"""What every screen keeps to: its width, thumbs, the keyboard, a screen reader."""

import pytest
from playwright.sync_api import expect

from steps import add_set, heading, open_kept, start, tap_first

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


@pytest.mark.parametrize("size", [*SIZES, (1280, 800)], ids=lambda size: str(size[0]))
def test_nothing_is_wider_than_the_screen(standing, launch, size):
    page = launch(size)
    open_kept(page, standing.url)
    start(page)

    add_set(page, "2", "W")
    for screen in SCREENS:
        page.goto(standing.url + screen)
        page.wait_for_timeout(100)
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= size[0], screen


@pytest.mark.parametrize("screen", SCREENS)
def test_everything_to_tap_is_large_enough(standing, launch, screen):
    """WCAG 2.2, 2.5.5: 44 by 44 CSS pixels; links within a sentence excepted."""
    page = launch((320, 568))
    open_kept(page, standing.url)
    start(page)
    add_set(page, "2", "W")
    page.goto(standing.url + screen)
    page.wait_for_timeout(100)

    small = page.evaluate(
        """() => [...document.querySelectorAll(
            "main a, .row a, button, select, label:not([for]), summary")]
          .filter((e) => e.checkVisibility() && !e.closest("p") && !e.closest("svg"))
          .map((e) => [e.textContent.trim(), e.getBoundingClientRect()])
          .filter(([, box]) => box.width < 44 || box.height < 44)
          .map(([text, box]) => `${text} ${box.width}x${box.height}`)"""
    )

    assert small == []


def test_status_speaks_once_per_answer(standing, launch):
    page = launch()
    open_kept(page, standing.url)
    start(page)
    page.evaluate(
        """() => {
          window.spoken = 0;
          const place = document.querySelector("[data-status]");
          new MutationObserver(() => window.spoken++).observe(place,
            { childList: true, characterData: true, subtree: true });
        }"""
    )

    tap_first(page)
    page.wait_for_timeout(400)

    assert page.evaluate("window.spoken") == 1


def test_keyboard_alone_reaches_a_verdict(standing, launch):
    page = launch()
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
