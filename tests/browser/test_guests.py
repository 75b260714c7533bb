"""Guides that are given as files: given on one phone, added on another, taken off."""

import json
import shutil
from hashlib import sha256
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from faults import expect_kept
from fieldid.build.site import bundle as built
from fieldid.engine import judge, prepare
from fieldid.engine.find import Find, Item
from fieldid.guides import given
from fieldid.guides.load import load
from finds import FULL_DISK
from make_given import base, changed
from mistaken import CASES
from serving import Host
from steps import choose, go, go_to_verdict, heading, open_kept, status

RULES = Path(__file__).parents[1] / "rules"
BITTERN, DUNLIN, CORNCRAKE = (
    load(RULES / f"{name}.toml")
    for name in ("fen-bittern", "lone-dunlin", "tarn-corncrake")
)
UNCHECKED = "Whoever runs this site has not checked it."
SETTING = """async (key) => {
  const db = await new Promise((resolve) => {
    const opening = indexedDB.open("fieldid");
    opening.onsuccess = () => resolve(opening.result);
  });
  const reading = db.transaction("settings").objectStore("settings").get(key);
  await new Promise((resolve) => { reading.onsuccess = resolve; });
  db.close();
  return reading.result?.value ?? null;
}"""


@pytest.fixture(scope="module")
def folders(tmp_path_factory):
    """Two apps, each with a guide that the other lacks, and the second one updated."""
    folder = tmp_path_factory.mktemp("given")
    for name, guides in (
        ("giver", [BITTERN, DUNLIN]),
        ("taker", [CORNCRAKE]),
        ("update", [CORNCRAKE, DUNLIN]),
    ):
        built(guides).write(folder / name)
    return folder


@pytest.fixture
def giver(folders):
    running = Host(folders / "giver")
    yield running
    running.stop()


@pytest.fixture
def taker(folders, tmp_path):
    shutil.copytree(folders / "taker", tmp_path / "taker")
    running = Host(tmp_path / "taker")
    yield running
    running.stop()


def screen(page: Page) -> Locator:
    return page.locator("[data-screen=guests]")


def said(page: Page) -> Locator:
    return screen(page).locator("[data-slot=said]")


def button(page: Page, name: str) -> Locator:
    return screen(page).get_by_role("button", name=name, exact=True)


def card(page: Page, guide: str = BITTERN.id) -> Locator:
    return page.locator(f"[data-guide-card={guide}]")


def opened(page: Page, url: str) -> None:
    """The screen, by the way that leads to it."""
    open_kept(page, url)
    page.get_by_role("link", name="Add or give a guide").click()
    expect(screen(page).locator("[data-heading]")).to_be_focused()


def choose_file(page: Page, content: bytes, name: str = "a.guide.txt") -> None:
    chosen = {"name": name, "mimeType": "text/plain", "buffer": content}
    screen(page).locator("input[type=file]").set_input_files(chosen)


def added(page: Page, url: str, content: bytes) -> None:
    opened(page, url)
    choose_file(page, content)
    button(page, "Add it").click()
    expect(said(page)).to_contain_text("was added")


def begin_with_guest(page: Page) -> None:
    """A find with the guide that was added, up to its first question."""
    card(page).get_by_role("link", name="Start looking").click()
    expect(heading(page)).to_be_visible()


def file_of(packed: object) -> bytes:
    """The file of a packed guide that nobody has checked."""
    text = json.dumps(packed, separators=(",", ":")).encode()
    head = {"app": "fieldid", "kind": "guide", "format": 1}
    head["sha256"] = sha256(text).hexdigest()
    return json.dumps(head).encode() + b"\n" + text + b"\n"


