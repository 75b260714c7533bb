"""Words for numbers, against the published tables."""

import pytest

from fieldid.engine.guide import Members
from fieldid.engine.words import (
    called,
    capital,
    figure,
    likely,
    listed,
    month,
    percent,
    strength,
    tells_nothing,
    times,
    years,
)
from make import guide


@pytest.mark.parametrize(
    ("p", "word"),
    [
        (1.0, "virtually certain"),
        (0.99, "virtually certain"),
        (0.98, "extremely likely"),
        (0.95, "extremely likely"),
        (0.94, "very likely"),
        (0.90, "very likely"),
        (0.89, "likely"),
        (0.66, "likely"),
        (0.65, "more likely than not"),
        (0.51, "more likely than not"),
        (0.504, "about as likely as not"),
        (0.5, "about as likely as not"),
        (0.33, "about as likely as not"),
        (0.32, "unlikely"),
        (0.11, "unlikely"),
        (0.10, "very unlikely"),
        (0.05, "extremely unlikely"),
        (0.01, "exceptionally unlikely"),
        (0.0, "exceptionally unlikely"),
    ],
)
def test_likelihood_scale_is_the_published_one(p, word):
    """Source: IPCC guidance note for lead authors on uncertainties (2010), table 1;
    "extremely" and "more likely than not" from its note. A probability counts as the
    whole per cent that stands beside the word."""
    assert likely(p) == word


@pytest.mark.parametrize(
    ("factor", "word"),
    [
        (1.0, "barely worth a mention"),
        (3.0, "barely worth a mention"),
        (3.01, "positive"),
        (20.0, "positive"),
        (20.1, "strong"),
        (150.0, "strong"),
        (150.1, "very strong"),
    ],
)
def test_evidence_scale_is_the_published_one(factor, word):
    """Source: Kass and Raftery (1995), section 3.2, the table of B10."""
    assert strength(factor) == word
    assert strength(1 / factor) == word or factor in (3.0, 20.0, 150.0)


@pytest.mark.parametrize(
    ("p", "text"),
    [(0.0, "under 1 %"), (0.004, "under 1 %"), (0.005, "1 %"), (0.125, "13 %"),
     (0.994, "99 %"), (0.995, "over 99 %"), (1.0, "over 99 %")],
)  # fmt: skip
def test_percent_never_claims_certainty(p, text):
    assert percent(p) == text


@pytest.mark.parametrize(
    ("factor", "text"),
    [(1.26, "1.3 times"), (2.0, "2 times"), (3.4, "3 times"), (0.2, "5 times"),
     (1000.0, "1000 times"), (1001.0, "over 1000 times")],
)  # fmt: skip
def test_times_are_sayable(factor, text):
    assert times(factor) == text


@pytest.mark.parametrize(
    ("x", "text"),
    [(7.0, "7"), (6.1, "6.1"), (6.126, "6.13"), (100.0, "100"), (0.004, "0")],
)
def test_figures_have_no_idle_decimals(x, text):
    assert figure(x) == text


def test_small_factors_are_not_worth_a_word():
    assert tells_nothing(1.2)
    assert tells_nothing(1 / 1.2)
    assert not tells_nothing(1.3)


def test_months_are_named():
    assert month(12 * 1956 + 9) == "October 1956"


@pytest.mark.parametrize(
    ("numbers", "text"),
    [([], ""), ([1954], "1954"), ([1954, 1955], "1954-1955"),
     ([1954, 1956, 1957, 1960], "1954, 1956-1957 and 1960")],
)  # fmt: skip
def test_runs_of_years_are_drawn_together(numbers, text):
    assert years(numbers) == text


def test_lists_read_as_sentences():
    assert listed([]) == ""
    assert listed(["head"]) == "head"
    assert listed(["head", "grip"]) == "head and grip"


def test_capital_changes_the_first_letter_only():
    assert capital("the Dotterel") == "The Dotterel"


def test_member_is_called_by_its_name_or_id():
    bag = guide(members=Members(("3", "W"), names=(("W", "wedge"),)))

    assert called(bag, "W") == "wedge"
    assert called(bag, "3") == "3"
    assert called(guide(), "3") == "3"
