"""Finds from JSON, finds and verdicts to JSON."""

import json
from dataclasses import fields, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldid.engine import judge, prepare
from fieldid.engine.find import Claim, Flag, Measured, Verdict
from fieldid.errors import FindError
from fieldid.guides import finds
from fieldid.guides.load import load, loads
from make import PLOVER, find, guide, plover

GUIDES = (guide(), load(PLOVER))
READINGS = {"rings": "none", "pad": 6, "stamp": "c?18", "band": None}
FULL = {
    "format": 1,
    "guide": "plover",
    "items": [{"member": "3", "readings": READINGS, "gone": []}],
    "claim": {"model_year": 1952, "cites": ["rings", "band"]},
}


def refusal(source) -> str:
    with pytest.raises(FindError) as refused:
        finds.load(source, GUIDES)
    return str(refused.value)


def outcome(source) -> str:
    """The guide that a find is under, or the sentence that it is refused with."""
    try:
        return finds.load(source, GUIDES).guide
    except FindError as error:
        return str(error)


def test_find_is_read_from_text_bytes_and_table():
    expected = find(
        READINGS | {"stamp": "C?18", "pad": 6.0},
        member="3",
        claim=Claim(1952, ("rings", "band")),
        guide="plover",
    )
    text = json.dumps(FULL)

    for source in (FULL, text, text.encode(), b"\xef\xbb\xbf" + text.encode()):
        assert finds.load(source, GUIDES) == expected


def test_measure_becomes_a_fraction():
    """Engines divide and format it; a whole number must not differ from 6.0."""
    [(_, pad)] = [
        r for r in finds.load(FULL, GUIDES).items[0].readings if r[0] == "pad"
    ]

    assert isinstance(pad, float)


def test_size_keeps_its_error():
    """It comes back from the file as it went in, and nothing else is a table."""
    item = {"readings": {"pad": {"value": 6, "error": 0.25}}}
    read = finds.load(FULL | {"items": [item]}, GUIDES)

    assert read.items[0].readings == (("pad", Measured(6.0, 0.25)),)
    assert finds.load(json.dumps(finds.find_json(read)), GUIDES) == read


def test_error_as_wide_as_the_range_is_the_largest():
    def outcome_of(error) -> str:
        reading = {"value": 12, "error": error}
        return outcome(FULL | {"items": [{"readings": {"pad": reading}}]})

    assert outcome_of(9) == "plover"
    assert "the error 9.01 does not fit here" in outcome_of(9.01)
    assert "the error nan does not fit here" in outcome_of(float("nan"))


def test_little_is_needed():
    least = {"format": 1, "guide": "plover", "items": [{}], "claim": None}

    assert finds.load(least, GUIDES) == find(guide="plover")


def test_gone_part_and_unread_clue_agree():
    """Who could not tell the rings may say in the end that the collar is gone."""
    item = {"readings": {"rings": None}, "gone": ["collar"]}
    source = {"format": 1, "guide": "plover", "items": [item]}

    expected = find({"rings": None}, ("collar",), guide="plover")
    assert finds.load(source, GUIDES) == expected


def test_find_comes_back_from_its_json():
    read = finds.load(FULL, GUIDES)

    assert finds.load(json.dumps(finds.find_json(read)), GUIDES) == read


def test_mixed_alphabet_keeps_its_case():
    item = {"readings": {"band": "qa"}}
    source = {"format": 1, "guide": "plover", "items": [item]}

    assert finds.load(source, GUIDES).items[0].readings == (("band", "Qa"),)


def test_error_calls_the_find_by_its_name():
    with pytest.raises(FindError, match=r"^line 7: guide: is missing"):
        finds.load({"format": 1, "items": [{}]}, GUIDES, name="line 7")


def test_member_without_a_set_is_refused():
    source = {"format": 1, "guide": "plain", "items": [{"member": "3"}]}

    assert refusal(source).startswith("find: items[1].member: the guide has no [set]")


@pytest.mark.parametrize("junk", ["x" * 50_000_000, b"\x00" * 50_000_000])
def test_fifty_megabytes_are_one_line(junk):
    assert refusal(junk) == (
        "find: is larger than 1000000 bytes; would be right: at most 1000000 bytes"
    )


def test_byte_that_is_no_text_is_refused():
    assert refusal(b'{"format": \xff}').startswith("find: has a byte that is not UTF-8")


@pytest.mark.parametrize("deep", ["[" * 100_000, '{"a":' * 100_000])
def test_deep_nesting_is_one_line(deep):
    assert refusal(deep).startswith("find: is nested too deeply")


def test_endless_number_is_one_line():
    assert "is not JSON: Exceeds the limit" in refusal('{"format": ' + "9" * 5000 + "}")


JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=4),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from([*FULL, *READINGS, "a"]), inner, max_size=3)
    ),
    max_leaves=6,
)