def test_given_guide_judges_on_another_phone(giver, taker, visit, tmp_path):
    """Without its host, and to the very words of Python's engine."""
    page = visit()
    opened(page, giver.url)
    button(page, BITTERN.title).click()
    with page.expect_download() as downloading:
        screen(page).get_by_role("link", name="Save the file").click()
    downloading.value.save_as(tmp_path / "given")
    content = (tmp_path / "given").read_bytes()
    assert downloading.value.suggested_filename == "fen-bittern.guide.txt"
    assert content == given.written(BITTERN)

    opened(page, taker.url)
    choose_file(page, content)
    plan = screen(page).locator("[data-slot=plan]")
    expect(plan).to_contain_text(BITTERN.title)
    expect(plan).to_contain_text(UNCHECKED)
    assert card(page).count() == 0
    button(page, "Add it").click()
    expect(said(page)).to_contain_text("was added")
    taker.stop()
    page.reload()
    go(page, "#home")
    expect(card(page)).to_contain_text("Added from a file on")
    expect(card(page)).to_contain_text(UNCHECKED)
    expect(page.locator("[data-ready-guests]")).to_have_text(
        "The guide that was added from a file is here too, checked."
    )

    begin_with_guest(page)
    clue = next(each for each in BITTERN.clues if hasattr(each.kind, "options"))
    option = clue.kind.options[0].id
    go(page, f"#look/{clue.id}")
    choose(page, option)
    exact = judge(prepare(BITTERN), Find(BITTERN.id, (Item(((clue.id, option),)),)))
    assert status(page).replace("\xa0", " ").casefold() == exact.say.casefold()
    assert page.locator("[data-screen=look] a[href^='guide-']").count() == 0
    go_to_verdict(page)


def hostile() -> list[tuple[str, bytes]]:
    """Files that must be refused, each with the beginning of what is said."""
    whole = given.written(BITTERN)
    head, body, _ = whole.split(b"\n")
    wrong = dict(CASES)
    ours = "This file cannot be added: it "
    theirs = "This guide cannot be added. "
    return [
        (ours + "is no file of a guide", b""),
        (ours + "is no file of a guide", b"\xff\xd8\xff\xe0 a photo"),
        (ours + "is no file of a guide", b"<html><script>alert(1)</script></html>"),
        (ours + "is no file of a guide", b"[]\n[]\n"),
        (ours + "is no file of a guide", body),
        (ours + "is no file of a guide", file_of([])),
        (ours + "is not what it was", whole.replace(b"1947", b"1946", 1)),
        (ours + "is not what it was", head),
        (ours + "is nested too deeply", file_of({"format": 1, "id": nested()})),
        (ours + "is larger than", whole + b" " * given.MOST_BYTES),
        (
            "This guide cannot be added: format 2 cannot be read",
            whole.replace(b'"format":1,"sha', b'"format":2,"sha', 1),
        ),
        *(
            (theirs, file_of(changed(base(), wrong[says])))
            for says in (
                "a scene with a script",
                "a drawing that listens",
                "a fill from elsewhere",
                "a key from which all objects come",
                "an id that climbs out of its folder",
                "a part that follows none that is here",
                "more steps than a phone bears",
            )
        ),
    ]


def nested() -> list:
    deep: list = []
    for _ in range(100):
        deep = [deep]
    return deep


def test_hostile_file_is_refused_in_one_sentence(taker, visit):
    page = visit()
    opened(page, taker.url)
    errors: list = []
    page.on("pageerror", lambda error: errors.append(error))
    page.on("console", lambda told: told.type == "error" and errors.append(told.text))

    for sentence, content in hostile():
        choose_file(page, content)

        expect(said(page)).not_to_have_text("Reading the file…")
        told = said(page).inner_text()
        assert told.startswith(sentence), (sentence, told)
        assert told.endswith(".")
        assert "\n" not in told
        assert button(page, "Add it").count() == 0
    assert errors == []
    assert page.evaluate(SETTING, "guests") is None
    assert page.evaluate("({}).x === undefined")
    go(page, "#home")
    assert card(page).count() == 0


def test_markup_in_a_guide_is_only_text(taker, visit):
    page = visit()
    packed = changed(base(), [(("title",), "<img src=x onerror=alert(1)> & co")])

    added(page, taker.url, file_of(packed))

    go(page, "#home")
    heading = card(page, packed["id"]).locator(".guide__name")
    expect(heading).to_have_text("<img src=x onerror=alert(1)> & co")
    assert page.locator("main img").count() == 0


def test_removed_guide_is_gone(taker, visit):
    page = visit()
    added(page, taker.url, given.written(BITTERN))
    button(page, f"Remove it: {BITTERN.title}").click()
    expect(card(page)).to_have_count(1)
    button(page, "Keep it").click()
    expect(card(page)).to_have_count(1)

    button(page, f"Remove it: {BITTERN.title}").click()
    screen(page).locator("[data-act=remove-now]").click()

    expect(said(page)).to_have_text("It was removed.")
    expect(card(page)).to_have_count(0)
    assert page.evaluate(SETTING, "guests") == []
    assert page.evaluate(SETTING, f"guest/{BITTERN.id}") is None
    page.reload()
    expect(page.locator("[data-slot=guests]")).to_contain_text("No guide was added")
    go(page, "#home")
    expect(card(page)).to_have_count(0)
    expect(page.locator("[data-ready-guests]")).to_be_hidden()


