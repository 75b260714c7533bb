"""A full log of 5,000 finds in Chromium with the processor slowed four times.

The finds are taken in from a file; then the list is opened, anew and again, and
searched. Each time lasts until the browser has had its chance to paint.
"""

from playwright.sync_api import Page

import hostile
from pocket import GUIDE, chromium, page_of, served, slow, spread
from report import Record

SLOWED = 4
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


def measure(*, quick: bool) -> list[Record]:
    """Median and worst of each; taking in is done once."""
    times = 2 if quick else TIMES
    with served([GUIDE]) as server, chromium() as browser:
        page = page_of(browser)
        page.goto(f"{server.url}#finds")
        slow(page, SLOWED)
        taken = _take_in(page)
        anew = []
        for _ in range(times // 2):
            page.reload()
            anew.append(page.evaluate(OPEN_ANEW))
        again = [page.evaluate(OPEN) for _ in range(times)]
        searched = [page.evaluate(SEARCH, typed) for _ in range(2) for typed in TYPED]
    return [
        Record("taken in", taken, "ms"),
        *spread("list of a fresh page", anew),
        *spread("list again", again),
        *spread("search", searched),
    ]


def _take_in(page: Page) -> float:
    """Chosen, seen and said yes to; the milliseconds from the yes on."""
    file = {"name": "full.json", "mimeType": "application/json", "buffer": full()}
    page.locator("#log-file").set_input_files(file)
    page.locator("[data-act=take-in]").wait_for()
    start = page.evaluate("performance.now()")
    page.locator("[data-act=take-in]").click()
    page.get_by_text(f"{FINDS} finds were taken in.").wait_for()
    return page.evaluate("performance.now()") - start
