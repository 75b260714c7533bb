"""Nothing moves under the finger while the app comes."""

from playwright.sync_api import expect

from steps import READY, go_to_verdict, heading, open_kept, start, tap_first

WATCH = """
window.moved = 0;
new PerformanceObserver((list) => {
  for (const { value } of list.getEntries()) window.moved += value;
}).observe({ type: "layout-shift", buffered: true });
"""
# From its top, since further down a browser keeps what is read in its place.
PUSH = """async () => {
  const painted = () =>
    new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
  scrollTo(0, 0);
  await painted();
  const wall = document.createElement("div");
  wall.style.height = "300px";
  document.body.prepend(wall);
  while (!window.moved) await painted();
}"""
STILL = 0.005
"""As W3C Layout Instability counts; a line that moves all below it has several times
as much.
"""


def test_nothing_moves_while_a_screen_comes(standing, visit):
    """Neither on Home nor for whoever comes back to a find; a push is noticed."""
    page = visit()
    page.add_init_script(WATCH)
    open_kept(page, standing.url)
    expect(page.locator("[data-finds]")).to_be_visible()
    assert page.evaluate("window.moved") < STILL
    start(page)
    tap_first(page)
    page.reload()
    expect(heading(page)).to_be_visible()
    expect(page.locator("[data-ready]")).to_have_text(READY)
    assert page.evaluate("window.moved") < STILL
    go_to_verdict(page)
    page.reload()
    expect(page.locator("[data-screen=verdict] [data-heading]")).to_be_visible()
    expect(page.locator("[data-ready]")).to_have_text(READY)
    assert page.evaluate("window.moved") < STILL

    page.evaluate(PUSH)
    assert page.evaluate("window.moved") > STILL


def test_find_that_never_comes_leaves_home(standing, visit):
    """Home is hidden for a second at most, whatever becomes of the script."""
    page = visit(service_workers="block")
    page.route("**/finding.js", lambda route: None)
    page.goto(f"{standing.url}#verdict")

    assert page.evaluate("document.documentElement.dataset.coming") == ""
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()
