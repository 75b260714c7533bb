"""Tables that are added, put in their place, moved and taken out."""

import re
import tomllib

import pytest

from make import lapwing, plover


def test_tables_are_added_moved_and_taken_out(desk):
    desk.open("/guides/plover/add/caution").send(say="Wash your hands.")
    assert "Saved." in desk.said()
    assert desk.text("plover").endswith('stray = "60 %"\n')

    page = desk.open("/guides/plover/table/caution/1")
    moving = page.fields(1)
    page.client.post(
        "/guides/plover/move/caution/1",
        data={**moving, "step": "up"},
        base_url="http://localhost/workbench",
    )
    says = [each["say"] for each in tomllib.loads(desk.text("plover"))["caution"]]
    assert says == ["Wash your hands.", "Have the joint checked before hitting a ball."]

    assert "Taken out." in desk.open("/guides/plover/out/caution/0").send().said()
    assert desk.text("plover") == plover()


def test_part_that_is_needed_is_not_taken_out(desk):
    """Its page offers no button; one that is sent all the same does nothing."""
    assert not desk.open("/guides/plover/out/part/0").page.select("main form button")

    desk.open("/guides/plover/out/caution/0")
    desk.address = "/guides/plover/out/part/0"
    desk.send()

    assert "Nothing was done, since it would not fit" in desk.said()
    assert desk.text("plover") == plover()


@pytest.mark.parametrize(
    ("said", "years"),
    [
        ({"year": "1950"}, [1950, 1951, 1952, "1953-1955"]),
        ({"years": "1940-1945"}, ["1940-1945", 1951, 1952, "1953-1955"]),
        ({"year": "1956"}, [1951, 1952, "1953-1955", 1956]),
    ],
)
def test_new_model_year_goes_to_its_place(desk, said, years):
    desk.open("/guides/plover/add/model_year").send(**said)

    assert "Saved." in desk.said(), desk.said(".problems")
    tables = tomllib.loads(desk.text("plover"))["model_year"]
    assert [each.get("year") or each["years"] for each in tables] == years
    # The page that follows is its own.
    key, year = next(iter(said.items()))
    assert desk.fields()[f"at.{key}"] == year


def test_changed_model_year_goes_to_its_place(desk):
    desk.open("/guides/plover/add/model_year").send(year="1956")
    desk.open("/guides/plover/table/model_year/3").send(year="1950")

    tables = tomllib.loads(desk.text("plover"))["model_year"]
    assert [each.get("year") for each in tables] == [1950, 1951, 1952, None]


@pytest.mark.parametrize("year", ["1951", "1952", "1953"])
def test_model_year_that_is_there_is_told(desk, year):
    desk.open("/guides/plover/add/model_year").send(year=year)

    assert desk.errors()["at.year"].startswith(f"{year} is there already")
    assert desk.text("plover") == plover()


@pytest.mark.parametrize("kind", ["choice", "measure", "code", "number"])
def test_new_clue_of_each_kind_is_whole_at_once(desk, kind):
    said = {
        "choice": {
            "option__0__label": "yes",
            "option__1__label": "No!",
            "option__0__seen__0__years": "1951",
        },
        "measure": {
            "unit": "mm",
            "range": "1 to 9,5",
            "size__0__years": "1951-1955",
            "size__0__mean": "4",
            "size__0__sd": "0,5",
        },
        "code": {
            "field__0__name": "year",
            "field__0__kind": "year",
            "field__0__width": "1",
            "field__0__alphabet": "0123456789",
        },
        "number": {"first": "1951 = 1\n1952 = 1 000", "last": "5000"},
    }[kind]
    desk.open("/guides/plover/add/clue")
    desk.open(next(a for a in desk.links() if a.endswith(f"kind={kind}")))
    desk.send(ask="What is on the toe of it?", part="head", spot="toe", **said)

    assert "Saved." in desk.said(), desk.said(".problems")
    clue = tomllib.loads(desk.text("plover"))["clue"][-1]
    assert clue["kind"] == kind
    assert clue["id"] == "toe"
    if kind == "choice":
        assert clue["option"] == [
            {"id": "yes", "label": "yes", "seen": [{"years": 1951}]},
            {"id": "no", "label": "No!"},
        ]


