"""What a person does with kept finds, step by step, in Playwright."""

import json
import re
import zipfile
from contextlib import suppress
from pathlib import Path

from playwright.sync_api import Error, Locator, Page, expect

from steps import go, heading, open_kept, read

ALL_ROWS = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open("fieldid");
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result;
    const photos = db.transaction("photos").objectStore("photos").getAll();
    photos.onsuccess = () => {
      db.close();
      resolve(photos.result.map(({ id, bytes }) => [id, [...new Uint8Array(bytes)]]));
    };
  };
})"""
# All that the app has kept of the person's, the second copy included.
WIPE = """async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith("fieldid-log:")) await caches.delete(name);
  }
  await new Promise((resolve, reject) => {
    const deleting = indexedDB.deleteDatabase("fieldid");
    deleting.onsuccess = () => resolve();
    deleting.onerror = () => reject(deleting.error);
  });
}"""
NO_DRAFTS = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open("fieldid");
  opening.onsuccess = () => {
    const clearing = opening.result.transaction("drafts", "readwrite");
    clearing.objectStore("drafts").clear();
    clearing.onabort = () => reject(clearing.error);
    clearing.oncomplete = () => { opening.result.close(); resolve(); };
  };
})"""
# What a setting says; a value that is not null is written.
SETTING = """([key, value]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("fieldid");
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result;
    const store = db.transaction("settings", "readwrite").objectStore("settings");
    const request = value === null ? store.get(key) : store.put({ key, value });
    request.onsuccess = () => { db.close(); resolve(request.result?.value ?? null); };
  };
})"""
FULL_DISK = """() => {
  IDBObjectStore.prototype.put = () => {
    throw new DOMException("full", "QuotaExceededError");
  };
}"""
# The disk is full when this row of the store is written, and has room again after it.
FULL_ONCE = """([store, row]) => {
  const { put } = IDBObjectStore.prototype;
  let rows = 0;
  IDBObjectStore.prototype.put = function (...given) {
    rows += this.name === store;
    if (this.name === store && rows === row) {
      throw new DOMException("full", "QuotaExceededError");
    }
    return put.apply(this, given);
  };
}"""
# As browsers do that do not end a field with its event when its screen is left.
NO_CHANGE = "() => addEventListener('change', (e) => e.stopPropagation(), true)"


def begin(page: Page) -> None:
    """Begins a find anew, whatever lies open."""
    go(page, "#home")
    card = page.locator("[data-guide-card=wrackham-teale-dotterel]")
    if card.get_by_text("Start a new one instead").is_visible():
        card.get_by_text("Start a new one instead").click()
        card.locator("[data-slot=start]").click()
    else:
        card.get_by_role("link", name="Start looking").click()
    expect(heading(page)).to_be_visible()


def keep(page: Page) -> None:
    """Keeps what lies open, anew or once more, and comes to its entry."""
    go(page, "#verdict")
    page.get_by_role("button", name=re.compile("^(Keep in|Bring it up)")).click()
    expect(entry(page).locator("[data-own=title]")).to_be_visible()
    expect(said(page)).to_contain_text("in your finds")


def kept(page: Page, url: str, option: str = "round") -> None:
    """The app, with a find of one reading that is kept and shown."""
    open_kept(page, url)
    begin(page)
    read(page, "toe-outline", option)
    keep(page)


def forget_drafts(page: Page) -> None:
    """Leaves nothing that would lie open after a reload."""
    page.evaluate(NO_DRAFTS)


def kill_page(page: Page) -> None:
    """Ends the page at once, as a phone that is short of memory does."""
    with page.expect_event("crash"), suppress(Error):
        page.goto("chrome://crash")


def entry(page: Page) -> Locator:
    return page.locator("[data-screen=entry]")


def finds(page: Page) -> Locator:
    return page.locator("[data-screen=finds]")


def rows(page: Page) -> Locator:
    return finds(page).locator(".kept")


def said(page: Page) -> Locator:
    """What was said last on an entry."""
    return entry(page).locator(".entry__said p")


def field(page: Page, name: str) -> Locator:
    return entry(page).get_by_label(name, exact=True)


def write(page: Page, name: str, text: str) -> None:
    """Fills in a field, and leaves it."""
    control = field(page, name)
    control.fill(text)
    control.blur()


def add_photos(page: Page, *photos: bytes) -> None:
    files = [
        {"name": f"{i}.jpg", "mimeType": "image/jpeg", "buffer": photo}
        for i, photo in enumerate(photos)
    ]
    with page.expect_file_chooser() as chooser:
        entry(page).get_by_role("button", name="Choose photos").click()
    chooser.value.set_files(files)


def export(page: Page, to: Path) -> Path:
    """The file of all finds, saved."""
    go(page, "#finds")
    finds(page).get_by_role("button", name="File of all finds").click()
    with page.expect_download() as download:
        finds(page).get_by_role("link", name="Save the file").click()
    download.value.save_as(to)
    return to


def choose_file(page: Page, name: str, data: bytes) -> None:
    """Chooses a file of finds."""
    file = {"name": name, "mimeType": "application/octet-stream", "buffer": data}
    finds(page).locator("#log-file").set_input_files(file)


def into(page: Page) -> Locator:
    """What was said of the file that was chosen."""
    return finds(page).locator("[data-slot=into]")


def take_in(page: Page, data: bytes, name: str = "finds.json") -> None:
    """Takes in a file of finds, all of it."""
    go(page, "#finds")
    choose_file(page, name, data)
    finds(page).get_by_role("button", name=re.compile("^Take")).click()
    expect(into(page)).to_contain_text("taken in")


def unpacked(path: Path) -> tuple[list[dict], dict[str, bytes]]:
    """The finds of an export, and its photos by their names."""
    with zipfile.ZipFile(path) as found:
        files = {name: found.read(name) for name in found.namelist()}
    return json.loads(files.pop("finds.json"))["finds"], files
