"""A swing weight worked out while measuring, from weight and balance point."""

import pytest
from playwright.sync_api import expect

from steps import go, open_kept

SIZES = [(320, 568), (390, 844), (1280, 800)]


@pytest.fixture
def club(standing, visit):
    """Opens the question for a club's swing weight, with the help unfolded or not."""

    def club(size=(390, 844), *, unfolded=True):
        page = visit(size)
        open_kept(page, standing.url)
        card = page.locator("[data-guide-card=golf-club-era]")
        card.get_by_role("link", name="Start looking").click()
        expect(listed(page)).to_be_visible()
        go(page, "#look/swing-weight")
        if unfolded:
            page.get_by_text("No swing-weight scale?").click()
        return page

    return club


def listed(page):
    """The heading of the list that this guide begins with."""
    return page.get_by_role("heading", name="What can you see on it?")


def field(page, label):
    return page.get_by_label(label, exact=True)


def taken(page):
    """What the list of all readings says of the swing weight."""
    go(page, "#places")
    return page.get_by_role("listitem").filter(has_text="Swing weight")


def test_two_readings_become_the_measure(club):
    page = club()

    field(page, "The club’s weight").fill("425")
    field(page, "The club’s balance point").fill("719")
    expect(page.get_by_text("D0.6, give or take 0.7")).to_be_visible()
    page.get_by_role("button", name="Take this over").click()
    expect(field(page, "The swing weight")).to_have_value("D0.6")
    expect(field(page, "The swing weight")).to_be_focused()
    page.get_by_role("button", name="Take this measure").click()
    expect(listed(page)).to_be_visible()

    expect(taken(page)).to_contain_text("D0.6")


def test_swing_weight_is_typed_as_it_is_called(club):
    page = club(unfolded=False)

    field(page, "The swing weight").fill("d2")
    page.keyboard.press("Enter")
    expect(listed(page)).to_be_visible()

    expect(taken(page)).to_contain_text("D2")
    go(page, "#look/swing-weight")
    expect(field(page, "The swing weight")).to_have_value("D2")


def test_swing_weight_off_the_scale_is_refused(club):
    page = club(unfolded=False)

    field(page, "The swing weight").fill("H2")
    page.keyboard.press("Enter")

    expect(page.locator("#size-wrong")).to_have_text(
        "Type a swing weight from A0 to G9, for example D4.5."
    )


def test_keyboard_alone_works_it_out(club):
    """Enter takes over what was worked out; it does not hand in an empty measure."""
    page = club(unfolded=False)

    page.locator("#size").focus()
    for key in ("Tab", "Enter", "Tab"):
        page.keyboard.press(key)
    page.keyboard.type("15.2")
    page.keyboard.press("Tab")
    page.keyboard.type("oz")
    for _ in range(2):
        page.keyboard.press("Tab")
    page.keyboard.type("28")
    page.keyboard.press("Tab")
    page.keyboard.type("in")
    page.keyboard.press("Enter")

    expect(field(page, "The swing weight")).to_have_value("C9.6")
    expect(field(page, "The swing weight")).to_be_focused()


def test_what_stands_in_the_way_is_told(club):
    page = club()
    weight, balance = (f"The club’s {name}" for name in ("weight", "balance point"))

    page.get_by_role("button", name="Take this over").click()
    expect(field(page, weight)).to_be_focused()
    expect(field(page, weight)).to_have_accessible_description(
        "Type the weight in g, for example 425."
    )
    field(page, weight).fill("425")
    expect(field(page, weight)).not_to_have_attribute("aria-invalid", "true")
    field(page, balance).fill("300")
    page.keyboard.press("Enter")

    expect(field(page, balance)).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#swing-said")).to_contain_text("more than 14 inches")
    expect(page.locator("#size-wrong")).to_have_count(0)


def test_typed_readings_outlast_a_refusal(club):
    """An empty measure handed in draws the question anew."""
    page = club()

    field(page, "The club’s weight").fill("425")
    page.get_by_role("button", name="Take this measure").click()

    expect(page.locator("#size-wrong")).to_contain_text("Type the swing weight")
    expect(field(page, "The club’s weight")).to_be_visible()
    expect(field(page, "The club’s weight")).to_have_value("425")


def test_another_unit_keeps_what_was_typed(club):
    page = club()

    field(page, "The club’s balance point").fill("27.5")
    field(page, "Unit of the balance point").select_option("in")

    expect(field(page, "The club’s balance point")).to_have_value("27.5")
    expect(field(page, "give or take, of the balance point")).to_have_value("0.1")


def test_balance_point_for_a_swing_weight_is_told(club):
    page = club()

    field(page, "The club’s weight").fill("425")
    field(page, "The other way round: the swing weight that you want").fill("D2")

    said = page.get_by_text("For D2 it balances 723 mm from the butt end")
    expect(said).to_be_visible()


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size[0]))
def test_help_fits_the_screen(club, size):
    page = club(size)

    field(page, "The club’s weight").fill("425")
    field(page, "The club’s balance point").fill("719")

    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    small = page.evaluate(
        """() => [...document.querySelectorAll(".swing :is(button, input, select)")]
          .map((e) => e.getBoundingClientRect())
          .filter((box) => box.width < 44 || box.height < 44).length"""
    )
    assert small == 0