def test_layout_and_prices_of_sets_can_be_added(desk):
    text = desk.text("plover")
    desk.write("plover", text[: text.index("[prices.set]")])
    desk.open("/guides/plover/table/prices/set").send(
        worth="1951 = 200", missing="15 %"
    )
    assert tomllib.loads(desk.text("plover"))["prices"]["set"] == {
        "worth": {"1951": 200},
        "missing": "15 %",
    }

    desk.open("/guides/plover/add/clue/6/layout")
    desk.send(
        years="1930-1935",
        field__0__name="n",
        field__0__kind="plain",
        field__0__width="3",
        field__0__alphabet="01",
    )
    assert len(tomllib.loads(desk.text("plover"))["clue"][6]["layout"]) == 3


@pytest.mark.parametrize("kind", ["choice", "measure", "code", "number"])
def test_new_clue_asks_for_what_it_needs(desk, kind):
    desk.open(f"/guides/plover/add/clue?kind={kind}")

    asked = {"ask", "name", "part", "spot", "where", "why", "photo", "seconds", "needs"}
    assert {f"at.{key}" for key in asked} <= desk.fields().keys()


def test_codes_are_told_in_stretches_alone(desk):
    """One word for one thing: a field is what is filled in."""
    for where in ("add/clue?kind=code", "table/clue/2", "table/clue/2/field/0"):
        desk.open(f"/guides/plover/{where}")
        assert "tretch" in desk.said()
        assert not re.search(r"\bfields?\b", desk.said()), where
    assert "Back to the code" in desk.said(".crumbs")

    desk.open("/guides/plover/table/clue/6")
    assert "Layout 2" in desk.said("section[aria-labelledby=list-layout]")
    desk.open("/guides/plover/table/clue/6/layout/1/field/0")
    assert "Back to the layout" in desk.said(".crumbs")


def test_second_part_of_a_name_is_told_at_its_field(desk):
    desk.open("/guides/plover/add/part").send(name=" Shaft")
    assert desk.errors() == {"at.name": "There is a part of this name already."}
    assert desk.said("#previewed") == "The guide without it"

    desk.open("/guides/plover/table/part/0").send(name="SHAFT")
    assert desk.errors() == {"at.name": "There is a part of this name already."}
    # What is in the file already keeps no other field from being saved.
    desk.write("plover", plover(('name = "shaft"', 'name = "head"')))
    assert "Saved." in desk.open("/guides/plover/table/part/0").send(id="top").said()


def test_all_that_keeps_a_table_in_is_told_before(desk):
    desk.open("/guides/plover/out/model_year/1")

    places = desk.page.select("main .told li")
    assert len(places) > 1
    assert not desk.page.select("main form")
    # Each leads to what stands there now, also behind what would be taken out.
    for link in [each.a["href"].removeprefix("/workbench") for each in places]:
        assert desk.open(link).status == 200


def test_neighbours_behind_what_is_taken_out_are_led_to(desk):
    desk.write("plover", plover(("replaced = 0.02", "replaced = 0.02 # head")))
    desk.open("/guides/plover/out/part/1")

    links = [each["href"] for each in desk.page.select("main .told a")]
    assert any("/table/part/2" in each for each in links), links


def test_fields_that_suit_no_such_guide_are_not_asked(desk):
    desk.open("/guides/plover/add/clue?kind=measure")
    assert {"at.helper", "at.size.0.members"} <= set(desk.fields())

    desk.write("lapwing", lapwing().replace('drawing = "iron"', 'drawing = "reel"'))
    desk.open("/guides/lapwing/add/clue?kind=measure")
    assert not {"at.helper", "at.size.0.members"} & set(desk.fields())


def test_words_for_shares_are_told_once_a_page(desk):
    desk.open("/guides/plover/table/part/0")

    (told,) = desk.page.select("main form details.more")
    assert "nearly always: " in told.text
