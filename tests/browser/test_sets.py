"""Whole sets in a real Chromium: entered, with exceptions, judged, told of strays."""

import json
import re

import pytest
from playwright.sync_api import expect

from faults import expect_draft
from fieldid.guides.load import load
from fieldid.paths import RULES
from steps import (
    add_set,
    choose,
    go,
    go_to_verdict,
    heading,
    member,
    open_kept,
    read,
    start,
    status,
    tap_first,
)

SET_OF_1957 = {
    "toe-outline": "round",
    "sole-numerals": "serif",
    "back-stamp": "lantern",
    "collar-rings": "navy-gold",
    "shaft-label": "navy-lantern",
    "face-scoring": "dotted",
    "hosel-setting": "across",
    "collar-shape": "straight",
    "collar-pin": "brass",
    "shaft-finish": "stepped",
    "shaft-bands": "red",
    "grip-cap": "red-lantern",
    "grip-pattern": "ribbed",
    "grip-colour": "brown",
}
"""Fourteen clues as the guide has them for clubs of the summer of 1957."""
ODD_ONE = {
    "toe-outline": "peaked",
    "sole-numerals": "ringed",
    "back-stamp": "ringed-lantern",
    "collar-rings": "red-ivory-red",
    "shaft-label": "silver-shield",
}
"""One of 1962."""
CANNOT_TELL = "label.answer:has(input[data-means=cannot])"
MOST_TAPS = 40
COUNT_TAPS = """() => {
  window.taps = 0;
  addEventListener("pointerdown", () => { window.taps += 1 }, true);
}"""


@pytest.fixture(scope="module")
def guide():
    return load(RULES / "wrackham-teale-dotterel.toml")


