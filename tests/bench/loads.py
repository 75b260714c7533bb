"""Loading on a slow line and a slow phone: the first time, again, without a line.

The line is Lighthouse's slow 4G as it is applied to requests (`mobileSlow4G` in its
core/config/constants.js): 562.5 ms until an answer begins, 1,474.56 kbit/s down and
675 up; the processor is slowed four times. The line of the service worker is not
slowed, so what it keeps is not timed here. Without a line the server is stopped and the
browser started anew on the profile that it left.
"""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Page, Playwright, sync_playwright

from conftest import CHROMIUM, QUIET
from pocket import FOUR, GUIDE, PATIENCE, SCREEN, served, slow, spread
from report import Record
from steps import open_kept

SLOWED = 4
LINE = {
    "offline": False,
    "latency": 150 * 3.75,
    "downloadThroughput": 1638.4 * 0.9 * 1000 / 8,
    "uploadThroughput": 750 * 0.9 * 1000 / 8,
}
TIMES = 5
KEPT = {"first paint": "painted", "largest paint": "largest", "first question": "asked"}
# Whoever is in a hurry taps from the first moment on; the script of a find may be late.
WATCH = f"""
new PerformanceObserver((list) => {{
  for (const {{ name, startTime }} of list.getEntries()) {{
    if (name === "first-contentful-paint") window.painted = startTime;
  }}
}}).observe({{ type: "paint", buffered: true }});
let tapped = false;
new PerformanceObserver((list) => {{
  if (!tapped) window.largest = list.getEntries().at(-1).startTime;
}}).observe({{ type: "largest-contentful-paint", buffered: true }});
const hurry = () => {{
  if (document.querySelector("label.answer")?.checkVisibility()) {{
    return setTimeout(() => (window.asked = performance.now()));
  }}
  // What is painted after a tap is no longer Home.
  if (document.readyState === "complete" && window.largest) {{
    tapped = true;
    document.querySelector("[data-guide-card={GUIDE}] [data-act=start]")?.click();
  }}
  requestAnimationFrame(hurry);
}};
requestAnimationFrame(hurry);
"""
TOLD = """async (keys) => {
  while (!window.asked) await new Promise((go) => setTimeout(go, 50));
  return Object.fromEntries(keys.map((key) => [key, window[key]]));
}"""


def measure(*, quick: bool) -> list[Record]:
    """Median and worst of each moment, from the start of the navigation on."""
    times = range(1 if quick else TIMES)
    with (
        tempfile.TemporaryDirectory() as folder,
        sync_playwright() as started,
        served(FOUR) as server,
    ):
        phones = Phones(started, Path(folder), server.url)
        told = {"first load": [phones.load(f"first {i}", line=True) for i in times]}
        for i in times:
            phones.keep(f"kept {i}")
        told["repeat load"] = [phones.load(f"kept {i}", line=True) for i in times]
        server.stop()
        told["offline start"] = [phones.load(f"kept {i}", line=False) for i in times]
    return [
        row
        for name, loads in told.items()
        for moment, key in KEPT.items()
        for row in spread(f"{name}: {moment}", [load[key] for load in loads])
    ]


class Phones:
    """Phones by name, each a Chromium on a profile that stays in a folder."""

    def __init__(self, started: Playwright, folder: Path, url: str) -> None:
        self.started = started
        self.folder = folder
        self.url = url

    def keep(self, name: str) -> None:
        """Opens the app on the phone until all of it is kept."""
        with self._on(name) as page:
            open_kept(page, self.url)

    def load(self, name: str, *, line: bool) -> dict[str, float]:
        """Starts the browser and opens the app; the moments of that, in ms."""
        with self._on(name) as page:
            slow(page, SLOWED)
            session = page.context.new_cdp_session(page)
            if line:
                session.send("Network.enable")
                session.send("Network.emulateNetworkConditions", LINE)
            page.add_init_script(WATCH)
            page.goto(self.url)
            return page.evaluate(TOLD, list(KEPT.values()))

    @contextmanager
    def _on(self, name: str) -> Iterator[Page]:
        context = self.started.chromium.launch_persistent_context(
            self.folder / name,
            executable_path=CHROMIUM,
            args=[*QUIET],
            viewport=SCREEN,
        )
        context.set_default_timeout(PATIENCE)
        try:
            yield context.pages[0]
        finally:
            context.close()
