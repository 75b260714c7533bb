"""Finds on the phone: kept, filled in, searched, photographed, deleted."""

import re

import pytest
from playwright.sync_api import expect

import hostile
import photofiles
from finds import (
    ALL_ROWS,
    FULL_DISK,
    FULL_ONCE,
    NO_CHANGE,
    add_photos,
    begin,
    entry,
    field,
    finds,
    forget_drafts,
    keep,
    kept,
    kill_page,
    rows,
    said,
    take_in,
    write,
)
from steps import add_set, go, open_kept, read, start, until

PHOTO = photofiles.camera_photo(6, size=(2400, 1800))
SMALL = """() => [...document.querySelectorAll(
    "main :is(a, button, select, summary, textarea, input[data-own], [type=search])")]
  .filter((e) => e.checkVisibility())
  .map((e) => [e.textContent.trim() || e.id, e.getBoundingClientRect()])
  .filter(([, box]) => box.width < 44 || box.height < 44)
  .map(([text, box]) => `${text} ${box.width}x${box.height}`)"""

# As a newer app does that is opened beside this one; the milliseconds that it waits.
UPGRADE = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open("fieldid", 99);
  opening.onblocked = () => reject(new Error("blocked"));
  opening.onsuccess = () => {
    opening.result.close();
    resolve();
  };
})"""
WATCH_BLOBS = """window.written = { stores: [], blobs: [] };
const hasBlob = (value) => {
  if (value instanceof Blob) return true;
  if (typeof value !== "object" || value === null) return false;
  return Object.values(value).some(hasBlob);
};
for (const name of ["put", "add"]) {
  const real = IDBObjectStore.prototype[name];
  IDBObjectStore.prototype[name] = function (value, ...key) {
    written.stores.push(this.name);
    if (hasBlob(value)) written.blobs.push(this.name);
    return real.call(this, value, ...key);
  };
}"""


def test_kept_find_is_an_entry_with_its_verdict(standing, visit):
    page = visit()
    kept(page, standing.url)

    expect(entry(page)).to_contain_text(re.compile(r"leads with \d+"))
    expect(entry(page)).to_contain_text(re.compile(r"as known on \d+ \w+ \d{4}"))
    expect(entry(page).get_by_text("Invented for demonstration")).to_be_visible()
    today = page.evaluate("new Date().toLocaleDateString('sv')")
    expect(field(page, "Date")).to_have_value(today)
    go(page, "#home")
    expect(page.locator("[data-finds]")).to_contain_text(": 1 kept.")


def test_same_find_is_kept_once(standing, visit):
    """Also after the page was loaded again; but not one that was begun anew."""
    page = visit()
    kept(page, standing.url)
    write(page, "Title", "The first")
    expect(said(page)).to_have_text("The title is saved.")
    read(page, "grip-cap", "red-lantern")
    keep(page)
    expect(said(page)).to_contain_text("brought up to date")
    page.reload()
    read(page, "sole-numerals", "serif")
    keep(page)
    begin(page)
    read(page, "toe-outline", "round")
    keep(page)
    go(page, "#finds")

    expect(rows(page)).to_have_count(2)
    expect(rows(page).filter(has_text="The first")).to_have_count(1)


def test_set_is_kept_whole(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    add_set(page, "2", "W")
    read(page, "toe-outline", "round")
    go(page, "#verdict/2")
    expect(page.get_by_role("button", name="Keep in my finds")).to_have_count(0)
    keep(page)
    entry(page).get_by_role("button", name="Open it again").click()

    expect(page.locator("[data-row] .row__cell")).to_have_count(11)


def test_words_and_prices_survive_a_restart(standing, launch):
    page = launch()
    kept(page, standing.url)
    for name, text in {
        "Title": "Iron from the barn",
        "Place": "Ellerholm",
        "Price paid": "27,5",
        "Currency": "eur",
        "Note": "Two lines\nof it",
    }.items():
        write(page, name, text)
        expect(said(page)).to_have_text(f"The {name.lower()} is saved.")
    page = launch()
    page.goto(f"{standing.url}#finds")

    expect(rows(page)).to_contain_text("Ellerholm · paid 27.50 EUR")
    rows(page).get_by_role("link").click()
    expect(field(page, "Currency")).to_have_value("EUR")
    expect(field(page, "Note")).to_have_value("Two lines\nof it")


def test_next_find_is_paid_in_the_same_currency(standing, visit):
    page = visit()
    kept(page, standing.url)
    write(page, "Currency", "DKK")
    expect(said(page)).to_have_text("The currency is saved.")
    begin(page)
    keep(page)

    expect(field(page, "Currency")).to_have_value("DKK")


def test_what_was_typed_is_saved_on_the_way_out(standing, visit):
    """Not every browser ends a field with its event when its screen is left."""
    page = visit()
    kept(page, standing.url)
    page.evaluate(NO_CHANGE)
    address = page.url
    field(page, "Place").press_sequentially("Ellerholm")
    page.go_back()
    expect(entry(page)).to_be_hidden()
    page.goto(address)

    expect(field(page, "Place")).to_have_value("Ellerholm")


@pytest.mark.parametrize(
    ("name", "typed", "why"),
    [
        ("Price paid", "1,200", "as 1200 or 12.50"),
        ("Price asked", "forty", "as 1200 or 12.50"),
        ("Currency", "pou", "three letters"),
    ],
)
def test_what_is_no_price_is_refused_beside_it(standing, visit, name, typed, why):
    page = visit()
    kept(page, standing.url)
    write(page, name, typed)

    control = field(page, name)
    expect(control).to_have_attribute("aria-invalid", "true")
    expect(control).to_have_value(typed)
    described = control.get_attribute("aria-describedby")
    expect(page.locator(f"#{described}")).to_contain_text(why)
    expect(said(page)).to_have_text(f"The {name.lower()} is not saved.")
    write(page, name, "")
    expect(control).not_to_have_attribute("aria-invalid", "true")


def test_list_is_searched_and_put_in_order(standing, visit):
    page = visit()
    kept(page, standing.url)
    write(page, "Title", "Zinnia’s café find")
    expect(said(page)).to_have_text("The title is saved.")
    begin(page)
    keep(page)
    write(page, "Title", "Another")
    expect(said(page)).to_have_text("The title is saved.")
    go(page, "#finds")
    first = rows(page).first

    expect(first).to_contain_text("Another")
    finds(page).get_by_label("Order").select_option("by title")
    expect(first).to_contain_text("Another")
    finds(page).get_by_label("Search").fill("cafe dotterel")
    expect(rows(page)).to_have_count(1)
    expect(first).to_contain_text("Zinnia")
    expect(finds(page).get_by_text("1 of 2 finds.")).to_be_visible()
    expect(finds(page).get_by_label("Search")).to_be_focused()


def test_photo_is_added_tied_enlarged_and_taken_back(standing, visit):
    page = visit()
    kept(page, standing.url)
    add_photos(page, PHOTO, b"no photo at all", PHOTO)
    expect(said(page)).to_contain_text("2 photos are added. ")
    expect(said(page)).to_contain_text("not a photo")
    entry(page).get_by_label("It shows, photo 2").select_option("Grip cap")
    expect(said(page)).to_have_text("What photo 2 shows is saved.")

    entry(page).get_by_role("button", name="Show photo 2 large").click()
    large = page.get_by_role("dialog", name="Photo 2")
    expect(large.get_by_role("img", name="Photo 2")).to_have_js_property(
        "naturalWidth", 1600
    )
    page.keyboard.press("Escape")
    expect(large).to_be_hidden()
    expect(entry(page).get_by_role("button", name="Show photo 2")).to_be_focused()

    entry(page).get_by_role("button", name="Remove photo 1").click()
    expect(entry(page).locator(".shot")).to_have_count(1)
    entry(page).get_by_role("button", name="Undo").click()
    expect(entry(page).locator(".shot")).to_have_count(2)
    page.reload()
    expect(entry(page).get_by_label("It shows, photo 2")).to_have_value("grip-cap")
    expect(entry(page).locator(".shot img").first).to_have_js_property(
        "naturalWidth", 1600
    )


def test_addresses_of_photos_are_given_back(standing, visit):
    page = visit()
    page.add_init_script(
        """window.addresses = new Set();
        const { createObjectURL, revokeObjectURL } = URL;
        URL.createObjectURL = (blob) => {
          const address = createObjectURL.call(URL, blob);
          window.addresses.add(address);
          window.made = (window.made ?? 0) + 1;
          return address;
        };
        URL.revokeObjectURL = (address) => {
          window.addresses.delete(address);
          revokeObjectURL.call(URL, address);
        };"""
    )
    kept(page, standing.url)
    made = page.evaluate("made")
    held = page.evaluate("addresses.size")
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    go(page, "#finds")
    expect(rows(page).locator("img")).to_be_visible()

    until(page, lambda: page.evaluate("made") >= made + 3)
    # The verdict's own file stays until the next verdict.
    until(page, lambda: page.evaluate("addresses.size") <= held)


def test_seventh_photo_is_left_out(standing, visit):
    page = visit()
    kept(page, standing.url)
    small = photofiles.camera_photo(1, size=(400, 300))
    add_photos(page, *[small] * 7)

    expect(said(page)).to_contain_text("6 photos are added. A find takes six photos")
    expect(entry(page).get_by_role("button", name="Choose photos")).to_be_hidden()


def test_photo_that_never_came_is_told_at_the_next_start(standing, launch):
    """The phone may end the page while its camera is open."""
    phone = {"has_touch": True, "is_mobile": True}
    page = launch(**phone)
    kept(page, standing.url)
    write(page, "Title", "Iron from the barn")
    expect(said(page)).to_have_text("The title is saved.")
    with page.expect_file_chooser():
        entry(page).get_by_role("button", name="Take a photo").click()
    page = launch(**phone)
    page.goto(standing.url)

    missed = page.locator("[data-screen=home] .missed")
    expect(missed).to_contain_text("“Iron from the barn” did not arrive")
    missed.get_by_role("link", name="To the find").click()
    expect(entry(page).locator(".missed")).to_contain_text("did not arrive")
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    expect(page.locator(".missed")).to_have_count(0)
    page.reload()
    expect(entry(page).locator(".shot")).to_have_count(1)
    expect(page.locator(".missed")).to_have_count(0)


@pytest.mark.parametrize("how", ["reopened", "imported"])
def test_photo_is_missed_though_no_find_lies_open(standing, launch, how):
    """The page is ended without a word while the camera of a kept find is open."""
    phone = {"has_touch": True, "is_mobile": True}
    page = launch(**phone)
    if how == "imported":
        open_kept(page, standing.url)
        take_in(page, hostile.export(hostile.entry()))
        rows(page).get_by_role("link").click()
    else:
        kept(page, standing.url)
        write(page, "Title", "Iron from the fair")
        expect(said(page)).to_have_text("The title is saved.")
        forget_drafts(page)
        page.reload()
    with page.expect_file_chooser():
        entry(page).get_by_role("button", name="Take a photo").click()
    kill_page(page)
    page = launch(**phone)
    page.goto(standing.url)

    missed = page.locator("[data-screen=home] .missed")
    expect(missed).to_contain_text("“Iron from the fair” did not arrive")
    missed.get_by_role("link", name="To the find").click()
    expect(entry(page).locator(".missed")).to_contain_text("did not arrive")
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    expect(page.locator(".missed")).to_have_count(0)


def test_missed_photo_is_told_until_it_is_understood(standing, launch):
    phone = {"has_touch": True, "is_mobile": True}
    page = launch(**phone)
    kept(page, standing.url)
    with page.expect_file_chooser():
        entry(page).get_by_role("button", name="Take a photo").click()
    page = launch(**phone)
    page.goto(standing.url)
    page.get_by_role("button", name="Understood").click()
    expect(page.locator(".missed")).to_have_count(0)
    page.reload()
    expect(page.locator("[data-finds]")).to_contain_text(": 1 kept.")

    expect(page.locator(".missed")).to_have_count(0)


def test_full_disk_is_said_and_nothing_is_lost(standing, visit):
    page = visit()
    kept(page, standing.url)
    page.evaluate(FULL_DISK)
    write(page, "Place", "Ellerholm")
    wrong = entry(page).locator("#own-place-wrong")
    expect(wrong).to_contain_text("The storage of this phone is full")
    expect(field(page, "Place")).to_have_value("Ellerholm")
    add_photos(page, PHOTO)

    expect(said(page)).to_contain_text("The storage of this phone is full")
    expect(entry(page).locator(".shot")).to_have_count(0)
    go(page, "#verdict")
    page.get_by_role("button", name="Bring it up to date").click()
    full = page.locator("[data-screen=verdict] [data-slot=kept]")
    expect(full).to_contain_text("The storage of this phone is full")


@pytest.mark.parametrize("which", [1, 2], ids=["first photo", "second photo"])
def test_disk_full_on_a_photo_keeps_the_other(standing, visit, which):
    page = visit()
    kept(page, standing.url)
    page.evaluate(FULL_ONCE, ["photos", which])
    add_photos(page, PHOTO, PHOTO)

    expect(said(page)).to_contain_text("The photo is added. The storage of this phone")
    expect(entry(page).locator(".shot")).to_have_count(1)
    page.reload()
    expect(entry(page).locator(".shot")).to_have_count(1)
    assert len(page.evaluate(ALL_ROWS)) == 1


def test_disk_full_on_the_find_keeps_the_log(standing, visit):
    page = visit()
    kept(page, standing.url)
    begin(page)
    read(page, "toe-outline", "square")
    page.evaluate(FULL_ONCE, ["entries", 1])
    go(page, "#verdict")
    keep_button = page.get_by_role("button", name="Keep in my finds")
    keep_button.click()
    full = page.locator("[data-screen=verdict] [data-slot=kept]")
    expect(full).to_contain_text("The storage of this phone is full")
    go(page, "#finds")
    expect(rows(page)).to_have_count(1)
    go(page, "#verdict")
    keep_button.click()

    expect(said(page)).to_contain_text("in your finds now")
    go(page, "#finds")
    expect(rows(page)).to_have_count(2)


@pytest.mark.parametrize(
    ("broken", "says"),
    [
        (
            "indexedDB.open = () => { throw new DOMException('no', 'SecurityError') }",
            "this browser forbids pages to keep anything",
        ),
        (
            "Object.defineProperty(window, 'indexedDB', { value: undefined })",
            "this browser has no storage for pages",
        ),
    ],
    ids=["refused", "absent"],
)
def test_blocked_storage_is_said_where_finds_would_be(standing, visit, broken, says):
    page = visit()
    page.add_init_script(broken)
    page.goto(standing.url)
    expect(page.locator("[data-finds]")).to_contain_text("not to be read right now")
    begin(page)
    read(page, "toe-outline", "round")
    go(page, "#verdict")
    page.get_by_role("button", name="Keep in my finds").click()

    expect(page.locator("[data-screen=verdict] [data-slot=kept]")).to_contain_text(says)
    go(page, "#finds")
    expect(finds(page)).to_contain_text(says)


def test_private_window_is_told_what_it_forgets(standing, visit):
    page = visit()
    kept(page, standing.url)
    go(page, "#finds")
    expect(rows(page)).to_have_count(1)

    expect(finds(page)).to_contain_text("always when a private window is closed")


def test_newer_app_beside_this_one_is_not_held_up(standing, visit):
    """Its database is taken away from here at once; what lies here is not lost."""
    page = visit()
    kept(page, standing.url)
    newer = page.context.new_page()
    newer.goto(standing.url)
    newer.evaluate(UPGRADE)
    write(page, "Place", "Ellerholm")
    wrong = entry(page).locator("#own-place-wrong")
    expect(wrong).to_contain_text("written by a newer version of the app")
    expect(field(page, "Place")).to_have_value("Ellerholm")
    read(page, "grip-cap", "red-lantern")

    expect(page.locator("[data-banner]")).to_contain_text("update when online")
    go(page, "#finds")
    expect(rows(page)).to_have_count(1)


def test_nothing_in_the_database_is_a_blob(standing, visit):
    """Some browsers lose them; the check can fail: it finds one that is put there."""
    page = visit()
    page.add_init_script(WATCH_BLOBS)
    kept(page, standing.url)
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    stores, blobs = page.evaluate("[[...new Set(written.stores)], written.blobs]")
    page.evaluate(
        """() => new Promise((resolve) => {
          const opening = indexedDB.open("other", 1);
          opening.onupgradeneeded = () => {
            const made = opening.result.createObjectStore("s");
            made.put({ deep: [new Blob(["x"])] }, 1);
          };
          opening.onsuccess = () => resolve();
        })"""
    )

    assert {"drafts", "entries", "photos", "settings"} <= {*stores}
    assert blobs == []
    assert page.evaluate("written.blobs") == ["s"]


def test_unnamed_finds_go_by_what_is_known(standing, visit):
    """The name is shown, and not taken for the person's own."""
    page = visit()
    open_kept(page, standing.url)
    begin(page)
    keep(page)
    dotterel = "Wrackham & Teale 'Dotterel' forged irons"
    expect(entry(page).get_by_role("heading", level=1)).to_have_text(dotterel)
    begin(page)
    add_set(page, "2", "W")
    read(page, "toe-outline", "round")
    keep(page)
    name = re.compile(
        rf"^{dotterel}, (probably|perhaps) 19\d\d( or 19\d\d)?, set of 9$"
    )
    expect(entry(page).get_by_role("heading", level=1)).to_have_text(name)
    expect(field(page, "Title")).to_have_value("")
    go(page, "#finds")
    expect(rows(page).first.locator(".kept__title")).to_have_text(name)
    finds(page).get_by_label("Search").fill("set of 9")
    expect(rows(page)).to_have_count(1)
    rows(page).get_by_role("link").click()
    write(page, "Title", "From the barn")
    expect(said(page)).to_have_text("The title is saved.")

    expect(entry(page).get_by_role("heading", level=1)).to_have_text("From the barn")


