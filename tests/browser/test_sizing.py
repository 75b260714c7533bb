"""A length off a photo: points moved by hand, by key and by tap, and what is taken."""

import re

import pytest
from playwright.sync_api import Page, expect

from camera import Camera
from finds import SETTING, begin, kept
from photofiles import saved, upright
from sizingphotos import Taken, beside_card, beside_coin
from steps import READY, go, open_kept, status, until

LONG = 15.3
"""Within what the question takes, and what speaks for some years."""
CLUE = "sole-width"
ABOVE = Camera((0.1, -0.08), 190.0, 1200.0)
LEVEL = Camera((0.01, 0.0), 190.0, 1200.0)
EURO = 25.75
TOUCH = {"has_touch": True, "is_mobile": True}
SMALL = """() => [...document.querySelectorAll(
    "[data-screen=sizing] :is(a, button, select, summary)")]
  .filter((e) => e.checkVisibility())
  .map((e) => [e.textContent.trim(), e.getBoundingClientRect()])
  .filter(([, box]) => box.width < 44 || box.height < 44)
  .map(([text, box]) => `${text} ${box.width}x${box.height}`)"""
KEPT_PHOTOS = """() => new Promise((resolve) => {
  indexedDB.open("fieldid").onsuccess = ({ target: { result: db } }) => {
    const photos = db.transaction("photos").objectStore("photos").count();
    photos.onsuccess = () => { db.close(); resolve(photos.result); };
  };
})"""
# The first photo waits to be decoded until it may go on; the photos shown are counted.
WAIT_TO_DECODE = """() => {
  const decode = createImageBitmap;
  window.createImageBitmap = async (...args) => {
    window.createImageBitmap = decode;
    await new Promise((go) => { window.goOn = go; });
    return decode(...args);
  };
  window.laid = new Set();
  new MutationObserver((all) => all.forEach(({ target }) => laid.add(target.src)))
    .observe(document.body, { subtree: true, attributeFilter: ["src"] });
}"""


@pytest.fixture
def page(standing, visit) -> Page:
    """The screen of a question's size, with nothing read yet."""
    page = visit()
    ask(page, standing.url)
    return page


def ask(page: Page, url: str) -> None:
    open_kept(page, url)
    begin(page)
    go(page, f"#look/{CLUE}")
    page.get_by_role("link", name="Measure it in a photo").click()
    expect(page.get_by_label("What lies beside it")).to_be_visible()


def choose(page: Page, file: bytes) -> None:
    chosen = {"name": "photo.jpg", "mimeType": "image/jpeg", "buffer": file}
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name="Choose a photo").click()
    chooser.value.set_files(chosen)


def shown(page: Page, file: bytes) -> None:
    choose(page, file)
    expect(handle(page, 0)).to_be_focused()


def handle(page: Page, place: int):
    return page.locator(f"[data-handle='{place}']")


def where(page: Page, place: int) -> tuple[int, int]:
    """Where a point is said to be, in pixels of the photo."""
    label = handle(page, place).get_attribute("aria-label") or ""
    across, down = re.findall(r"(\d+) (?:across|down)", label)
    return int(across), int(down)


def on_screen(page: Page, point) -> tuple[float, float]:
    box = page.get_by_alt_text("Your photo").bounding_box()
    scale = box["width"] / 1600
    return box["x"] + point[0] * scale, box["y"] + point[1] * scale


def drag(page: Page, place: int, to) -> None:
    """Drags a point from beside it, as a thumb does."""
    box = handle(page, place).bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    from_x, from_y = on_screen(page, where(page, place))
    to_x, to_y = on_screen(page, to)
    page.mouse.move(x + 9, y + 9)
    page.mouse.down()
    page.mouse.move(x + 9 + to_x - from_x, y + 9 + to_y - from_y, steps=3)
    page.mouse.up()


