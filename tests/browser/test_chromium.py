"""The phone app in a real Chromium, the server really stopped."""

import json
import re
from datetime import datetime
from functools import partial

import pytest
from playwright.sync_api import Error, expect

from drivers import Played
from journey import walk
from serving import TRIED
from steps import (
    go_to_verdict,
    heading,
    open_kept,
    read,
    start,
    status,
    tap,
    tap_first,
    until,
)

SMALL = (320, 568)


def test_chromium_needs_no_signal(bundle, launch):
    walk(Played(partial(launch, SMALL)), bundle)


def test_journey_fails_without_the_cache(server, launch):
    """The control: with the caches gone, a stopped server is a stopped app."""
    page = launch()
    open_kept(page, server.url)
    # First, or the app would fetch what is missing.
    server.stop()
    page.evaluate(
        "async () => { for (const n of await caches.keys()) await caches.delete(n) }"
    )
    # A browser may hold a page of a plain host for a while by itself.
    page.context.new_cdp_session(page).send("Network.clearBrowserCache")

    page = launch()
    with pytest.raises(Error, match="ERR_FAILED"):
        page.goto(server.url)


def test_closing_at_any_moment_keeps_the_question(standing, launch):
    page = launch()
    open_kept(page, standing.url)
    start(page)
    tap_first(page)
    asked, lead = heading(page).inner_text(), status(page)

    page = launch()
    page.goto(standing.url + "#look")

    expect(heading(page)).to_have_text(asked)
    assert status(page) == lead


def test_phone_agrees_with_the_vectors(standing, visit):
    page = visit()
    page.goto(standing.url + "#check")
    page.locator("[data-screen=check] button").first.click()

    said = page.locator("[data-screen=check]")
    expect(said).to_contain_text(re.compile(r"All \d+ examples agree"), timeout=60_000)


def test_chromium_finds_it_installable(standing, launch):
    page = launch()
    open_kept(page, standing.url)
    session = page.context.new_cdp_session(page)

    errors = session.send("Page.getInstallabilityErrors")["installabilityErrors"]
    manifest = session.send("Page.getAppManifest")

    assert errors == []
    assert manifest["errors"] == []


def test_whole_journey_logs_no_error(standing, visit):
    """No policy violation, no failed request, no exception on any screen."""
    page = visit()
    said = []
    page.on("console", lambda line: line.type == "error" and said.append(line.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("requestfailed", lambda request: said.append(request.url))

    open_kept(page, standing.url)
    start(page)
    while page.locator("label.answer").count():
        before = heading(page).inner_text()
        page.locator("label.answer", has_text="Can’t tell").click()
        expect(page.locator("[data-heading]:visible")).not_to_have_text(before)
    for screen in ("#places", "#verdict", "#check", "#home"):
        page.goto(standing.url + screen)
        expect(page.locator("main h1:visible")).to_have_count(1)

    assert said == []


def test_code_is_typed_on_its_own_keypad(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.goto(standing.url + "#look/hosel-code")

    for key in "C7":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()
    for _ in range(2):
        page.get_by_role("button", name="Unreadable").click()
    page.get_by_role("button", name="Take this code").click()

    expect(page.locator("[data-status]")).to_contain_text("1957")


def test_wrong_measure_is_told_beside_the_field(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.goto(standing.url + "#look/pad")

    for typed in ("thick", "99"):
        page.locator("#size").fill(typed)
        page.get_by_role("button", name="Take this measure").click()
        expect(page.locator("#size-wrong")).to_be_visible()
    page.locator("#size").fill("6,1")
    page.get_by_role("button", name="Take this measure").click()

    expect(page.locator("[data-status]")).not_to_have_text("nothing read yet")


def test_only_what_shows_from_here_is_asked(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.get_by_label("I can only look from here").check()

    asked = []
    while page.locator("[data-screen=look] label.answer").count():
        asked.append(tap_away(page))

    assert 3 <= len(asked) <= 6
    expect(page.get_by_text("That is all for now")).to_be_visible()


def tap_away(page):
    before = heading(page).inner_text()
    page.locator("label.answer", has_text="Can’t tell").click()
    expect(page.locator("[data-heading]:visible")).not_to_have_text(before)
    return before


def test_gone_part_is_not_asked_about(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.goto(standing.url + "#look/grip-cap")
    tap(page, "The grip is gone")

    go_to_verdict(page)

    expect(page.locator("[data-screen=verdict]")).to_contain_text(
        "Do you still have the grip?"
    )


def test_months_that_are_said_are_drawn(standing, visit):
    """Long before and after the likeliest years, too, where it may be one of those."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    read(page, "grip-cap", "green-bird")
    go_to_verdict(page)

    said = (
        page.locator("[data-screen=verdict]").get_by_text("Built between").inner_text()
    )
    since, until = (
        datetime.strptime(month, "%B %Y")
        for month in re.findall(r"(?:between|and) (\w+ \d{4})", said)
    )
    months = 12 * (until.year - since.year) + until.month - since.month + 1
    assert months > 60
    assert page.locator(".months__column").count() >= months


def test_claim_is_weighed_on_the_verdict(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    start(page)
    page.goto(standing.url + "#look/hosel-code")
    for key in "C624":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()
    page.get_by_role("button", name="Take this code").click()
    go_to_verdict(page)

    page.locator("[data-change=claim]").select_option("1962")

    expect(page.locator("[data-screen=verdict]")).to_contain_text(
        "How do you know that it is a 1962?"
    )


def test_find_is_exported_for_the_command_line(standing, visit, tmp_path):
    from fieldid.guides import finds
    from fieldid.guides.load import load
    from fieldid.paths import RULES

    page = visit()
    open_kept(page, standing.url)
    start(page)
    tap_first(page)
    go_to_verdict(page)
    with page.expect_download() as saved:
        page.locator("a[download]").click()
    file = tmp_path / "find.json"
    saved.value.save_as(file)

    find = finds.load(file.read_bytes(), [load(RULES / "wrackham-teale-dotterel.toml")])

    assert len(find.items[0].readings) == 1
    assert json.loads(file.read_text())["format"] == 1


@pytest.mark.parametrize("script", ["app", "finding"])
def test_start_before_the_app_is_there_is_not_lost(script, standing, visit):
    page = visit()
    held = []
    page.route(f"**/phone/{script}.js", lambda route: held.append(route))
    page.goto(standing.url, wait_until="commit")
    page.locator(f"[data-guide-card={TRIED}] [data-act=start]").click()
    expect(page.locator("label.answer")).to_have_count(0)

    until(page, lambda: held)[0].continue_()
    expect(page.locator("label.answer").first).to_be_visible()
