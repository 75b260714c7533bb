"""The log in a real browser: killed, full, and open in two tabs."""

import os
import queue
import random
import shutil
import signal
import subprocess
import time
from pathlib import Path

import pytest

from conftest import CHROMIUM, QUIET
from firefox import FIREFOX, profile
from log_server import LogServer
from steps import until

# Each is a start of a browser: fifty take a minute and a half, or three in Firefox.
ROUNDS = int(os.environ.get("FIELDID_KILLS", "5"))
SEED = 20261125
PATIENCE = 60
FULL = "The storage of this phone is full"


@pytest.fixture
def host():
    running = LogServer(Path(__file__).parent)
    yield running
    running.stop()


@pytest.fixture
def opened(host, launch):
    """Opens a page on the log, in a browser of its own or as a further tab."""

    def opened(beside=None):
        page = beside.context.new_page() if beside else launch()
        page.goto(host.url)
        page.wait_for_function("window.test")
        return page

    return opened


def chromium(folder):
    """The command that starts it on a profile in this folder."""
    quiet = ("--headless=new", "--disable-gpu", "--disable-crash-reporter")
    opened = ("--remote-debugging-port=0", f"--user-data-dir={folder / 'profile'}")
    return [CHROMIUM, *QUIET, *quiet, *opened]


def firefox(folder):
    """The command that starts it on a profile in this folder."""
    kept = profile(folder / "profile")
    return [FIREFOX, "--headless", "--no-remote", "--profile", str(kept)]


class Phone:
    """A browser on a real profile, killed without a word."""

    def __init__(self, command, url):
        self.process = subprocess.Popen(
            [*command, url],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            # A group of its own, so that all its processes go at once.
            start_new_session=True,
        )

    def kill(self):
        os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()


class Ledger:
    """What a page was told to be safe, to hold against what lies there afterwards."""

    def __init__(self):
        self.photos = {}
        self.doomed = {}
        self.counts = {"saved": 0, "deleted": 0}

    def note(self, told):
        assert "failed" not in told, told
        if "saved" in told:
            self.photos[told["saved"]] = told["photos"]
            self.counts["saved"] += 1
        if "doomed" in told:
            self.doomed[told["doomed"]] = self.photos.pop(told["doomed"], 0)
        if "deleted" in told:
            self.doomed[told["deleted"]] = None
            self.counts["deleted"] += 1

    def tells(self):
        """Whether enough was done for a loss to show."""
        return self.counts["saved"] > ROUNDS and self.counts["deleted"] > ROUNDS / 10

    def check(self, lying):
        """Everything acknowledged is there, nothing is half there."""
        entries = {each["id"]: each["photos"] for each in lying["entries"]}
        owned = {}
        for photo in lying["photos"]:
            assert photo["whole"], f"torn: {photo}"
            owned.setdefault(photo["entry"], []).append(photo["id"])
        assert {key: sorted(ids) for key, ids in entries.items()} == {
            key: sorted(ids) for key, ids in owned.items()
        }
        for entry, photos in self.photos.items():
            assert entry in entries, f"acknowledged, and lost: {entry}"
            assert len(entries[entry]) >= photos
        for entry, photos in self.doomed.items():
            assert photos is not None or entry not in entries, f"came back: {entry}"


@pytest.mark.parametrize("browser", [chromium, firefox])
def test_killed_browser_loses_nothing_acknowledged(host, tmp_path, browser):
    """Killed at random moments, again and again, on one profile: never mended."""
    ledger = Ledger()
    moments = random.Random(SEED)
    # A busy machine does less before each end, and gets more of them.
    for turn in range(4 * ROUNDS):
        if turn > ROUNDS and ledger.tells():
            break
        began = time.monotonic()
        phone = Phone(browser(tmp_path), f"{host.url}#work-{turn}")
        try:
            ledger.check(state(host, ledger, turn))
            # As long as a start takes, so that a busy machine gets something done, too.
            time.sleep(moments.uniform(0, time.monotonic() - began))
        finally:
            phone.kill()
        drain(host, ledger)

    assert ledger.tells(), ledger.counts