@pytest.fixture
def page(standing, visit):
    """Looking, with nothing read yet."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    return page


def test_set_of_nine_is_entered_without_signal(server, launch, guide, tmp_path):
    """Fourteen clues of nine clubs, the server really stopped, every tap counted."""
    open_kept(launch(), server.url)
    server.stop()
    page = launch()
    page.goto(server.url)
    page.evaluate(COUNT_TAPS)

    start(page)
    add_set(page, "2", "W")
    asked = {clue.ask: clue for clue in guide.clues}
    left = dict(SET_OF_1957)
    while left:
        if page.locator("[data-screen=look] .done").count():
            page.get_by_role("link", name="Look at the rest anyway").click()
            expect(page.locator("[data-screen=look] .question")).to_be_visible()
        clue = asked[heading(page).inner_text()]
        option = left.pop(clue.id, None)
        answer = f"label.answer:has(input[value='{option}'])"
        before = page.locator("[data-heading]:visible").inner_text()
        page.locator(answer if option else CANNOT_TELL).click()
        expect(page.locator("[data-heading]:visible")).not_to_have_text(before)
    go_to_verdict(page)
    taps = page.evaluate("window.taps")
    print(f"{taps} taps for 9 members and {len(SET_OF_1957)} clues")

    assert taps < MOST_TAPS
    items = find_of(page, tmp_path / "find.json")["items"]
    assert [item["member"] for item in items] == list("23456789W")
    for item in items:
        assert set(item["readings"]) >= set(SET_OF_1957)
    expect(page.locator("[data-screen=verdict] h1")).to_contain_text("1957")


def find_of(page, file):
    """The find as the app writes it into a file."""
    with page.expect_download() as saved:
        page.locator("a[download]").click()
    saved.value.save_as(file)
    return json.loads(file.read_text())


def test_first_number_names_what_was_looked_at(page):
    """Somebody begins with one club, and only then sees that there are more."""
    choose(page, "square")
    page.get_by_role("link", name="One of a set?").click()
    expect(page.get_by_role("heading", name="Which one is it?")).to_be_visible()
    page.locator(".tile[data-member='6']").click()
    page.get_by_role("button", name="As it was sold: 3 to 9").click()

    expect(page.locator(".tile[data-member='6']")).to_contain_text("1 read")
    expect(page.locator(".tile[aria-pressed=true]")).to_have_count(7)


def test_member_taken_away_comes_back_with_its_readings(page):
    add_set(page)
    read(page, "collar-rings", "red-gold")
    go(page, "#set")
    page.locator(".tile[data-member='5']").click()
    expect(page.get_by_text("The 5 iron was taken away")).to_be_visible()

    page.get_by_role("button", name="Undo").click()

    expect(page.locator(".tile[data-member='5']")).to_contain_text("1 read")


def test_member_gets_its_right_number(page):
    add_set(page)
    go(page, "#set")
    page.get_by_text("One was taken for another").click()
    page.get_by_label("This is not the").select_option("9")
    page.get_by_label("but the").select_option("W")
    page.get_by_role("button", name="Change its number").click()

    expect(page.get_by_role("heading", name="The set: 3 to 8 and W")).to_be_visible()


def test_same_for_all_then_one_differs_then_undone(page):
    add_set(page)
    read(page, "collar-rings", "navy-ivory")
    expect(page.locator(".scope")).to_contain_text("all 7 alike")

    page.get_by_role("link", name="One differs?").click()
    page.get_by_role("link", name="6 iron").click()
    expect(page.locator(".scope")).to_contain_text("For the 6 iron alone")
    choose(page, "navy-gold")

    expect(page.locator(".scope")).to_contain_text("6 of 7 alike")
    expect(page.locator(".scope")).to_contain_text("For all 7")
    go(page, "#places")
    rings = page.locator(".place", has_text="Collar rings")
    expect(rings).to_contain_text("6:")
    page.get_by_role("button", name="Undo").click()
    expect(rings).not_to_contain_text("6:")
    page.get_by_role("button", name="Undo").click()
    expect(rings).to_contain_text("look at it")


def test_picking_a_member_keeps_the_question(page):
    add_set(page)
    asked = heading(page).inner_text()
    member(page, "7").click()

    expect(heading(page)).to_have_text(asked)
    expect(page.locator(".scope")).to_contain_text("For the 7 iron alone")
    expect(member(page, "7")).to_have_attribute("aria-pressed", "true")
    choose(page, "round")
    expect(page.locator(".scope")).to_contain_text("For the 7 iron alone")
    expect(member(page, "All")).to_have_attribute("aria-pressed", "false")


def test_what_is_typed_is_asked_one_by_one(page):
    """A code read once and taken for nine would be eight readings that nobody made."""
    add_set(page)
    go(page, "#look/hosel-code")
    expect(page.locator(".scope")).to_contain_text("alone")
    type_code(page, "C724")
    page.get_by_role("button", name="Take this code").click()
    go(page, "#places")
    expect(page.locator(".place", has_text="Hosel code")).to_contain_text(
        re.compile(r"\d: C724")
    )

    go(page, "#look/hosel-code")
    type_code(page, "C724")
    page.get_by_role("button", name="The same on the other 6").click()
    go(page, "#places")

    read = page.locator(".place", has_text="Hosel code").locator(".place__reading")
    expect(read).to_have_text("C724")


def type_code(page, code):
    for key in code:
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()


@pytest.fixture
def stray(page):
    """A set of 1957 in which the 6 iron is of the early sixties."""
    add_set(page)
    for clue, option in list(SET_OF_1957.items())[:5]:
        read(page, clue, option)
    for clue, option in ODD_ONE.items():
        read(page, clue, option, of="6")
    return page


def test_stray_stands_out_with_its_reason(stray):
    expect(member(stray, "6")).to_contain_text("stray")
    expect(member(stray, "5")).not_to_contain_text("stray")
    expect(member(stray, "6")).to_have_attribute("aria-label", re.compile("stray"))
    go_to_verdict(stray)

    row = stray.locator(".of-set", has_text="6 iron").first
    expect(row).to_contain_text(re.compile(r"196\d.*The 6 iron is probably a stray"))
    expect(stray.locator(".of-set--stray")).to_have_count(1)
    assert "1957" in status(stray)


def test_member_has_a_verdict_of_its_own(stray, tmp_path):
    go_to_verdict(stray)
    stray.locator(".of-set__name").get_by_role("link", name="6 iron").click()

    verdict = stray.locator("[data-screen=verdict]")
    expect(verdict.locator("h1")).to_contain_text(re.compile(r"196\d"))
    expect(verdict).to_contain_text("The 6 iron judged alone")
    expect(verdict).to_contain_text("The weight of each reading")
    (item,) = find_of(stray, tmp_path / "find.json")["items"]
    assert item["member"] == "6"
    stray.get_by_role("link", name="Whole set").click()
    expect(verdict.locator("h1")).to_contain_text("1957")


def test_verdict_tells_what_to_look_at_on_whom(page):
    add_set(page)
    choose(page, "round")
    go_to_verdict(page)
    first = page.locator(".next__link").first
    expect(first).to_contain_text(re.compile(r"^The \w+ (iron|wedge)[’']s "))
    name = re.match(r"The (.+?)[’']s ", first.inner_text())[1]
    first.click()

    expect(page.locator(".scope")).to_contain_text(f"For the {name} alone")


def test_missing_and_surplus_are_told(page):
    add_set(page, "4", "W")
    go_to_verdict(page)

    say = page.locator(".members__say")
    expect(say).to_contain_text("4 iron")
    expect(say).to_contain_text("pitching wedge")


def test_set_comes_back_after_a_restart(launch, standing):
    page = launch()
    open_kept(page, standing.url)
    start(page)
    add_set(page, "W")
    read(page, "collar-rings", "red-gold")
    member(page, "5").click()
    asked = heading(page).inner_text()
    expect_draft(page, lambda kept: kept["at"] != "all")

    page = launch()
    page.goto(standing.url + "#look")

    expect(heading(page)).to_have_text(asked)
    expect(member(page, "5")).to_have_attribute("aria-pressed", "true")
    expect(page.locator("[data-row] .row__cell--read")).to_have_count(8)


@pytest.mark.parametrize(
    "size", [(390, 844), (320, 568)], ids=lambda size: str(size[0])
)
def test_answers_stay_in_sight_over_the_row(standing, visit, size):
    """Five drawn answers and "can't tell" on a usual phone; two on the smallest."""
    page = visit(size)
    open_kept(page, standing.url)
    start(page)
    add_set(page)
    read(page, "collar-shape", "short")
    go(page, "#look/toe-outline")

    bar = page.locator("[data-bar]").bounding_box()["y"]
    places = [
        box["y"] + box["height"]
        for box in (each.bounding_box() for each in page.locator("label.answer").all())
    ]

    assert sum(place <= bar for place in places) >= (6 if size[0] == 390 else 2)


def test_way_out_names_the_part_that_is_asked_about(standing, visit):
    """Also where the line above offers an exception to the last answer."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    add_set(page)
    tap_first(page)
    expect(page.locator(".scope__last")).to_be_visible()
    go(page, "#look/grip-pattern")

    last = page.locator(".question__last label.answer").last
    expect(last).to_have_text("The grip is gone")
