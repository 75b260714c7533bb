"""A guide that takes over the clues, flags and cautions of others."""

import pytest

from fieldid.engine import judge, prepare
from fieldid.errors import GuideError
from fieldid.guides.finds import load as load_find
from fieldid.guides.load import load
from fieldid.guides.pack import pack
from make import find

HEAD = """format = 1
id = "{id}"
title = "{id}"
kind = "wheels"
about = "Invented."
source = "The book of {id}."
updated = 2026-02-01
drawing = "{drawing}"
{include}

[[model_year]]
year = {year}
"""
PART = """
[[part]]
id = "{id}"
name = "{id}"
replaced = {replaced}
"""
CLUE = """
[[clue]]
id = "{id}"
part = "{part}"
kind = "choice"
ask = "Which?"
spot = "{spot}"

  [[clue.option]]
  id = "a"
  label = "a"
  seen = [{{ years = {year} }}]

  [[clue.option]]
  id = "b"
  label = "b"
"""
FLAG = """
[[flag]]
when = {{ {when} }}
say = "{say}"
"""
CAUTION = """
[[caution]]
say = "{say}"
"""


@pytest.fixture
def write(tmp_path):
    """Writes guides into one folder, each with its parts and clues."""

    def write(id, *tables, include=(), year=1900, drawing="iron"):
        listed = ", ".join(f'"{name}"' for name in include)
        head = HEAD.format(
            id=id,
            year=year,
            drawing=drawing,
            include=f"include = [{listed}]" if include else "",
        )
        path = tmp_path / f"{id}.toml"
        path.write_text(head + "".join(tables))
        return path

    return write


def part(id, replaced=0.1, follows=""):
    text = PART.format(id=id, replaced=replaced)
    return text + (f'follows = {{ part = "{follows}", share = 0.5 }}\n' * bool(follows))


def clue(id, part="head", year=1900, spot="head"):
    return CLUE.format(id=id, part=part, year=year, spot=spot)


def flag(when, say):
    return FLAG.format(when=when, say=say)


def ids(records):
    return [each.id for each in records]


def test_clues_come_behind_its_own(write):
    write("marks", part("head"), clue("sign"), clue("stamp"))
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    assert ids(guide.clues) == ["rim", "sign", "stamp"]
    assert ids(guide.parts) == ["head"]


def test_own_part_stays_its_own(write):
    write("marks", part("head", 0.5), clue("sign"))
    guide = load(write("wheels", part("head", 0.1), clue("rim"), include=["marks"]))

    assert guide.parts[0].replaced == 0.1


def test_parts_come_with_what_they_follow(write):
    """One on which nothing sits stays where it is."""
    write(
        "marks",
        part("label", follows="shaft"),
        part("shaft"),
        part("grip"),
        clue("sign", part="label"),
    )
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    assert ids(guide.parts) == ["head", "label", "shaft"]


def test_included_years_may_be_others(write):
    write("marks", part("head"), clue("sign", year=1800), year=1800)
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    assert [y.year for y in guide.years] == [1900]
    assert guide.clues[1].kind.options[0].seen[0].years == (1800, 1800)


def test_included_clue_names_its_source(write):
    write("marks", part("head"), clue("sign"))
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    assert [each.source for each in guide.clues] == ["", "The book of marks."]


def test_spot_that_the_drawing_lacks_is_the_whole(write):
    write("marks", part("head"), clue("sign", spot="crown"), drawing="wood")
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    assert guide.clues[1].spot == "whole"


def test_what_is_included_brings_what_it_includes(write):
    """The same clue by two ways is one, though only one of them has its spot."""
    write("numbers", part("head"), clue("serial", spot="crown"), drawing="wood")
    write("marks", part("head"), clue("sign"), include=["numbers"])
    both = ["marks", "numbers"]
    guide = load(write("wheels", part("head"), clue("rim"), include=both))

    assert ids(guide.clues) == ["rim", "sign", "serial"]


def flags(guide):
    return [each.say for each in guide.flags]


def test_flags_come_behind_its_own(write):
    told = flag('clue = "sign", is = ["a"]', "A sign.")
    write("marks", part("head"), clue("sign"), told)
    own = flag('clue = "rim", is = ["a"]', "A rim.")
    path = write("wheels", part("head"), clue("rim"), own, include=["marks"])
    guide = load(path)

    assert flags(guide) == ["A rim.", "A sign."]


def test_included_flag_is_raised(write):
    told = flag('clue = "sign", is = ["b"]', "No sign.")
    write("marks", part("head"), clue("sign"), told)
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))

    verdict = judge(prepare(guide), find({"sign": "b"}, guide="wheels"))
    assert [each.say for each in verdict.flags if each.kind == "guide"] == ["No sign."]


