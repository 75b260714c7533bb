"""Times of a full log in a real Chromium with the CPU slowed four times.

5,000 finds are taken in from a file; then the list is opened, anew and again, and
searched. Each time lasts until the browser has had its chance to paint.
"""

import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS), str(TESTS / "browser")]

import hostile
from conftest import CHROMIUM, QUIET
from phone import GUIDE
from serving import Server

FINDS = 5_000
TIMES = 12
PLACES = ("Ellerholm", "Wexbury", "Kelderwick", "the fair", "an attic")
TYPED = ("e", "el", "ellerholm", "1957 wexbury", "number 499", "nothing of this")
PAINTED = """(done) => new Promise((resolve) => {
  const start = performance.now();
  const look = () => {
    if (!done()) return requestAnimationFrame(look);
    // Behind a frame whatever it drew is on the screen.
    requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - start)));
  };
  look();
})"""
OPEN = f"""async () => {{
  const painted = {PAINTED};
  location.hash = "#home";
  await painted(() => document.querySelector("[data-screen=home]").checkVisibility());
  location.hash = "#finds";
  return painted(() => document.querySelector(".kept")?.checkVisibility());
}}"""
OPEN_ANEW = """() => new Promise((resolve) => {
  const look = () => {
    const drawn = document.querySelector(".kept")?.checkVisibility();
    if (drawn) return setTimeout(() => resolve(performance.now()));
    requestAnimationFrame(look);
  };
  look();
})"""
# While another answer stands there, the typed one has not come.
SEARCH = f"""async (typed) => {{
  const painted = {PAINTED};
  const field = document.querySelector("#log-search");
  const rows = document.querySelector("[data-screen=finds] [data-slot=rows]");
  let drawn = false;
  new MutationObserver((_, watch) => {{
    drawn = true;
    watch.disconnect();
  }}).observe(rows, {{ childList: true, attributes: true }});
  field.value = typed;
  field.dispatchEvent(new InputEvent("input", {{ bubbles: true }}));
  return painted(() => drawn);
}}"""


def full() -> bytes:
    """A file of as many finds as the log holds, no two alike."""
    items = [{"readings": {"toe-outline": "round", "pad": 6.1}}]
    entries = [
        hostile.entry(
            id=f"{i:08x}-0000-4000-8000-000000000001",
            guide=GUIDE,
            find=hostile.find(guide=GUIDE, items=items, claim=None),
            title=f"Iron number {i}" if i % 3 else "",
            place=PLACES[i % len(PLACES)],
            date=f"20{i % 25:02}-0{i % 9 + 1}-{i % 28 + 1:02}",
            paid=i % 400,
        )
        for i in range(FINDS)
    ]
    return hostile.export(*entries)


def measure(slower: int = 4) -> dict[str, tuple[float, float]]:
    """Median and worst, in milliseconds."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as started:
        server = Server(Path(folder) / "site", guides=[GUIDE])
        browser = started.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        try:
            return _measured(browser, server.url, slower)
        finally:
            browser.close()
            server.stop()


def _measured(browser, url: str, slower: int) -> dict[str, tuple[float, float]]:
    page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
    page.set_default_timeout(120_000)
    page.goto(f"{url}#finds")
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": slower})
    taken = _take_in(page)
    anew = []
    for _ in range(TIMES // 2):
        page.reload()
        anew.append(page.evaluate(OPEN_ANEW))
    again = [page.evaluate(OPEN) for _ in range(TIMES)]
    searched = [page.evaluate(SEARCH, typed) for _ in range(2) for typed in TYPED]
    names = (f"{FINDS} finds: taken in", "list of a fresh page", "list again", "search")
    every = ([taken], anew, again, searched)
    return {
        name: (statistics.median(times), max(times))
        for name, times in zip(names, every, strict=True)
    }


def _take_in(page) -> float:
    """Chosen, seen and said yes to; the milliseconds from the yes on."""
    file = {"name": "full.json", "mimeType": "application/json", "buffer": full()}
    page.locator("#log-file").set_input_files(file)
    page.locator("[data-act=take-in]").wait_for()
    start = page.evaluate("performance.now()")
    page.locator("[data-act=take-in]").click()
    page.get_by_text(f"{FINDS} finds were taken in.").wait_for()
    return page.evaluate("performance.now()") - start


if __name__ == "__main__":
    for name, (median, worst) in measure().items():
        print(f"{name}: {median:.0f} ms, at most {worst:.0f} ms")
