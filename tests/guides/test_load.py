"""A guide's file becomes the engine's records, with the defaults that are promised."""

import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Condition,
    GuideFlag,
    Members,
    ModelYear,
    Number,
    Option,
    Part,
    Size,
    Span,
)
from fieldid.errors import GuideError
from fieldid.guides.load import load, loads
from make import PLOVER, month, plover

SMALL = """
format = 1
id = "small"
title = "Small"
kind = "reels"
about = "Invented."
source = "Invented."
updated = "2026-02-01"
drawing = "iron"
model_year = [{ year = 1951 }]
part = [{ id = "head", name = "head" }]
[[clue]]
id = "sole-mark"
part = "head"
kind = "choice"
ask = "Which mark?"
option = [{ id = "a", label = "A" }, { id = "b", label = "B" }]
"""


@pytest.fixture(scope="module")
def guide():
    return load(PLOVER)


def read(text: str):
    """The guide in a text, whatever its file would be called."""
    return loads(text.encode(), file="small.toml")


def test_defaults_are_those_of_the_readme():
    small = read(SMALL)

    assert (small.maker, small.fiction) == ("", False)
    assert (small.floor, small.misread, small.outside) == (0.01, 0.02, 0.02)
    assert small.years == (ModelYear(1951, month("1951-01"), month("1951-12")),)
    assert small.parts == (Part("head", "head", 0.05),)
    assert (small.members, small.flags, small.cautions) == (None, (), ())
    assert small.clues == (
        Clue(
            "sole-mark",
            "head",
            "sole mark",
            Choice((Option("a", "A"), Option("b", "B"))),
            "Which mark?",
            spot="head",
        ),
    )


def test_file_gives_its_guide(guide):
    assert (guide.id, guide.maker, guide.fiction) == ("plover", "Ember Forge", True)
    assert (guide.updated, guide.drawing, guide.outside) == ("2026-02-01", "iron", 0.03)
    assert guide.cautions == ("Have the joint checked before hitting a ball.",)


def test_run_of_years_becomes_plain_years(guide):
    first = ModelYear(1951, month("1950-09"), month("1951-10"), 1.5)

    assert guide.years[0] == first
    assert guide.years[1].note == "A strike in the spring."
    assert guide.years[2:] == tuple(
        ModelYear(y, month(f"{y}-01"), month(f"{y}-12")) for y in (1953, 1954, 1955)
    )


def test_part_follows_with_its_share(guide):
    collar = Part("collar", "collar", 0.05, "shaft", 0.85, 0.02)

    assert guide.parts[1:] == (Part("shaft", "shaft", 0.10), collar)


def test_choice_has_its_spans(guide):
    rings = guide.clues[0]

    assert (rings.misread, rings.seconds, rings.spot) == (0.03, 8.0, "collar")
    assert rings.kind.replacement == (("none", 0.8), ("navy-ivory", 0.1))
    assert rings.kind.options[0].seen == (
        Span((1951, 1952), None, month("1952-06"), 3, 41.5 / 44),
        Span((1953, 1953), share=0.03, excluded=("W",)),
    )
    assert rings.kind.options[0].picture == ("collar", (("rings", ("green", "ivory")),))


def test_measure_has_its_sizes(guide):
    pad = guide.clues[1]

    assert (pad.name, pad.misread, pad.needs) == ("pad thickness", 0.02, "callipers")
    assert (pad.kind.low, pad.kind.high, pad.kind.wear) == (3.0, 12.0, 0.15)
    assert pad.kind.sizes[0] == Size((1951, 1952), 6.0, 0.25, excluded=("W",))


def test_code_has_its_fields(guide):
    stamp, band = guide.clues[2:4]

    assert isinstance(stamp.kind, Code)
    assert [each.means for each in stamp.kind.fields] == ["month", "year", "model-year"]
    assert stamp.kind.fields[2].codes == ((1951, "17"), (1952, "18"), (1953, "21"))
    assert band.kind.fields[0].codes[0] == (1950, "P")
    assert (stamp.spot, band.seen_from) == ("hosel", "away")


