"""A phone to measure: the app from its own server in a slowed Chromium."""

import statistics
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

from conftest import CHROMIUM, QUIET, SIZE
from report import Record, at_most
from serving import Server

SCREEN = {"width": SIZE[0], "height": SIZE[1]}
PATIENCE = 180_000
"""How long, in ms, a slowed page may take."""
GUIDE = "wrackham-teale-dotterel"
"""The guide with the most parts and years of those that ask question by question."""
FOUR = (GUIDE, "wrackham-teale-whimbrel", "dated-marks", "golf-club-era")
"""The four of the guides that come along that weigh most together."""


@contextmanager
def served(guides: Sequence[str] = ()) -> Iterator[Server]:
    """`fieldid serve` on a bundle of its own, with these guides or with all."""
    with tempfile.TemporaryDirectory() as folder:
        server = Server(Path(folder) / "site", guides=guides)
        try:
            yield server
        finally:
            server.stop()


@contextmanager
def chromium() -> Iterator[Browser]:
    """A Chromium without a window; each context is a phone that knows nothing yet."""
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        try:
            yield browser
        finally:
            browser.close()


def page_of(browser: Browser, **context) -> Page:
    """An empty page on a new phone."""
    page = browser.new_context(viewport=SCREEN, **context).new_page()
    page.set_default_timeout(PATIENCE)
    return page


def slow(page: Page, times: float) -> None:
    """Slows the page's processor so many times."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": times})


def spread(
    name: str, times: Sequence[float], *, goal: float | None = None
) -> list[Record]:
    """Median and worst of some times in ms; the goal is for the median."""
    middle = statistics.median(times)
    note = f"{len(times)} times" if len(times) > 1 else ""
    told = f"{name}, median"
    return [
        Record(told, middle, "ms", note=note)
        if goal is None
        else at_most(goal, told, middle, "ms", note),
        Record(f"{name}, worst", max(times), "ms"),
    ]
