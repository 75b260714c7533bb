"""The inbox: files dropped, and each find with its photos and its verdict."""

import json
import re

import pytest

import hostile
from fieldid.inbox import store
from fieldid.inbox.store import beside
from make import PLOVER
from postbox import accept, became, drop, page, plover, problems, refuse


def test_page_takes_several_files_at_once(browser):
    other = plover(id=hostile.fresh(1))

    answer = drop(
        browser,
        ("one.zip", hostile.pack(*hostile.good())),
        ("two.json", hostile.export(other)),
        ("none.json", b"[]"),
    )

    assert answer.status_code == 200
    assert became(answer) == [
        "one.zip 1 find is new.",
        "two.json 1 find is new.",
        "none.json This file holds no log that fieldid exported.",
    ]
    assert page(answer).select_one("#waiting").text == "To be looked at: 2"


def test_find_by_itself_is_looked_at_like_any_other(browser):
    (told,) = became(drop(browser, ("find.json", json.dumps(hostile.find()).encode())))
    assert told == "find.json 1 find is new."

    assert "On the phone" not in browser.get("/inbox").text
    text = browser.get("/inbox/1").text
    assert "plover, " in text
    assert "phone said" not in text
    assert "phone judged" not in text
    assert browser.get("/inbox/1").status_code == 200


def test_same_file_twice_is_told(browser):
    drop(browser, ("one.json", hostile.export(plover())))

    (told,) = became(drop(browser, ("one.json", hostile.export(plover()))))

    assert re.fullmatch(
        r"one.json This very file was taken in on .+\. It adds nothing\.", told
    )


def test_large_file_goes_through_the_form(browser):
    """Beyond half a megabyte it lies in a file while it is read."""
    photos = [hostile.note(id=hostile.fresh(i), bytes=600_000) for i in range(2)]
    jpeg = hostile.jpeg()
    large = jpeg[:-2] + b"\1" * (600_000 - len(jpeg)) + jpeg[-2:]
    files = [(f"photos/{note['id']}.jpg", large) for note in photos]
    finds = hostile.export(plover(photos=photos))

    answer = drop(browser, ("big.zip", hostile.pack(*files, ("finds.json", finds))))

    assert became(answer) == ["big.zip 1 find is new."]
    assert browser.get("/photos/2").data == large


def test_nothing_chosen_is_a_problem(browser):
    answer = browser.post("/inbox", data={"csrf_token": browser.token()})

    assert answer.status_code == 400
    assert list(problems(answer)) == ["#files"]


def test_find_is_shown_with_its_verdict_and_photos(browser):
    finds = hostile.export(plover(photos=[hostile.note(clue="rings")]))
    files = (hostile.PHOTO, hostile.jpeg()), ("finds.json", finds)
    drop(browser, ("one.zip", hostile.pack(*files)))

    found = page(browser.get("/inbox/1"))

    assert found.h1.text == "Iron from the fair"
    assert "1951" in found.select_one("h2.answer-year").text
    assert "green over ivory" in found.select_one("#read").parent.text
    assert found.img["src"].endswith("/photos/1")
    assert found.img["alt"] == "Photo 1 of rings"
    assert "1952: likely, 71 %" in found.select_one("#sent").parent.text


@pytest.mark.parametrize("number", ["0", "7", "9" * 12, "9" * 30, "-1", "1.5", "x"])
def test_numbers_that_are_none_find_nothing(browser, number):
    for path in (f"/photos/{number}", f"/inbox/{number}"):
        assert browser.get(path).status_code == 404


def test_difference_of_the_guide_is_told(browser):
    drop(browser, ("one.json", hostile.export(plover())))

    assert "another version of this guide" in browser.get("/inbox/1").text


def test_find_of_no_guide_can_only_be_refused(browser):
    find = hostile.find(guide="curlew")
    drop(browser, ("one.json", hostile.export(plover(find=find, guide="curlew"))))

    answer = browser.get("/inbox/1")
    assert "There is no guide “curlew” here." in answer.text
    assert not page(answer).select("#accept")
    assert accept(browser).status_code == 409
    assert refuse(browser).status_code == 303


def test_find_of_a_broken_guide_waits(browser, rules):
    drop(browser, ("one.json", hostile.export(plover())))
    (rules / PLOVER.name).write_text("format = 7")

    assert "to be mended first" in browser.get("/inbox/1").text


def test_find_that_does_not_fit_says_why(browser):
    items = [{"readings": {"rings": "plaid"}}]
    drop(browser, ("one.json", hostile.export(plover(items))))

    assert "plaid" in page(browser.get("/inbox/1")).select(".notice")[-1].text


def test_locked_inbox_is_a_plain_page(browser, inbox, monkeypatch):
    drop(browser, ("one.json", hostile.export(plover())))
    monkeypatch.setattr(store, "PATIENCE", 0.05)

    with store.writing(inbox):
        (told,) = became(drop(browser, ("two.json", hostile.export())))
        answer = refuse(browser)

    assert "in use elsewhere" in told
    assert list(problems(answer)) == ["#refuse-reason"]


def test_damaged_inbox_is_a_plain_page(browser, inbox):
    drop(browser, ("one.json", hostile.export(plover())))
    inbox.write_bytes(b"no database " * 500)

    answer = browser.get("/inbox")

    assert answer.status_code == 503
    assert "not a database" in answer.text
    (way,) = page(answer).select("main a")
    assert (way["href"], way.text) == ("/workbench/", "To the workbench")


def test_refused_finds_are_listed_with_their_reasons(browser):
    newer = hostile.entry(id=hostile.fresh(2), format=2)

    (told,) = became(drop(browser, ("one.json", hostile.export(plover(), newer))))

    assert told == (
        "one.json 1 find is new. 1 find was not taken: No. 2, Iron from the fair : "
        "This find was written by a newer version of the app "
        "(format 2; this one reads 1)."
    )


def test_inbox_lies_beside_the_guides(tmp_path):
    """So that whoever hands the folder on does not hand on people's finds."""
    assert beside(tmp_path / "rules") == tmp_path / "rules-inbox.sqlite"
