"""Times in a real Chromium with the CPU slowed four times, on the served bundle.

`arithmetic` is one judge with the full ranking, six readings on the guide; for a set of
ten, with readings that differ, after an answer on one of them. A tap lasts
from the press on an answer until the browser has painted the next question, as W3C
Event Timing measures it, in steps of 8 ms.
"""

import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

from conftest import CHROMIUM, QUIET
from fieldid.paths import STATIC
from serving import Server

GUIDE = "wrackham-teale-dotterel"
READINGS = [
    ["toe-outline", "round"],
    ["sole-numerals", "plain"],
    ["face-scoring", "dotted"],
    ["pad", 6.1],
    ["collar-shape", "straight"],
    ["hosel-code", "C72?"],
]
ARITHMETIC = """async ([base, guide, readings]) => {
  const engine = await import(new URL("bench/engine/index.js", location));
  const packed = await (await fetch(base + `guides/${guide}.json`)).json();
  const tables = engine.prepare(engine.unpack(packed));
  const find = { guide, items: [{ readings, gone: [], member: null }], claim: null };
  const times = [];
  for (let i = 0; i < 150; i++) {
    const start = performance.now();
    engine.judge(tables, find);
    times.push(performance.now() - start);
  }
  return times.slice(50);
}"""
MEMBERS = "23456789WS"
SET = """async ([base, guide, items]) => {
  const engine = await import(new URL("bench/engine/index.js", location));
  const packed = await (await fetch(base + `guides/${guide}.json`)).json();
  const tables = engine.prepare(engine.unpack(packed));
  const once = [], anew = [];
  for (let i = 0; i < 60; i++) {
    const fresh = structuredClone(items);
    const changed = fresh.with(i % 10, structuredClone(fresh[i % 10]));
    for (const [all, times] of [[fresh, once], [changed, anew]]) {
      const start = performance.now();
      engine.judge(tables, { guide, items: all, claim: null });
      times.push(performance.now() - start);
    }
  }
  return [anew.slice(20), once.slice(20)];
}"""
WATCH = """() => {
  window.clicks = [];
  new PerformanceObserver((list) => window.clicks.push(
    ...list.getEntries().filter(({ name }) => name === "click")
  )).observe({ type: "event", durationThreshold: 16 });
}"""
TAKE_CLICKS = "() => window.clicks.splice(0).map(({ duration }) => duration)"
BRIEF = 16.0
"""A tap that took no longer than this is not reported."""


def ten() -> list[dict]:
    """A set of which every member has been read differently far."""
    return [
        {
            "member": member,
            "gone": [],
            "readings": [r for j, r in enumerate(READINGS) if (i + j) % 3],
        }
        for i, member in enumerate(MEMBERS)
    ]


def measure(slower: int = 4, walks: int = 8) -> dict[str, tuple[float, float]]:
    """Median and worst, in milliseconds, of the arithmetic and of a tap."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as started:
        server = Server(Path(folder) / "site")
        browser = started.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        try:
            page = _opened(browser, server.url, slower, service_workers="block")
            base = page.evaluate("document.body.dataset.base")
            page.route("**/bench/engine/*.js", _engine)
            sums = page.evaluate(ARITHMETIC, [base, GUIDE, READINGS])
            anew, once = page.evaluate(SET, [base, GUIDE, ten()])
            # A slowed page that stays open takes its time from the next one.
            page.context.close()
            tapped = [
                took
                for _ in range(walks)
                for took in _walk(_opened(browser, server.url, slower))
            ]
        finally:
            browser.close()
            server.stop()
    return {
        "judge and rank": (statistics.median(sums), max(sums)),
        "set of ten, one member changed": (statistics.median(anew), max(anew)),
        "set of ten, for the first time": (statistics.median(once), max(once)),
        f"tap to painted answer ({len(tapped)} taps)": (
            statistics.median(tapped),
            max(tapped),
        ),
    }


def _engine(route) -> None:
    """The engine's modules by themselves, which the bundle has in its one script."""
    name = route.request.url.rpartition("/")[2]
    route.fulfill(path=STATIC / "phone" / "engine" / name)


def _opened(browser, url: str, slower: int, **context):
    """The app on a phone that knows nothing yet, slowed down."""
    screen = {"width": 390, "height": 844}
    page = browser.new_context(viewport=screen, **context).new_page()
    page.goto(url)
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": slower})
    return page


def _walk(page) -> list[float]:
    """Taps on the first answer until nothing is left to look at."""
    page.locator("[data-act=start]").first.click()
    page.locator("label.answer").first.wait_for()
    page.wait_for_timeout(1000)
    page.evaluate(WATCH)
    times = []
    while page.locator("label.answer").count():
        typed = page.locator(".keypad, #size").count()
        answers = page.locator("label.answer", has_text="Can’t tell" if typed else "")
        answers.first.click()
        page.wait_for_timeout(400)
        times.append(max(page.evaluate(TAKE_CLICKS), default=BRIEF))
    page.context.close()
    return times
