"""The author's workbench in Chromium: a guide from nothing, looked at while typing."""

import pytest
from playwright.sync_api import expect

from fieldid.guides.load import load
from make import plover
from steps import follow_system, ground

ANSWERS = {
    "Title": "Ember 'Curlew' irons",
    "Kind of object": "golf irons",
    "First model year": "1951",
    "Last model year": "1955",
    "About it": "A short line of forged irons.",
    "Source": "Made up for this test.",
    "One part": "head",
    "Another part": "collar",
    "A first question": "How is the toe shaped?",
    "One answer": "round",
    "Another answer": "square",
}
CLUE = {
    "at.ask": "What colour are the collar rings?",
    "at.option.0.label": "two green rings",
    "at.option.0.seen.0.years": "1951-1953",
    "at.option.1.label": "one navy ring",
    "at.option.1.seen.0.years": "1953-1955",
}
SIZES = ((320, 568), (1280, 800))


@pytest.fixture
def page(visit):
    """A window that must say nothing on its console."""
    page = visit(size=(1280, 800))
    told = []
    page.on("console", lambda message: told.append(message.text))
    page.on("pageerror", lambda error: told.append(str(error)))
    yield page
    # An answer that refuses a form is told on the console, too.
    assert [text for text in told if "400 (BAD REQUEST)" not in text] == []


def test_author_writes_a_guide_and_judges_with_it(page, workbench, rules):
    """From an empty folder to a verdict, by what the pages ask for alone."""
    page.goto(f"{workbench}/guides/")
    page.get_by_role("link", name="Begin a new guide").click()
    for label, answer in ANSWERS.items():
        page.get_by_label(label, exact=True).fill(answer)
    years = page.get_by_label("Model years of the")
    years.nth(0).fill("1951-1952")
    years.nth(1).fill("1953-1955")
    page.get_by_label("Invented").check()
    page.get_by_role("button", name="Make the guide").click()
    expect(page.get_by_role("status")).to_contain_text("Your guide is there")

    page.get_by_role("link", name="Add a clue").click()
    page.get_by_role("link", name="A choice: one answer of several").click()
    for name, answer in CLUE.items():
        page.locator(f"[name='{name}']").fill(answer)
    page.get_by_label("Part", exact=True).select_option("collar")
    page.get_by_role("button", name="Save").last.click()
    expect(page.get_by_role("status")).to_have_text("Saved.")
    expect(page.get_by_role("link", name="one navy ring")).to_be_visible()

    page.get_by_role("link", name="Back to the guide").click()
    page.get_by_role("link", name="Judge a find with it").click()
    page.get_by_label("How is the toe shaped?").select_option("round")
    page.get_by_label("What colour are the collar rings?").select_option(
        "one navy ring"
    )
    page.get_by_role("button", name="Judge it").click()
    expect(page.locator(".tried .answer-year")).to_be_visible()
    expect(page.locator(".bars")).to_contain_text("1953")
    assert load(rules / "ember-curlew-irons.toml").fiction


def test_preview_follows_typing_and_saves_nothing(page, workbench, rules):
    (rules / "plover.toml").write_text(plover())
    page.goto(f"{workbench}/guides/plover/table/clue/0/option/0")
    preview = page.get_by_role("region", name="Preview, before saving")
    expect(preview).to_contain_text("green over ivory")

    page.get_by_label("Answer", exact=True).fill("green above ivory")
    expect(preview).to_contain_text("green above ivory")
    assert preview.locator("svg.drawing").count() > 1
    page.get_by_label("Model years").first.fill("1999")
    expect(preview).to_contain_text("1999 is no model year")
    assert (rules / "plover.toml").read_text() == plover()


