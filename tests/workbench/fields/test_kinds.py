"""How numbers are read off a form's field: thousands are never taken for decimals."""

import tomllib

import pytest

from fieldid.workbench.fields.kinds import ALPHABET, MisreadError


@pytest.mark.parametrize("typed", ["14,000", "14.000", "14 000", "14000"])
def test_thousands_are_read_however_they_are_parted(desk, typed):
    desk.open("/guides/plover/table/clue/4")
    desk.send(first=f"1951 = 1\n1952 = {typed}", last="1,000,000")

    assert "Saved." in desk.said(), desk.said(".problems")
    clue = tomllib.loads(desk.text("plover"))["clue"][4]
    assert clue["first"] == {"1951": 1, "1952": 14000}
    assert clue["last"] == 1_000_000


def test_money_has_no_three_decimals(desk):
    desk.open("/guides/plover/table/prices")
    desk.send(
        worth="1951 = 1,060\n1952 = 12,50",
        other="1.200",
        off="shaft = 2,000\ncollar = 5",
    )

    assert "Saved." in desk.said(), desk.said(".problems")
    prices = tomllib.loads(desk.text("plover"))["prices"]
    assert prices["worth"] == {"1951": 1060, "1952": 12.5}
    assert prices["other"] == 1200
    assert prices["off"] == {"shaft": 2000, "collar": 5}


def test_size_that_can_be_read_in_two_ways_is_asked_about(desk):
    desk.open("/guides/plover/table/clue/1").send(size__0__mean="6,125")

    assert desk.status == 400
    assert "write 6125 or 6.125" in desk.errors()["at.size.0.mean"]
    desk.send(size__0__mean="6.125")
    assert tomllib.loads(desk.text("plover"))["clue"][1]["size"][0]["mean"] == 6.125


def test_decimal_needs_no_nought_before_its_point(desk):
    desk.open("/guides/plover/table/part/0").send(replaced=".5")

    assert tomllib.loads(desk.text("plover"))["part"][0]["replaced"] == 0.5
    desk.send(replaced=",25")
    assert tomllib.loads(desk.text("plover"))["part"][0]["replaced"] == 0.25
    desk.send(replaced=".5 %")
    assert tomllib.loads(desk.text("plover"))["part"][0]["replaced"] == 0.005


def test_line_without_its_sign_is_told(desk):
    desk.open("/guides/plover/table/clue/4").send(first="1951 = 1\n1952 14000")

    said = desk.errors()["at.first"]
    assert said == "= is missing in 1952 14000; would be right: 1952 = 14000"


def test_year_alone_is_shown_with_its_gap(desk):
    desk.open("/guides/plover/table/clue/4").send(first="1951 = 1\n1952")

    said = desk.errors()["at.first"]
    assert said == "= is missing in 1952; would be right: 1952 = ..."


def test_words_are_quoted_back_as_they_were_typed(desk):
    desk.open("/guides/plover/table/part/0").send(replaced="now and then")

    assert desk.errors()["at.replaced"].startswith("now and then ")


@pytest.mark.parametrize("typed", ["A to H", "A-H", "A \u2013 H", "A...H"])
def test_alphabet_is_written_out(desk, typed):
    desk.open("/guides/plover/table/clue/2/field/0").send(alphabet=typed)

    said = "Write out every character, as ABCDEFGH."
    assert desk.errors()["at.alphabet"] == said


@pytest.mark.parametrize(
    ("typed", "whole"),
    [
        ("0-9", "0123456789"),
        ("0 - 9", "0123456789"),
        ("2-A, A-C", "ABC"),
        ("2 - A, A-C", "ABC"),
    ],
)
def test_every_stretch_is_written_out(typed, whole):
    """Also behind one that is none."""
    with pytest.raises(MisreadError, match=f"Write out every character, as {whole}."):
        ALPHABET.read(typed)


@pytest.mark.parametrize("typed", ["A B - C D", "A B \u2013 C D", "A - B C"])
def test_hyphen_between_blanks_is_a_character(typed):
    assert ALPHABET.read(typed) == "".join(typed.split())


def test_size_may_be_typed_with_its_own_unit(desk):
    """As a find is judged: another unit is not worked out."""
    desk.open("/guides/plover/table/clue/1")
    unit = desk.fields()["at.unit"]
    desk.send(size__0__mean="54 furlongs")
    assert desk.errors()["at.size.0.mean"] == (
        f"54 furlongs is not in {unit}. Work it out in {unit}, and type the number."
    )

    desk.send(size__0__mean=f"6.5 {unit}", range=f"3 to 12 {unit}")
    clue = tomllib.loads(desk.text("plover"))["clue"][1]
    assert (clue["size"][0]["mean"], clue["range"]) == (6.5, [3, 12])


@pytest.mark.parametrize(
    "typed",
    ["3 mm to 13 mm", "3mm\u201313 MM.", "3 mm - 13", "3 mm to 13", "3 to 13 mm"],
)
def test_unit_may_stand_at_both_ends(desk, typed):
    desk.open("/guides/plover/table/clue/1").send(range=typed)

    assert "Saved." in desk.said(), desk.said(".problems")
    assert tomllib.loads(desk.text("plover"))["clue"][1]["range"] == [3, 13]


@pytest.mark.parametrize("typed", ["3 cm to 12 mm", "0 mm to 3 cm"])
def test_each_end_must_be_in_the_unit(desk, typed):
    desk.open("/guides/plover/table/clue/1").send(range=typed)

    assert desk.errors()["at.range"].startswith("3 cm is not in mm.")


@pytest.mark.parametrize(
    "typed", ["3 to", "3 mm to", "3 \u2013", "\u2013 12", "\u2013"]
)
def test_range_without_its_end_is_told(desk, typed):
    desk.open("/guides/plover/table/clue/1").send(range=typed)

    assert desk.status == 400
    assert desk.errors()["at.range"] == (
        "What stands here does not fit here; would be right: the smallest and the "
        "largest number, as 3 to 12"
    )


def test_run_of_months_needs_its_end(desk):
    desk.open("/guides/plover/table/model_year/0").send(built="1951-02 to")

    assert list(desk.errors()) == ["at.built"]


def test_unit_is_kept_where_none_is_set(desk):
    """Nothing else says what 12 cm are."""
    desk.open("/guides/plover/table/clue/1").send(unit="", size__0__mean="12 cm")

    assert desk.status == 400
    assert desk.errors()["at.size.0.mean"].startswith("12 cm ")
