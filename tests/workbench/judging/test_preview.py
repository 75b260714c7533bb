"""What an edit would do is shown before it is saved, and nothing is written for it."""

import re

import pytest

from make import plover

READ = '{"readings": {"rings": "green-ivory"}}'
FIND = f'{{"format": 1, "guide": "plover", "items": [{READ}]}}'
OPTION = "/guides/plover/table/clue/0/option/0"


def test_question_stands_as_the_phone_asks_it(desk):
    desk.open(OPTION).send("preview", label="two rings, green above")

    answers = [each.text.strip() for each in desk.page.select(".question__answers li")]
    assert answers == ["two rings, green above", "navy over ivory", "no rings"]
    assert desk.page.select(".question__answers li svg.drawing")
    assert desk.page.select(".question__scene .drawing__spot--lit")
    assert "The collar is gone" in desk.said(".question__last")
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
        (4, "From 1 to 9000."),
        (5, "From 1 700 000 to 2 800 000."),
    ],
)
def test_what_is_typed_is_said(desk, place, typed):
    desk.open(f"/guides/plover/table/clue/{place}")

    assert desk.said(".question__answers") == typed


def table(desk, place):
    """The rows of the table by model year."""
    desk.open(f"/guides/plover/table/clue/{place}")
    rows = desk.page.select("[data-preview] .compared tbody tr")
    return {row.th.text: row.td.text for row in rows}


WEDGE = "8 mm, give or take 0.3 (only wedge)"


@pytest.mark.parametrize(
    ("place", "rows"),
    [
        (
            1,
            {
                "1951-1952": f"6 mm, give or take 0.25 (but for wedge); {WEDGE}",
                "1953-1955": "7.2 mm, give or take 0.3",
            },
        ),
        (
            2,
            {
                "1951": "month A to M; year 0 or 1; pattern 17",
                "1952": "month A to M; year 1 or 2; pattern 18",
                "1953": "month A to M; year 3; pattern 21",
                "1954": "month A to M; year 4; pattern anything",
                "1955": "month A to M; year 5; pattern anything",
            },
        ),
        (
            4,
            {
                "1951": "1 to 4,199",
                "1952": "400 to 5,599",
                "1953": "5,600 to 6,899",
                "1954": "6,900 to 7,999",
                "1955": "8,000 to 9,000",
            },
        ),
        (5, {"1931": "1,700,000 to 2,185,169", "1940": "2,185,170 to 2,800,000"}),
        (
            6,
            {
                "1943": "year A; day 01 to 31, or else week 01 to 53",
                "1944-1947": "year anything; day 01 to 31, or else week 01 to 52",
                "1948": "year anything; day 01 to 31, or else week 01 to 53",
                "1949": "year B; day 01 to 31, or else week 01 to 53",
                "1950-1952": "week 01 to 52",
                "1953-1954": "week 01 to 53",
                "1955": "week 01 to 52",
            },
        ),
    ],
)
def test_what_is_read_stands_by_year(desk, place, rows):
    """Of marks that are older than the object, by the year in which they were given."""
    desk.open(f"/guides/plover/table/clue/{place}")

    found = desk.page.select("[data-preview] .compared tbody tr")
    assert {row.th.text: row.td.text for row in found} == rows


def test_one_character_is_told_as_one(desk):
    text = desk.text("plover")
    short = text[: text.index('\n  [[clue.field]]\n  name = "works"')]
    desk.write("plover", short + text[text.index("\n[set]") :])
    desk.open("/guides/plover/table/clue/3")

    assert desk.said(".question__answers") == "A code of 1 character"


def test_weights_are_explained_where_a_share_is_edited(desk):
    desk.open(OPTION)
    assert "usually beside rarely comes to 96 % and 4 %" in desk.said("#rows-seen")
    assert "96 % and 4 %" in desk.said(".previewed")
