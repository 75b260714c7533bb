"""Short names that are changed, and answers named by their words."""

import tomllib

from fieldid.census.read import beside, load
from fieldid.guides.load import load as guide_at


def test_answers_are_named_by_their_words_too(desk):
    desk.open("/guides/plover/table/clue/0/option/1").send(label="navy, over ivory")
    desk.open("/guides/plover/table/clue/0/option/0")
    desk.send(like="Navy, over ivory, none")
    desk.open("/guides/plover/table/clue/0")
    desk.send(replacement="no rings = 0.8\nnavy, over ivory = 0.1")
    desk.open("/guides/plover/table/flag/0").send(when__0__is="No rings")

    data = tomllib.loads(desk.text("plover"))
    assert data["clue"][0]["option"][0]["like"] == ["navy-ivory", "none"]
    assert data["clue"][0]["replacement"] == {"none": 0.8, "navy-ivory": 0.1}
    assert data["flag"][0]["when"]["is"] == ["none"]


def test_words_of_two_answers_name_none_of_them(desk):
    desk.open("/guides/plover/table/clue/0/option/1").send(label="no rings")
    desk.open("/guides/plover/table/clue/0/option/0").send(like="no rings")

    assert "no rings is no answer of this clue" in desk.errors()["at.like"]


def test_new_short_name_is_taken_over_everywhere(desk):
    desk.open("/guides/plover/table/part/2").send(id="sleeve")
    desk.open("/guides/plover/table/clue/0/option/2").send(id="plain")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert "Saved." in desk.said()
    data = tomllib.loads(desk.text("plover"))
    assert data["clue"][0]["part"] == "sleeve"
    assert data["clue"][0]["spot"] == "collar"
    assert data["prices"]["off"] == {"shaft": "40 %", "sleeve": 15}
    assert data["clue"][0]["replacement"] == {"navy-ivory": 0.1, "plain": 0.8}
    assert data["flag"][0]["when"] == {"clue": "collar-rings", "is": ["plain"]}


CENSUS = """specimen,model_year,how,gone,rings
A,1952,receipt,collar,
B,1953,receipt,,none
"""


def test_new_short_name_is_taken_over_in_the_census(desk):
    census = beside(desk.rules / "plover.toml")
    census.write_text(CENSUS)
    desk.open("/guides/plover/table/part/2").send(id="sleeve")
    desk.open("/guides/plover/table/clue/0/option/2").send(id="plain")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert "“rings” is “collar-rings” in plover.census.csv too." in desk.said()
    assert census.read_text() == (
        CENSUS.replace("rings", "collar-rings")
        .replace("collar,\n", "sleeve,\n")
        .replace("none", "plain")
    )
    assert load(census, guide_at(desk.rules / "plover.toml")).specimens
    desk.open("/guides/plover/table/part/2").send(name="the sleeve")
    assert "census" not in desk.said(".notice")


def test_census_that_keeps_an_old_name_is_told(desk):
    census = beside(desk.rules / "plover.toml")
    census.write_bytes(b"specimen,rings\xff")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert 'id = "collar-rings"' in desk.text("plover")
    assert "The census still says “rings”" in desk.said(".notice")
