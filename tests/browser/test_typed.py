"""Numbers, and codes of several layouts: typed in a real Chromium, taken and kept."""

import re

import pytest
from playwright.sync_api import expect

from bundles import RULES
from faults import expect_draft
from serving import Server
from steps import go, heading, open_kept, start, status

GUIDES = ("fen-bittern", "world/registered-design")
SIZES = [(390, 844), (320, 568)]
LEAST = 44
"""CSS pixels of a key; WCAG 2.2, 2.5.5."""


@pytest.fixture(scope="module")
def typed_server(tmp_path_factory):
    """A server of the small guides that have numbers and layouts."""
    guides = [str(RULES / f"{name}.toml") for name in GUIDES]
    running = Server(tmp_path_factory.mktemp("typed") / "site", guides=guides)
    yield running
    running.stop()


@pytest.fixture
def page(typed_server, visit):
    """Looking at the first guide, with nothing read yet."""
    return begun(visit(), typed_server)


def begun(page, server):
    open_kept(page, server.url)
    start(page)
    return page


def press(page, keys):
    for key in keys:
        page.locator(f".key[data-key='{key}']").click()


def clear(page):
    while page.locator("[data-key=back]:not([aria-disabled])").count():
        page.get_by_role("button", name="One back").click()


def take(page, clue, keys):
    """Types into a clue's question and takes it."""
    go(page, f"#look/{clue}")
    clear(page)
    press(page, keys)
    asked = heading(page).inner_text()
    page.locator("[data-take]").click()
    expect(heading(page)).not_to_have_text(asked)


def reading(page, clue):
    """What the list of places says of a clue."""
    go(page, "#places")
    return page.locator(f".place:has([href='#look/{clue}']) .place__reading")


def wrong(page):
    return page.locator(".keypad__wrong")


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size[0]))
def test_what_is_typed_is_kept(typed_server, launch, size):
    """Type, take, undo, change, close and open again."""
    page = begun(launch(size), typed_server)
    take(page, "serial", "0417")
    assert status(page) != "nothing read yet"
    take(page, "patent", "55481")
    take(page, "mark", "X?12")
    take(page, "date-code", "123")
    expect(reading(page, "date-code")).to_have_text("123")
    page.get_by_role("button", name="Undo").click()
    expect(reading(page, "date-code")).to_have_text("look at it")

    go(page, "#look/serial")
    page.get_by_role("button", name="One back").click()
    press(page, "8")
    page.get_by_role("button", name="Take this number").click()
    expect(reading(page, "serial")).to_have_text("418")
    lead = status(page)
    expect_draft(page, lambda kept: "418" in str(kept["items"][0]["readings"]))

    page = launch(size)
    page.goto(typed_server.url + "#places")
    expect(reading(page, "serial")).to_have_text("418")
    expect(reading(page, "patent")).to_have_text("55\u202f481")
    expect(reading(page, "mark")).to_have_text("X · 12")
    expect(page.locator("[data-banner]")).to_be_hidden()
    assert status(page) == lead


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size[0]))
def test_keys_are_large_and_all_fit(typed_server, visit, size):
    page = begun(visit(size), typed_server)
    for clue in ("serial", "mark", "date-code"):
        go(page, f"#look/{clue}")
        boxes = [key.bounding_box() for key in page.locator(".key").all()]

        assert all(box["width"] >= LEAST and box["height"] >= LEAST for box in boxes)
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_real_keyboard_types_a_number(page):
    go(page, "#look/serial")
    asked = heading(page).inner_text()
    page.keyboard.type("04x19")
    page.keyboard.press("Backspace")
    page.keyboard.type("7")
    expect(page.locator(".figure")).to_have_text("0417")
    expect(page.locator(".keypad__now")).to_have_text("It reads as 417.")
    page.keyboard.press("Enter")

    expect(heading(page)).not_to_have_text(asked)
    expect(reading(page, "serial")).to_have_text("417")