@pytest.mark.parametrize(
    ("file", "says"),
    [
        (photofiles.heic_head(), "HEIC photo, which this browser cannot read"),
        (b"I am a text, whatever my name says.", "not a photo"),
        (photofiles.claiming_jpeg(20_000, 20_000), "400 megapixels"),
    ],
    ids=["heic", "text", "huge"],
)
def test_bad_photo_leaves_the_find_as_it_is(standing, visit, file, says):
    page = visit()
    kept(page, standing.url)
    add_photos(page, file)

    expect(said(page)).to_contain_text(says)
    expect(entry(page).locator(".shot")).to_have_count(0)
    assert page.evaluate(ALL_ROWS) == []


def test_second_page_sees_a_change(standing, visit):
    page = visit()
    kept(page, standing.url)
    other = page.context.new_page()
    other.goto(page.url)
    expect(field(other, "Place")).to_be_visible()
    field(other, "Note").press_sequentially("Half a wo")
    write(page, "Place", "Ellerholm")

    expect(field(other, "Place")).to_have_value("Ellerholm")
    expect(field(other, "Note")).to_have_value("Half a wo")
    go(other, "#finds")
    expect(rows(other)).to_contain_text("Ellerholm")
    write(page, "Place", "Wexbury")
    expect(rows(other)).to_contain_text("Wexbury")


