"""With scripts switched off the questionnaire still works, as plain nested HTML."""

import re

from playwright.sync_api import expect

# Playwright's own switch stops the scripts but leaves <noscript> unread.
NO_SCRIPTS = ["--blink-settings=scriptEnabled=false"]


def test_first_page_is_readable_without_scripts(server, launch):
    page = launch(args=NO_SCRIPTS)
    page.goto(server.url)

    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()
    expect(page.get_by_text("Scripts are switched off here.")).to_be_visible()
    expect(page.get_by_role("link", name="Questions on one page")).to_be_visible()


def test_tree_is_walked_to_a_year_without_scripts(server, launch):
    page = launch(args=NO_SCRIPTS)
    page.goto(server.url)
    page.get_by_role("link", name="Questions on one page").click()

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
