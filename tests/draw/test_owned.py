"""Pictures with example letters, as one object bears them."""

from fieldid.draw import SHAPES, node, owned
from fieldid.draw.letters import LETTERS, WORN, word
from fieldid.draw.nodes import svg
from fieldid.draw.params import CODE, NUMBER, examples
from fieldid.engine.guide import Members
from fieldid.guides.load import load
from fieldid.guides.pack import pack
from fieldid.paths import RULES
from make import PLOVER
from stamped import spelled


def shown(picture, number="4"):
    return svg(node(owned(picture, number=number, worn=True)))


def test_number_is_the_members_own():
    boxed = ("numeral", (("style", "boxed"),))

    assert spelled(shown(boxed)) == ["4"]
    assert shown(boxed, None) == svg(node(boxed))


def test_number_that_has_no_stamp_is_worn():
    assert spelled(shown(("numeral", (("style", "plain"),)), "PW")) == [WORN]


def test_cover_has_as_many_rings_as_its_number():
    rings = ("cover", (("tag", "rings"),))
    counts = [
        shown(rings, number).count("drawing__ink") for number in (*"1345", "W", "")
    ]

    assert counts == [1, 3, 4, 5, 3, 3]
    assert svg(node(rings)).count("drawing__ink") == 3


def test_code_is_worn_where_a_clue_reads_it():
    along = ("hosel", (("setting", "along"), ("lines", ("F6 24",))))

    assert spelled(shown(along)) == [f"{WORN}{WORN} {WORN}{WORN}"]
    assert svg(node(owned(along, number="4", worn=False))) == svg(node(along))


def test_worn_letters_are_no_letters():
    assert WORN not in LETTERS
    assert svg(word(WORN, middle=(0, 0), height=6)).count("<path") == 1


def test_examples_are_parameters_that_are_known():
    found = {name: examples(shape) for name, shape in SHAPES.items()}

    assert {name: what for name, what in found.items() if what} == {
        "cover": {"figure": NUMBER},
        "hosel": {"lines": CODE},
        "numeral": {"figure": NUMBER},
    }


def test_what_differs_goes_along_with_the_guide():
    dotterel = load(RULES / "wrackham-teale-dotterel.toml")
    rows = pack(dotterel)["own"]
    found = {(clue, option, member) for clue, option, member, _ in rows}
    assert isinstance(dotterel.members, Members)

    assert len(found) == len(rows)
    numerals = {member for clue, option, member in found if option == "boxed"}
    # The picture as it stands serves the 7 iron.
    assert numerals == {*dotterel.members.all} - {"7"}
    assert {row for row in found if row[0] == "hosel-setting"} == {
        ("hosel-setting", setting, None) for setting in ("along", "across", "round")
    }


def test_guide_of_single_objects_has_nothing_of_its_own():
    assert pack(load(PLOVER))["own"] == []
