"""The author's pages, held against what is held against the phone's: for any eyes, any
hands, any size of window and text. Each page is loaded once.
"""

from collections.abc import Callable
from dataclasses import dataclass

import pytest
from flask import Flask
from playwright.sync_api import Page, Response, expect

import hostile
import postbox
from access.checks import LOOKS
from access.walk import KINDS, barred, opened, phone
from fieldid.guides import document
from make import plover
from workbenches import HASH, author, bench, served

BROKEN = plover(("volume = 1.5", "volume = -1")).replace(
    'id = "plover"', 'id = "dunlin"'
)
NOTED = hostile.note(clue="rings")
SPECIMENS = "50"


@dataclass(frozen=True)
class Shown:
    """A page of the workbench: its address, and what is done there."""

    name: str
    at: str
    do: Callable[[Page], None] = lambda page: None
    is_locked: bool = False
    """Whether it is of a workbench that asks for a password."""
    status: int = 200

    def __str__(self) -> str:
        return self.name


def _refused(page: Page) -> None:
    """Nothing that was filled in is right."""
    for input in page.locator("main input[type=text]:visible").all()[:6]:
        input.fill("?")
    page.get_by_role("button", name="Save").last.click()
    expect(page.get_by_role("alert")).to_be_visible()


def _unfolded(page: Page) -> None:
    page.locator("details").evaluate_all("(all) => all.forEach((it) => it.open = true)")


def _judged(page: Page) -> None:
    page.get_by_label("How thick is the pad?").fill("6.1")
    page.get_by_role("button", name="Judge it").click()
    expect(page.locator(".tried .answer-year").first).to_be_visible()
    _unfolded(page)


def _not_judged(page: Page) -> None:
    page.get_by_label("How thick is the pad?").fill("thick")
    page.get_by_role("button", name="Judge it").click()
    expect(page.get_by_role("alert")).to_be_visible()


def _not_begun(page: Page) -> None:
    page.get_by_role("button", name="Make the guide").click()
    expect(page.get_by_role("alert")).to_be_visible()


def _sent_in(page: Page) -> None:
    """With a photo."""
    expect(page.locator(".photos__picture")).to_have_count(1)
    _unfolded(page)


def _not_accepted(page: Page) -> None:
    page.get_by_role("button", name="Accept it").click()
    expect(page.get_by_role("alert")).to_be_visible()


def _signing_in(page: Page) -> None:
    expect(page.get_by_label("Password")).to_be_visible()


def _deleted(page: Page) -> None:
    expect(page.get_by_role("button", name="Put it back")).to_be_visible()


def _counted(page: Page) -> None:
    expect(page.get_by_text("1 specimen in")).to_be_visible()


def _audited(page: Page) -> None:
    expect(page.locator("svg.chart").first).to_be_visible()


PAGES = (
    Shown("signing in", "guides/", _signing_in, is_locked=True),
    Shown("the guides", "guides/", _deleted),
    Shown("a new guide", "guides/new"),
    Shown("a new guide with mistakes", "guides/new", _not_begun),
    Shown("a guide", "guides/plover/"),
    Shown("a guide with a problem", "guides/dunlin/"),
    Shown("figures for the whole guide", "guides/plover/table/model"),
    Shown("a model year", "guides/plover/table/model_year/0"),
    Shown("a part", "guides/plover/table/part/2"),
    Shown("a choice", "guides/plover/table/clue/0", _unfolded),
    Shown("an answer", "guides/plover/table/clue/0/option/0"),
    Shown("a measure", "guides/plover/table/clue/1"),
    Shown("a code", "guides/plover/table/clue/2"),
    Shown("a stretch of a code", "guides/plover/table/clue/2/field/0"),
    Shown("a number", "guides/plover/table/clue/4"),
    Shown("a code of several layouts", "guides/plover/table/clue/6"),
    Shown("a red flag", "guides/plover/table/flag/1"),
    Shown("a set", "guides/plover/table/set"),
    Shown("prices", "guides/plover/table/prices"),
    Shown("a form with mistakes", "guides/plover/table/clue/1", _refused),
    Shown("which kind of clue", "guides/plover/add/clue"),
    Shown("the text", "guides/plover/raw"),
    Shown("a text with a problem", "guides/dunlin/raw"),
    Shown("taking a table out", "guides/plover/out/clue/0"),
    Shown("deleting a guide", "guides/plover/delete"),
    Shown("judge a find", "guides/plover/finds"),
    Shown("a find that was judged", "guides/plover/finds", _judged),
    Shown("a find that cannot be judged", "guides/plover/finds", _not_judged),
    Shown("a census", "guides/plover/census/", _counted),
    Shown("an audit", "guides/plover/audit", _audited),
    Shown("the inbox", "inbox"),
    Shown("a find that was sent in", "inbox/1", _sent_in),
    Shown("a find without what it is accepted for", "inbox/1", _not_accepted),
    Shown("publishing", "publish/?address=https://host.example/app/"),
    Shown("hosting", "publish/hosting"),
    Shown("nothing there", "guides/none/", status=404),
)

