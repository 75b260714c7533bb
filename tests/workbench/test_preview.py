"""What an edit would do is shown before it is saved, and nothing is written for it."""

import re

import pytest

from desks import Desk
from make import plover

READ = '{"readings": {"rings": "green-ivory"}}'
FIND = f'{{"format": 1, "guide": "plover", "items": [{READ}]}}'
OPTION = "/guides/plover/table/clue/0/option/0"


@pytest.fixture
def desk(tmp_path):
    desk = Desk(tmp_path)
    desk.write("plover", plover())
    return desk


def test_question_stands_as_the_phone_asks_it(desk):
    desk.open(OPTION).send("preview", label="two rings, green above")

    answers = [each.text.strip() for each in desk.page.select(".question__answers li")]
    assert answers == ["two rings, green above", "navy over ivory", "no rings"]
    assert desk.page.select(".question__answers li svg.drawing")
    assert desk.page.select(".question__scene .drawing__spot--lit")
    assert "Collar: gone" in desk.said(".question__last")
    assert desk.text("plover") == plover()


def test_colours_of_pictures_are_there_to_paint_with(desk):
    """A fill that points at nothing leaves red and green the same empty outline."""
    desk.open(OPTION)

    fills = re.findall(r"url\(#([a-z-]+)\)", str(desk.page))
    assert fills
    assert all(desk.page.select_one(f"[id='{fill}']") for fill in fills)


def test_chart_follows_what_is_typed(desk):
    before = desk.open(OPTION).said(".made tbody tr:first-child td")
    desk.send("preview", seen__0__years="1955", seen__0__to="", seen__0__fade="")

    after = desk.said(".made tbody tr:first-child td")
    assert "1955" not in before
    assert "1955" in after


def test_verdicts_stand_before_and_after(desk):
    desk.open("/guides/plover/finds").send("paste", pasted=FIND, name="Mine")
    desk.open(OPTION)
    assert "the same" in desk.said(".compared__say")

    desk.send("preview", seen__0__share="rarely", seen__1__share="always")

    rows = {
        each.select_one("th").text: [cell.text for cell in each.select("td")]
        for each in desk.page.select(".compared tbody tr")
    }
    before, after = (int(cell.split()[0]) for cell in rows["1953"])
    assert after > before
    assert "the same" not in desk.said(".compared__say")


def test_find_that_fits_no_more_says_so(desk):
    desk.open("/guides/plover/finds").send("paste", pasted=FIND, name="Mine")
    text = plover().replace("green-ivory", "green-cream")
    desk.open("/guides/plover/raw").send("preview", text=text)

    assert "Not judged" in desk.said(".compared__say")
    assert "'green-ivory' is no option" in desk.said(".compared__say")


def test_mistakes_stand_in_place_of_a_preview(desk):
    desk.open(OPTION).send("preview", seen__0__years="1999")

    assert "1999 is no model year" in desk.said(".previewed")
    assert not desk.page.select(".phone")


@pytest.mark.parametrize(
    ("place", "typed"),
    [
        (1, "A number from 3 to 12, in mm"),
        (2, "A code of 4 characters"),
        (4, "A number up to 9000"),
    ],
)
def test_what_is_typed_is_said(desk, place, typed):
    desk.open(f"/guides/plover/table/clue/{place}")

    assert desk.said(".question__answers") == typed
