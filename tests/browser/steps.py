"""What a person does on the phone, step by step, in Playwright."""

import re

from playwright.sync_api import Page, expect

READY = re.compile("ready for no signal", re.IGNORECASE)


def open_kept(page: Page, url: str) -> None:
    """Opens the app and waits until the badge is earned."""
    page.goto(url)
    expect(page.locator("[data-ready]")).to_have_text(READY)


def start(page: Page) -> None:
    page.get_by_role("link", name="Start looking").click()
    expect(heading(page)).to_be_visible()


def heading(page: Page):
    return page.locator("[data-screen=look] [data-heading]")


def status(page: Page) -> str:
    return page.locator("[data-status]").inner_text()


def tap(page: Page, answer: str) -> None:
    """Taps an answer, and waits until the question has changed."""
    before = heading(page).inner_text()
    page.locator("label.answer", has_text=answer).first.click()
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
