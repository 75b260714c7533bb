"""A census from its file: what it says, and every way in which it is refused."""

import re
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldid.census.read import MOST_SPECIMENS, beside, load, loads
from fieldid.census.refusals import REFUSALS
from fieldid.engine.find import Measured
from fieldid.errors import CensusError
from fieldid.guides.load import load as load_guide
from fieldid.guides.load import loads as guide_of
from fieldid.paths import RULES
from make import PLOVER, lapwing, plover

GUIDE = guide_of(plover().encode(), file="plover.toml")
HEAD = "specimen,model_year,how,member,gone,rings,pad,stamp,serial"


def read(*rows, head=HEAD):
    return loads("\n".join([head, *rows, ""]), GUIDE, file="p.csv").specimens


def cases(title):
    """What is written and how its refusal begins, as refusals.txt has them."""
    text = Path(__file__).with_name("refusals.txt").read_text("utf-8")
    block = text.split(f"# {title}\n\n")[1].split("\n\n#")[0]
    # An empty line may be what is written.
    lines = [line.replace("\\t", "\t") for line in block.rstrip("\n").split("\n")]
    return [(lines[i], lines[i + 1]) for i in range(0, len(lines), 3)]


def refused(*rows, head=HEAD):
    """The problems of a census, without the file's name."""
    with pytest.raises(CensusError) as caught:
        read(*rows, head=head)
    return str(caught.value).replace("p.csv:", "").splitlines()


def test_row_is_a_specimen():
    [found] = read('A1,1952,"receipt: Ember, 3 May 1952",4,,green-ivory,6.1,A217,500')

    assert (found.name, found.years, found.line) == ("A1", ((1952, 1.0),), 2)
    assert (found.how, found.note) == ("receipt", "Ember, 3 May 1952")
    assert found.item.member == "4"
    assert dict(found.item.readings) == {
        "rings": "green-ivory",
        "pad": 6.1,
        "stamp": "A217",
        "serial": 500.0,
    }


def test_columns_may_stand_in_any_order():
    [found] = read("family,none,A1,1951", head="how,rings,specimen,model_year")

    assert (found.name, dict(found.item.readings)) == ("A1", {"rings": "none"})


def test_empty_is_unread_and_mark_cannot_be_told():
    [found] = read("A1,1951,family,,,?,,,")

    assert dict(found.item.readings) == {"rings": None}


def test_size_may_have_its_error():
    found = read("A1,1951,family,,,,6.1±0.2,,", "A2,1951,family,,,,6.1 +- 0.2,,")

    assert [dict(each.item.readings)["pad"] for each in found] == [
        Measured(6.1, 0.2)
    ] * 2


def test_gone_parts_are_listed():
    [found] = read("A1,1951,family,,collar; shaft,,,,")

    assert found.item.gone == ("collar", "shaft")


@pytest.mark.parametrize(
    ("written", "years"),
    [
        ("1952", ((1952, 1.0),)),
        ("", ()),
        ("?", ()),
        ("1951 0.7; 1952 0.3", ((1951, 0.7), (1952, 0.3))),
        ("1953 0.5;1951 0.5", ((1951, 0.5), (1953, 0.5))),
        (
            "1951 0.33; 1952 0.33; 1953 0.33",
            ((1951, 1 / 3), (1952, 1 / 3), (1953, 1 / 3)),
        ),
        ("1951 1; 1952 0", ((1951, 1.0),)),
    ],
)
def test_years_have_their_probabilities(written, years):
    [found] = read(f"A1,{written},family,,,,,,")

    assert [year for year, _ in found.years] == [year for year, _ in years]
    assert [p for _, p in found.years] == pytest.approx([p for _, p in years])


@pytest.mark.parametrize(("row", "told"), cases("rows"))
def test_row_is_refused(row, told):
    [problem] = refused(row)

    assert problem.startswith(told)


@pytest.mark.parametrize(("head", "told"), cases("first lines"))
def test_header_is_refused(head, told):
    [problem] = refused(head=head)

    assert problem.startswith(told)


def test_long_field_is_refused():
    [problem] = refused(f"{'A' * 301},1951,family,,,,,,")

    assert problem.startswith("2: specimen: has 301 characters")


def test_all_problems_come_at_once():
    """With the line that a row begins in, blank lines and quoted ones counted."""
    told = refused(
        "A1,1961,family,9,,green,,,",
        "",
        'A2,1951,"other: of two\nlines",,,,,,',
        "A2,1951,family,,,,,A2,x",
    )

    assert [problem.split(":")[:2] for problem in told] == [
        ["2", " member"],
        ["2", " model_year"],
        ["2", " rings"],
        ["6", " serial"],
        ["6", " specimen"],
        ["6", " stamp"],
    ]
    assert "'A2' is the specimen in line 4 too" in told[4]


def test_too_many_specimens_are_refused():
    rows = [f"A{i},1951,family,,,,,," for i in range(MOST_SPECIMENS + 1)]

    assert refused(*rows) == [
        f" has more than {MOST_SPECIMENS} specimens; would be right: at most "
        f"{MOST_SPECIMENS} specimens"
    ]


@pytest.mark.parametrize(
    ("content", "told"),
    [(b"\xff", "has a byte that is not UTF-8"), (b"a" * 2_000_001, "is larger than")],
)
def test_file_is_refused(tmp_path, content, told):
    path = tmp_path / "plover.census.csv"
    path.write_bytes(content)

    with pytest.raises(CensusError, match=told):
        load(path, GUIDE)


def test_missing_file_is_told(tmp_path):
    with pytest.raises(CensusError, match="cannot be read"):
        load(tmp_path / "none.csv", GUIDE)


def test_marks_and_ends_of_windows_are_read(tmp_path):
    path = beside(tmp_path / PLOVER.name)
    path.write_bytes(f"\ufeff{HEAD}\r\nA1,1951,family,,,none,,,\r\n".encode())

    assert path.name == "plover.census.csv"
    assert len(load(path, GUIDE).specimens) == 1


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text):
    for whole in (text, f"{HEAD}\n{text}", f"{HEAD}\nA1,1951,family,,,{text},,,"):
        with suppress(CensusError):
            loads(whole, GUIDE, file="p.csv")


def test_refusals_are_those_on_the_page():
    page = (RULES / "README.md").read_text("utf-8")
    table = page.split("<!-- census refusals -->")[1].split(
        "<!-- /census refusals -->"
    )[0]
    shown = dict(re.findall(r"^\| ([a-z-]+) \| (.+ \| .+) \|$", table, re.M))
    del shown["code"]

    assert shown == {code: " | ".join(words) for code, words in REFUSALS.items()}


def test_census_that_comes_along_is_good():
    path = RULES / "wrackham-teale-dotterel.toml"

    assert len(load(beside(path), load_guide(path)).specimens) == 44


def test_census_on_the_page_for_authors_is_good():
    page = (RULES / "README.md").read_text("utf-8")
    text = page.split("```csv\n")[1].split("```")[0]
    guide = guide_of(lapwing().encode(), file="lapwing.toml")
    found = loads(text, guide, file="lapwing.census.csv").specimens

    assert [each.name for each in found] == ["L-01", "L-02", "L-03"]
