"""A guide's page: its charts say what the engine says, and all of it is reachable."""

import re

import html5lib
import pytest
from bs4 import BeautifulSoup

from fieldid.engine import prepare
from fieldid.engine.guide import Members, Size
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
TELLING = option("dots", span((1951, 1951))), option("lines", span((1952, 1952)))
POPULAR = guide(
    choice("face", *TELLING),
    choice("cap", *TELLING, misread=0.3, popular=True),
    choice("sole", *TELLING),
)
BY_MEMBER = guide(
    measure(
        "length",
        Size((1951, 1951), 10.0, 0.3, ("2",)),
        Size((1952, 1952), 20.0, 0.3, ("2",)),
    ),
    members=Members(("2", "3")),
)


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
    return rows_of(plot)


def rows_of(place):
    return [
        [plainly(cell.text) for cell in row.find_all(["th", "td"])]
        for row in place.select("tbody tr")
    ]


def plainly(text):
    """Without what keeps figures together."""
    return text.replace("\u00a0", " ").replace("\u2011", "-")


def shares_of(told):
    """Years with their shares, from words: `1954-1955: 87 %, 1956: all`."""
    found = {}
    for run in told.split(", ") if ": " in told else ():
        years, said = run.split(": ")
        low, _, high = said.removesuffix(" %").partition("-")
        bounds = {"all": (100, 100), "under 1": (0, 1)}.get(low) or (
            int(low),
            int(high or low),
        )
        first, _, last = years.partition("-")
        for year in range(int(first), int(last or first) + 1):
            found[year] = bounds
    return found


def plain(text):
    return int(re.sub(r"\D", "", text))


def test_bits_are_the_engines(page):
    told = rows_of(page.select_one(".figures--bars"))

    assert [(name.lower(), bits, minute) for name, bits, minute in told] == [
        (worth.clue.name.lower(), f"{worth.bits:.2f}", f"{worth.per_minute:.1f}")
        for worth in worths(TABLES)
    ]


def test_quickest_clues_are_named():
    """The square of the bits a minute, as phones rank."""
    ranked = sorted(worths(TABLES), key=lambda each: -each.bits * each.per_minute)
    named = "{}, {} and {}".format(*(worth.clue.name for worth in ranked[:3]))

    assert f"look at these first: {named}." in lesson(GUIDE).bits_say


def test_curve_is_the_simulations(page):
    told = table(page, "Per cent of specimens")

    for row, step in zip(told, sureness(TABLES), strict=True):
        assert int(row[0]) == step.looks
        assert abs(plain(row[1]) - 100 * step.right) <= 1
        assert abs(plain(row[2]) - 100 * step.told) <= 1
        assert int(row[3]) == round(step.seconds)


def test_matrix_is_the_simulations(page):
    """What is named is as it was counted; what is not is under one in a hundred."""
    told = table(page, "A row a year")
    years = [str(year.year) for year in GUIDE.years]

    for (_, words), row in zip(told, mistaken(TABLES), strict=True):
        named = dict(re.findall(r"(\d{4}): (?:over )?(\d+) %", words))
        assert named
        for year, p in zip(years, row, strict=True):
            assert 100 * p == pytest.approx(int(named.get(year, 0)), abs=1)


def test_spans_are_the_guides(page):
    """Years in which all was the same are told together."""
    for clue in GUIDE.clues:
        section = page.find(id=f"clue-{clue.id}").parent
        answers = section.select(".made tbody tr")
        known = seen(TABLES, clue)
        assert len(answers) == len(known)
        for row, each in zip(answers, known, strict=True):
            assert each.option.label in row.th.text
            told = shares_of(plainly(row.td.find_all(string=True)[-1]))
            for year, p in zip(GUIDE.years, each.shares, strict=True):
                low, high = told.get(year.year, (0, 0))
                assert low - 1 <= 100 * p <= high + 1


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


def test_changed_size_is_told_in_its_year():
    sizes = Size((1951, 1951), 5.0, 0.3), Size((1952, 1952), 6.5, 0.3)
    told = {
        each.year.year: each.turns
        for each in lesson(guide(measure("pad", *sizes))).years
    }

    assert 1951 not in told
    assert [turn.new for turn in told[1952]] == ["6.5\u00a0mm (before 5\u00a0mm)"]


def test_every_clue_and_part_has_its_place(page):
    for clue in GUIDE.clues:
        section = page.find(id=f"clue-{clue.id}").parent
        assert clue.ask in section.text
        assert page.find("a", href=f"#clue-{clue.id}")
    for each in GUIDE.parts:
        assert each.name in page.find(id=f"part-{each.id}").text.lower()


def test_charts_are_hidden_and_tables_named(page):
    for drawn in page.select("svg.chart, svg.bar, svg.band"):
        assert drawn["aria-hidden"] == "true"
    for each in page.select("table"):
        assert each.get("aria-label") or page.find(id=each["aria-labelledby"])
        assert each.select("thead th[scope=col]")
        assert all(row.th["scope"] == "row" for row in each.select("tbody tr"))


def test_clue_that_tells_nothing_says_why():
    face = choice("face", option("dots", span()), option("lines"))
    same = lesson(guide(face, outside=0.0))
    [said] = same.nothing

    assert said.say.startswith("0.00, since all years show much the same")
    assert same.clues[0].tells == said.say


def test_size_of_a_member_tells_once_it_is_known():
    [said] = lesson(BY_MEMBER).nothing

    assert "not known which piece of the set" in said.say
    assert re.search(r"then up to 0\.[1-9]\d bits", said.say)


def test_words_for_evidence_are_explained():
    """Where one of them stands, and not elsewhere."""
    page = BeautifulSoup(page_of(POPULAR), "html.parser")
    told = page.find(id="myths").find_next("p").text

    assert "up to 3 times barely worth a mention, up to 20 positive" in told
    assert "up to 150 strong, and more than that very strong" in told
    assert lesson(GUIDE).words_say == ""


@pytest.mark.parametrize("found", [GUIDE, RANGES, NO_CHOICE], ids=lambda g: g.id)
def test_page_is_valid_and_needs_no_script(found):
    text = page_of(found)

    html5lib.HTMLParser(strict=True).parse(text)
    [script] = BeautifulSoup(text, "html.parser").find_all("script")
    assert script["src"].endswith("phone/early.js")
    assert "style=" not in text


def test_guide_that_brackets_promises_no_sureness():
    told = BeautifulSoup(page_of(RANGES), "html.parser")

    assert lesson(RANGES).sure is None
    assert not told.find(id="sure")
    assert not told.find("a", href="#sure")
    assert "1949 to 1989" in told.find(id="clue-country").parent.text


def test_years_that_look_alike_are_named():
    same = guide(choice("face", option("dots", span()), option("lines")), outside=0.0)

    assert "Hardest to tell apart: 1951 and 1952" in lesson(same).sure.matrix_say


def test_years_that_all_differ_are_not():
    face = choice(
        "face",
        option("dots", span((1951, 1951))),
        option("lines", span((1952, 1952))),
        misread=0.001,
    )
    told = lesson(guide(face, outside=0.0, floor=1e-4, parts=(PART,))).sure

    assert "no two years are hard to tell apart" in told.matrix_say
