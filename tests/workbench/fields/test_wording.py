"""What forms say of mistakes: in the words of the trade, without TOML."""

import re
import tomllib

import pytest

from desks import Desk
from fieldid.guides import schema
from fieldid.guides.fields import Wanted
from fieldid.guides.refusals import REFUSALS
from fieldid.guides.tables import Pair, Table, Tables
from fieldid.workbench.fields.wording import FORMS, PHRASES, phrase
from fieldid.workbench.text.drafts import draft
from fieldid.workbench.text.places import spoken
from make import plover
from mistakes import cases, edited

TOML = re.compile(r"""["\[\]{}]|(?<!\w)'|'(?!\w)|\b[a-z_]+\.[a-z_]+\b|\b\w+_\w+\b""")
"""Quotes, brackets and keys."""
OF_FILES = (
    *("not-toml", "not-json", "not-measured", "error-limits", "member-twice"),
    *("no-item", "many-items", "more-items"),
)
"""What no form can raise: only the raw page, or a find."""


@pytest.mark.parametrize("code", sorted(REFUSALS.keys() - {*OF_FILES}))
def test_each_refusal_has_words_for_a_form(code):
    said = FORMS.get(code) or "; ".join(REFUSALS[code])

    assert not TOML.search(re.sub(r"\{\w+\}", "", said)), said


def test_no_wording_is_for_a_refusal_that_is_not_there():
    assert set(FORMS) <= set(REFUSALS)


def wanted(found):
    """What every field of a table wants, and those of the tables in it."""
    for field in found.fields.values():
        assert isinstance(field, Wanted)
        yield field.wants
        if isinstance(field, Pair):
            yield field.each.wants
        if isinstance(field, Table):
            yield from wanted(field.schema)
        if isinstance(field, Tables):
            picked = field.pick({})
            yield from wanted(picked)
            if isinstance(picked, schema.ClueSchema):
                for kind in schema.CLUES.values():
                    yield from wanted(kind())


def test_what_a_field_wants_is_said_without_toml():
    wants = set(wanted(schema.GuideSchema()))
    assert len(wants) > 40

    assert [each for each in wants if TOML.search(phrase(each))] == []


def test_phrases_are_said_without_toml():
    assert [each for each in PHRASES.values() if TOML.search(each)] == []


@pytest.mark.parametrize("block", cases("refusals.txt"))
def test_mistakes_of_a_file_are_said_without_toml(tmp_path, block):
    text, _ = edited(block)
    for trouble in draft(text, tmp_path / "plover.toml").troubles:
        if trouble.key:
            assert not TOML.search(trouble.plain), (trouble.say, trouble.plain)


def test_form_and_raw_page_have_words_of_their_own(tmp_path):
    desk = Desk(tmp_path)
    desk.write("plover", plover())
    desk.open("/guides/plover/table/part/0").send(name="", replaced="mostly")

    assert desk.errors()["at.name"] == "Fill this in."
    assert "per cent, as 15 %" in desk.errors()["at.replaced"]
    desk.open("/guides/plover/raw")
    desk.send("save", text=plover(('name = "shaft"', 'nme = "shaft"')))
    assert "is not a key that is known here; would be right: 'name'" in desk.said()


def test_mistake_of_another_page_is_named_in_words(tmp_path):
    desk = Desk(tmp_path)
    desk.write("plover", plover())
    desk.open("/guides/plover/table/model_year/2").send(years="1953-1954")

    told = desk.said(".problems")
    assert "1955 is no model year" in told
    assert not TOML.search(told), told


@pytest.mark.parametrize(
    ("home", "rest", "words"),
    [
        (("part", 2), ("follows", "part"), "Part collar: It goes with"),
        (("part", 2), ("follows", "share"), "Part collar: How often it then goes too"),
        (("part", 2), (), "Part collar"),
        (("prices",), ("off", "grip"), "Prices: A replaced part takes off"),
        (("flag", 0), ("when", "is", 0), "Red flag {say}: It waits for: Reads"),
        (("clue", 0, "option", 0), ("seen", 1, "share"), "Answer {label}: {seen}"),
    ],
)
def test_places_are_told_in_words(home, rest, words):
    data = tomllib.loads(plover())
    filled = words.format(
        say=data["flag"][0]["say"],
        label="green over ivory",
        seen="When it was made: How often",
    )

    assert spoken(data, home, rest) == filled


def test_what_would_be_right_is_said_in_the_words_shown(desk):
    """Answers by their words, since those are taken too; the text keeps short names."""
    desk.open("/guides/plover/table/clue/0/option/0").send(like="purple")

    told = desk.errors()["at.like"]
    assert "one of “green over ivory”, “navy over ivory”, “no rings”" in told
    desk.open("/guides/plover/raw")
    desk.send("save", text=plover(('like = ["navy-ivory"]', 'like = ["purple"]')))
    assert "one of 'green-ivory', 'navy-ivory', 'none'" in desk.said()


def test_red_flag_names_answers_of_its_clue(desk):
    desk.open("/guides/plover/table/flag/0").send(when__0__is="purple")

    told = desk.errors()["at.when.0.is"]
    assert "“navy over ivory”" in told
    assert "navy-ivory" not in told


def test_part_that_is_not_there_is_told_by_the_names_of_parts(desk):
    unknown = ('id = "pad"\npart = "head"', 'id = "pad"\npart = "x"')
    desk.write("plover", plover(('name = "head"', 'name = "club head"'), unknown))
    desk.open("/guides/plover/table/clue/1")

    assert "one of “club head”, shaft, collar" in desk.errors()["at.part"]
