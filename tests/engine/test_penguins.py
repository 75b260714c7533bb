"""The engine against an open table: measures and choices of 344 penguins, with gaps."""

import math

import pytest

from fieldid.engine import judge, prepare
from fieldid.engine.gain import entropy
from fieldid.engine.one import weigh
from penguins import (
    CHOICES,
    GAP,
    HELD_OUT,
    MEASURES,
    ROWS,
    SPECIES,
    TRAINING,
    answers,
    complete,
    find,
    item,
    learned,
    naive_bayes,
    share_right,
)

COLUMNS = (*MEASURES, *CHOICES)
TABLES = prepare(learned(TRAINING))
WHOLE = complete(HELD_OUT)


def test_table_is_the_known_one():
    """Source: the package's own description."""
    counts = [sum(row["species"] == s for row in ROWS) for s in SPECIES]

    assert dict(zip(SPECIES, counts, strict=True)) == {
        "Adelie": 152,
        "Chinstrap": 68,
        "Gentoo": 124,
    }
    assert len(ROWS) - len(complete(ROWS)) == 11


def test_sure_engine_is_naive_bayes():
    """Where nothing is misread and nothing lies outside, both do the same sums."""
    training = complete(TRAINING)
    sure = prepare(learned(training, misread=0.0, floor=1e-15, outside=1e-15))
    wanted = naive_bayes(training, WHOLE)

    for found, answer in zip(answers(sure, WHOLE), wanted, strict=True):
        assert found == pytest.approx(answer, abs=1e-9)


def test_engine_tells_no_fewer_species():
    """With the usual misreadings, on rows that it has not seen."""
    found = share_right(answers(TABLES, WHOLE), WHOLE)
    wanted = share_right(naive_bayes(complete(TRAINING), WHOLE), WHOLE)

    assert found >= wanted > 0.95


@pytest.mark.parametrize("without", ["", *COLUMNS])
def test_every_gap_leaves_a_verdict(without):
    """Each row as it is, gaps and all, and without each of its readings."""
    for row in ROWS:
        verdict = judge(TABLES, find(row, without=without))

        shares = [p for _, p in verdict.model_years] + [verdict.outside]
        assert math.fsum(shares) == pytest.approx(1, abs=1e-12)
        assert verdict.say


def test_rows_with_gaps_get_their_species():
    """Nine of the eleven have at least the measures; two have the island alone."""
    gaps = [row for row in ROWS if GAP in row.values()]
    measured = [row for row in gaps if row["body_mass_g"] != GAP]

    assert (len(gaps), len(measured)) == (11, 9)
    assert share_right(answers(TABLES, measured), measured) == 1


@pytest.mark.parametrize("without", COLUMNS)
def test_dropped_reading_adds_no_certainty(without):
    """On average: a reading may well raise a doubt about one penguin."""
    bits = [doubt(row) for row in HELD_OUT]
    dropped = [doubt(row, without=without) for row in HELD_OUT]

    assert math.fsum(dropped) > math.fsum(bits)


def doubt(row, **rest):
    """Bits that are still open of a penguin's species."""
    posterior = weigh(TABLES, item(row, **rest))
    return entropy([*posterior.years, posterior.outside])
