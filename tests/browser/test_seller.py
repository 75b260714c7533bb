"""The claim before anything is read, the message to the seller, and listings."""

import re

import pytest
from playwright.sync_api import expect

from fieldid.guides.load import load
from fieldid.paths import RULES
from steps import add_set, choose, go, go_to_verdict, heading, open_kept, start, tap

SHARE = """
navigator.share = async (data) => {
  window.shared = data;
  if (window.refuse) throw new DOMException("no", window.refuse);
};
"""


@pytest.fixture
def page(standing, visit):
    """Looking, with nothing read yet, on a phone that can share."""
    page = visit(permissions=["clipboard-read", "clipboard-write"])
    page.add_init_script(SHARE)
    open_kept(page, standing.url)
    start(page)
    return page


def message(page):
    return page.get_by_label("The message")


def test_argument_is_weighed_before_anything_is_read(page):
    """What would the dotted face be worth? Nothing, and it is told why."""
    page.get_by_role("link", name="The seller says a year?").click()
    claim = page.locator("[data-screen=claim]")
    claim.get_by_label("The seller says it is of").select_option("1957")
    claim.get_by_label("Face scoring").check()

    expect(claim.locator(".claim__unread")).to_contain_text(
        re.compile("dots.* next to nothing")
    )
    claim.get_by_role("link", name="Look at it").click()
    assert "face-scoring" in page.url
    expect(heading(page)).to_be_visible()
    expect(page.get_by_role("link", name="The seller says 1957")).to_be_visible()


def test_message_asks_and_thanks(page):
    choose(page, "round")
    go_to_verdict(page)
    page.get_by_role("link", name="Write to the seller").click()

    expect(message(page)).to_have_value(re.compile(r"photo.*[Tt]hank", re.DOTALL))
    long = message(page).input_value()
    page.get_by_label("Short, for a text message").check()
    short = message(page).input_value()

    assert 0 < len(short) <= 320
    assert len(short) < len(long)
    expect(page.locator(".seller__count")).to_have_text(f"{len(short)} characters")


def test_message_is_copied_as_it_was_changed(page):
    go(page, "#seller")
    message(page).fill("Is the grip still there?")
    page.get_by_role("button", name="Copy").click()

    expect(page.locator(".seller__said")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied == "Is the grip still there?"


def test_message_is_marked_where_nothing_can_be_copied(page):
    page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject() }")
    go(page, "#seller")
    page.get_by_role("button", name="Copy").click()

    expect(page.locator(".seller__said")).to_contain_text("marked for you")
    marked = page.evaluate(
        "(({ value, selectionEnd }) => value.length === selectionEnd)"
        "(document.activeElement)"
    )
    assert marked


@pytest.mark.parametrize(
    ("refuse", "said"),
    [
        ("", "Handed on."),
        ("AbortError", "It was not shared."),
        ("NotAllowedError", "This phone could not share it. Copy it instead."),
    ],
)
def test_message_is_shared_or_told_why_not(page, refuse, said):
    page.evaluate("(refuse) => { window.refuse = refuse }", refuse)
    go(page, "#seller")
    page.get_by_role("button", name="Share").click()

    expect(page.locator(".seller__said")).to_have_text(said)
    shared = page.evaluate("window.shared")
    assert shared == {"text": message(page).input_value()}


def test_own_words_stay_until_the_verdict_changes(page):
    go(page, "#seller")
    message(page).fill("My own words")
    go(page, "#look")
    go(page, "#seller")
    expect(message(page)).to_have_value("My own words")

    go(page, "#look/grip-cap")
    tap(page, "The grip is gone")
    go(page, "#seller")

    expect(message(page)).to_have_value(re.compile("grip"))
    expect(page.get_by_text("The verdict has changed since you wrote")).to_be_visible()


def test_message_is_written_anew_when_asked(page):
    go(page, "#seller")
    before = message(page).input_value()
    expect(page.get_by_role("button", name="Write it anew")).to_be_hidden()
    message(page).press_sequentially("x")
    page.get_by_role("button", name="Write it anew").click()

    expect(message(page)).to_have_value(before)


def test_photos_are_asked_what_they_show(page):
    """The clue's own question below, and as the hint what the photo has to show."""
    guide = load(RULES / "wrackham-teale-dotterel.toml")
    page.get_by_label("I only have photos").check()

    expect(heading(page)).to_contain_text("What does the photo show?")
    (shown,) = [clue for clue in guide.clues if clue.ask in heading(page).inner_text()]
    expect(page.locator(".question__where")).to_have_text(shown.photo)


def test_photos_and_a_look_from_here_exclude_each_other(page):
    page.get_by_label("I can only look from here").check()
    page.get_by_label("I only have photos").check()

    expect(page.get_by_label("I can only look from here")).not_to_be_checked()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_label("I can only look from here")).to_be_checked()


def test_missing_member_is_asked_for(page):
    add_set(page, "4")
    choose(page, "round")
    go(page, "#seller")

    expect(message(page)).to_have_value(re.compile("4 iron"))