def test_number_has_its_table(guide):
    serial, patent = guide.clues[4:6]

    first = (1, 400, 4200, 5600, 6900, 8000)
    years = tuple(zip(range(1950, 1956), first, strict=True))
    assert serial.kind == Number("made", 0.0, years, 9000)
    assert (patent.kind.means, patent.kind.lag) == ("not-before", 8.0)


def test_code_has_its_layouts(guide):
    mark = guide.clues[6].kind

    assert (mark.fields, mark.means, mark.lag) == ((), "not-before", 2.5)
    assert [layout.years for layout in mark.layouts] == [(1943, 1949), None]
    assert mark.layouts[1].fields[0].weeks == "iso"


def test_set_has_its_members(guide):
    assert guide.members == Members(
        ("3", "4", "5", "W"),
        ("3", "4", "5"),
        0.04,
        (("W", 0.5),),
        (("3", "3 iron"), ("W", "wedge")),
    )


def test_flag_splits_into_conditions(guide):
    """Keys in one table and tables in one list alike must all hold."""
    rings, special, thin = guide.flags

    assert rings.when == (Condition(clue="rings", among=("none",)),)
    assert thin == GuideFlag(
        (Condition(clue="pad", over=3.5, under=4.5),), "Worn thin."
    )
    assert special.when == (
        Condition(clue="stamp", among=("X???",)),
        Condition(part="shaft", replaced_over=0.5),
        Condition(years=(1953, 1954)),
    )


def test_editor_marks_and_line_ends_change_nothing(guide):
    text = "\ufeff" + plover().replace("\n", "\r\n")

    assert read(text) == guide


@pytest.mark.parametrize(
    "span", ['years = 1951, from = "1951-10"', 'years = 1952, to = "1951-09"']
)
def test_span_may_cover_a_single_month(span, guide):
    """The last month of one year's window, the first of another's."""
    edited = read(plover(('from = "1952-05", to = "1954-06"', span)))

    assert edited.clues[0].kind.options[1].seen != guide.clues[0].kind.options[1].seen


WORD = st.sampled_from(sorted({*plover().split(), "nan", "[[[", "-1", "''"}))
PLACE = st.integers(0, len(plover()))


LINE = re.compile(r"a\.toml(:\d+)?: [^\n]+; would be right: [^\n]+")


def outcome(content: bytes) -> list[str]:
    """The lines that a guide is refused with; none if it is read."""
    try:
        loads(content, file="a.toml")
    except GuideError as error:
        return [str(problem) for problem in error.problems]
    return []


@settings(max_examples=150, deadline=None)
@given(PLACE, st.integers(0, 40), WORD | st.text(max_size=5))
@example(0, 40, "")
def test_no_mutation_breaks_the_reader(place, length, instead):
    """Whatever an author types is read, or refused in lines; nothing else."""
    text = plover()
    text = text[:place] + instead + text[place + length :]
    for line in outcome(text.encode("utf-8", "surrogatepass")):
        assert LINE.fullmatch(line), line


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_no_odd_value_breaks_the_reader(data):
    """The same with whole values, which a mutated character seldom reaches."""
    lines = plover().splitlines()
    place = data.draw(st.sampled_from([i for i, t in enumerate(lines) if " = " in t]))
    key = lines[place].partition(" = ")[0]
    odd = ["0", "-1", "1e400", "nan", "true", '""', "[]", "{}", "[[]]", "1951-01-01"]
    odd += [
        '"1951"',
        "[{}]",
        "{ a = 1 }",
        '["a", "a"]',
        "9" * 400,
        '"\\u0000"',
        "[0, 0]",
    ]
    lines[place] = f"{key} = {data.draw(st.sampled_from(odd))}"
    for line in outcome("\n".join(lines).encode()):
        assert LINE.fullmatch(line), line


@pytest.mark.parametrize("article", ["the", "The", "the  "])
def test_names_shed_the_article_that_sentences_give_them(article):
    text = plover().replace('name = "collar"', f'name = "{article} collar"')
    text = text.replace('name = "pad thickness"', f'name = "{article} pad thickness"')

    guide = loads(text.encode(), file="a.toml")

    assert guide == loads(plover().encode(), file="a.toml")
