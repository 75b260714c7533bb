"""The app as one file, opened from a disk: nothing beside it, no signal, no errors."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, Request, expect

from fieldid.build.onefile import one_file
from serving import shelf
from steps import (
    add_set,
    follow_system,
    go,
    go_to_verdict,
    ground,
    heading,
    read,
    start,
    status,
    tap_first,
)


@pytest.fixture(scope="module")
def file(tmp_path_factory) -> Path:
    """The file with the guides that come along, the most tried one first."""
    made = tmp_path_factory.mktemp("file") / "fieldid.html"
    made.write_bytes(one_file(shelf()))
    return made


@pytest.fixture(params=["visit", "launch_firefox"])
def opened(request, file) -> Callable[[], tuple[Page, list[str]]]:
    """Opens the file from the disk; what the browser says and asks for is noted."""
    page = request.getfixturevalue(request.param)()
    said: list[str] = []

    def note(asked: Request) -> None:
        if not asked.url.startswith(("data:", file.as_uri())):
            said.append(asked.url)

    page.on("console", lambda line: said.append(line.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", note)
    page.goto(file.as_uri())
    return page, said


def test_verdict_is_reached_from_a_disk(opened):
    """Questions, undo, the whole object, the claim, the message and the verdict."""
    page, said = opened
    expect(page.get_by_text("Scripts do not run here")).to_be_hidden()
    start(page)
    asked = [tap_first(page) for _ in range(3)]
    lead = status(page)
    tap_first(page)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-status]")).to_have_text(lead)
    go(page, "#look/hosel-code")
    for key in "C7":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()
    for _ in range(2):
        page.get_by_role("button", name="Unreadable").click()
    page.get_by_role("button", name="Take this code").click()
    go(page, "#claim")
    page.locator("[data-screen=claim] select").select_option("1957")
    go_to_verdict(page)

    verdict = page.locator("[data-screen=verdict]")
    assert len({*asked}) == 3
    expect(verdict.locator("[data-heading]")).to_contain_text(re.compile(r"19\d\d"))
    expect(verdict.locator(".claim__say")).to_contain_text("1957")
    expect(verdict.get_by_role("link", name="What to offer")).to_be_hidden()
    expect(verdict.get_by_role("button", name="Keep in my finds")).to_be_hidden()
    go(page, "#seller")
    expect(page.get_by_label("The message")).to_have_value(re.compile("[?]"))
    assert said == []


def test_set_is_judged_from_a_disk(opened):
    page, said = opened
    start(page)
    add_set(page)
    read(page, "collar-rings", "red-gold")
    go_to_verdict(page)

    expect(page.locator("[data-screen=verdict] [data-heading]")).to_contain_text("19")
    assert said == []


def test_marks_bracket_from_a_disk(opened):
    page, said = opened
    page.get_by_role("link", name="Look for marks").click()
    go(page, "#look/us-address")
    page.locator("label.answer:has(input[value=zip])").click()
    go(page, "#verdict")

    expect(page.locator("[data-screen=verdict]")).to_contain_text("1963")
    assert said == []


@pytest.mark.parametrize("screen", ["#finds", "#offer", "#practice/x", "#check", "#x"])
def test_screen_of_the_app_leads_home(opened, screen):
    page, said = opened
    go(page, "#places")
    go(page, screen)

    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()
    assert said == []


def test_dark_page_stays_dark(opened):
    """It is all that this file keeps, and no more than a word."""
    page, said = opened
    light = ground(page)
    page.get_by_label("Dark").check()
    page.reload()

    expect(page.get_by_label("Dark")).to_be_checked()
    assert ground(page) != light
    assert page.evaluate("({ ...localStorage })") == {"fieldid-theme": "dark"}
    assert said == []


def test_dark_follows_the_system(file, visit):
    """Also where the browser lets such a page keep nothing."""
    page = visit(color_scheme="dark")
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw Error() } })"
    )
    page.goto(file.as_uri())

    follow_system(page)


def test_nothing_is_kept_and_that_is_asked(opened):
    """Whoever reads nothing may leave; whoever read something is asked first."""
    page, _ = opened
    questions = []
    page.on("dialog", lambda dialog: (questions.append(dialog.type), dialog.accept()))
    start(page)
    page.reload()
    assert questions == []

    page.goto(page.url.partition("#")[0])
    start(page)
    tap_first(page)
    page.reload()

    assert questions == ["beforeunload"]
    expect(page.get_by_text("Left open")).to_have_count(0)
    kept = page.evaluate(
        "async () => [await indexedDB.databases(), localStorage.length]"
    )
    assert kept == [[], 0]


def test_find_goes_on_from_home(opened):
    page, said = opened
    start(page)
    tap_first(page)
    asked = heading(page).inner_text()
    page.get_by_role("link", name="All guides").click()
    page.get_by_text("Start a new one instead").click()
    expect(page.get_by_text("This forgets what lies open")).to_be_visible()
    expect(page.get_by_text("What is kept in My finds")).to_be_hidden()
    page.get_by_role("link", name="Go on looking").click()

    expect(heading(page)).to_have_text(asked)
    assert said == []


def test_page_of_no_site_goes_on(visit, file):
    """As Android opens a file: without an origin, where asking for storage throws."""
    page = visit()
    errors: list[str] = []
    page.on("console", lambda line: errors.append(line.text))
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.route(
        "**/fieldid.html",
        lambda route: route.fulfill(
            body=file.read_bytes(),
            content_type="text/html",
            headers={"Content-Security-Policy": "sandbox allow-scripts"},
        ),
    )
    page.goto("https://host.example/fieldid.html")
    assert page.evaluate("() => origin") == "null"
    start(page)
    for _ in range(3):
        tap_first(page)
    go_to_verdict(page)

    expect(page.locator("[data-screen=verdict] [data-heading]")).to_contain_text("19")
    assert errors == []