def state(host, ledger, turn):
    """What lies there, as this round's page says before it begins."""
    while True:
        told = host.told.get(timeout=PATIENCE)
        if told.get("round") == turn:
            return told["lying"]
        ledger.note(told)


def drain(host, ledger):
    """What was told before the kill, and lay on the way."""
    while True:
        try:
            ledger.note(host.told.get(timeout=0.05))
        except queue.Empty:
            return


# What the app's first version made, with a draft, as a page of it holds it open.
FIRST_VERSION = """async (yields) => {
  const opening = indexedDB.open("fieldid", 1);
  opening.onupgradeneeded = () => {
    const db = opening.result;
    db.createObjectStore("drafts", { keyPath: ["guide", "format"] });
    db.createObjectStore("aside", { autoIncrement: true });
    db.createObjectStore("probe");
  };
  window.old = await new Promise((resolve) => {
    opening.onsuccess = () => resolve(opening.result);
  });
  if (yields) old.onversionchange = () => old.close();
  const writing = old.transaction(["drafts"], "readwrite");
  writing.objectStore("drafts").put({ format: 2, guide: "kittiwake", stamp: "old" });
  await new Promise((resolve) => { writing.oncomplete = resolve; });
}"""
SAVE = """async () => {
  const { app, find } = window.test;
  const { entry, photos } = find();
  try {
    await app.log.saveEntry(entry, photos);
    return "";
  } catch (error) {
    return error.message;
  }
}"""
CONNECTIONS = """() => {
  const { open } = IDBFactory.prototype;
  window.connections = [];
  window.closedNow = 0;
  IDBFactory.prototype.open = function (...named) {
    const opening = open.apply(this, named);
    opening.addEventListener("success", () => {
      connections.push(opening.result);
      opening.result.addEventListener("close", () => { closedNow += 1; });
    });
    return opening;
  };
}"""
LYING = "() => window.test.lying()"


def counts(page):
    """How many entries and photos lie in the database."""
    lying = page.evaluate(LYING)
    return len(lying["entries"]), len(lying["photos"])


def drafts(page):
    kept = page.evaluate("() => window.test.app.loadDrafts()")
    return [draft["stamp"] for draft in kept]


@pytest.mark.parametrize("harm", ["gone", "torn"])
def test_finds_come_back_when_the_database_is_lost(opened, tmp_path, harm):
    """As Chromium was seen to lose one after a kill: it begins with an empty one."""
    page = opened()
    for _ in range(3):
        assert page.evaluate(SAVE) == ""
    page.evaluate("() => window.test.app.log.saveSetting('wants', [1])")
    page.context.close()
    [folder] = (tmp_path / "profile").rglob("*.indexeddb.leveldb")
    if harm == "gone":
        shutil.rmtree(folder)
    else:
        for file in folder.glob("*.log"):
            file.write_bytes(b"torn" + file.read_bytes()[4:])

    page = opened()
    page.evaluate("() => window.test.app.log.loadEntries()")
    assert counts(page) == (3, 6)
    assert page.evaluate("() => window.test.app.log.restored()") == 3
    assert page.evaluate("() => window.test.app.log.loadSetting('wants')") == [1]


def test_old_tab_yields_to_an_upgrade(opened):
    old = opened()
    old.evaluate(FIRST_VERSION, True)
    new = opened(beside=old)

    assert new.evaluate(SAVE) == "", "nothing is blocked"
    assert counts(new) == (1, 2)
    assert drafts(new) == ["old"], "what the old version kept is still there"


def test_old_tab_that_holds_on_is_named(opened):
    old = opened()
    old.evaluate(FIRST_VERSION, False)
    new = opened(beside=old)

    assert "another page of this app holds an older storage open" in new.evaluate(SAVE)
    old.close()
    assert new.evaluate(SAVE) == ""
    assert drafts(new) == ["old"]