def test_number_outside_the_table_is_not_taken(page):
    go(page, "#look/patent")
    asked = heading(page).inner_text()
    press(page, "63001")
    expect(wrong(page)).to_contain_text("end with 63\u202f000")
    page.get_by_role("button", name="One back").click()
    expect(wrong(page)).to_be_hidden()
    page.get_by_role("button", name="Take this number").click()

    expect(wrong(page)).to_contain_text("begin with 50\u202f080")
    expect(heading(page)).to_have_text(asked)
    assert status(page) == "nothing read yet"


def test_what_is_typed_counts_more_than_an_older_answer(page):
    """What cannot be told stays marked, and is not what is taken."""
    go(page, "#look/serial")
    asked = heading(page).inner_text()
    page.locator("label.answer", has_text="Can’t tell").click()
    expect(heading(page)).not_to_have_text(asked)
    take(page, "serial", "417")

    expect(reading(page, "serial")).to_have_text("417")


def test_arrow_key_chooses_against_what_is_typed(page):
    go(page, "#look/serial")
    press(page, "417")
    page.locator("#answer-gone").focus()
    page.keyboard.press("ArrowUp")
    expect(page.locator("#answer-cannot")).to_be_checked()
    asked = heading(page).inner_text()
    page.keyboard.press("Enter")

    expect(heading(page)).not_to_have_text(asked)
    expect(reading(page, "serial")).to_have_text("can’t tell")


def test_screen_reader_hears_each_key(page):
    """The region that speaks stays, and the focus stays on the key."""
    go(page, "#look/serial")
    page.evaluate("window.region = document.querySelector('.keypad [aria-live]')")
    key = page.locator(".key[data-key='4']")
    key.focus()
    page.keyboard.press("Space")
    page.keyboard.press("Space")

    said = page.evaluate("window.region.isConnected && window.region.textContent")
    assert said == "Typed so far: 4 4. From 1 to 2400."
    expect(key).to_be_focused()


def test_layouts_fall_away_while_typing(page):
    """Three digits may be all, or the beginning of four."""
    go(page, "#look/date-code")
    rows = page.locator(".keypad__fields")
    expect(rows).to_have_count(3)
    press(page, "12")
    page.get_by_role("button", name="Take this code").click()
    expect(wrong(page)).to_contain_text("Still missing: the year or the week.")
    press(page, "3")
    expect(page.locator(".keypad__now")).to_contain_text("It may end here")
    press(page, "4")

    expect(rows).to_have_count(1)
    expect(page.locator(".keypad__now")).to_have_text("That is the whole code.")
    expect(page.locator(".keypad__keys .key")).to_have_count(0)


def test_diamond_is_read_corner_by_corner(page, typed_server):
    page.goto(typed_server.url)
    page.locator("[data-guide-card=registered-design] [data-act=start]").click()
    go(page, "#look/diamond")
    keys = page.locator(".keypad__keys .key")
    expect(keys).to_have_count(36)
    boxes = [key.bounding_box() for key in keys.all()]
    assert all(box["width"] >= LEAST and box["height"] >= LEAST for box in boxes)
    press(page, "X")
    expect(page.locator(".field--now .field__name")).to_have_text("month")
    press(page, "C?")
    expect(page.locator(".keypad__now")).to_have_text("Now the day, 2\u00a0of\u00a02")
    press(page, "204")
    page.get_by_role("button", name="Take this code").click()

    expect(reading(page, "diamond")).to_have_text("X C ·2 04")
    assert "3 years are level" in status(page)


def test_number_of_a_set_is_read_one_by_one(page):
    page.get_by_role("link", name="One of a set?").click()
    page.get_by_role("button", name="As it was sold").click()
    for number in ("417", "418"):
        go(page, "#look/serial")
        expect(page.locator(".scope")).to_contain_text("alone")
        expect(page.locator(".figure")).to_have_text("")
        press(page, number)
        page.get_by_role("button", name="Take this number").click()

    expect(reading(page, "serial")).to_have_text(re.compile(r"^\d: 41\d; \d: 41\d$"))
