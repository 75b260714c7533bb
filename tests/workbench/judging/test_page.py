"""Finds of the inbox on which an author watches what an edit does."""

import io

import pytest

import hostile
from desks import Desk
from fieldid.inbox.deciding import refuse
from fieldid.inbox.store import beside
from fieldid.inbox.taking import take
from fieldid.workbench.judging.chosen import MOST
from make import plover

FINDS = "/guides/plover/finds"
OPTION = "/guides/plover/table/clue/0/option/0"
NOW = "2026-11-25T10:00:00Z"


@pytest.fixture
def desk(tmp_path):
    (tmp_path / "rules").mkdir()
    desk = Desk(tmp_path / "rules")
    desk.write("plover", plover())
    return desk


def sent_in(desk, count=1, **changes):
    """Finds come in, all alike but for their ids."""
    find = hostile.find(items=[{"readings": {"rings": "green-ivory"}, "gone": []}])
    entries = [
        hostile.entry(**{"id": hostile.fresh(n), "find": find} | changes)
        for n in range(count)
    ]
    file = hostile.export(*entries)
    take(beside(desk.rules), io.BytesIO(file), name="finds.json", now=NOW)


def tick(desk, *numbers):
    """Sends the form of the inbox with these of its finds."""
    place = desk.place_of("[name=take]")
    desk.tick("take", *numbers).send("inbox", form=place)


def chosen(desk):
    return [each.text for each in desk.open(OPTION).page.select(".compared__name")]


def test_finds_are_chosen_from_the_list(desk):
    sent_in(desk, 2)

    tick(desk.open(FINDS), "2")

    assert desk.status == 200
    assert chosen(desk) == ["Iron from the fair, No. 2"]
    desk.send("preview", seen__0__share="rarely", seen__1__share="always")
    assert "the same" not in desk.said(".compared__say")


def test_find_is_tried_from_its_own_page(desk):
    sent_in(desk)

    tick(desk.open("/inbox/1"), "1")

    assert desk.address == FINDS
    assert chosen(desk) == ["Iron from the fair, No. 1"]


def test_tried_find_is_not_offered_again(desk):
    sent_in(desk, 2)
    tick(desk.open(FINDS), "1")

    assert [each["value"] for each in desk.page.select("[name=take]")] == ["2"]


def test_finds_of_one_title_stay_apart(desk):
    sent_in(desk, 2)
    tick(desk.open(FINDS), "1", "2")

    assert chosen(desk) == ["Iron from the fair, No. 1", "Iron from the fair, No. 2"]


def test_what_cannot_be_judged_is_not_offered(desk):
    sent_in(desk)
    other = hostile.find(items=[{"readings": {"rings": "pink"}, "gone": []}])
    sent_in(desk, find=other, id=hostile.fresh(9))
    refuse(beside(desk.rules), 1, reason="too dark", now=NOW)

    assert not desk.open(FINDS).page.select("[name=take]")
    assert "no find in the inbox" in desk.said()
    assert desk.open("/inbox/2").status == 200
    assert not desk.page.select("[name=take]")


def test_nothing_ticked_is_told(desk):
    sent_in(desk)

    tick(desk.open(FINDS))

    assert desk.status == 400
    assert "No find was ticked" in desk.said(".problems")


def test_more_than_fit_are_refused(desk):
    sent_in(desk, MOST + 1)
    every = [str(n + 1) for n in range(MOST + 1)]

    tick(desk.open(FINDS), *every)

    assert f"at most {MOST}" in desk.said(".problems")
    assert chosen(desk) == []


@pytest.mark.parametrize("number", ["0", "7", "-1", "x", "9" * 30])
def test_find_that_is_not_there_is_told(desk, number):
    sent_in(desk)

    tick(desk.open(FINDS), number)

    assert desk.status == 400
    assert "cannot be judged" in desk.said(".problems")


def test_damaged_inbox_leaves_the_page(desk):
    beside(desk.rules).write_bytes(b"no database at all, but long enough" * 40)

    assert desk.open(FINDS).status == 200
    assert "inbox" in desk.said(".wrong")
