"""Wants on the phone: kept, met by a verdict, and the collection as a list."""

import json
import re

import html5lib
from playwright.sync_api import Page, expect

import hostile
import photofiles
from finds import (
    WIPE,
    add_photos,
    begin,
    choose_file,
    entry,
    export,
    finds,
    into,
    kept,
    said,
    take_in,
    write,
)
from steps import go, open_kept, read

GUIDE = "wrackham-teale-dotterel"
DOTTEREL = "Wrackham & Teale 'Dotterel' forged irons"


# What is typed the moment the form is there, while the disk is still read.
TYPE_AT_ONCE = """(typed) => new Promise((resolve) => {
  const screen = document.querySelector("[data-screen=wants]");
  new MutationObserver((_, watch) => {
    if (!screen.querySelector("form")) return;
    watch.disconnect();
    for (const id in typed) screen.querySelector(id).value = typed[id];
    resolve();
  }).observe(screen, { childList: true });
  location.hash = "#wants";
})"""


def wants(page: Page):
    return page.locator("[data-screen=wants]")


def listed(page: Page):
    """What each want of the list says."""
    return wants(page).locator(".want .want__say")


def want(page: Page, **fields) -> None:
    """Fills in the form of a want, and keeps it."""
    go(page, "#wants")
    for name, value in fields.items():
        control = wants(page).locator(f"#want-{name}")
        if name in ("guide", "since", "until", "member"):
            control.select_option(value)
        else:
            control.fill(value)
    wants(page).get_by_role("button", name="Keep").click()


def told(page: Page):
    """What was said last on the screen of wants."""
    return wants(page).locator(".entry__said p")


def a_set(page: Page, *members: str) -> None:
    """Lays open a set of which something was read."""
    begin(page)
    go(page, "#set")
    for member in members:
        page.locator(f".tile[data-member='{member}']").click()
    read(page, "toe-outline", "square")
    go(page, "#verdict")


