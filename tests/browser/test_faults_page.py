"""What may happen to a page that lies open: `faults.TESTED`."""

from playwright.sync_api import expect

from faults import expect_kept
from steps import go, open_kept, start, status, tap_first

# Playwright turns this off by itself, since few pages survive it.
BACK_CACHE = "--disable-back-forward-cache"
WIDER_THAN_SCREEN = "document.scrollingElement.scrollWidth > innerWidth"


def test_page_from_the_back_cache_goes_on(standing, launch):
    """It comes back as it was left, and keeps what is answered from then on."""
    page = launch(ignore_default_args=[BACK_CACHE])
    open_kept(page, standing.url)
    start(page)
    tap_first(page)
    go(page, "#look/pad")
    page.locator("#size").fill("6")
    page.evaluate(
        "addEventListener('pageshow', (event) => { window.cameBack = event.persisted })"
    )
    page.goto(f"{standing.url}guide-wrackham-teale-dotterel.html")
    # A page from this cache is not loaded again.
    page.go_back(wait_until="commit")

    assert page.evaluate("window.cameBack") is True
    expect(page.locator("#size")).to_have_value("6")
    page.get_by_role("button", name="Take this measure").click()
    expect_kept(page, 2)


def test_rotation_keeps_what_was_typed(standing, visit):
    """Half a code, half a size and the question stay, and so does the way on."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    go(page, "#look/hosel-code")
    for key in "C7":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()
    shown = page.locator("[data-slot=stamp]")
    before = shown.inner_text()
    for size in ((844, 390), (390, 844)):
        page.set_viewport_size({"width": size[0], "height": size[1]})
        assert shown.inner_text() == before
        assert not page.evaluate(WIDER_THAN_SCREEN)
    go(page, "#look/pad")
    page.locator("#size").fill("6")
    page.set_viewport_size({"width": 844, "height": 390})
    expect(page.locator("#size")).to_have_value("6")
    expect(page.locator("#size")).to_be_focused()
    page.get_by_role("button", name="Take this measure").click()
    expect_kept(page, 1)


def test_verdict_is_reached_at_twice_the_size(standing, visit):
    """At 200 % a phone of 640 has 320 of our pixels, and half its height."""
    page = visit((320, 284), device_scale_factor=2)
    open_kept(page, standing.url)
    start(page)
    for _ in range(3):
        tap_first(page)
        assert not page.evaluate(WIDER_THAN_SCREEN)
    lead = status(page)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-status]")).not_to_have_text(lead)
    tap_first(page)
    go(page, "#verdict")
    expect(page.locator("[data-screen=verdict] h1")).to_be_visible()
    assert not page.evaluate(WIDER_THAN_SCREEN)
