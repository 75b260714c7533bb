"""What goes wrong while the app comes to the phone, or lies on it: `faults.TESTED`."""

import pytest
from playwright.sync_api import Page, expect

from faults import (
    ON_THE_WAY,
    Site,
    build_of,
    expect_kept,
    files_in,
    portal,
    published_anew,
    whole,
)
from fieldid.build.precache import integrity
from steps import READY, go, heading, open_kept, start, status, tap_first

# The end of an update: the state that its worker comes to, or why there was none.
UPDATED = """async () => {
  const registration = await navigator.serviceWorker.ready;
  const ended = new Promise((done) => {
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker.addEventListener("statechange", () => done(worker.state));
    }, { once: true });
  });
  try {
    await registration.update();
  } catch (error) {
    return `refused: ${error.name}`;
  }
  return ended;
}"""
BUILDS = """async () => (await caches.keys())
  .filter((name) => name.startsWith("fieldid:"))
  .map((name) => name.split(":").at(-1))"""
# Another byte, or half of them, in the kept file whose address ends so.
SPOIL_KEPT = """async ([ending, half]) => {
  const [name] = (await caches.keys()).filter((each) => each.startsWith("fieldid:"));
  const cache = await caches.open(name);
  const [request] = (await cache.keys()).filter(({ url }) => url.endsWith(ending));
  const kept = await cache.match(request);
  const bytes = new Uint8Array(await kept.arrayBuffer());
  // No script begins so.
  bytes[0] = ")".charCodeAt(0);
  const spoilt = half ? bytes.slice(0, bytes.length >> 1) : bytes;
  await cache.put(request, new Response(spoilt, { headers: kept.headers }));
}"""

# Waits until the kept file whose address ends so is again what its hash says.
MENDED = """async ([ending, hash]) => {
  for (;;) {
    const [name] = (await caches.keys()).filter((each) => each.startsWith("fieldid:"));
    const cache = await caches.open(name);
    const [request] = (await cache.keys()).filter(({ url }) => url.endsWith(ending));
    const body = await (await cache.match(request)).arrayBuffer();
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
    if (hash === `sha256-${btoa(String.fromCharCode(...digest))}`) return;
  }
}"""


@pytest.fixture
def site(bundle):
    running = Site(files_in(bundle))
    yield running
    running.stop()


def badge(page: Page):
    return page.locator("[data-ready]")


def draft_of_two(page: Page) -> tuple[str, str]:
    """What is asked and what is said once two questions were answered."""
    start(page)
    for _ in range(2):
        tap_first(page)
    return heading(page).inner_text(), status(page)


def expect_question(page: Page, draft: tuple[str, str]) -> None:
    go(page, "#look")
    expect(heading(page)).to_have_text(draft[0])
    assert status(page) == draft[1]
    expect_kept(page, 2)


def test_broken_update_changes_nothing(site, visit):
    """Whatever comes in place of a file, once or in turn: the old build goes on whole,
    says so, and takes the update when it comes as it should.
    """
    page = visit()
    before = build_of(site.files)
    open_kept(page, site.url)
    draft = draft_of_two(page)
    site.files = published_anew(site.files, "build-two")
    site.spared = ("sw.js",)
    ends = {}
    for fault in ON_THE_WAY:
        site.fault = fault
        ends[fault.__name__] = page.evaluate(UPDATED)
        expect(badge(page)).to_contain_text("could not be kept whole")
        expect(badge(page)).to_have_text(READY)
        assert page.evaluate(BUILDS) == [before]
    assert set(ends.values()) == {"redundant"}, ends
    site.stop()
    page.reload()
    expect_question(page, draft)

    site.fault = whole
    site.start_again()
    assert page.evaluate(UPDATED) == "installed"
    expect_question(page, draft)


def test_draft_outlives_skipped_builds(site, visit):
    """A build that nobody took is skipped; with the next the draft is where it was."""
    page = visit()
    before = site.files
    open_kept(page, site.url)
    draft = draft_of_two(page)
    for build in ("build-two", "build-three"):
        site.files = published_anew(before, build)
        assert page.evaluate(UPDATED) == "installed"
    expect_question(page, draft)
    go(page, "#home")
    page.get_by_role("button", name="Update now").click()

    expect(page.locator("script[src*='build-three']").first).to_be_attached()
    expect(badge(page)).to_have_text(READY)
    expect_question(page, draft)
    site.stop()
    page.reload()
    expect_question(page, draft)
    assert page.evaluate(BUILDS) == ["build-three"]


def test_portal_does_not_replace_the_app(site, launch):
    """Whoever opens the app behind a sign-in page has the app, its worker included."""
    page = launch()
    open_kept(page, site.url)
    draft = draft_of_two(page)
    site.fault = portal
    page = launch()
    page.goto(f"{site.url}#look")

    expect_question(page, draft)
    assert page.evaluate(UPDATED) == "refused: SecurityError"
    go(page, "#home")
    expect(badge(page)).to_have_text(READY)


def test_spoilt_file_is_told_then_mended(site, launch):
    """A kept script with another byte, or with half of them gone: Home is there and
    says what to do, and opened with signal it is mended for the next time.
    """
    page = launch()
    open_kept(page, site.url)
    draft = draft_of_two(page)
    scripts = f"v/{build_of(site.files)}/phone/"
    for name, half in (("finding.js", False), ("app.js", True)):
        page.evaluate(SPOIL_KEPT, [f"/{name}", half])
        site.stop()
        # A browser that runs has the script of such a host from memory.
        page = launch()
        page.goto(site.url)
        expect(page.get_by_role("heading", level=1).first).to_be_visible()
        expect(page.locator("[data-banner]")).to_contain_text("Your drafts are kept")
        site.start_again()
        page.reload()
        page.evaluate(MENDED, [f"/{name}", integrity(site.files[scripts + name])])
        page = launch()
        page.goto(site.url)
        expect(badge(page)).to_have_text(READY)
        expect_question(page, draft)
        go(page, "#home")
