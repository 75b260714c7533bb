"""When something is broken on the phone: a sentence, and never a blank page."""

import functools
import http.server
import json
import re
import shutil
import threading

import pytest
from playwright.sync_api import expect

from serving import Host
from steps import heading, open_kept, start, status, tap_first

BANNER = "[data-banner]"
KEEP_OUT = {"service_workers": "block"}


def test_guide_of_newer_format_is_told(standing, launch):
    page = launch(**KEEP_OUT)

    def newer(route):
        packed = route.fetch().json()
        route.fulfill(json={**packed, "format": 2})

    page.route(re.compile(r"/guides/.*\.json"), newer)
    page.goto(standing.url)
    page.get_by_role("link", name="Start looking").first.click()

    expect(page.locator(BANNER)).to_contain_text("format 2")
    expect(page.locator(BANNER)).to_contain_text("reads 1")
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()


def test_guide_that_does_not_arrive_is_told(standing, launch):
    page = launch(**KEEP_OUT)
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
def test_blocked_storage_leaves_the_questions(standing, launch, broken):
    page = launch()
    page.add_init_script(broken)
    page.goto(standing.url)
    start(page)
    lead = status(page)
    tap_first(page)

    expect(page.locator(BANNER)).to_contain_text("kept")
    assert status(page) != lead


def test_full_disk_leaves_the_questions(standing, launch):
    page = launch()
    page.add_init_script(
        """IDBObjectStore.prototype.put = () => {
             throw new DOMException("full", "QuotaExceededError") }"""
    )
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
    page.wait_for_timeout(500)
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


def test_flipped_byte_keeps_the_old_build(standing, bundle, launch, tmp_path):
    """An update that arrives broken is not taken: the app goes on without signal."""
    copy = tmp_path / "site"
    shutil.copytree(bundle, copy)
    server = Host(copy)
    page = launch()
    open_kept(page, server.url)
    port = server.port
    server.stop()

    worker = copy / "sw.js"
    worker.write_text(worker.read_text().replace("sha256-", "sha256-AAAA", 1))
    broken = Broken(copy, port)
    page = launch()
    page.goto(server.url)
    page.evaluate(
        "navigator.serviceWorker.ready.then((r) => r.update()).catch(() => 0)"
    )
    page.wait_for_timeout(1500)
    broken.stop()
    shutil.rmtree(copy)

    page = launch()
    page.goto(server.url)
    start(page)
    tap_first(page)
    expect(heading(page)).to_be_visible()


class Broken:
    """A dumb web host: it serves what lies there, right or wrong."""

    def __init__(self, folder, port):
        class Quiet(http.server.SimpleHTTPRequestHandler):
            def log_message(self, *_):
                """Says nothing."""

        handler = functools.partial(Quiet, directory=str(folder))
        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", port), handler)
        self.thread = threading.Thread(target=self.server.serve_forever)
        self.thread.start()

    def stop(self):
        self.server.shutdown()
        self.server.server_close()
        self.thread.join()
