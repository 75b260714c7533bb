"""The packed guide mirrors the records, in their order, in bytes that never change."""

import json
from dataclasses import fields, replace

from hypothesis import given
from hypothesis import strategies as st

from fieldid import draw
from fieldid.engine.guide import Choice, Clue, Code, Field, Guide, Layout, Number
from fieldid.guides.load import load
from fieldid.guides.pack import dump, pack
from make import PLOVER, code, guide, model_year, part


def names(record) -> list[str]:
    return [field.name for field in fields(record)]


def test_records_keep_their_fields_in_order():
    packed = pack(load(PLOVER))

    assert list(packed) == [*names(Guide), "scene", "own"]
    assert list(packed["clues"][0]) == names(Clue)
    assert list(packed["clues"][0]["kind"]) == ["name", *names(Choice)]
    assert [clue["kind"]["name"] for clue in packed["clues"]] == [
        "choice",
        "measure",
        "code",
        "code",
        "number",
        "number",
        "code",
    ]


def test_layouts_and_numbers_go_along():
    packed = pack(load(PLOVER))
    mark, patent = packed["clues"][6]["kind"], packed["clues"][5]["kind"]

    assert list(patent) == ["name", *names(Number)]
    assert patent["first"] == [[1931, 1700000], [1940, 2185170]]
    assert list(mark) == ["name", *names(Code)]
    assert list(mark["layouts"][0]) == names(Layout)
    assert list(mark["layouts"][0]["fields"][0]) == names(Field)


def test_pictures_go_along_as_drawn():
    plover = load(PLOVER)
    packed = json.loads(dump(plover))

    tag, attributes, children = packed["clues"][0]["kind"]["options"][0]["picture"]
    drawn = draw.node(plover.clues[0].kind.options[0].picture)
    assert (tag, len(attributes), len(children)) == ("svg", *map(len, drawn[1:]))
    assert packed["scene"][0] == "svg"
    assert packed["clues"][1]["picture"] is None


def test_dump_is_compact_and_the_same_each_time():
    """A hash of these bytes decides whether a phone fetches the guide again."""
    first, again = dump(load(PLOVER)), dump(load(PLOVER))

    assert first == again
    assert (
        json.dumps(
            json.loads(first), ensure_ascii=False, separators=(",", ":")
        ).encode()
        == first
    )


@given(
    st.lists(st.integers(1000, 2999), min_size=1, unique=True),
    st.lists(st.text(min_size=1), min_size=1, unique=True),
)
def test_round_trip_keeps_every_order(years, ids):
    """No year and no id is a key, so no language can sort them anew."""
    codes = tuple((year, "A") for year in years)
    given_guide = replace(
        guide(*(code(i, Field("f", "year-letter", 1, "AB", codes=codes)) for i in ids)),
        years=tuple(model_year(year) for year in years),
        parts=tuple(part(i) for i in ids),
    )
    packed = json.loads(dump(given_guide))

    assert packed == pack(given_guide)
    assert [y["year"] for y in packed["years"]] == years
    assert [p["id"] for p in packed["parts"]] == ids
    assert [c["id"] for c in packed["clues"]] == ids
    assert packed["clues"][0]["kind"]["fields"][0]["codes"] == [[y, "A"] for y in years]