def test_find_is_deleted_after_a_question(standing, visit):
    page = visit()
    kept(page, standing.url)
    address = page.url
    entry(page).get_by_text("Delete this find").click()
    entry(page).get_by_role("button", name="Delete it for good").click()

    expect(finds(page)).to_contain_text("is deleted.")
    expect(finds(page).get_by_text("No find is kept yet.")).to_be_visible()
    page.goto(address)
    expect(page.get_by_role("heading", name="not in the log")).to_be_visible()


def test_opening_one_asks_before_another_is_forgotten(standing, visit):
    page = visit()
    kept(page, standing.url)
    address = page.url.split("#")[1]
    begin(page)
    read(page, "toe-outline", "square")
    go(page, f"#{address}")
    entry(page).get_by_role("button", name="Open it again").click()
    expect(entry(page).get_by_text("1 reading), and it is not in")).to_be_visible()
    entry(page).get_by_role("button", name="Forget it and open this one").click()
    expect(page.locator("[data-screen=verdict] h1")).to_be_visible()
    keep(page)
    go(page, "#finds")

    expect(rows(page)).to_have_count(1)


@pytest.mark.parametrize(
    "size", [(320, 568), (390, 844), (1280, 800)], ids=lambda size: str(size[0])
)
def test_finds_fit_the_screen_and_the_thumb(standing, visit, size):
    page = visit(size)
    kept(page, standing.url)
    write(page, "Title", "A-find-with-a-name-that-no-line-is-long-enough-for" * 3)
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    for screen, photo in (
        (page.url.split("#")[1], entry(page).locator(".shot img")),
        ("finds", rows(page).locator("img")),
    ):
        go(page, f"#{screen}")
        expect(photo).to_be_visible()
        expect(photo).to_have_js_property("complete", True)
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0], screen
        assert page.evaluate(SMALL) == [], screen
