"""With scripts switched off the questionnaire still works, as plain nested HTML."""

import re

from playwright.sync_api import expect

# Playwright's own switch stops the scripts but leaves <noscript> unread, and of two
# --blink-settings Chromium takes one: Playwright's has to go.
NO_SCRIPTS = {
    "args": ["--blink-settings=scriptEnabled=false"],
    "ignore_default_args": [
        "--blink-settings=primaryHoverType=2,availableHoverTypes=2,"
        "primaryPointerType=4,availablePointerTypes=4"
    ],
}


def test_first_page_is_readable_without_scripts(standing, launch):
    page = launch(**NO_SCRIPTS)
    page.goto(standing.url)

    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()
    # Playwright's search by text passes over <noscript>.
    expect(page.locator("noscript .notice")).to_be_visible()
    expect(page.get_by_role("link", name="Questions on one page").first).to_be_visible()


def test_tree_is_walked_to_a_year_without_scripts(standing, launch):
    page = launch(**NO_SCRIPTS)
    page.goto(standing.url)
    page.get_by_role("link", name="Questions on one page").first.click()

    place = page.locator("main")
    for _ in range(12):
        closed = place.locator("> details, > * > details, > * > * > details")
        if not closed.count():
            break
        closed.first.locator("> summary").click()
        place = closed.first
    said = place.inner_text()

    assert re.search(r"19[56]\d", said)
    assert "%" in said
    expect(page.locator("main")).to_contain_text("Invented")
