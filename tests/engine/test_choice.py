"""Choices: spans, fades, silence, look-alikes, what replaced parts show."""

from dataclasses import replace

import pytest

from fieldid.engine.cells import Cell, cells
from fieldid.engine.choice import choice_likelihood, choice_table, weight
from fieldid.engine.guide import Choice, Option, Span
from kittiwake import GUIDE, NUMERAL, RINGS, month

CELLS = cells(GUIDE)
JUNE = month(1953, 6)


def option(**limits):
    return Option("o", "o", (), (Span(**limits),))


def table(clue, member=None, guide=GUIDE):
    return choice_table(guide, clue, clue.kind, CELLS, member)


@pytest.mark.parametrize(
    ("late", "want"), [(0, 1.0), (1, 0.75), (2, 0.5), (3, 0.25), (4, 0.0)]
)
def test_option_fades_out_month_by_month(late, want):
    fading = option(until=JUNE, fade=3)

    assert weight(fading, Cell(1953, JUNE + late, 0), None) == want


@pytest.mark.parametrize(("early", "want"), [(0, 0.8), (1, 0.4), (2, 0.0)])
def test_option_fades_in_month_by_month(early, want):
    fading = option(since=JUNE, fade=1, share=0.8)

    assert weight(fading, Cell(1953, JUNE - early, 0), None) == pytest.approx(want)


def test_span_ends_with_its_model_years():
    limited = option(years=(1952, 1953), fade=9)

    assert weight(limited, Cell(1954, JUNE, 0), None) == 0
    assert weight(limited, Cell(1953, JUNE, 0), None) == 1


def test_largest_span_counts():
    twice = Option("o", "o", (), (Span(share=0.3), Span((1953, 1953), share=0.6)))

    assert weight(twice, Cell(1953, JUNE, 0), None) == 0.6
    assert weight(twice, Cell(1952, JUNE, 0), None) == 0.3


def test_option_without_spans_never_left_the_works():
    assert weight(Option("o", "o"), CELLS[0], None) == 0


def test_member_span_counts_for_that_member_alone():
    limited = option(members=("W",))

    assert weight(limited, CELLS[0], "W") == 1
    assert weight(limited, CELLS[0], "7") == 0
    assert weight(limited, CELLS[0], None) == 0


def test_excluded_member_is_left_out():
    limited = option(excluded=("W",))

    assert weight(limited, CELLS[0], "W") == 0
    assert weight(limited, CELLS[0], "7") == weight(limited, CELLS[0], None) == 1


def test_first_year_by_hand():
    """1951: green at .8, all else at the floor; misread .03, navy five times."""
    found = choice_likelihood(table(RINGS), "green")

    green, other = 0.81 / 0.84, 0.01 / 0.84
    want = green * 0.97 + other * 0.03 * (5 / 7 + 1 / 3 + 1 / 3)
    assert found.orig[0] == pytest.approx(want)
    assert found.out == 0.25


def test_given_replacement_is_used():
    """none .8, red .1, and the floor for the others."""
    found = choice_likelihood(table(replace(RINGS, misread=0.0)), "none")

    assert found.rep == pytest.approx(0.81 / 0.94)


def test_replacement_is_half_the_line_half_anything():
    clue = replace(NUMERAL, misread=0.0)

    found = choice_likelihood(table(clue), "boxed")

    line = sum(c.spread * x for c, x in zip(CELLS, found.orig, strict=True))
    assert found.rep == pytest.approx(0.5 * line + 0.5 / 3)


def test_all_members_share_one_replacement():
    rep = [choice_likelihood(table(NUMERAL, m), "letter").rep for m in (None, "7", "W")]

    assert len({round(x, 12) for x in rep}) == 1


def test_silent_cell_is_uniform():
    clue = replace(RINGS, kind=Choice((Option("a", "a"), Option("b", "b"))))

    assert choice_likelihood(table(clue), "a").orig[0] == pytest.approx(0.5)


def test_single_option_says_nothing():
    clue = replace(RINGS, kind=Choice((Option("a", "a"),)))

    found = choice_likelihood(table(clue), "a")

    assert found.orig[0] == found.rep == found.out == 1
