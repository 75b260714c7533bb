"""From a tap on an answer until the next question is painted, on Looking.

A tap lasts from its event's own time, which the browser gives it when the finger comes
up, through whatever the page was still busy with, until the frame in which the heading
has changed was painted. The processor is slowed as the row says.
"""

from playwright.sync_api import Page

from pocket import GUIDE, chromium, page_of, served, slow, spread
from report import Record
from steps import open_kept

SLOWED = (1, 4, 6)
GOAL = 50
"""The goal in ms for the median at four times slower."""
WALKS = 8
# A frame is made and painted in one task, so the most urgent task that was asked for
# meanwhile comes right after the paint.
WATCH = """() => {
  const heading = () => document.querySelector("[data-screen=look] [data-heading]");
  window.taps = [];
  window.taken = async () => {
    while (!window.taps.length) await new Promise((go) => setTimeout(go, 20));
    return window.taps.shift();
  };
  addEventListener("pointerup", ({ target, timeStamp }) => {
    if (!target.closest("label.answer")) return;
    const before = heading()?.textContent;
    const look = () => {
      if (heading()?.checkVisibility() && heading().textContent === before) {
        return requestAnimationFrame(look);
      }
      scheduler.postTask(() => window.taps.push(performance.now() - timeStamp),
        { priority: "user-blocking" });
    };
    requestAnimationFrame(look);
  }, true);
}"""
TAKEN = "() => window.taken()"


def measure(*, quick: bool) -> list[Record]:
    """Median and worst at each speed."""
    rows = []
    with served() as server:
        for times in SLOWED:
            # What a browser has measured before would bend the next speed.
            with chromium() as browser:
                taken = [
                    took
                    for walk in range(2 if quick else WALKS)
                    for took in _walk(page_of(browser), server.url, times, walk)
                ]
            goal = GOAL if times == 4 else None
            rows += spread(f"processor slowed {times} times", taken, goal=goal)
    return rows


def _walk(page: Page, url: str, slower: int, walk: int) -> list[float]:
    """Taps until nothing is left to look at, on each walk on other answers."""
    # What the phone keeps must not come in between.
    open_kept(page, url)
    page.locator(f"[data-guide-card={GUIDE}] [data-act=start]").click()
    page.locator("label.answer").first.wait_for()
    slow(page, slower)
    page.evaluate(WATCH)
    times: list[float] = []
    while page.locator("label.answer").count():
        typed = page.locator(".keypad, #size").count()
        answers = page.locator("label.answer", has_text="Can’t tell" if typed else "")
        answers.nth((walk + len(times)) % answers.count()).click()
        times.append(page.evaluate(TAKEN))
    page.context.close()
    return times