def test_flag_on_a_part_needs_the_part(write):
    """The grip, on which no clue sits, is not taken over; the rim is its own part."""
    told = [
        flag(f'part = "{id}", replaced_over = 0.5', f"Another {id}.")
        for id in ("head", "grip", "rim")
    ]
    parts = [part("head"), part("grip"), part("rim")]
    write("marks", *parts, clue("sign"), *told)
    path = write("wheels", part("rim"), clue("hub", part="rim"), include=["marks"])
    guide = load(path)

    assert flags(guide) == ["Another head.", "Another rim."]


def test_flags_and_cautions_come_once(write):
    """When a guide comes by two ways."""
    told = flag('clue = "serial", is = ["a"]', "Low.")
    care = CAUTION.format(say="Mind the rim.")
    write("numbers", part("head"), clue("serial"), told, care)
    write("marks", part("head"), clue("sign"), include=["numbers"])
    both = ["marks", "numbers"]
    guide = load(write("wheels", part("head"), clue("rim"), include=both))

    assert guide.cautions == ("Mind the rim.",)
    assert flags(guide) == ["Low."]


def test_own_cautions_stand_alone(write):
    """They speak of handling just this kind of object."""
    care, own = (CAUTION.format(say=say) for say in ("Mind the rim.", "Wear gloves."))
    write("marks", part("head"), clue("sign"), care)
    path = write("wheels", part("head"), clue("rim"), own, include=["marks"])

    assert load(path).cautions == ("Wear gloves.",)


def test_packed_guide_has_them_in_line(write):
    write("marks", part("head"), clue("sign"))
    packed = pack(load(write("wheels", part("head"), clue("rim"), include=["marks"])))

    assert [each["id"] for each in packed["clues"]] == ["rim", "sign"]
    assert "include" not in packed


def test_find_reads_included_clues(write):
    write("marks", part("head"), clue("sign"))
    guide = load(write("wheels", part("head"), clue("rim"), include=["marks"]))
    source = '{"format": 1, "guide": "wheels", "items": [{"readings": {"sign": "a"}}]}'

    assert load_find(source, [guide]).items[0].readings == (("sign", "a"),)


def refused(path):
    with pytest.raises(GuideError) as told:
        load(path)
    return [str(each).removeprefix(f"{path}:") for each in told.value.problems]


def test_missing_guide_is_refused(write):
    write("marks", part("head"), clue("sign"))
    path = write("wheels", part("head"), clue("rim"), include=["mark", "../marks"])

    assert refused(path) == [
        "9: include[1]: 'mark' is no guide beside this one; would be right: 'marks'",
        "9: include[2]: '../marks' is no guide beside this one; "
        "would be right: 'marks'",
    ]


@pytest.mark.parametrize("other", ["wheels", "marks"])
def test_circle_is_refused(write, other):
    """Of the guide with itself, and by way of another."""
    write("marks", part("head"), clue("sign"), include=["wheels"])
    path = write("wheels", part("head"), clue("rim"), include=[other])

    chain = {"wheels": "wheels, wheels", "marks": "wheels, marks, wheels"}[other]
    assert refused(path) == [
        f"9: include[1]: guides include each other in a circle: {chain}; "
        "would be right: one of them that includes none"
    ]


def test_circle_among_others_is_refused(write):
    write("marks", part("head"), clue("sign"), include=["numbers"])
    write("numbers", part("head"), clue("serial"), include=["marks"])
    path = write("wheels", part("head"), clue("rim"), include=["marks"])

    assert "wheels, marks, numbers, marks" in refused(path)[0]


def test_guide_with_mistakes_is_refused(write):
    write("marks", part("head"), clue("sign", part="had"), clue("sign"))
    path = write("wheels", part("head"), clue("rim"), include=["marks"])

    assert refused(path) == [
        "9: include[1]: 'marks' has mistakes of its own: 2; "
        "would be right: that guide without mistakes"
    ]


def test_clue_of_the_same_id_is_refused(write):
    write("marks", part("head"), clue("rim"), clue("sign"))
    write("signs", part("head"), clue("sign", year=1901), year=1901)
    both = ["marks", "signs"]
    path = write("wheels", part("head"), clue("rim"), include=both)

    assert refused(path) == [
        f"9: include[{place}]: it has a clue {id!r}, and so has this guide or one "
        "included before; would be right: another id for one of the two"
        for place, id in ((1, "rim"), (2, "sign"))
    ]
