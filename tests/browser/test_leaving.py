"""Whoever is quicker than the disk: what was asked for on a find, and then left."""

from typing import NamedTuple

import pytest
from playwright.sync_api import Page, expect

import photofiles
from faults import BUSY_DISK, FREE_DISK
from finds import (
    ALL_ROWS,
    FULL_DISK,
    NO_CHANGE,
    add_photos,
    begin,
    entry,
    export,
    field,
    finds,
    forget_drafts,
    keep,
    kept,
    rows,
    said,
    take_in,
    write,
)
from steps import go, open_kept, read, until

PHOTO = photofiles.camera_photo(6, size=(240, 180))
# Keeps guides on their way until they are let through.
HOLD_GUIDES = """() => {
  const { fetch } = globalThis;
  const free = new Promise((done) => { globalThis.freeGuides = done; });
  globalThis.fetch = (what, how) => {
    const isGuide = String(what).includes("/guides/");
    return isGuide ? free.then(() => fetch(what, how)) : fetch(what, how);
  };
}"""


class Two(NamedTuple):
    """A phone with two finds; the first has a photo and is shown."""

    page: Page
    left: str
    """Where the first is."""
    other: str


@pytest.fixture
def two(standing, visit):
    page = visit()
    kept(page, standing.url)
    write(page, "Title", "Left")
    expect(said(page)).to_have_text("The title is saved.")
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    left = page.evaluate("location.hash")
    begin(page)
    read(page, "toe-outline", "square")
    keep(page)
    write(page, "Title", "Other")
    expect(said(page)).to_have_text("The title is saved.")
    other = page.evaluate("location.hash")
    go(page, left)
    expect(entry(page).locator(".shot img")).to_be_visible()
    return Two(page, left, other)


def press(page: Page, name: str) -> None:
    entry(page).get_by_role("button", name=name).click()


def open_again(page: Page) -> None:
    press(page, "Open it again")


def delete(page: Page) -> None:
    press(page, "Delete it for good")


def see_large(page: Page) -> None:
    press(page, "Show photo 1 large")


def remove_photo(page: Page) -> None:
    press(page, "Remove photo 1")


def add_photo(page: Page) -> None:
    add_photos(page, PHOTO)


def tie_photo(page: Page) -> None:
    entry(page).get_by_label("It shows, photo 1").select_option("toe-outline")


def keep_verdict(page: Page) -> None:
    press(page, "Judge it with today’s guide")
    press(page, "Keep today’s verdict")


def leave_meanwhile(two: Two, deed) -> None:
    """Does it on the first find, and is on the other before the disk has answered."""
    page = two.page
    entry(page).get_by_text("Delete this find").click()
    page.evaluate(BUSY_DISK)
    deed(page)
    go(page, two.other)
    page.evaluate(FREE_DISK)
    # The disk answers in the order in which it was asked.
    expect(entry(page).get_by_role("button", name="Choose photos")).to_be_visible()


def go_at_once(page: Page, address: str) -> None:
    """Goes to a screen that has no heading yet."""
    page.evaluate("(address) => { location.hash = address }", address)


def expect_other(page: Page) -> None:
    """The other find is shown, and nothing has gone wrong."""
    expect(entry(page).locator("h1")).to_have_text("Other")
    expect(page.locator("[data-banner]")).to_be_hidden()


@pytest.mark.parametrize(
    ("deed", "photos"),
    [
        (open_again, 1),
        (see_large, 1),
        (remove_photo, 0),
        (add_photo, 2),
        (tie_photo, 1),
        (keep_verdict, 1),
    ],
)
def test_find_that_was_left_is_not_taken_for_another(two, deed, photos):
    """What was asked for is done to the find that it was asked of."""
    leave_meanwhile(two, deed)
    until(two.page, lambda: len(two.page.evaluate(ALL_ROWS)) == photos)

    expect_other(two.page)
    expect(said(two.page)).to_have_text("")
    expect(entry(two.page).locator(".shot")).to_have_count(0)
    go(two.page, two.left)
    expect(entry(two.page).locator("h1")).to_have_text("Left")
    expect(entry(two.page).locator(".shot")).to_have_count(photos)


def test_find_deleted_and_left_is_gone(two):
    """It is told wherever one is, by its name."""
    leave_meanwhile(two, delete)

    expect(said(two.page)).to_have_text("“Left” is deleted.")
    expect_other(two.page)
    go(two.page, "#finds")
    expect(rows(two.page)).to_have_count(1)


def test_words_of_a_find_that_was_left_are_not_put_to_another(two):
    """Also where a browser does not end a field with its event when it is left."""
    page = two.page
    page.evaluate(NO_CHANGE)
    field(page, "Place").press_sequentially("Ellerholm")
    go(page, two.other)
    # Longer than whoever types is waited for.
    page.evaluate("() => new Promise((done) => setTimeout(done, 1000))")
    go(page, "#finds")

    expect(rows(page).filter(has_text="Ellerholm")).to_have_count(1)
    expect(rows(page).filter(has_text="Left")).to_contain_text("Ellerholm")


def test_photo_that_fails_is_told_wherever_one_is(two):
    leave_meanwhile(two, lambda page: add_photos(page, b"no photo"))

    expect(two.page.locator("[data-banner]")).to_contain_text("not a photo")


def test_find_left_before_its_guide_has_come(two):
    page = two.page
    forget_drafts(page)
    page.add_init_script(f"({HOLD_GUIDES})()")
    page.reload()
    expect(entry(page).locator(".entry__say")).not_to_be_empty()
    go(page, "#finds")
    # A table is made with all guides.
    finds(page).get_by_role("button", name="Table for a spreadsheet").click()
    page.evaluate("globalThis.freeGuides()")
    expect(finds(page).get_by_role("link", name="Save the file")).to_be_visible()

    expect(page.locator("[data-banner]")).to_be_hidden()
    go(page, two.left)
    expect(entry(page).get_by_label("It shows, photo 1")).to_be_visible()


def test_round_that_cannot_be_kept_is_told_wherever_one_is(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    go(page, "#practice/wrackham-teale-dotterel")
    page.evaluate(BUSY_DISK)
    page.evaluate(FULL_DISK)
    page.get_by_role("button", name="Begin a round").click()
    go_at_once(page, "#practice/oxmere-grebe")
    page.evaluate(FREE_DISK)

    expect(page.locator("[data-banner]")).to_contain_text("full")
    expect(page.get_by_role("button", name="Begin a round")).to_be_visible()


def test_find_that_comes_back_is_shown(two, tmp_path):
    """Deleted on another page of the app, and taken in there again."""
    page = two.page
    beside = page.context.new_page()
    beside.goto(page.url)
    file = export(beside, tmp_path / "finds.zip")
    go(beside, two.left)
    entry(beside).get_by_text("Delete this find").click()
    delete(beside)
    expect(entry(page).locator("h1")).to_have_text("This find is not in the log")
    take_in(beside, file.read_bytes(), name="finds.zip")

    expect(entry(page).locator("h1")).to_have_text("Left")
    expect(entry(page).locator(".shot img")).to_be_visible()
