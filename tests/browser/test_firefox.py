"""Firefox: the journey without signal, and a find with its photo."""

from playwright.sync_api import expect

import photofiles
from drivers import Played
from finds import (
    ALL_ROWS,
    WIPE,
    add_photos,
    choose_file,
    entry,
    export,
    field,
    finds,
    into,
    kept,
    rows,
    said,
    unpacked,
)
from journey import walk

PHOTO = photofiles.camera_photo(6, size=(2400, 1800))


def test_firefox_needs_no_signal(bundle, launch_firefox):
    walk(Played(launch_firefox), bundle)


def test_find_with_its_photo_outlives_firefox(server, launch_firefox, tmp_path):
    """Reloaded and started again without any server; then out, wiped and back in."""
    page = launch_firefox()
    complaints = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    kept(page, server.url)
    # Set by a script, as elsewhere, a text is not taken for typed.
    field(page, "Title").press_sequentially("Iron from the barn")
    field(page, "Title").press("Tab")
    expect(said(page)).to_have_text("The title is saved.")
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    before = page.evaluate(ALL_ROWS)
    server.stop()
    page.reload()
    expect(entry(page).locator(".shot img")).to_have_js_property("naturalWidth", 1200)
    assert complaints == []
    page = launch_firefox()
    page.goto(f"{server.url}#finds")
    expect(rows(page)).to_contain_text("Iron from the barn")
    assert page.evaluate(ALL_ROWS) == before

    first = export(page, tmp_path / "first.zip")
    page.evaluate(WIPE)
    page.reload()
    expect(finds(page).get_by_text("No find is kept yet.")).to_be_visible()
    choose_file(page, "first.zip", first.read_bytes())
    finds(page).get_by_role("button", name="Take it in").click()
    expect(into(page)).to_have_text("1 find was taken in.")

    _, photos = unpacked(first)
    assert page.evaluate(ALL_ROWS) == before
    assert [*photos.values()] == [bytes(data) for _, data in before]
