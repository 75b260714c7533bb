"""One kept find: its fields saved as one types, and what is told on the way out."""

import pytest
from playwright.sync_api import Page, expect

from finds import begin, entry, field, finds, keep, kept, rows, said, write
from steps import add_set, go, heading, open_kept, read, start, tap

TYPED_FOR = 2500
"""Milliseconds after the last key in which a field must have been saved."""
CARET = "(field) => [field === document.activeElement, field.selectionStart]"
# A page that ends at once tells nobody that it is hidden.
NO_GOODBYE = """() => document.addEventListener(
    "visibilitychange", (event) => event.stopImmediatePropagation(), true)"""


@pytest.fixture
def page(standing, visit) -> Page:
    """A find that is kept and shown."""
    page = visit()
    kept(page, standing.url)
    return page


def banner(page: Page):
    return page.locator("[data-banner]")


@pytest.mark.parametrize(
    ("name", "typed"),
    [("Currency", "pou"), ("Price paid", "forty"), ("Price asked", "1,200")],
)
@pytest.mark.parametrize("left", [True, False], ids=["left before", "typed last"])
def test_leaving_with_a_refused_field_is_told(page, name, typed, left):
    """And nothing breaks: what was refused has no place on the next screen."""
    errors = []
    page.on("pageerror", lambda error: errors.append(error))
    control = field(page, name)
    control.fill(typed)
    if left:
        control.blur()
    page.get_by_role("link", name="All finds").click()
    expect(rows(page)).to_have_count(1)

    expect(banner(page)).to_contain_text(f"The {name.lower()} is not saved.")
    rows(page).get_by_role("link").click()
    expect(field(page, name)).to_have_value("")
    assert errors == []


def test_all_that_was_typed_is_saved_on_the_way_out(page):
    """A field that was refused does not keep another from being saved."""
    write(page, "Price asked", "forty")
    field(page, "Place").press_sequentially("Ellerholm")
    page.evaluate("location.hash = '#finds'")

    expect(rows(page)).to_contain_text("Ellerholm")


def test_typed_text_is_saved_while_typing(page):
    """Neither the focus nor the caret moves, nor what stands in the field."""
    page.evaluate(NO_GOODBYE)
    for name in ("Note", "Title"):
        control = field(page, name)
        control.press_sequentially("A dent there")
        for _ in range(6):
            control.press("ArrowLeft")
        expect(said(page)).to_have_text(f"The {name.lower()} is saved.")
        assert control.evaluate(CARET) == [True, 6]
        control.press_sequentially("!")
        expect(control).to_have_value("A dent! there")
        # What the log has of it, by which the app knows what is not saved yet.
        expect(control).to_have_js_property("defaultValue", "A dent! there")
    page.reload()

    expect(field(page, "Note")).to_have_value("A dent! there")
    expect(field(page, "Title")).to_have_value("A dent! there")


def test_half_a_price_is_not_judged_while_typing(page):
    control = field(page, "Price paid")
    page.clock.install()
    control.press_sequentially("12.")
    page.clock.run_for(TYPED_FOR)
    expect(control).not_to_have_attribute("aria-invalid", "true")
    expect(said(page)).not_to_contain_text("not saved")
    control.press_sequentially("5")
    page.clock.run_for(TYPED_FOR)
    expect(said(page)).to_have_text("The price paid is saved.")
    expect(control).to_have_value("12.5")
    control.blur()

    expect(control).to_have_value("12.50")


def test_list_shows_what_was_typed_last(page):
    field(page, "Price paid").press_sequentially("27.5")
    page.evaluate("location.hash = '#finds'")

    expect(rows(page)).to_contain_text("paid 27.50")


@pytest.mark.parametrize("name", ["Price asked", "Price paid", "Currency"])
def test_what_is_wrong_stands_by_its_field(page, name):
    write(page, name, "??")
    control = field(page, name)
    wrong = page.locator(f"#{control.get_attribute('aria-describedby')}")
    expect(wrong).not_to_be_empty()

    one, other = control.bounding_box(), wrong.bounding_box()
    assert 0 <= other["y"] - one["y"] - one["height"] < 16
    assert other["x"] == pytest.approx(one["x"], abs=8)


