"""From Home to a verdict and back by keys alone, the focus always there to be seen."""

import re

from playwright.sync_api import Page, expect

from access.checks import LOW, NARROW
from access.tabbing import HERE, tabbed
from steps import go, heading, open_kept, start

MOST = 60
"""Presses of Tab to anything on a screen."""


def press_to(page: Page, name: str) -> None:
    """Tabs to what is called so; on the way the focus is never lost nor hidden."""
    for _ in range(MOST):
        page.keyboard.press("Tab")
        here = page.evaluate(HERE)
        assert here, f"the focus was lost on the way to {name}"
        assert not [each for each in here["wrong"] if each.startswith("hidden")]
        text = "document.activeElement.textContent.trim() || document.activeElement.id"
        if re.search(name, page.evaluate(text)):
            return
    raise AssertionError(f"no way by keys to {name}")


def press_on(page: Page, name: str, screen: str) -> None:
    """Tabs to what is called so and presses it, which leads to a screen."""
    press_to(page, name)
    page.keyboard.press("Enter")
    on_heading(page, screen)


def on_heading(page: Page, screen: str) -> None:
    expect(page.locator(f"[data-screen={screen}] h1")).to_be_focused()


def test_keys_lead_to_a_verdict_and_back(page, site, said):
    """A choice by arrow keys, a code by letters, a measure, a claim, and home again."""
    open_kept(page, site.url)
    press_on(page, "^Start looking$", "look")
    asked = heading(page).inner_text()
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(heading(page)).not_to_have_text(asked)
    on_heading(page, "look")

    press_on(page, "^Whole object$", "places")
    press_on(page, "Hosel code", "look")
    page.keyboard.type("c724")
    asked = heading(page).inner_text()
    press_to(page, "^Take this code$")
    page.keyboard.press("Enter")
    expect(heading(page)).not_to_have_text(asked)
    on_heading(page, "look")

    press_on(page, "^Verdict$", "verdict")
    press_on(page, "^Write to the seller$", "seller")
    page.keyboard.press("Shift+Tab")
    page.go_back()
    on_heading(page, "verdict")
    page.keyboard.press("Shift+Tab")
    while page.evaluate("document.activeElement.className") != "top__home":
        assert page.evaluate(HERE)
        page.keyboard.press("Shift+Tab")
    page.keyboard.press("Enter")

    on_heading(page, "home")
    expect(page.get_by_text("Left open: 2 readings")).to_be_visible()
    assert said == []


def test_focus_is_seen_beside_several_sentences(page, site):
    """Each stands over the page until it was understood."""
    page.set_viewport_size({"width": NARROW, "height": LOW})
    open_kept(page, site.url)
    start(page)
    go(page, "#look/hosel-code")
    page.locator(".keypad__keys").get_by_text("C", exact=True).click()
    go(page, "#look/pad")
    page.locator("#size").fill("6.1")
    go(page, "#look/collar-rings")
    expect(page.locator(".banner__notice")).to_have_count(2)

    assert tabbed(page) == []
