"""The page without scripts of a guide that brackets: marks with their years."""

import pytest
from bs4 import BeautifulSoup

from fieldid.engine.guide import Field, Size
from fieldid.guides.load import load
from fieldid.paths import RULES
from fieldid.web.app import create_app
from fieldid.web.marks import rows
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


def test_code_lists_what_stands_for_which_year():
    letter = Field("letter", "year-letter", 1, "AB", codes=((1950, "A"), (1951, "B")))
    [row] = rows(bracketing(code("stamp", letter)))

    assert [(each.title, each.entries) for each in row.lists] == [
        ("The letter", ("A: 1950", "B: 1951"))
    ]


def test_measure_lists_its_sizes():
    [row] = rows(bracketing(measure("pad", Size((1950, 1959), 6.25, 0.5))))

    assert row.lists[0].entries == ("1950-1959: 6.25 mm, give or take 0.5",)


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


def test_page_needs_no_script(page):
    soup, _ = page

    assert not soup.find_all("script")