ALWAYS = ("light", "large text", "narrow")
"""How each page is looked at; otherwise only where something is drawn that no page
before has shown.
"""


@pytest.fixture(scope="module")
def desk(tmp_path_factory) -> Flask:
    """A workbench with all that its pages can show: guides, one of them broken and one
    deleted, finds in the inbox, a census, and an audit that has ended.
    """
    rules = tmp_path_factory.mktemp("bench") / "rules"
    rules.mkdir()
    for name in ("plover", "gone"):
        text = plover(('id = "plover"', f'id = "{name}"'))
        (rules / f"{name}.toml").write_text(text)
    (rules / "dunlin.toml").write_text(BROKEN)
    app = bench(rules)
    browser = author(app)
    photo = (f"photos/{NOTED['id']}.jpg", hostile.jpeg())
    finds = hostile.export(postbox.plover(photos=[NOTED]))
    other = hostile.export(postbox.plover(id=hostile.fresh(1)))
    postbox.drop(
        browser,
        ("one.zip", hostile.pack(photo, ("finds.json", finds))),
        ("two.json", other),
    )
    postbox.accept(browser, 2)
    # All forms of the guide then show what an edit does to it.
    browser.send("/guides/plover/finds", do="inbox", take="1")
    tag = document.opened(rules / "gone.toml").tag
    browser.send("/guides/gone/delete", tag=tag)
    browser.send("/guides/plover/audit", specimens=SPECIMENS, seed="3")
    app.extensions["auditor"].wait()
    return app


@pytest.fixture(scope="module")
def said() -> list[str]:
    """What the browser complained of."""
    return []


@pytest.fixture(scope="module")
def found(chromium, desk, said) -> dict[str, list[str]]:
    """The barriers of each page, by its name."""
    known: set[str] = set()
    locked = bench(desk.extensions["place"].rules, password=HASH)
    with served(desk) as own, served(locked) as other, phone(chromium) as context:
        page = opened(context, said)
        page.on("response", lambda answer: said.extend(_missing(answer)))
        return {
            str(shown): held(page, shown, other if shown.is_locked else own, known)
            for shown in PAGES
        }


def held(page: Page, shown: Shown, address: str, known: set[str]) -> list[str]:
    """The barriers of a page; what is drawn there is `known` from then on."""
    assert page.goto(f"{address}/{shown.at}").status == shown.status
    shown.do(page)
    kinds = {*page.evaluate(KINDS)}
    looks = [look for look in LOOKS if kinds - known or look.name in ALWAYS]
    known |= kinds
    return barred(page, looks)


def _missing(answer: Response) -> list[str]:
    """What a page asked for and did not get; an answer to a form may be a refusal."""
    wanted = answer.request.resource_type
    return [answer.url] if answer.status >= 400 and wanted != "document" else []


@pytest.mark.parametrize("shown", PAGES, ids=str)
def test_page_of_the_author_has_no_barrier(shown, found):
    """axe-core with target sizes; dark, more contrast and forced colours; nothing wider
    than the window at 320 pixels and at twice the text; the Tab key.
    """
    assert found[str(shown)] == []


def test_nothing_is_refused_at_the_workbench(found, said):
    # The console does not tell what was asked for, as `_missing` does.
    assert [each for each in said if "status of 40" not in each] == []