def test_what_is_typed_before_the_disk_answers_stays(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    page.evaluate(TYPE_AT_ONCE, {"#want-most": "85", "#want-currency": "SEK"})
    expect(wants(page).get_by_text("Nothing yet.")).to_be_visible()

    expect(wants(page).locator("#want-most")).to_have_value("85")
    expect(wants(page).locator("#want-currency")).to_have_value("SEK")


def test_want_is_kept_changed_and_brought_back(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    want(page, since="1957", until="1958", member="5", most="120", currency="eur")
    expect(listed(page)).to_have_text(
        [f"{DOTTEREL} of 1957 or 1958, the 5 iron, up to 120 EUR."]
    )
    expect(told(page)).to_contain_text("It is kept.")
    expect(wants(page).locator("#want-most")).to_have_value("")
    wants(page).get_by_role("button", name="Change").click()
    wants(page).locator("#want-until").select_option("1956")
    wants(page).get_by_role("button", name="Keep the change").click()
    expect(wants(page).locator("#want-until")).to_be_focused()
    expect(wants(page).get_by_text("Choose the same year")).to_be_visible()
    wants(page).locator("#want-until").select_option("")
    wants(page).get_by_role("button", name="Keep the change").click()
    changed = f"{DOTTEREL} of 1957 or later, the 5 iron, up to 120 EUR."
    expect(listed(page)).to_have_text([changed])
    page.reload()
    expect(listed(page)).to_have_text([changed])
    wants(page).get_by_role("button", name="Delete").click()
    expect(listed(page)).to_have_count(0)
    wants(page).get_by_role("button", name="Undo").click()

    expect(listed(page)).to_have_text([changed])
    page.reload()
    expect(listed(page)).to_have_text([changed])


def test_verdict_says_that_it_is_wanted(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    want(page, note="For Tom", most="85", currency="EUR")
    expect(listed(page)).to_have_count(1)
    want(page, since="1954", until="1954")
    expect(listed(page)).to_have_count(2)
    begin(page)
    go(page, "#verdict")
    wanted = page.locator("[data-screen=verdict] [data-slot=wanted]")
    expect(page.locator("[data-screen=verdict] h1")).to_be_visible()
    expect(wanted).to_be_empty()
    read(page, "toe-outline", "square")
    go(page, "#verdict")

    expect(wanted).to_contain_text("This is most likely what you want")
    expect(wanted).to_contain_text(f"{DOTTEREL} of any year, up to 85.00 EUR.")
    expect(wanted).to_contain_text(re.compile(r"How sure: \w+ \w+, (over )?\d\d.%"))
    expect(wanted).to_contain_text("For Tom")
    expect(wanted.locator("li")).to_have_count(1)


def test_missing_members_are_wanted_once(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    a_set(page, "5", "6", "7", "8", "9")
    page.get_by_role("button", name="Want the missing ones").click()
    lacking = page.locator("[data-screen=verdict] .lacking")
    expect(lacking).to_contain_text("The 3 and 4 irons are among your wants now.")
    expect(lacking.get_by_role("button")).to_have_count(0)
    page.reload()
    expect(page.locator("[data-screen=verdict] .members")).to_be_visible()
    expect(page.locator("[data-screen=verdict] .lacking")).to_have_count(0)
    go(page, "#wants")
    expect(listed(page)).to_have_count(2)
    expect(listed(page).first).to_contain_text("the 3 iron.")
    lacks = wants(page).get_by_text("The set that lies open lacks")
    expect(lacks).to_be_hidden()
    wants(page).get_by_role("button", name="Delete").first.click()
    expect(lacks).to_have_text("The set that lies open lacks the 3 iron.")
    wants(page).get_by_role("button", name="Want the missing ones").click()

    expect(listed(page)).to_have_count(2)
    expect(lacks).to_be_hidden()


def test_row_that_cannot_be_read_is_said_and_stays(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    want(page)
    expect(listed(page)).to_have_count(1)
    rows = """(change) => new Promise((resolve) => {
      const opening = indexedDB.open("fieldid");
      opening.onsuccess = () => {
        const done = opening.result.transaction("settings", "readwrite");
        const settings = done.objectStore("settings");
        const asked = settings.get("wants");
        asked.onsuccess = () => {
          if (change) settings.put({
            key: "wants", value: [...asked.result.value, { id: "x", format: 2 }] });
        };
        done.oncomplete = () => {
          opening.result.close();
          resolve(asked.result.value);
        };
      };
    })"""
    page.evaluate(rows, True)
    page.reload()
    expect(wants(page)).to_contain_text("written by a newer version of the app")
    want(page, since="1960")

    expect(listed(page)).to_have_count(2)
    assert {"id": "x", "format": 2} in page.evaluate(rows, False)


def test_wants_come_back_after_a_wipe(standing, visit, tmp_path):
    page = visit()
    open_kept(page, standing.url)
    want(page, since="1957", until="1958", member="5", most="120", currency="EUR")
    expect(listed(page)).to_have_count(1)
    file = export(page, tmp_path / "wants.zip")
    page.evaluate(WIPE)
    page.reload()
    expect(finds(page).get_by_text("No find is kept yet.")).to_be_visible()
    choose_file(page, "wants.zip", file.read_bytes())
    expect(finds(page).get_by_text("1 want is new.")).to_be_visible()
    finds(page).get_by_role("button", name="Take it in").click()
    expect(into(page)).to_have_text("1 want was taken in.")
    choose_file(page, "wants.zip", file.read_bytes())
    expect(finds(page).get_by_text("1 want is here already.")).to_be_visible()
    go(page, "#wants")

    expect(listed(page)).to_have_text(
        [f"{DOTTEREL} of 1957 or 1958, the 5 iron, up to 120 EUR."]
    )


def test_import_leaves_alone_what_cannot_be_read(standing, visit):
    """The row in the log is of a newer version; the file has a find with its id."""
    page = visit()
    open_kept(page, standing.url)
    page.evaluate(
        """(id) => new Promise((resolve) => {
          const opening = indexedDB.open("fieldid");
          opening.onsuccess = () => {
            const rows = opening.result.transaction("entries", "readwrite");
            rows.objectStore("entries").put({ id, format: 1, broken: true });
            rows.oncomplete = () => { opening.result.close(); resolve(); };
          };
        })""",
        hostile.entry()["id"],
    )
    page.reload()
    go(page, "#finds")
    choose_file(page, "finds.json", hostile.export(hostile.entry()))

    plan = finds(page).locator("[data-slot=plan]")
    expect(plan).to_contain_text("lies in the log and cannot be read here")
    expect(plan.locator("[data-act=take-in]")).to_have_count(0)


def made_list(page: Page, **ticks: bool) -> str:
    """The list of the collection, saved."""
    go(page, "#finds")
    for name, on in ticks.items():
        finds(page).locator(f"[data-slot=list-{name}]").set_checked(on)
    finds(page).get_by_role("button", name="List of my collection").click()
    with page.expect_download() as download:
        finds(page).get_by_role("link", name="Save the file").click()
    assert download.value.suggested_filename.startswith("fieldid-collection-")
    return download.value.path().read_text("utf-8")


def test_list_tells_what_is_ticked_and_opens_alone(standing, visit, tmp_path):
    page = visit()
    kept(page, standing.url)
    write(page, "Title", "<b>Irons</b>")
    write(page, "Place", "Ellerholm")
    write(page, "Price paid", "80.5")
    expect(said(page)).to_have_text("The price paid is saved.")
    add_photos(page, photofiles.camera_photo(6, size=(1600, 1200)))
    expect(entry(page).locator(".shot")).to_have_count(1)
    each = {"guide": GUIDE, "find": hostile.find(guide=GUIDE, items=[{"readings": {}}])}
    unpaid = hostile.entry(title="Unpaid", paid=None, place="Ellerholm", **each)
    take_in(page, hostile.export(unpaid))
    short = made_list(page)
    whole = made_list(page, all=True, place=True)

    assert ["Ellerholm" in text for text in (short, whole)] == [False, True]
    assert ["Unpaid" in text for text in (short, whole)] == [False, True]
    parsed = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(whole)
    assert not {"script", "link", "iframe"} & {each.tag for each in parsed.iter()}
    assert "default-src 'none'" in json.dumps(
        parsed.find("head/meta[@http-equiv]").attrib
    )
    file = tmp_path / "list.html"
    file.write_text(whole, "utf-8")
    reader = visit((320, 640), offline=True)
    heard = []
    reader.on("console", lambda message: heard.append(message.text))
    reader.on("request", lambda request: heard.append(request.url))
    reader.goto(file.as_uri())
    # Upright, and no larger than a list needs.
    sizes = (
        "[...document.images].map((each) => [each.naturalWidth, each.naturalHeight])"
    )
    assert reader.evaluate(sizes) == [[240, 180]]
    assert heard == [file.as_uri()]
    assert reader.evaluate("document.documentElement.scrollWidth") == 320
    expect(reader.get_by_role("row", name="<b>Irons</b>")).to_be_visible()
    reader.emulate_media(media="print")
    head = reader.locator("thead")
    assert head.evaluate("(each) => getComputedStyle(each).display") == (
        "table-header-group"
    )
    breaks = "(each) => getComputedStyle(each).breakInside"
    assert reader.locator("tbody tr").first.evaluate(breaks) == "avoid"


def test_list_without_any_price_says_what_to_do(standing, visit):
    page = visit()
    kept(page, standing.url)
    go(page, "#finds")
    finds(page).get_by_role("button", name="List of my collection").click()

    expect(finds(page).locator("[data-slot=out]")).to_contain_text(
        "No find has a price paid yet."
    )
