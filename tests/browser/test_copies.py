"""The log's second copy: what the browser has lost comes back, and is told."""

from playwright.sync_api import expect

import photofiles
from finds import add_photos, entry, finds, kept, rows
from steps import go

# As a browser was seen to do after a kill: it begins with an empty database.
LOSE = """() => new Promise((resolve, reject) => {
  const deleting = indexedDB.deleteDatabase("fieldid");
  deleting.onsuccess = () => resolve();
  deleting.onerror = () => reject(deleting.error);
})"""
FORBIDDEN = """
const { open } = CacheStorage.prototype;
CacheStorage.prototype.open = function (name) {
  if (name.startsWith("fieldid-log:")) throw new DOMException("", "SecurityError");
  return open.call(this, name);
};"""


def test_finds_that_were_lost_come_back_and_it_is_told(standing, visit):
    page = visit()
    kept(page, standing.url)
    add_photos(page, photofiles.camera_photo(1))
    expect(entry(page).locator("img")).to_have_count(1)
    page.evaluate(LOSE)
    page.reload()
    go(page, "#finds")

    expect(rows(page)).to_have_count(1)
    expect(rows(page).locator("img")).to_have_count(1)
    expect(finds(page)).to_contain_text(
        "One find that the browser had lost came back from the second copy."
    )


def test_log_without_a_second_copy_says_so(standing, visit):
    page = visit()
    page.add_init_script(FORBIDDEN)
    kept(page, standing.url)
    go(page, "#finds")

    expect(rows(page)).to_have_count(1)
    expect(finds(page)).to_contain_text("No second copy of the finds can be kept here")
