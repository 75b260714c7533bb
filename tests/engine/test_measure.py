"""Measures: the wear density, errors and the cut at the deciles, against scipy."""

import random
from dataclasses import replace

import pytest
from scipy.integrate import quad
from scipy.stats import exponnorm, norm

import oracle
from fieldid.engine import judge, prepare
from fieldid.engine.cells import cells
from fieldid.engine.find import Measured
from fieldid.engine.measure import (
    CUTS,
    STEPS,
    density,
    measure_likelihood,
    measure_outcomes,
    measure_table,
)
from kittiwake import GUIDE, LENGTH, PAD, random_find
from make import find

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


@pytest.mark.parametrize("reading", [Measured(6.4, 0.3), Measured(3.0, 1.5)])
def test_error_blurs_every_size(reading):
    """What is read is a true size with a normal error, so that each likelihood is that
    of the plain sizes, each weighed with how often it is seen so; also at the end of
    the range, where a size beyond it is none.
    """
    table = measure_table(PAD, PAD.kind, CELLS, None)

    def blurred(of) -> float:
        def seen(size):
            likelihood = measure_likelihood(table, size)
            return of(likelihood) * norm.pdf(reading.value, size, reading.error)

        return quad(seen, 3.0, 12.0, points=[reading.value], epsrel=1e-10)[0]

    found = measure_likelihood(table, reading)

    assert found.out == pytest.approx(blurred(lambda each: each.out), rel=1e-9)
    assert found.orig[-1] == pytest.approx(found.out, rel=1e-12)
    # Sizes below the range are made too, if hardly ever.
    for of in (lambda each: each.orig[0], lambda each: each.rep):
        assert of(found) == pytest.approx(blurred(of), rel=1e-6)


def test_tiny_error_is_none():
    table = measure_table(PAD, PAD.kind, CELLS, None)
    rough = measure_likelihood(table, Measured(6.4, 1e-7))

    assert rough.orig == pytest.approx(measure_likelihood(table, 6.4).orig, rel=1e-9)


def test_larger_error_tells_less():
    tables = prepare(GUIDE)

    def told(reading) -> float:
        verdict = judge(tables, find({"pad": reading}, guide=GUIDE.id))
        years = dict(verdict.model_years)
        return years[1953] / years[1951]

    clear, rough, vague = (
        told(reading) for reading in (7.2, Measured(7.2, 0.4), Measured(7.2, 9.0))
    )

    assert clear > 2 * rough > 4 * vague
    assert vague == pytest.approx(told(None), rel=0.05)


@pytest.mark.parametrize("seed", range(6))
def test_errors_agree_with_brute_force(seed):
    """The oracle integrates what the engine adds in quadrature."""
    dice = random.Random(seed)
    item = random_find(seed).items[0]
    rough = {
        "pad": Measured(dice.uniform(3.0, 12.0), dice.choice((0.05, 0.6, 4.0))),
        "length": Measured(dice.uniform(930.0, 950.0), 6.0),
    }
    gone = tuple(part for part in item.gone if part not in ("head", "shaft"))
    readings = dict(item.readings) | rough

    verdict = judge(prepare(GUIDE), find(readings, gone, member="7", guide=GUIDE.id))
    truth = oracle.truth(GUIDE, readings, gone, "7")

    assert dict(verdict.model_years) == pytest.approx(truth.years, abs=1e-9)
    assert verdict.outside == pytest.approx(truth.outside, abs=1e-9)
    assert verdict.log_evidence == pytest.approx(truth.log_evidence, abs=1e-9)


def test_size_is_told_with_its_error():
    tables = prepare(GUIDE)

    def told(reading) -> str:
        (weight,) = judge(tables, find({"pad": reading}, guide=GUIDE.id)).weights
        return weight.say

    assert told(7.204).startswith("Pad thickness (7.2 mm)")
    assert "(7.2 mm, give or take 0.26)" in told(Measured(7.204, 0.257))
    assert "(7.2 mm, give or take 0.01)" in told(Measured(7.204, 0.001))


@pytest.mark.parametrize(("reading", "worn"), [(4.8, True), (5.1, False)])
def test_flag_asks_for_the_value(reading, worn):
    """A size over or under a bound is so by the value, however rough it is."""
    rough = find({"pad": Measured(reading, 1.0)}, guide=GUIDE.id)

    flags = judge(prepare(GUIDE), rough).flags

    assert ("Worn thin." in [flag.say for flag in flags]) is worn
