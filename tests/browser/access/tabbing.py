"""A page walked by the Tab key: all is reached, in order, in sight, and left again."""

import itertools

from playwright.sync_api import Page

from access.scripts import script

DATES = 8
"""So many presses more, since a date has several stops of its own."""

EXPECTED = script("stops")

HERE = script("focused")

FRAME = "() => new Promise((go) => requestAnimationFrame(() => setTimeout(go)))"
MOVING = 60
"""So many frames a page may take to move to what has the focus."""


def tabbed(page: Page) -> list[str]:
    """What is wrong on the way of the Tab key through the page, once around."""
    count = page.evaluate(EXPECTED)
    if not count:
        return []
    # The first one too has to be reached by a key, or nothing would show the focus.
    page.keyboard.press("Tab")
    page.keyboard.press("Shift+Tab")
    visited = [page.evaluate(HERE)]
    assert visited[0], "nothing takes the focus"
    for _ in range(count + DATES):
        page.keyboard.press("Tab")
        here = _settled(page)
        if here is None or here["at"] == 0:
            break
        if here["at"] != visited[-1]["at"]:
            visited.append(here)
    else:
        return [*_wrong(visited), f"the focus never leaves: {visited[-1]['name']}"]
    missed = sorted({*range(count)} - {each["at"] for each in visited})
    names = page.evaluate(
        """(at) => at.map((i) => window.stops[i]).filter((it) => it.isConnected)
          .map((it) => it.outerHTML.slice(0, 110))""",
        missed,
    )
    return [*_wrong(visited), *(f"Tab does not reach: {name}" for name in names)]


def _settled(page: Page) -> dict | None:
    """What has the focus; what is wrong there stays so, however long one looks."""
    for _ in range(MOVING):
        here = page.evaluate(HERE)
        if here is None or not here["wrong"]:
            return here
        page.evaluate(FRAME)
    return here


def _wrong(visited: list[dict]) -> list[str]:
    found = [each for here in visited for each in here["wrong"]]
    lines = [here for here in visited if here["top"] is not None]
    for one, other in itertools.pairwise(lines):
        # On one line the order is the page's own; back up it goes nowhere.
        if other["bottom"] <= one["top"] - 1:
            found.append(f"goes back up to: {other['name']}")
    return found