@settings(deadline=None)
@given(st.sampled_from([*FULL]), JSON, st.sampled_from([*READINGS]), JSON)
def test_no_value_breaks_the_reader(key, value, clue, reading):
    item = {"readings": READINGS | {clue: reading}}
    for source in (FULL | {key: value}, FULL | {"items": [item]}, {key: value}):
        assert "\n" not in outcome(json.dumps(source))


@pytest.fixture(scope="module")
def verdict():
    tables = prepare(load(PLOVER))
    item = {"readings": {"pad": 6.1, "stamp": "C?18"}, "gone": ["collar"]}
    source = FULL | {"items": [item]}
    return judge(tables, finds.load(source, GUIDES))


def test_verdict_names_its_years_and_months(verdict):
    written = finds.verdict_json(verdict)

    years = [(each["year"], each["probability"]) for each in written["model_years"]]
    assert tuple(years) == verdict.model_years
    assert written["built"][0]["month"] == "1950-09"
    assert written["claim"]["cited"][0]["clue"] == "rings"


def test_flag_on_a_part_names_it(verdict):
    named = {
        flag["kind"]: flag.get("part") for flag in finds.verdict_json(verdict)["flags"]
    }

    assert named["gone"] == "collar"
    assert named.get("claim") is None


def test_verdict_is_json_without_loss(verdict):
    written = finds.verdict_json(verdict)

    assert json.loads(json.dumps(written, allow_nan=False)) == written
    known = {field.name for field in fields(Verdict)} - {"whole_set"}
    assert set(written) == known | {"stray", "whole_set_replaced"}


def test_set_is_read_in_its_order():
    items = [{"member": "W", "readings": READINGS}, {"member": "3"}, {"member": "5"}]
    read = finds.load(FULL | {"items": items}, GUIDES)

    assert [item.member for item in read.items] == ["W", "3", "5"]
    assert finds.load(json.dumps(finds.find_json(read)), GUIDES) == read


def test_forty_members_are_one_sentence():
    items = [{"member": str(n), "readings": {"rings": "nun"}} for n in range(40)]

    assert refusal(FULL | {"items": items}) == (
        "find: items: has 40 items, and the set has 4 members; "
        "would be right: at most 4 items, each member once"
    )


def test_part_replaced_on_whole_sets_alone_is_gone_from_sets_alone():
    """Nothing would explain that it is gone from a single object."""
    rootless = plover(
        ('follows = { part = "shaft", share = 0.85 }\n', "replaced = 0\n")
    )
    known = loads(rootless.encode(), file="plover.toml", stem="plover")
    items = [{"member": "3", "gone": ["collar"]}, {"member": "4"}]

    read = finds.load(FULL | {"items": items}, [known])
    assert read.items[0].gone == ("collar",)
    with pytest.raises(FindError, match="'collar' is never replaced"):
        finds.load(FULL | {"items": items[:1]}, [known])


def test_cited_clue_may_be_unread():
    claim = {"model_year": 1952, "cites": ["pad", "stamp"]}
    read = finds.load(FULL | {"items": [{}], "claim": claim}, GUIDES)

    assert read.claim == Claim(1952, ("pad", "stamp"))


@pytest.fixture(scope="module")
def of_set():
    items = [
        {"member": "3", "readings": {"stamp": "C118"}, "gone": ["collar"]},
        {"member": "4", "readings": {"stamp": "C118"}},
        {"member": "W", "readings": {"stamp": "L321"}},
    ]
    read = finds.load(FULL | {"items": items}, GUIDES)
    verdict = judge(prepare(load(PLOVER)), read)
    return verdict, finds.verdict_json(verdict)


def test_verdict_on_a_set_names_its_members(of_set):
    verdict, written = of_set

    assert written["stray"] == [
        {"member": each.member, "probability": each.stray} for each in verdict.members
    ]
    first = written["members"][0]
    assert first["model_years"][0] == {
        "year": 1951,
        "probability": verdict.members[0].model_years[0][1],
    }
    assert first["replaced"][2]["part"] == "collar"
    assert written["whole_set_replaced"][0]["part"] == "collar"
    assert (written["missing"], written["surplus"]) == (["5"], ["W"])
    assert {each["member"] for each in written["next"]} == {"3", "4", "W"}


def test_flag_of_members_names_them(of_set):
    _, written = of_set
    named = {flag["kind"]: flag for flag in written["flags"]}

    assert (named["gone"]["part"], named["gone"]["members"]) == ("collar", ["3"])
    assert named["missing"]["members"] == ["5"]
    assert "part" not in named["missing"]


def test_flag_of_the_whole_set_names_its_part():
    flag = Flag("whole-set", ("grip",), "", "", ("3", "4"))
    verdict = judge(prepare(load(PLOVER)), find(guide="plover"))

    (told,) = finds.verdict_json(replace(verdict, flags=(flag,)))["flags"]

    assert told["part"] == "grip"


def test_verdict_on_a_set_is_json_without_loss(of_set):
    _, written = of_set

    assert json.loads(json.dumps(written, allow_nan=False)) == written
