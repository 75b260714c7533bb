"""A guide's page: its charts say what the engine says, and all of it is reachable."""

import re

import html5lib
import pytest
from bs4 import BeautifulSoup

from fieldid.engine import prepare
from fieldid.learn.seen import changes, seen
from fieldid.learn.simulate import mistaken, sureness
from fieldid.learn.worth import worths
from fieldid.web.app import create_app
from fieldid.web.lesson import lesson
from kittiwake import GUIDE
from make import choice, guide, measure, model_year, option, part, span

TABLES = prepare(GUIDE)
RANGES = guide(
    choice(
        "country",
        option("western", span((1949, 1989), share=0.1)),
        option("none", span(share=0.9)),
        misread=0.001,
    ),
    floor=0.001,
    parts=(part("head", 0.0),),
    verdict="range",
    outside=1e-6,
    years=tuple(model_year(year) for year in range(1940, 2000)),
)
PART = part("head", 0.001)
NO_CHOICE = guide(measure("width"))


def page_of(found):
    client = create_app(guides=[found], testing=True).test_client()
    answer = client.get(f"/guide-{found.id}.html")
    assert answer.status_code == 200
    return answer.text


@pytest.fixture(scope="module")
def page():
    return BeautifulSoup(page_of(GUIDE), "html.parser")


def table(page, caption):
    """The figures beside the chart with this caption."""
    [plot] = [each for each in page.select(".plot") if caption in each.figcaption.text]
    return [
        [cell.text.replace("\u00a0", " ") for cell in row.find_all(["th", "td"])]
        for row in plot.select("tbody tr")
    ]


def plain(text):
    return int(re.sub(r"\D", "", text))


def test_bits_are_the_engines(page):
    told = table(page, "Bits that each clue tells")

    assert [(name.lower(), said) for name, said in told] == [
        (worth.clue.name.lower(), f"{worth.bits:.2f}") for worth in worths(TABLES)
    ]


def test_bits_a_minute_begin_with_the_most(page):
    told = [float(said) for _, said in table(page, "Bits a minute")]
    known = sorted((worth.per_minute for worth in worths(TABLES)), reverse=True)

    assert told == [pytest.approx(each, abs=0.005) for each in known]


def test_curve_is_the_simulations(page):
    told = table(page, "Per cent of specimens")

    for row, step in zip(told, sureness(TABLES), strict=True):
        assert int(row[0]) == step.looks
        assert abs(plain(row[1]) - 100 * step.right) <= 1
        assert abs(plain(row[2]) - 100 * step.told) <= 1
        assert int(row[3]) == round(step.seconds)


def test_matrix_is_the_simulations(page):
    told = table(page, "A row a year")

    for (_, *cells), row in zip(told, mistaken(TABLES), strict=True):
        assert [plain(cell) for cell in cells] == [
            pytest.approx(100 * p, abs=1) for p in row
        ]


def test_spans_are_the_guides(page):
    """Years in which all was the same share a row."""
    for k, clue in enumerate(GUIDE.clues):
        plots = page.find(id=f"clue-{clue.id}").parent.select(".plot tbody tr")
        shares = {
            row.th.text: [plain(cell.text) for cell in row.find_all("td")]
            for row in plots
        }
        for y, year in enumerate(GUIDE.years):
            run = [key for key in shares if within(year.year, key)]
            known = [each.shares[y] for each in seen(TABLES, GUIDE.clues[k])]
            if run:
                assert shares[run[0]] == [pytest.approx(100 * p, abs=1) for p in known]


def within(year, run):
    first, _, last = run.partition("-")
    return int(first) <= year <= int(last or first)


def test_every_change_is_told_in_its_year(page):
    for year, changed in zip(GUIDE.years, changes(TABLES), strict=True):
        told = page.find(id=f"year-{year.year}")
        text = told.parent.text if told else ""
        for change in changed:
            for label in (
                *(each.option.label for each in change.new),
                *(each.label for each in change.gone),
            ):
                assert label in text, (year.year, label)


def test_every_clue_and_part_has_its_place(page):
    for clue in GUIDE.clues:
        section = page.find(id=f"clue-{clue.id}").parent
        assert clue.ask in section.text
        assert page.find("a", href=f"#clue-{clue.id}")
    for each in GUIDE.parts:
        assert each.name in page.find(id=f"part-{each.id}").text.lower()


def test_chart_is_hidden_and_its_table_named(page):
    for plot in page.select(".plot"):
        assert plot.svg["aria-hidden"] == "true"
        assert plot.select_one("[role=group]")["aria-label"]
        assert plot.select("thead th[scope=col]")
        assert all(row.th["scope"] == "row" for row in plot.select("tbody tr"))


@pytest.mark.parametrize("found", [GUIDE, RANGES, NO_CHOICE], ids=lambda g: g.id)
def test_page_is_valid_and_needs_no_script(found):
    text = page_of(found)

    html5lib.HTMLParser(strict=True).parse(text)
    assert "<script" not in text
    assert "style=" not in text


def test_guide_that_brackets_promises_no_sureness():
    told = BeautifulSoup(page_of(RANGES), "html.parser")

    assert lesson(RANGES).sure is None
    assert not told.find(id="sure")
    assert not told.find("a", href="#sure")
    assert "1949 to 1989" in told.find(id="clue-country").parent.text


def test_years_that_look_alike_are_named():
    same = guide(choice("face", option("dots", span()), option("lines")), outside=0.0)

    assert "Hardest to tell apart: 1952 and 1951" in lesson(same).sure.matrix_say


def test_years_that_all_differ_are_not():
    face = choice(
        "face",
        option("dots", span((1951, 1951))),
        option("lines", span((1952, 1952))),
        misread=0.001,
    )
    told = lesson(guide(face, outside=0.0, floor=1e-4, parts=(PART,))).sure

    assert "no two years are hard to tell apart" in told.matrix_say