def test_guide_and_its_find_survive_an_update(taker, folders, visit, tmp_path):
    page = visit()
    added(page, taker.url, given.written(BITTERN))
    go(page, "#home")
    begin_with_guest(page)
    clue = next(each for each in BITTERN.clues if hasattr(each.kind, "options"))
    go(page, f"#look/{clue.id}")
    choose(page, clue.kind.options[0].id)

    shutil.rmtree(tmp_path / "taker")
    shutil.copytree(folders / "update", tmp_path / "taker")
    page.goto(taker.url)
    page.get_by_role("button", name="Update now").click()

    expect(card(page, DUNLIN.id)).to_have_count(1)
    expect(card(page)).to_contain_text("Added from a file on")
    expect(card(page).locator("[data-draft]")).to_contain_text("Left open: 1 reading")


def test_guide_of_a_name_that_is_here_asks_first(giver, visit):
    """Put in the place of the app's own, and the app's own again once it is removed."""
    page = visit()
    newer = given.taken(given.written(BITTERN))
    newer |= {"updated": "2099-01-01", "title": "Fen bitterns, told anew"}
    opened(page, giver.url)
    choose_file(page, file_of(newer))
    plan = screen(page).locator("[data-slot=plan]")
    expect(plan).to_contain_text("The app comes with a guide of this name")
    expect(plan).to_contain_text("this one is newer")
    button(page, "Put it in its place").click()
    expect(said(page)).to_contain_text("was added")
    expect(card(page)).to_have_count(1)
    expect(card(page)).to_contain_text("Fen bitterns, told anew")

    older = newer | {"updated": "2001-01-01", "title": "Fen bitterns of old"}
    choose_file(page, file_of(older))
    expect(plan).to_contain_text("A guide of this name was added before")
    expect(plan).to_contain_text("this one is older")
    button(page, "Leave it").click()
    button(page, "Remove it: Fen bitterns, told anew").click()
    screen(page).locator("[data-act=remove-now]").click()

    expect(said(page)).to_have_text("It was removed.")
    expect(card(page)).to_have_count(1)
    expect(card(page)).to_contain_text(BITTERN.title)
    expect(card(page)).not_to_contain_text("Added from a file")


def test_full_disk_adds_nothing_and_says_so(taker, visit):
    page = visit()
    opened(page, taker.url)
    choose_file(page, given.written(BITTERN))
    page.evaluate(FULL_DISK)
    button(page, "Add it").click()

    expect(said(page)).to_contain_text("The storage of this phone is full")
    assert page.evaluate(SETTING, "guests") is None
    go(page, "#home")
    expect(card(page)).to_have_count(0)


def test_draft_waits_for_the_guide_that_stands_in(giver, visit):
    """Begun on a guide in the place of the app's own, it is never held against that."""
    page = visit()
    newer = given.taken(given.written(BITTERN)) | {"updated": "2099-01-01"}
    rim = newer["clues"][-1]
    # The app's own guide knows no such clue.
    rim["id"] = "other-name"
    newer |= {"flags": [], "own": []}
    opened(page, giver.url)
    choose_file(page, file_of(newer))
    button(page, "Put it in its place").click()
    expect(said(page)).to_contain_text("was added")
    go(page, "#home")
    begin_with_guest(page)
    go(page, "#look/other-name")
    choose(page, rim["kind"]["options"][0]["id"])
    go(page, "#home")
    expect(card(page).locator("[data-draft]")).to_contain_text("Left open: 1 reading")
    expect_kept(page, 1)

    page.goto("about:blank")
    page.goto(giver.url)

    draft = card(page).locator("[data-draft]")
    expect(draft).to_contain_text("Left open: 1 reading")
    expect(page.locator("[data-ready-guests]")).to_be_visible()
    expect(page.locator("[data-banner]")).to_be_hidden()


def test_firefox_keeps_an_added_guide(taker, launch_firefox):
    page = launch_firefox()
    added(page, taker.url, given.written(BITTERN))

    page = launch_firefox()
    taker.stop()
    page.goto(taker.url)

    begin_with_guest(page)
    expect(page.locator("[data-guide-name]")).to_have_text(BITTERN.title)