def test_picture_is_chosen_with_the_keyboard(page, workbench, rules):
    """What belongs to another shape comes by itself, and what is typed there stays."""
    (rules / "plover.toml").write_text(plover())
    page.set_viewport_size({"width": 320, "height": 568})
    page.goto(f"{workbench}/guides/plover/table/clue/0/option/0")
    page.get_by_text("Choose another shape").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    picture = page.get_by_role("group", name="Picture", exact=True)
    picture.get_by_role("radio", name="collar").focus()
    page.keyboard.press("ArrowRight")
    expect(picture.get_by_role("radio", name="cover")).to_be_checked()
    make = picture.get_by_role("group", name="Make")
    make.get_by_role("radio", name="felt").check()
    picture.get_by_label("Figure").fill("5")
    expect(picture.get_by_role("img", name="As it is drawn now: cover")).to_be_visible()
    page.get_by_label("Answer", exact=True).fill("felt")
    expect(page.get_by_role("region", name="Preview")).to_contain_text("felt")
    expect(picture.get_by_label("Figure")).to_have_value("5")
    page.get_by_role("button", name="Save").last.click()

    expect(page.get_by_role("status")).to_have_text("Saved.")
    assert load(rules / "plover.toml").clues[0].kind.options[0].picture == (
        "cover",
        (("make", "felt"), ("figure", "5")),
    )


def test_dark_follows_the_system_until_chosen(page, workbench, visit):
    page.emulate_media(color_scheme="dark")
    page.goto(f"{workbench}/guides/")
    light, dark = follow_system(page)
    box = page.get_by_label("Dark")
    page.reload()
    expect(box).to_be_checked()
    assert ground(page) == dark
    box.uncheck()
    page.emulate_media(color_scheme="dark")
    page.reload()
    assert ground(page) == light

    bare = visit(java_script_enabled=False, color_scheme="dark")
    bare.goto(f"{workbench}/guides/")
    expect(bare.locator("body")).to_have_css("background-color", dark)


def test_unsaved_words_are_not_lost_unasked(page, workbench, rules):
    (rules / "plover.toml").write_text(plover())
    asked = []
    page.on("dialog", lambda dialog: (asked.append(dialog.type), dialog.dismiss()))
    page.goto(f"{workbench}/guides/plover/table/part/0")
    page.get_by_label("Name", exact=True).fill("club head")
    page.get_by_role("link", name="Back to the guide").click()

    expect(page.get_by_label("Name", exact=True)).to_have_value("club head")
    assert asked == ["beforeunload"]
    page.get_by_label("Name", exact=True).press("Enter")
    expect(page.get_by_role("status")).to_have_text("Saved.")
    assert asked == ["beforeunload"]


def test_summary_takes_the_focus_and_leads_to_the_field(page, workbench, rules):
    (rules / "plover.toml").write_text(plover())
    page.goto(f"{workbench}/guides/plover/table/model_year/0")
    page.get_by_label("Model year", exact=True).fill("951")
    page.get_by_role("button", name="Save").last.click()

    expect(page.get_by_role("alert")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Model year", exact=True)).to_be_focused()
    assert "951 does not fit" in page.get_by_label("Model year", exact=True).evaluate(
        "field => field.getAttribute('aria-describedby').split(' ')"
        ".map(id => document.getElementById(id).textContent).join(' ')"
    )


def test_mistake_leads_to_its_line(page, workbench, rules):
    (rules / "plover.toml").write_text(plover(("volume = 1.5", "volume = -1")))
    page.goto(f"{workbench}/guides/plover/raw")
    page.get_by_role("link", name="Line 18").click()

    chosen = page.get_by_label("The guide’s file").evaluate(
        "area => area.value.slice(area.selectionStart, area.selectionEnd)"
    )
    assert chosen == "volume = -1"


@pytest.mark.parametrize("size", SIZES)
def test_no_page_is_wider_than_its_window(page, workbench, rules, size):
    (rules / "plover.toml").write_text(plover())
    page.set_viewport_size({"width": size[0], "height": size[1]})
    for at in (
        "",
        "new",
        "plover/",
        "plover/table/clue/1",
        "plover/raw",
        "plover/finds",
    ):
        page.goto(f"{workbench}/guides/{at}")
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0], at
