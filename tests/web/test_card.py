"""The card: a key that leads on, and the accuracy that is printed on it."""

import math
import random
from dataclasses import replace

import html5lib
import pytest
from bs4 import BeautifulSoup

from bundles import app, guide
from fieldid.engine.guide import Choice
from fieldid.guides.load import load
from fieldid.paths import RULES
from fieldid.web.card import HEAD, UNTOLD, card, foot
from fieldid.web.growing import LEAST_UNTOLD
from fieldid.web.sheet import SIZES, Sheet, hold
from kittiwake import GUIDE
from specimens import cell_by_lot, replaced_by_lot, shown

DOTTEREL = load(RULES / "wrackham-teale-dotterel.toml")
MARKS = load(RULES / "dated-marks.toml")
# What is typed is read on paper in ranges and fields; what is chosen, as it is.
CHOSEN = replace(
    GUIDE,
    outside=0.0,
    members=None,
    clues=tuple(clue for clue in GUIDE.clues if isinstance(clue.kind, Choice)),
)
WALKS = 2500


def walked(made, dice):
    """Whether a specimen, followed from step to step, ends at its year."""
    cell, gone = cell_by_lot(CHOSEN, dice), replaced_by_lot(CHOSEN, dice)
    step = made.steps[0]
    while True:
        clue = step.ask.clue
        reading = shown(CHOSEN, clue, cell, clue.part in gone, None, dice)
        hidden = dice.random() < max(clue.unreadable, LEAST_UNTOLD)
        ways = {way.printed and way.printed.reading: way for way in step.ways}
        way = ways.get(None if hidden else reading)
        if way is None or way.step is None:
            return way is not None and str(cell[0]) == way.end
        step = made.steps[way.step - 1]


def test_printed_accuracy_is_that_of_walks():
    """By another simulation; off by more than this once in 16,000 times."""
    made = card(CHOSEN)
    dice = random.Random(3)
    right = sum(walked(made, dice) for _ in range(WALKS)) / WALKS

    assert 0.2 < made.right < 1
    assert abs(right - made.right) < 4 * math.sqrt(
        made.right * (1 - made.right) / WALKS
    )


@pytest.mark.parametrize("found", [DOTTEREL, guide()], ids=lambda g: g.id)
def test_every_step_is_reached_once(found):
    made = card(found)
    led = [way.step for step in made.steps for way in step.ways if way.step]

    assert [step.number for step in made.steps] == list(range(1, len(made.steps) + 1))
    assert sorted(led) == list(range(2, len(made.steps) + 1))
    assert all(way.step or way.end for step in made.steps for way in step.ways)


def test_each_step_may_be_left_open():
    for step in card(DOTTEREL).steps:
        assert [way.printed for way in step.ways].count(None) == 1


def heights(made):
    """Of what stands on the card, one below the other."""
    sheet = Sheet(made.size)
    yield from (sheet.read(read.clue.ask, read.lines) for read in made.reads)
    for step in made.steps:
        answers = [
            (way.printed.label, way.printed.drawn) if way.printed else (UNTOLD, False)
            for way in step.ways
        ]
        yield sheet.step(f"00 {step.ask.clue.ask} {step.ask.detail}", answers)
    for row in made.marks:
        yield sheet.marks(row.clue.ask, [mark.label for mark in row.marks])


@pytest.mark.parametrize("found", [DOTTEREL, MARKS], ids=lambda g: g.id)
def test_card_fills_the_sheet_and_no_more(found):
    made = card(found)
    column = Sheet(made.size).column(HEAD, foot(found))
    used = list(heights(made))

    assert hold(column, used)
    assert sum(used) > 2 * 0.88 * column


def test_letters_are_as_large_as_the_steps_allow():
    """A tree of one question has room for the largest."""
    few = replace(CHOSEN, clues=CHOSEN.clues[:1])

    assert card(few).size == max(SIZES)
    assert card(DOTTEREL).size < max(SIZES)


def test_guide_that_brackets_lists_what_tells():
    made = card(MARKS)

    assert made.right is None
    assert made.steps == ()
    assert all(mark.years != "any year" for row in made.marks for mark in row.marks)
    assert len(made.marks) > 15


def test_guide_of_one_clue_has_a_card():
    """Nothing to ask is a card too: what is known beforehand."""
    bare = card(replace(CHOSEN, clues=()))

    assert bare.steps == ()
    assert 0 < bare.right < 1


def test_page_is_valid_and_says_what_it_is():
    client = app().test_client()
    text = client.get(f"/card-{guide().id}.html").text
    page = BeautifulSoup(text, "html.parser")

    html5lib.HTMLParser(strict=True).parse(text)
    assert "Invented for demonstration." in page.header.text
    assert f"{round(100 * card(guide()).right)} times in 100" in page.header.text
    assert "not an authentication or an appraisal" in page.footer.text
    [script] = page.find_all("script")
    assert script["src"].endswith("phone/early.js")


def test_arrows_have_words_too():
    client = app().test_client()
    page = BeautifulSoup(client.get(f"/card-{guide().id}.html").text, "html.parser")
    arrows = page.select(".way__to [aria-hidden=true]")

    assert len(arrows) == len(card(guide()).steps) - 1
    assert all(arrow.find_next_sibling(class_="unseen") for arrow in arrows)


def test_code_is_told_beside_the_steps():
    """What tells most stands there; texts of several years are drawn together."""
    [code, *_] = card(DOTTEREL).reads

    assert code.clue.id == "hosel-code"
    assert code.lines[0] == "The year: the last figure of the year it was built."
    assert "21\u00a01954-1955 and 1964; 24\u00a01956-1958;" in code.lines[-1]
