"""An object that nobody knows: its marks are looked for, and bracket its years."""

import re

import pytest
from playwright.sync_api import expect

from steps import go, go_to_verdict, open_kept

SIZES = [(390, 844), (320, 568)]
MINUTE = 60
TAP = 2
"""Seconds for a tap and the look before it; a clue's own time comes on top."""


def listed(page):
    """The heading of the list of marks."""
    return page.get_by_role("heading", name="What can you see on it?")


def look_for_marks(page):
    page.get_by_role("link", name="Look for marks").click()
    expect(listed(page)).to_be_visible()


def find_mark(page, clue, option):
    """Chooses a mark from the list and says which it is; back in the list then."""
    page.locator(f"[data-screen=places] a[href='#look/{clue}']").click()
    page.locator(f"label.answer:has(input[value='{option}'])").click()
    expect(listed(page)).to_be_visible()


def status(page):
    return page.locator("[data-status]")


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
def test_unknown_object_has_its_range_within_a_minute(server, launch, size):
    """Without signal: three marks, and a range with what sets its ends."""
    open_kept(launch(size), server.url)
    server.stop()

    page = launch(size)
    taps = []
    page.expose_function("counted", lambda: taps.append(1))
    page.add_init_script("addEventListener('click', () => counted(), true)")
    page.goto(server.url)
    look_for_marks(page)
    find_mark(page, "us-address", "zip")
    expect(status(page)).to_contain_text("1963 or later")
    find_mark(page, "german-name", "west")
    expect(status(page)).to_contain_text(re.compile("1963 to 199[0-3]"))
    page.locator("a[href='#look/patent-number']").click()
    for digit in "3070900":
        page.locator(f"[data-act=key][data-key='{digit}']").click()
    page.get_by_role("button", name="Take this number").click()
    go_to_verdict(page)

    verdict = page.locator("[data-screen=verdict]")
    expect(verdict.locator("h1")).to_contain_text(re.compile("1963 to 199[0-3]"))
    expect(verdict.get_by_text(re.compile("^Not before 1963: the US"))).to_be_visible()
    expect(
        verdict.get_by_text(re.compile("^Not after 199.: the German"))
    ).to_be_visible()
    assert len(taps) > 10
    assert len(taps) * TAP < MINUTE


def test_marks_that_contradict_each_other_are_a_red_flag(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    look_for_marks(page)
    find_mark(page, "german-name", "west")
    find_mark(page, "recycling", "triangle")
    go_to_verdict(page)

    expect(page.get_by_text("But two marks do not go together")).to_be_visible()
    flag = page.locator(".tag", has_text="Two marks do not go together")
    expect(flag).to_contain_text("issued again, or a copy")


def test_longest_range_fits_the_narrowest_screen(standing, visit):
    page = visit((320, 568))
    open_kept(page, standing.url)
    look_for_marks(page)
    find_mark(page, "eastern-name", "bohemia")
    go_to_verdict(page)

    expect(page.locator("h1.answer-year")).to_contain_text("or earlier")
    assert page.evaluate("document.documentElement.scrollWidth") == 320


def test_number_that_was_not_taken_is_not_lost_in_silence(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    look_for_marks(page)
    page.locator("a[href='#look/patent-number']").click()
    expect(page.get_by_role("button", name="Take this number")).to_be_in_viewport()
    for digit in "3070900":
        page.locator(f"[data-act=key][data-key='{digit}']").click()
    go_to_verdict(page)

    expect(page.locator("[data-banner]")).to_contain_text(
        "“3070900” was typed for the US patent number and not taken."
    )


def test_guides_whose_years_overlap_are_offered(standing, visit):
    """Of the 1990s neither the irons nor the reels were made."""
    page = visit()
    open_kept(page, standing.url)
    look_for_marks(page)
    find_mark(page, "us-address", "zone")
    go_to_verdict(page)
    offers = page.locator(".offers")

    expect(offers).to_contain_text("Dotterel")
    expect(offers).to_contain_text("1954 to 1965")
    go(page, "#look/web")
    page.locator("label.answer:has(input[value='www'])").click()
    go_to_verdict(page)
    expect(offers).to_contain_text("Any golf club")
    expect(offers).not_to_contain_text("Dotterel")


def test_offered_guide_is_opened(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    look_for_marks(page)
    find_mark(page, "us-address", "zone")
    go_to_verdict(page)
    page.locator(".offers").get_by_role("link", name=re.compile("Grebe")).click()

    expect(page.locator("[data-guide-name]")).to_contain_text("Grebe")
    expect(page.locator("[data-screen=look] [data-heading]")).to_be_visible()


def test_ribbon_marks_the_whole_range(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    look_for_marks(page)
    find_mark(page, "japan-name", "occupied")
    said = status(page).inner_text()
    first, last = map(int, re.findall(r"\d{4}", said)[:2])

    expect(page.locator(".ribbon__column--lead")).to_have_count(last - first + 1)
    expect(page.locator("[data-ribbon]")).to_have_attribute(
        "aria-label", re.compile(f"{first} to {last}")
    )
