"""The page without scripts of a guide that brackets: marks with their years."""

import pytest
from bs4 import BeautifulSoup

from fieldid.engine.guide import Field, Size
from fieldid.guides.load import load
from fieldid.paths import RULES
from fieldid.web.app import create_app
from fieldid.web.marks import SHORT, Listed, rows
from make import choice, code, guide, measure, model_year, number, option, part, span

NONE = option("none", span(share=0.9))


def bracketing(*clues):
    """A guide of sixty years that brackets."""
    return guide(
        *clues,
        floor=0.001,
        outside=1e-6,
        verdict="range",
        years=tuple(model_year(year) for year in range(1940, 2000)),
        parts=(part("head", 0.0),),
    )


def test_mark_has_the_years_it_speaks_for():
    western = option("western", span((1949, 1990), share=0.1))
    [row] = rows(bracketing(choice("country", western, NONE, misread=0.001)))

    assert [(mark.label, mark.years) for mark in row.marks] == [
        ("western", "1949 to 1990"),
        ("none", "any year"),
    ]


def test_number_is_looked_up_in_its_table():
    [row] = rows(bracketing(number("patent", {1950: 1, 1960: 1101}, 3000, lag=5)))

    assert row.lists[0].entries == ("1950: 1", "1960: 1,101", "last: 3,000")


def laid_out(*fields):
    """What is told of a code with these fields."""
    [row] = rows(bracketing(code("stamp", *fields)))
    [told] = row.lists
    return told.entries


def test_code_tells_years_of_a_letter_together():
    codes = ((1950, "A"), (1951, "A"), (1952, "B"), (1954, "A"))
    letter = Field("letter", "year-letter", 1, "AB", codes=codes)

    assert laid_out(letter) == ("Letter: A\u00a01950-1951 and 1954; B\u00a01952.",)


@pytest.mark.parametrize(
    ("field", "told"),
    [
        (Field("m", "month", 1, "ABCDEFGHIJKLX"), "A January to L December; X tells"),
        (Field("m", "month", 1, "ABCDEFGHJKLM"), "A January, B February, C March"),
        (
            Field("y", "year", 1, "0123456789"),
            "the last figure of the year it was built",
        ),
        (Field("y", "year", 2, "0123456789"), "the last two figures of the year"),
        (Field("p", "plain", 1, "AB"), "nothing about the date"),
    ],
)
def test_field_tells_what_it_means(field, told):
    [entry] = laid_out(field)

    assert f": {told}" in entry


def test_mark_that_is_older_is_not_when_it_was_built():
    year = Field("year", "year", 4, "0123456789")
    [row] = rows(bracketing(code("stamp", year, lag=5)))

    assert row.lists[0].entries == ("Year: the year it was marked so.",)


def sized(*sizes):
    [row] = rows(bracketing(measure("pad", *sizes)))
    [told] = row.lists
    return told


def test_measure_lists_its_sizes():
    told = sized(Size((1950, 1959), 6.25, 0.5), Size((1960, 1960), 7.0, 0.25))

    assert told.entries == (
        "1950-1959: 6.25 mm, give or take 0.5",
        "1960: 7 mm, give or take 0.25",
    )


def test_spread_of_all_sizes_is_told_once():
    told = sized(Size((1950, 1959), 6.0, 0.5), Size((1960, 1960), 7.0, 0.5))

    assert told.title == "The usual sizes, give or take 0.5 mm"
    assert told.entries == ("1950-1959: 6 mm", "1960: 7 mm")


def test_sizes_of_members_stand_with_their_names():
    told = sized(
        Size((1950, 1955), 6.0, 0.5, ("2",)),
        Size((1956, 1956), 7.0, 0.5, ("2",)),
        Size((1957, 1957), 6.0, 0.5, ("2",)),
        Size((1950, 1957), 9.0, 0.5),
    )

    assert told.entries == (
        "2: 1950-1955 and 1957: 6 mm; 1956: 7 mm",
        "all others: 1950-1957: 9 mm",
    )


def test_long_table_is_folded():
    [row] = rows(bracketing(number("patent", {1950: 1, 1960: 1101}, 3000, lag=5)))

    assert not row.lists[0].folded
    assert Listed("", ("1950: 1",) * (SHORT + 1)).folded


@pytest.fixture(scope="module")
def page():
    """The page of the guide of dated marks."""
    marks = load(RULES / "dated-marks.toml")
    text = create_app(guides=[marks], testing=True).test_client()
    return BeautifulSoup(text.get("/tree-dated-marks.html").text, "html.parser"), marks


def test_page_has_every_clue_with_its_source(page):
    soup, marks = page
    told = [each.get_text(" ", strip=True) for each in soup.select("section.ask")]

    assert len(told) == len(marks.clues)
    for clue, text in zip(marks.clues, told, strict=True):
        assert clue.ask in text
        assert " ".join((clue.source or marks.source).split()) in text


def test_page_has_no_script_but_its_theme(page):
    soup, _ = page

    assert [each["src"].split("/")[-1] for each in soup.find_all("script")] == [
        "early.js"
    ]