def test_newer_tab_leaves_the_log_readable(opened):
    here = opened()
    assert here.evaluate(SAVE) == ""
    newer = opened(beside=here)
    upgraded = newer.evaluate(
        """() => new Promise((resolve) => {
          const opening = indexedDB.open("fieldid", 99);
          opening.onsuccess = () => resolve("upgraded");
          opening.onblocked = () => resolve("blocked");
        })"""
    )

    assert upgraded == "upgraded"
    assert "written by a newer version of the app" in here.evaluate(SAVE)
    assert here.evaluate("async () => (await test.app.log.loadEntries()).length") == 1


@pytest.mark.parametrize("which", [1, 2, 3], ids=["entry", "photo", "second photo"])
def test_full_disk_keeps_no_half_find(opened, which):
    page = opened()
    assert page.evaluate(SAVE) == ""
    page.evaluate(
        """(which) => {
          const { put } = IDBObjectStore.prototype;
          let puts = 0;
          IDBObjectStore.prototype.put = function (...row) {
            puts += 1;
            if (puts === which) throw new DOMException("full", "QuotaExceededError");
            return put.apply(this, row);
          };
        }""",
        which,
    )

    assert page.evaluate(SAVE).startswith(FULL)
    assert counts(page) == (1, 2)
    assert page.evaluate(SAVE) == "", "with room again it goes on"


def test_log_that_fills_its_quota_stays_whole(opened, host):
    """The browser's own refusal, which comes late, and not where it is asked."""
    page = opened()
    devtools = page.context.new_cdp_session(page)
    quota = {"origin": host.url, "quotaSize": 3_000_000}
    devtools.send("Storage.overrideQuotaForOrigin", quota)

    said = [page.evaluate(SAVE) for _ in range(40)]
    kept = said.count("")
    assert 0 < kept < 40
    assert all(sentence.startswith(FULL) for sentence in said if sentence)
    assert counts(page) == (kept, 2 * kept)


@pytest.mark.parametrize("how", ["unsaid", "said"])
def test_connection_that_closed_is_opened_again(opened, host, how):
    """Browsers close them when they are short of memory; not all of them say so."""
    page = opened()
    page.evaluate(CONNECTIONS)
    assert page.evaluate(SAVE) == ""
    if how == "said":
        # To clear an origin's data is to close what holds it open.
        where = {"origin": host.url, "storageTypes": "indexeddb"}
        page.context.new_cdp_session(page).send("Storage.clearDataForOrigin", where)
        page.wait_for_function("closedNow === 1")
    else:
        page.evaluate("connections[0].close()")
    assert page.evaluate(SAVE) == ""

    assert page.evaluate("connections.length") == 2
    assert counts(page) == ((1, 2) if how == "said" else (2, 4))


def test_blob_never_enters_the_log(opened):
    page = opened()
    said = page.evaluate(
        """async () => {
          const { app, find } = window.test;
          const { entry, photos } = find();
          const blob = (each) => ({ ...each, bytes: new Blob([each.bytes]) });
          return app.log.saveEntry(entry, photos.map(blob)).catch((e) => e.message);
        }"""
    )

    assert said.startswith("A photo is not the one that its find names")
    assert counts(page) == (0, 0)


def test_tabs_hear_of_each_other(opened):
    here = opened()
    there = opened(beside=here)
    for page in (here, there):
        page.evaluate(
            """async () => {
              window.book = test.app.bookIn(test.app.log);
              await book.list();
            }"""
        )
    here.evaluate(
        """async () => {
          const [one, two] = [test.find(), test.find()];
          await book.add(one.entry, one.photos);
          await book.takeIn([[two]]);
        }"""
    )

    listed = "async () => (await book.list()).entries.length"
    assert here.evaluate(listed) == 2
    until(there, lambda: there.evaluate(listed) == 2)
