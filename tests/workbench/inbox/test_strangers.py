"""What strangers send in: nothing of it is run, and every lie is told."""

import re

import html5lib
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import hostile
from fieldid.census import read
from fieldid.guides.load import load
from make import PLOVER
from postbox import READ, SCRIPT, accept, became, drop, page, plover, problems, refuse


def test_photo_is_one_fixed_type_and_sandboxed(browser):
    drop(browser, ("one.zip", hostile.pack(*hostile.good())))

    answer = browser.get("/photos/1")

    assert answer.data == hostile.jpeg()
    assert answer.headers["Content-Type"] == "image/jpeg"
    assert answer.headers["Content-Security-Policy"] == "default-src 'none'; sandbox"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"


def test_nothing_that_a_file_says_is_markup(browser):
    words = {name: f"{name} {SCRIPT}" for name in ("title", "note", "place")}
    verdict = hostile.verdict(say=SCRIPT)
    bad = hostile.entry(id=hostile.fresh(2), title=SCRIPT, date="x")
    hostile_entry = plover(verdict=verdict, **words)

    answers = [
        drop(browser, (f"{SCRIPT}.json", hostile.export(hostile_entry, bad))),
        browser.get("/inbox"),
        browser.get("/inbox/1"),
    ]

    for answer in answers:
        assert SCRIPT not in answer.text
        assert SCRIPT in page(answer).text


def test_pages_are_valid_html(browser):
    items = [{"member": m, "readings": READ} for m in ("4", "5")]
    entries = [plover(items), plover(id=hostile.fresh(1)), hostile.entry(format=2)]
    answers = [
        drop(browser, ("one.json", hostile.export(*entries))),
        browser.get("/inbox/1"),
        accept(browser, years="x"),
        refuse(browser, 2, ""),
        refuse(browser, 2),
        browser.get("/inbox/2"),
        browser.get("/inbox"),
    ]

    for answer in answers:
        if answer.status_code != 303:
            html5lib.HTMLParser(strict=True).parse(answer.text)
            ids = re.findall(r' id="([^"]+)"', answer.text)
            assert len(ids) == len(set(ids))


def test_every_file_that_lies_is_told_on_the_page(browser):
    cases = [each for group in hostile.GROUPS for each in group()]
    small = [
        (name, data)
        for name, _, data, _ in cases
        if len(data) < 100_000 and name != "find-alone.json"
    ]

    answer = drop(browser, *small)

    assert answer.status_code == 200
    assert len(became(answer)) == len(small) > 100
    assert page(answer).select_one("#waiting").text == "To be looked at: 0"


def test_every_form_holds_its_token(browser):
    drop(browser, ("one.json", hostile.export(plover(), plover(id=hostile.fresh(1)))))
    refuse(browser, 2)

    for path, count in (("/inbox", 2), ("/inbox/1", 3), ("/inbox/2", 1)):
        forms = page(browser.get(path)).select("main form")
        assert len(forms) == count
        assert all(form.select_one("input[name=csrf_token]") for form in forms)


def test_forms_without_their_token_do_nothing(browser, inbox):
    for path in ("/inbox", "/inbox/1/accept", "/inbox/1/refuse"):
        assert browser.post(path, data={"x": "y"}).status_code == 400
    assert browser.post("/inbox/decisions/1/undo").status_code == 400
    assert not inbox.exists()


@given(
    st.dictionaries(
        st.sampled_from(["years", "how", "note", "name", "members"]),
        st.text(max_size=40) | st.sampled_from(["1952", "receipt", "=1+1", "?"]),
    )
)
@settings(
    max_examples=40,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_any_text_in_the_form_is_told_or_read_back(browser, inbox, rules, fields):
    """What is written can be read: no specimen breaks the census."""
    census = read.beside(rules / PLOVER.name)
    census.unlink(missing_ok=True)
    inbox.unlink(missing_ok=True)
    drop(browser, ("one.json", hostile.export(plover())))

    answer = accept(browser, **fields)

    assert answer.status_code in (303, 400, 409)
    if answer.status_code == 303:
        (specimen,) = read.load(census, load(rules / PLOVER.name)).specimens
        assert not specimen.name.startswith("'=")
        assert not any(
            cell.startswith(("=", "+", "-", "@"))
            for cell in census.read_text().replace('"', "").split(",")
        )
    else:
        assert problems(answer)
        assert not census.exists()