def test_verdict_that_is_kept_says_so(page):
    """With the way to it; and of another find it does not."""
    write(page, "Title", "Iron from the barn")
    expect(said(page)).to_have_text("The title is saved.")
    go(page, "#verdict")
    screen = page.locator("[data-screen=verdict]")
    expect(screen.get_by_text("It is in your finds already")).to_be_visible()
    expect(screen.get_by_role("button", name="Keep in my finds")).to_have_count(0)
    screen.get_by_role("link", name="Iron from the barn").click()
    expect(field(page, "Title")).to_have_value("Iron from the barn")
    go(page, "#verdict")
    screen.get_by_role("button", name="Bring it up to date").click()
    expect(said(page)).to_contain_text("brought up to date")
    begin(page)
    read(page, "toe-outline", "square")
    go(page, "#verdict")

    expect(screen.get_by_role("button", name="Keep in my finds")).to_be_enabled()
    expect(screen.get_by_text("It is in your finds already")).to_have_count(0)


def test_start_page_tells_open_from_kept(page):
    go(page, "#home")
    card = page.locator("[data-guide-card=wrackham-teale-dotterel]")
    expect(card).to_contain_text("Kept in My finds: 1 reading, ")
    expect(card).not_to_contain_text("Left open")
    card.get_by_text("Start a new one instead").click()
    expect(card).to_contain_text("It stays in My finds.")
    expect(card.get_by_role("link", name="Start a new one")).to_be_visible()
    expect(card).not_to_contain_text("orget")
    read(page, "collar-rings", "red-gold")
    go(page, "#home")
    expect(card).to_contain_text("Left open: 2 readings")
    card.get_by_text("Start a new one instead").click()

    expect(card).to_contain_text("forgets what lies open: 2 readings.")
    expect(card).to_contain_text("What is kept in My finds stays there.")
    page.reload()
    expect(card).to_contain_text("Left open: 2 readings")
    expect(page.locator("[data-finds]")).to_contain_text("1 kept")


def test_start_page_offers_another_where_nothing_is_left(standing, visit):
    """With every part gone nothing can be looked at any more."""
    page = visit()
    open_kept(page, standing.url)
    begin(page)
    for clue in ("toe-outline", "collar-rings", "shaft-label", "grip-cap"):
        go(page, f"#look/{clue}")
        tap(page, " is gone")
    keep(page)
    go(page, "#home")
    card = page.locator("[data-guide-card=wrackham-teale-dotterel]")

    expect(card).to_contain_text("Kept in My finds")
    main = card.locator(".draft .button--main")
    expect(main).to_have_text("Start a new one")
    card.get_by_text("Look at this one again").click()
    expect(card.get_by_role("link", name="Go on looking")).to_be_visible()
    main.click()
    expect(heading(page)).to_be_visible()


def test_members_are_told_where_the_find_is(standing, visit):
    """An insurer asks how many there are, whatever the owner calls them."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    add_set(page, "2", "W")
    go(page, "#verdict")
    page.get_by_role("button", name="Keep in my finds").click()
    write(page, "Title", "Grandfather's")
    expect(entry(page)).to_contain_text("Set of 9: 2 to 9 and W")
    go(page, "#finds")

    expect(rows(page)).to_contain_text("Grandfather's")
    expect(rows(page)).to_contain_text("Set of 9")


def test_table_of_finds_is_in_words(page):
    write(page, "Title", "Iron")
    go(page, "#finds")
    finds(page).get_by_role("button", name="Table for a spreadsheet").click()
    with page.expect_download() as download:
        finds(page).get_by_role("link", name="Save the file").click()
    text = download.value.path().read_text("utf-8-sig")

    assert "line of the toe: round" in text
    assert "toe-outline=round" in text
    assert "Wrackham" in text
    assert "wrackham-teale-dotterel" in text
