"""When something is broken on the phone: a sentence, and never a blank page.

`faults.TESTED` says which test makes which fault.
"""

import ast
import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from faults import TESTED, expect_kept
from finds import FULL_DISK
from steps import open_kept, start, status, tap_first

BANNER = "[data-banner]"
KEEP_OUT = {"service_workers": "block"}


def test_every_fault_has_its_test():
    here = Path(__file__).parent
    for fault, place in TESTED.items():
        file, name = place.split("::")
        text = (here / f"test_faults{file and '_' + file}.py").read_text()
        names = [each.name for each in ast.parse(text).body if hasattr(each, "name")]
        assert name in names, f"{fault}: there is no {place}"


def test_guide_of_newer_format_is_told(standing, visit):
    page = visit(**KEEP_OUT)

    def newer(route):
        packed = route.fetch().json()
        route.fulfill(json={**packed, "format": 2})

    page.route(re.compile(r"/guides/.*\.json"), newer)
    page.goto(standing.url)
    page.get_by_role("link", name="Start looking").first.click()

    expect(page.locator(BANNER)).to_contain_text("format 2")
    expect(page.locator(BANNER)).to_contain_text("reads 1")
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()


def test_guide_that_does_not_arrive_is_told(standing, visit):
    page = visit(**KEEP_OUT)
    page.route(re.compile(r"/guides/.*\.json"), lambda route: route.abort())
    page.goto(standing.url)
    page.get_by_role("link", name="Start looking").first.click()

    expect(page.locator(BANNER)).to_be_visible()
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()


@pytest.mark.parametrize(
    "broken",
    [
        "indexedDB.open = () => { throw new DOMException('no', 'SecurityError') }",
        "Object.defineProperty(window, 'indexedDB', { value: undefined })",
    ],
    ids=["refused", "absent"],
)
def test_blocked_storage_leaves_the_questions(standing, visit, broken):
    page = visit()
    page.add_init_script(broken)
    page.goto(standing.url)
    start(page)
    lead = status(page)
    tap_first(page)

    expect(page.locator(BANNER)).to_contain_text("kept")
    assert status(page) != lead


def test_full_disk_leaves_the_questions(standing, visit):
    page = visit()
    page.add_init_script(f"({FULL_DISK})()")
    page.goto(standing.url)
    start(page)
    tap_first(page)

    expect(page.locator(BANNER)).to_be_visible()
    assert status(page) != "nothing read yet"


# The draft's place in the database is found, not assumed: the test writes over
# whatever the app itself has just kept.
SPOIL = """async (spoil) => {
  const [{ name }] = await indexedDB.databases();
  const db = await new Promise((done, failed) => {
    const opening = indexedDB.open(name);
    opening.onsuccess = () => done(opening.result);
    opening.onerror = () => failed(opening.error);
  });
  const stores = [...db.objectStoreNames];
  const work = db.transaction(stores, "readwrite");
  for (const store of stores) {
    const open = work.objectStore(store).openCursor();
    open.onsuccess = () => {
      const cursor = open.result;
      if (!cursor) return;
      // The format is part of the key: a changed draft is a new entry.
      if (!("spoilt" in cursor.value)) {
        cursor.delete();
        open.source.put({ ...cursor.value, ...spoil, spoilt: true });
      }
      cursor.continue();
    };
  }
  await new Promise((done, failed) => {
    work.oncomplete = done;
    work.onabort = () => failed(work.error);
  });
  db.close();
}"""


@pytest.mark.parametrize(
    ("spoil", "sentence"),
    [({"format": 9}, "newer version"), ({"session": "not a session"}, "draft")],
    ids=["newer", "junk"],
)
def test_unreadable_draft_is_told_and_kept(standing, launch, spoil, sentence):
    page = launch()
    open_kept(page, standing.url)
    start(page)
    tap_first(page)
    expect_kept(page, 1)
    page.evaluate(SPOIL, spoil)

    page = launch()
    page.goto(standing.url)

    expect(page.locator(BANNER)).to_contain_text(sentence)
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()
    kept = page.evaluate(
        """async () => {
          const [{ name }] = await indexedDB.databases();
          const db = await new Promise((done) => {
            const opening = indexedDB.open(name);
            opening.onsuccess = () => done(opening.result);
          });
          const found = [];
          for (const store of db.objectStoreNames) {
            const all = db.transaction(store).objectStore(store).getAll();
            await new Promise((done) => { all.onsuccess = done; });
            found.push(...all.result);
          }
          db.close();
          return found;
        }"""
    )
    assert json.dumps(next(iter(spoil.values()))) in json.dumps(kept)
