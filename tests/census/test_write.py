"""Specimens into a census and out of it again."""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldid.census.read import loads
from fieldid.census.specimens import HOWS, Specimen
from fieldid.census.write import (
    append,
    remove,
    with_name,
    with_specimen,
    without_specimen,
)
from fieldid.engine.find import Item, Measured
from fieldid.errors import CensusError, ChangedError
from fieldid.guides.document import opened, saved
from fieldid.guides.load import loads as guide_of
from make import plover

GUIDE = guide_of(plover().encode(), file="plover.toml")
READ = Item(
    (
        ("rings", "none"),
        ("pad", Measured(6.1, 0.2)),
        ("stamp", "A?17"),
        ("serial", 500.0),
    ),
    ("shaft",),
    "3",
)
ONE = Specimen("A1", ((1951, 0.7), (1952, 0.3)), "receipt", "a shop, in May", READ)
WORDS = st.text(st.characters(codec="utf-8", exclude_characters="\r\n\0"), max_size=40)
READINGS = st.fixed_dictionaries(
    {},
    optional={
        "rings": st.sampled_from(["green-ivory", "none", None]),
        "pad": st.one_of(
            st.none(),
            st.integers(30, 120).map(lambda x: x / 10),
            st.integers(30, 120).map(lambda x: Measured(x / 10, 0.25)),
        ),
        "stamp": st.sampled_from(["A017", "?217", None]),
        "serial": st.integers(1, 9000).map(float),
    },
)
SPECIMENS = st.builds(
    lambda name, how, note, readings: Specimen(
        name.strip(), ((1951, 1.0),), how, note.strip(), Item(tuple(readings.items()))
    ),
    WORDS.filter(lambda text: text.strip()),
    st.sampled_from(HOWS),
    WORDS.filter(lambda text: text.strip()),
    READINGS,
)


def again(text):
    return loads(text, GUIDE, file="p.csv").specimens


def plain(each):
    """A specimen without its line, its readings in any order."""
    readings = dict(each.item.readings)
    return each.name, each.years, each.how, each.note, each.item.gone, readings


def test_what_is_written_is_read_again():
    [found] = again(with_specimen("", GUIDE, ONE))

    assert plain(found) == plain(ONE)
    assert found.item.member == "3"


@settings(deadline=None)
@given(SPECIMENS)
def test_any_specimen_is_read_as_it_was_meant(each):
    [found] = again(with_specimen("", GUIDE, each))

    assert plain(found) == plain(each)


@pytest.mark.parametrize("name", ["=1+1", "'=1+1", "''=", "-", "@x", "'tis"])
def test_name_like_a_formula_stays_a_name(name):
    text = with_specimen("", GUIDE, Specimen(name, (), "family", "", Item()))

    assert [each.name for each in again(text)] == [name]
    assert without_specimen(text, name).count("\n") == 1


@settings(deadline=None)
@given(SPECIMENS)
def test_no_field_is_a_formula(each):
    """What begins like one has a mark of text before it; sizes are numbers."""
    for row in csv.reader(io.StringIO(with_specimen("", GUIDE, each))):
        assert not any(field.startswith(("=", "+", "-", "@", "\t")) for field in row)


def test_other_rows_stay_byte_for_byte():
    text = "specimen,model_year,how,rings\n\n A0 ,1951,  family,none"
    longer = with_specimen(text, GUIDE, Specimen("A2", (), "family", "", Item()))

    assert longer == text + "\nA2,,family,\n"


def test_column_is_added_for_a_new_clue():
    text = "specimen,model_year,how,member,gone\nA0,1951,family,,\n"
    longer = with_specimen(text, GUIDE, ONE)
    first, second = again(longer)

    assert longer.splitlines()[0].endswith("gone,rings,pad,stamp,serial")
    assert (first.name, first.item.readings) == ("A0", ())
    assert plain(second) == plain(ONE)


def test_specimen_is_taken_out_again():
    text = 'specimen,model_year,how\n"=1",1951,"other: of\ntwo lines"\nA0,1951,family\n'

    assert without_specimen(text, "=1") == ("specimen,model_year,how\nA0,1951,family\n")
    assert without_specimen(text, "A9") == text
    assert without_specimen("", "A9") == ""


def test_formula_of_another_row_is_not_written_again():
    """Other rows are written anew where a column is added."""
    text = 'specimen,model_year,how\n"=1",1951,family\n'
    wider = with_specimen(text, GUIDE, ONE)

    assert wider.splitlines()[1] == "'=1,1951,family,,,,,,"
    assert without_specimen(wider, "A1").splitlines()[1:] == wider.splitlines()[1:2]


def test_new_file_is_made(tmp_path):
    path = tmp_path / "plover.census.csv"
    append(path, GUIDE, ONE)
    append(path, GUIDE, Specimen("A2", ((1952, 1.0),), "family", "", Item()))
    remove(path, "A1")

    assert [each.name for each in again(path.read_text("utf-8"))] == ["A2"]


@pytest.mark.parametrize(
    "bad",
    [
        ONE,
        Specimen("", (), "family", "", Item()),
        Specimen("A2", (), "hearsay", "", Item()),
        Specimen("A2", (), "family", "", Item((("rings", "blue"),))),
    ],
)
def test_what_would_not_be_read_is_not_written(tmp_path, bad):
    path = tmp_path / "plover.census.csv"
    append(path, GUIDE, ONE)
    before = path.read_bytes()

    with pytest.raises(CensusError):
        append(path, GUIDE, bad)
    assert path.read_bytes() == before


def test_change_meanwhile_is_not_overwritten(tmp_path):
    path = tmp_path / "plover.census.csv"
    append(path, GUIDE, ONE)
    document = opened(path)
    path.write_text("specimen,model_year,how\n", "utf-8")

    with pytest.raises(ChangedError):
        saved(document, with_specimen(document.text, GUIDE, ONE))


NAMED = """specimen,model_year,how,gone,rings,stamp

A,1951,receipt,shaft; collar,"none",A017
"B, old",1952,'=other: none,,"no
ne", none
"""


def test_column_has_its_clues_new_name():
    text = with_name(NAMED, "rings", "bands")

    assert text == NAMED.replace("gone,rings", "gone,bands")


def test_answer_has_its_new_name_in_its_column_alone():
    text = with_name(NAMED, "none", "plain", column="rings")

    assert text == NAMED.replace('"none",A017', "plain,A017")


def test_part_that_is_gone_has_its_new_name():
    text = with_name(NAMED, "collar", "sleeve", column="gone")

    assert text == NAMED.replace('shaft; collar,"none"', "shaft; sleeve,none")


@pytest.mark.parametrize(
    ("old", "new"),
    [("pad", "pads"), ("rings", "stamp"), ("rings", "gone"), ("gone", "lost")],
)
def test_name_that_no_column_can_have_changes_nothing(old, new):
    assert with_name(NAMED, old, new) == NAMED
    assert with_name("", old, new) == ""
    assert with_name('"', old, new) == '"'