def push(page: Page, place: int, to) -> None:
    """Moves the point that has the focus by arrow keys to a whole pixel."""
    for axis, (back, forth) in enumerate(
        (("ArrowLeft", "ArrowRight"), ("ArrowUp", "ArrowDown"))
    ):
        way = round(to[axis]) - where(page, place)[axis]
        key = forth if way > 0 else back
        for _ in range(abs(way) // 10):
            page.keyboard.press(f"Shift+{key}")
        for _ in range(abs(way) % 10):
            page.keyboard.press(key)


def size(page: Page) -> tuple[float, float]:
    """The size that is said, with its error."""
    found = page.locator(".sizing__size--found")
    expect(found).to_be_visible()
    value, error = re.findall(r"[\d.]+", found.inner_text())
    return float(value), float(error)


def assert_true(page: Page, most: float = 0.6) -> None:
    """The size of a moment before stands until the hand rests."""

    def near() -> bool:
        value, error = size(page)
        return abs(value - LONG) <= 2 * error

    until(page, near)
    _, error = size(page)
    assert error < most


def points(taken: Taken) -> list:
    return [*taken.marks, *taken.ends]


def test_dragged_points_become_a_reading(page):
    """And it keeps its error wherever it is shown, also when it is taken again."""
    taken = beside_card(LONG, ABOVE)
    before = status(page)
    shown(page, taken.file)
    for place, point in enumerate(points(taken)):
        drag(page, place, point)
    assert_true(page)
    value, error = size(page)
    page.get_by_role("button", name="Take this size").click()
    expect(page.locator("[data-status]")).not_to_have_text(before)

    said = re.compile(rf"{value:g} mm, give or take {error:g}\b")
    go(page, f"#look/{CLUE}")
    expect(page.locator("[data-screen=look]")).to_contain_text(said)
    page.get_by_role("button", name="Take this measure").click()
    go(page, "#places")
    expect(page.locator("[data-screen=places]")).to_contain_text(said)
    go(page, "#verdict")
    expect(page.locator("[data-screen=verdict]")).to_contain_text(said)
    assert page.evaluate(KEPT_PHOTOS) == 0


def test_keys_alone_measure(page):
    taken = beside_card(LONG, ABOVE)
    shown(page, taken.file)
    for place, point in enumerate(points(taken)):
        expect(handle(page, place)).to_be_focused()
        push(page, place, point)
        assert where(page, place) == tuple(round(x) for x in point)
        page.keyboard.press("Tab")
    assert_true(page)
    spoken = page.locator("[data-slot=spoken]")
    expect(spoken).to_contain_text(
        re.compile(r"^the other end of the length: \d+ across")
    )
    expect(spoken).to_contain_text("give or take")
    take = page.get_by_role("button", name="Take this size")
    while not take.evaluate("(e) => e === document.activeElement"):
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")

    expect(page.locator("[data-screen=look] [data-heading]")).to_be_focused()


def test_taps_around_a_coin_measure(standing, visit):
    page = visit(**TOUCH)
    ask(page, standing.url)
    page.get_by_label("What lies beside it").select_option("2 euro, 25.75 mm")
    taken = beside_coin(LONG, EURO, LEVEL, count=6)
    shown(page, taken.file)
    for point in points(taken):
        page.touchscreen.tap(*on_screen(page, point))

    # That the phone may be tilted is in it.
    assert_true(page, most=1.0)
    # A tap beside moves nothing that was put.
    before = where(page, 7)
    page.touchscreen.tap(*on_screen(page, (100, 100)))
    assert where(page, 7) == before


def test_taps_where_points_wait_measure(standing, visit):
    """With the button between or without: no point is skipped, or drawn aside."""
    page = visit((320, 568), **TOUCH)
    ask(page, standing.url)
    taken = beside_card(LONG, Camera((0.12, -0.1), 300.0, 1200.0))
    shown(page, taken.file)
    for place, point in enumerate(points(taken)):
        expect(page.locator(".sizing__tap")).to_contain_text("The next tap puts")
        page.touchscreen.tap(*on_screen(page, point))
        assert where(page, place) == pytest.approx(tuple(point), abs=2)
        if place % 2:
            page.get_by_role("button", name="Next point").tap()
            page.locator(".stage").evaluate("(e) => e.scrollIntoView()")

    expect(page.locator(".sizing__tap")).to_contain_text("All points are put")
    assert_true(page, most=1.0)


def test_buttons_move_the_chosen_point_by_a_pixel(page):
    shown(page, beside_card(LONG, ABOVE).file)
    x, y = where(page, 0)
    for name in ("Right", "Down", "Down"):
        page.get_by_role("button", name=name, exact=True).click()
    assert where(page, 0) == (x + 1, y + 2)
    page.get_by_role("button", name="Put the point back").click()
    assert where(page, 0) == (x, y)
    assert page.evaluate(SMALL) == []


def test_magnifier_keeps_away_from_the_finger(page):
    shown(page, beside_card(LONG, ABOVE).file)
    for place in (0, 1):
        x, y = on_screen(page, where(page, place))
        page.mouse.move(x, y)
        page.mouse.down()
        lens = page.locator(".lens--over").bounding_box()
        page.mouse.up()
        assert not lens["x"] - 20 < x < lens["x"] + lens["width"] + 20
    expect(page.locator(".lens--over")).to_have_count(0)


def test_turned_phone_lets_go_of_a_point(page):
    shown(page, beside_card(LONG, ABOVE).file)
    page.mouse.move(*on_screen(page, where(page, 0)))
    page.mouse.down()
    page.set_viewport_size({"width": 844, "height": 390})
    expect(page.locator(".lens--over")).to_have_count(0)
    before = where(page, 0)
    page.mouse.move(300, 300)

    assert where(page, 0) == before


def test_text_named_as_a_photo_is_told(page):
    choose(page, b"Only words, but in a file named .jpg.")

    said = page.locator("[data-screen=sizing] .log__said")
    expect(said).to_contain_text("This file is not a photo.")
    expect(page.get_by_alt_text("Your photo")).to_be_hidden()
    choose(page, saved(upright((1, 1)), "PNG"))
    expect(handle(page, 0)).to_be_focused()
    expect(said).to_be_hidden()


@pytest.mark.parametrize("there", ["pad-thickness", CLUE])
def test_photo_that_comes_too_late_is_dropped(page, there):
    """It was for another question; whoever comes back to its own begins anew."""
    page.evaluate(WAIT_TO_DECODE)
    choose(page, beside_card(LONG, ABOVE).file)
    until(page, lambda: page.evaluate("Boolean(window.goOn)"))
    go(page, "#sizing/pad-thickness")
    go(page, f"#sizing/{there}")
    page.evaluate("goOn()")
    # Photos are made one by one: when the next is shown, this one was done before.
    go(page, f"#sizing/{CLUE}")
    shown(page, beside_card(LONG, ABOVE).file)

    assert page.evaluate("laid.size") == 1


def test_photo_goes_with_its_find(page):
    shown(page, beside_card(LONG, ABOVE).file)
    go(page, "#places")
    go(page, f"#sizing/{CLUE}")
    expect(page.get_by_alt_text("Your photo")).to_be_visible()
    begin(page)
    go(page, f"#sizing/{CLUE}")

    expect(page.get_by_alt_text("Your photo")).to_be_hidden()


def test_page_that_ends_behind_the_camera_is_told(standing, visit):
    page = visit(**TOUCH)
    ask(page, standing.url)
    with page.expect_file_chooser():
        page.get_by_role("button", name="Take a photo").click()
    page.reload()

    banner = page.locator("[data-banner]")
    expect(banner).to_contain_text("the photo to measure the sole width did not arrive")
    until(page, lambda: page.evaluate(SETTING, ["sizing", None]) is None)
    page.reload()
    expect(page.get_by_label("What lies beside it")).to_be_visible()
    expect(page.locator("[data-ready]")).to_have_text(READY)
    expect(banner).to_be_hidden()


def test_what_is_no_length_is_not_measured(standing, visit):
    page = visit()
    kept(page, standing.url)
    go(page, "#sizing/toe-outline")

    expect(page.get_by_role("heading", name="Nothing to measure here")).to_be_visible()
