"""Measures: the wear density and the cut at the deciles, against scipy."""

from dataclasses import replace

import pytest
from scipy.stats import exponnorm, norm

from fieldid.engine.cells import cells
from fieldid.engine.measure import (
    CUTS,
    STEPS,
    density,
    measure_likelihood,
    measure_outcomes,
    measure_table,
)
from kittiwake import GUIDE, LENGTH, PAD

CELLS = cells(GUIDE)


@pytest.mark.parametrize("wear", [0.01, 0.15, 2.0])
@pytest.mark.parametrize("x", [3.0, 5.5, 6.0, 6.1, 6.9, 12.0])
def test_density_equals_exponentially_modified_normal(x, wear):
    """Source: scipy.stats.exponnorm, mirrored, since wear takes away."""
    mean, sd = 6.0, 0.25

    want = exponnorm.pdf(-x, wear / sd, -mean, sd)

    assert density(x, mean, sd, wear) == pytest.approx(want, rel=1e-9, abs=1e-300)


@pytest.mark.parametrize("x", [5.0, 6.0, 6.4])
def test_without_wear_density_is_normal(x):
    """Source: scipy.stats.norm."""
    assert density(x, 6.0, 0.25, 0.0) == pytest.approx(norm.pdf(x, 6.0, 0.25))


def test_small_wear_does_not_overflow():
    assert density(9.0, 6.0, 0.25, 1e-6) == pytest.approx(
        norm.pdf(9.0, 6.0, 0.25), rel=1e-3
    )


def test_steps_equal_reference_shares():
    """Source: scipy.stats.exponnorm's distribution function."""
    table = measure_table(replace(PAD, misread=0.0), PAD.kind, CELLS, None)
    edge = 3.0 + 9.0 / STEPS * 40

    want = exponnorm.sf(-edge, 0.15 / 0.25, -6.0, 0.25)

    assert sum(table.rows[0][:40]) == pytest.approx(want, rel=1e-9)


def test_silent_years_are_uniform():
    table = measure_table(PAD, PAD.kind, CELLS, None)

    found = measure_likelihood(table, 8.0)

    assert found.orig[-1] == found.out == pytest.approx(1 / 9)


def test_sizes_of_other_members_do_not_count():
    unknown = measure_table(LENGTH, LENGTH.kind, CELLS, None)
    seven = measure_table(LENGTH, LENGTH.kind, CELLS, "7")

    assert measure_likelihood(unknown, 940.0).orig[0] == pytest.approx(1 / 200)
    assert measure_likelihood(seven, 940.0).orig[0] > 0.09
    assert measure_likelihood(seven, 940.0).rep == pytest.approx(
        measure_likelihood(unknown, 940.0).rep
    )


def test_expected_readings_are_cut_at_deciles():
    table = measure_table(PAD, PAD.kind, CELLS, None)
    prior = [cell.spread for cell in CELLS]

    found = measure_outcomes(table, prior, 0.0, 0.0)

    shares = [
        sum(p * x for p, x in zip(prior, outcome.orig, strict=True))
        for outcome in found
    ]
    assert sum(shares) == pytest.approx(1)
    assert len(found) <= CUTS
    assert max(shares[:-1]) < 0.2


def test_outcomes_leave_nothing_over():
    table = measure_table(LENGTH, LENGTH.kind, CELLS, "7")

    found = measure_outcomes(table, [0.5 * c.spread for c in CELLS], 0.4, 0.1)

    assert sum(outcome.rep for outcome in found) == pytest.approx(1)
    assert sum(outcome.out for outcome in found) == pytest.approx(1)
    assert sum(outcome.orig[0] for outcome in found) == pytest.approx(1)
