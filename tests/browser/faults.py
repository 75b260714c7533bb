"""What goes wrong on a phone or on the way to it, made on purpose; and which test sees
to each: nothing is lost, and no page is blank.
"""

import http.server
import mimetypes
import re
import threading
from collections.abc import Callable, Mapping
from pathlib import Path

from playwright.sync_api import Page

from fieldid.build.precache import WORKER, entries, fill
from fieldid.build.slim import slim
from fieldid.paths import STATIC
from steps import until

TESTED = {
    "an update: a flipped byte": "update::test_broken_update_changes_nothing",
    "an update: a truncated file": "update::test_broken_update_changes_nothing",
    "an update: a captive portal": "update::test_broken_update_changes_nothing",
    "an update: a redirect": "update::test_broken_update_changes_nothing",
    "an update: 404": "update::test_broken_update_changes_nothing",
    "an update: 500": "update::test_broken_update_changes_nothing",
    "an update while a draft is open": "update::test_draft_outlives_skipped_builds",
    "two builds apart": "update::test_draft_outlives_skipped_builds",
    "a portal in place of the app": "update::test_portal_does_not_replace_the_app",
    "a flipped byte in a kept file": "update::test_spoilt_file_is_told_then_mended",
    "a truncated kept file": "update::test_spoilt_file_is_told_then_mended",
    "quota exceeded": "storage::test_full_phone_keeps_all_once_there_is_room",
    "storage cleared in use": "storage::test_storage_cleared_in_use_is_filled_again",
    "IndexedDB blocked by another tab": "storage::test_blocked_database_is_told",
    "IndexedDB refused or absent": "::test_blocked_storage_leaves_the_questions",
    "a slow disk": "storage::test_slow_disk_holds_nobody_up",
    "the clock set back or forward": "storage::test_clock_that_jumps_loses_no_change",
    "back-forward cache": "page::test_page_from_the_back_cache_goes_on",
    "rotation": "page::test_rotation_keeps_what_was_typed",
    "200 % zoom": "page::test_verdict_is_reached_at_twice_the_size",
    "the app taken down, its finds unreadable": "storage::test_gone_app_says_why",
}
"""The fault, and the test that makes it: of `test_faults_<what stands first>.py`."""

# Whoever else wants the database waits, as behind a slow disk: a transaction over all
# of it that goes on until the page ends or the disk is free.
BUSY_DISK = """() => new Promise((done, failed) => {
  const opening = indexedDB.open("fieldid");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const stores = [...opening.result.objectStoreNames];
    const work = opening.result.transaction(stores, "readwrite");
    const again = () => {
      if (globalThis.diskIsFree) return opening.result.close();
      work.objectStore(stores[0]).count().onsuccess = again;
      done();
    };
    again();
  };
})"""
FREE_DISK = "() => { globalThis.diskIsFree = true; }"

# The session of the draft that lies in the database, if one does.
DRAFT = """() => new Promise((done, failed) => {
  const opening = indexedDB.open("fieldid");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const drafts = opening.result.transaction("drafts").objectStore("drafts").getAll();
    drafts.onsuccess = () => {
      opening.result.close();
      done(drafts.result[0]?.session);
    };
  };
})"""


def readings(session: dict | None) -> int:
    """How many readings a draft has, of one object."""
    return len(session["items"][0]["readings"]) if session else 0


def expect_draft(page: Page, wanted: Callable[[dict], bool]) -> None:
    """Waits until the draft on the disk is as wanted."""
    until(page, lambda: (kept := page.evaluate(DRAFT)) and wanted(kept))


def expect_kept(page: Page, count: int) -> None:
    """Waits until the draft on the disk has as many readings."""
    expect_draft(page, lambda kept: readings(kept) == count)


Answer = tuple[int, str, bytes]
"""Status, type (of a redirect the address) and body."""
Fault = Callable[[str, bytes], Answer]

PORTAL = b"<!doctype html><title>Hotel</title><h1>Please sign in</h1>"
HTML = "text/html"


def whole(path: str, body: bytes) -> Answer:
    return 200, mimetypes.guess_type(path)[0] or "application/octet-stream", body


def flipped(path: str, body: bytes) -> Answer:
    middle = len(body) // 2
    return whole(path, body[:middle] + bytes([body[middle] ^ 1]) + body[middle + 1 :])


def truncated(path: str, body: bytes) -> Answer:
    return whole(path, body[: len(body) // 2])


def portal(path: str, body: bytes) -> Answer:
    return 200, HTML, PORTAL


def redirected(path: str, body: bytes) -> Answer:
    return (302, "/sign-in", b"") if path != "sign-in" else (200, HTML, PORTAL)


def missing(path: str, body: bytes) -> Answer:
    return 404, HTML, b"not here"


def failing(path: str, body: bytes) -> Answer:
    return 500, HTML, b"out of order"


ON_THE_WAY = (flipped, truncated, portal, redirected, missing, failing)


class Site:
    """A plain host of files that may be replaced, and where one thing goes wrong.

    It names no age, and its files are years old: what a browser has once fetched from
    such a host it takes to be good for weeks.
    """

    def __init__(self, files: Mapping[str, bytes]) -> None:
        self.files = dict(files)
        self.fault: Fault = whole
        self.spared: tuple[str, ...] = ()
        self._start(0)

    def _start(self, port: int) -> None:
        self.server = http.server.ThreadingHTTPServer(
            ("127.0.0.1", port), self._handler()
        )
        self.server.daemon_threads = True
        self.port = self.server.server_address[1]
        self.url = f"http://127.0.0.1:{self.port}/"
        self.thread = threading.Thread(target=self.server.serve_forever)
        self.thread.start()

    def stop(self) -> None:
        if not self.thread.is_alive():
            return
        self.server.shutdown()
        self.server.server_close()
        self.thread.join()

    def start_again(self) -> None:
        self._start(self.port)

    def answer(self, address: str) -> Answer:
        path = address.split("?")[0].lstrip("/") or "index.html"
        body = self.files.get(path)
        if path in self.spared and body is not None:
            return whole(path, body)
        if body is None and self.fault in (whole, flipped, truncated):
            return missing(path, b"")
        return self.fault(path, body or b"")

    def _handler(self) -> type:
        site = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_GET(self):
                status, kind, body = site.answer(self.path)
                self.send_response(status)
                name = "Location" if status == 302 else "Content-Type"
                self.send_header(name, kind)
                self.send_header("Content-Length", str(len(body)))
                self.send_header("Last-Modified", "Thu, 01 Jan 2015 00:00:00 GMT")
                self.end_headers()
                self.wfile.write(body)

            def log_message(self, *_):
                """Says nothing."""

        return Handler


def files_in(folder: Path) -> dict[str, bytes]:
    """A built folder, without the copies that only some hosts serve."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix not in (".br", ".gz")
    }


def published_anew(files: Mapping[str, bytes], build: str) -> dict[str, bytes]:
    """The same app as another build: each address and each page that names it changes,
    as in a build in which a script has changed.
    """
    before = build_of(files).encode()
    anew = {
        path.replace(before.decode(), build): (
            body.replace(before, build.encode()) if path.endswith(".html") else body
        )
        for path, body in files.items()
    }
    script = slim(WORKER, (STATIC / "phone" / WORKER).read_bytes())
    anew[WORKER] = fill(script, build, entries(anew))
    return anew


def build_of(files: Mapping[str, bytes]) -> str:
    return re.search(rb'src="v/([^/]+)/', files["index.html"])[1].decode()
