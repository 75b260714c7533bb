"""The pages of a guide beside the app: the card on paper, and what the clues tell."""

import re

import pytest
from playwright.sync_api import expect

from fieldid.paths import RULES
from steps import open_kept, start

TRIED = "wrackham-teale-dotterel"
GUIDES = [path.stem for path in sorted(RULES.glob("*.toml"))]

PAGES = ("guide", "card", "tree")
PAPER = "getComputedStyle(document.body).backgroundColor"
LIGHTNESS = f"Math.max(...{PAPER}.match(/[0-9]+/g).slice(0, 3))"
SMALLEST = """() => Math.min(...[...document.querySelectorAll("svg.chart text")]
  .map((each) => each.getBoundingClientRect().height / 1.17))"""

CUT = """() => [...document.querySelectorAll(".card :not(.unseen)")]
  .filter((each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth
    && getComputedStyle(each).display !== "inline")
  .map((each) => each.className + ": " + each.textContent.slice(0, 40))"""


@pytest.mark.parametrize("guide", GUIDES)
def test_card_is_one_sheet_in_both_sizes(guide, standing, visit):
    page = visit((718, 971))
    page.goto(f"{standing.url}card-{guide}.html")

    for size in ("A4", "Letter"):
        printed = page.pdf(format=size, prefer_css_page_size=True)
        assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1, size
    page.emulate_media(media="print")
    # The sheet without its edges, in pixels of 1/96 inch.
    box = page.locator(".card").bounding_box()
    assert box["width"] <= 718.5
    assert box["height"] <= 971
    assert page.evaluate(CUT) == []


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_lesson_fits_every_width(width, standing, visit):
    """In print as well, every table included."""
    page = visit((width, 800))
    page.goto(f"{standing.url}guide-{TRIED}.html")

    for media in ("screen", "print"):
        page.emulate_media(media=media)
        wide = "document.documentElement.scrollWidth"
        assert page.evaluate(wide) <= width, media


def test_question_leads_to_its_clue_and_back(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    ask = page.locator("legend").inner_text()
    page.get_by_text("Why this clue now").click()
    page.get_by_role("link", name="All that it tells, year by year").click()

    clue = page.url.split("#")[1]
    section = page.locator(f"section[aria-labelledby='{clue}']")
    expect(section).to_be_in_viewport()
    expect(section).to_contain_text(ask)
    page.go_back()
    expect(page.locator("legend")).to_have_text(ask)


def test_lesson_needs_no_scripts(standing, visit):
    page = visit(java_script_enabled=False)
    page.goto(f"{standing.url}guide-{TRIED}.html")

    expect(page.locator(".plot td").first).to_be_visible()
    expect(page.locator(".made .band").first).to_be_visible()
    page.get_by_role("link", name="A card to print").click()
    expect(page.locator(".step").first).to_be_visible()


def test_pages_are_dark_where_the_app_is(standing, visit):
    """And light again on paper."""
    page = visit()
    open_kept(page, standing.url)
    page.get_by_label("Dark").check()

    for name in PAGES:
        page.emulate_media(media="screen")
        page.goto(f"{standing.url}{name}-{TRIED}.html")
        assert page.evaluate(LIGHTNESS) < 60, name
        page.emulate_media(media="print")
        assert page.evaluate(LIGHTNESS) > 200, name


def test_pages_are_light_without_scripts(standing, visit):
    page = visit(java_script_enabled=False)

    for name in PAGES:
        page.goto(f"{standing.url}{name}-{TRIED}.html")
        expect(page.locator("h1")).to_be_visible()
        expect(page.locator("html")).not_to_have_attribute("data-theme", "dark")


def test_letters_of_charts_are_large_on_a_small_phone(standing, visit):
    page = visit((320, 800))
    page.goto(f"{standing.url}guide-{TRIED}.html")

    assert page.evaluate(SMALLEST) >= 13


def test_lesson_is_printed_short_and_whole(standing, visit):
    """What is folded on the screen is open on paper."""
    page = visit()
    page.goto(f"{standing.url}guide-dated-marks.html")
    last = page.locator("details .spans__list span").last
    expect(last).not_to_be_visible()
    page.emulate_media(media="print")
    expect(last).to_be_visible()

    page.goto(f"{standing.url}guide-{TRIED}.html")
    printed = page.pdf(format="A4", prefer_css_page_size=True)
    assert len(re.findall(rb"/Type\s*/Page\b", printed)) <= 12
