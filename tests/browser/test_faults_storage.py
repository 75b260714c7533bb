"""What goes wrong where the app keeps things: `faults.TESTED`."""

import re

import pytest
from playwright.sync_api import expect

from faults import BUSY_DISK, FREE_DISK, Site, expect_kept
from fieldid.build.takedown import take_down
from finds import finds, kept, rows, said, write
from steps import go, heading, open_kept, start, status, tap_first

BANNER = "[data-banner]"
# An older page of the app, that does not let go when a newer one asks.
HOLD_OLD = """() => new Promise((done, failed) => {
  const opening = indexedDB.open("fieldid", 1);
  opening.onerror = () => failed(opening.error);
  opening.onupgradeneeded = () => {
    const db = opening.result;
    db.createObjectStore("drafts", { keyPath: ["guide", "format"] });
    db.createObjectStore("aside", { autoIncrement: true });
    db.createObjectStore("probe");
  };
  opening.onsuccess = () => done(void (globalThis.held = opening.result));
})"""

# Waits until the one find that is kept has this title.
TITLED = """async (title) => {
  const db = await new Promise((done) => {
    const opening = indexedDB.open("fieldid");
    opening.onsuccess = () => done(opening.result);
  });
  const titled = () => new Promise((done) => {
    const all = db.transaction("entries").objectStore("entries").getAll();
    all.onsuccess = () => done(all.result[0].title === title);
  });
  while (!(await titled()));
  db.close();
}"""


def test_full_phone_keeps_all_once_there_is_room(standing, launch):
    """The browser's own refusal. What was answered meanwhile is kept with the next."""
    page = launch()
    open_kept(page, standing.url)
    start(page)
    tap_first(page)
    expect_kept(page, 1)
    # Started anew, since a browser remembers for half a minute what room there was.
    page = launch()
    session = page.context.new_cdp_session(page)
    quota = {"origin": standing.url.rstrip("/")}
    session.send("Storage.overrideQuotaForOrigin", {**quota, "quotaSize": 1})
    page.goto(f"{standing.url}#look")
    for _ in range(2):
        tap_first(page)
    expect(page.locator(BANNER)).to_contain_text("full")
    session.send("Storage.overrideQuotaForOrigin", quota)
    tap_first(page)
    expect_kept(page, 4)
    asked, said_then = heading(page).inner_text(), status(page)

    page.reload()
    expect(heading(page)).to_have_text(asked)
    assert status(page) == said_then


def test_storage_cleared_in_use_is_filled_again(standing, visit):
    """By a person in the browser's settings, or by a browser short of room."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    for _ in range(2):
        tap_first(page)
    page.context.new_cdp_session(page).send(
        "Storage.clearDataForOrigin",
        {"origin": standing.url.rstrip("/"), "storageTypes": "all"},
    )
    tap_first(page)
    asked, said_then = heading(page).inner_text(), status(page)
    expect_kept(page, 3)

    page.goto(f"{standing.url}#home")
    page.reload()
    page.get_by_role("link", name=re.compile("Go on")).click()
    expect(heading(page)).to_have_text(asked)
    assert status(page) == said_then


def test_blocked_database_is_told(standing, visit):
    """By an older page of the app; once that is closed all is kept."""
    page = visit()
    page.goto(f"{standing.url}icon.svg")
    page.evaluate(HOLD_OLD)
    app = page.context.new_page()
    app.goto(standing.url)
    start(app)
    tap_first(app)
    expect(app.locator(BANNER)).to_contain_text("Nothing can be kept")
    tap_first(app)
    page.close()
    tap_first(app)
    expect_kept(app, 3)


def test_slow_disk_holds_nobody_up(standing, visit):
    """Answers follow each other at once, and lie there as soon as the disk is free."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.evaluate(BUSY_DISK)
    for _ in range(3):
        tap_first(page)
    asked, said_then = heading(page).inner_text(), status(page)
    page.evaluate(FREE_DISK)
    expect_kept(page, 3)

    page.reload()
    expect(heading(page)).to_have_text(asked)
    assert status(page) == said_then


def test_clock_that_jumps_loses_no_change(standing, launch):
    """A find kept by a clock that was years ahead, changed by one years behind."""
    page = launch()
    page.clock.set_system_time("2041-06-01T12:00:00Z")
    kept(page, standing.url)
    write(page, "Title", "Kept in 2041")
    expect(said(page)).to_contain_text("The title is saved.")
    page.clock.set_system_time("2019-01-01T12:00:00Z")
    write(page, "Title", "Changed in 2019")
    page.evaluate(TITLED, "Changed in 2019")

    page = launch()
    page.goto(f"{standing.url}#finds")
    expect(rows(page)).to_have_count(1)
    expect(rows(page)).to_contain_text("Changed in 2019")
    go(page, "#home")
    page.get_by_role("link", name=re.compile("Go on")).click()
    expect(heading(page)).to_be_visible()
    go(page, "#finds")
    expect(finds(page).get_by_text("NaN")).to_have_count(0)


@pytest.fixture
def gone():
    running = Site(take_down([]).files)
    yield running
    running.stop()


def test_gone_app_says_why(gone, visit):
    """The page in place of the app, where the finds cannot be read right now."""
    page = visit()
    page.add_init_script(
        "indexedDB.open = () => { throw new DOMException('no', 'SecurityError') }"
    )
    page.goto(gone.url)

    expect(page.get_by_role("heading", name="no longer here")).to_be_visible()
    expect(page.locator("[data-kept]")).to_contain_text("Nothing was removed")
