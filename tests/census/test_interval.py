"""Intervals of shares, against scipy and against a published table."""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats
from scipy.integrate import quad

from fieldid.census.beta import below, log_beta, quantile
from fieldid.census.interval import against, estimate, interval
from fieldid.guides.shares import share

SHAPES = [0.5, 0.7, 1.0, 2.5, 12.4, 41.5, 300.5, 5000.5]
# What binom.jeffreys of the R package RSurveillance 0.2.1 prints for x of 200, as the
# page of its examples at rdrr.io shows it; the limits come from R's own qbeta.
PUBLISHED = [
    (10, 0.02599340, 0.08687509),
    (20, 0.06416642, 0.14729862),
    (25, 0.08462743, 0.176126),
    (30, 0.10567714, 0.20436243),
    (40, 0.14910087, 0.25950769),
    (50, 0.19387268, 0.31330266),
    (60, 0.23970343, 0.36603761),
    (70, 0.28642624, 0.41787992),
    (80, 0.33393964, 0.46893129),
]


@pytest.mark.parametrize("a", SHAPES)
@pytest.mark.parametrize("b", SHAPES)
def test_beta_is_that_of_scipy(a, b):
    for x in (1e-9, 0.01, 0.2, 0.5, 0.777, 0.99, 1 - 1e-9):
        assert below(x, a, b) == pytest.approx(stats.beta.cdf(x, a, b), abs=1e-10)


@pytest.mark.parametrize("a", SHAPES)
@pytest.mark.parametrize("b", SHAPES)
def test_quantile_is_that_of_scipy(a, b):
    for p in (0.001, 0.025, 0.5, 0.975, 0.999):
        assert quantile(p, a, b) == pytest.approx(stats.beta.ppf(p, a, b), abs=1e-11)


@settings(deadline=None)
@given(st.floats(0.5, 500), st.floats(0.5, 500), st.floats(0.001, 0.999))
def test_quantile_undoes_the_distribution(a, b, p):
    assert below(quantile(p, a, b), a, b) == pytest.approx(p, abs=1e-9)


def test_all_lies_between_the_ends():
    assert below(-0.1, 2, 3) == below(0.0, 2, 3) == 0
    assert below(1.0, 2, 3) == below(1.1, 2, 3) == 1


@pytest.mark.parametrize(("k", "low", "high"), PUBLISHED)
def test_interval_is_the_published_one(k, low, high):
    # R prints seven digits.
    assert interval(k, 200) == pytest.approx((low, high), abs=3e-8)


@settings(deadline=None)
@given(st.floats(0.01, 80), st.floats(0.01, 80))
def test_interval_is_that_of_scipy(k, rest):
    law = stats.beta(k + 0.5, rest + 0.5)

    assert interval(k, k + rest) == pytest.approx(law.ppf([0.025, 0.975]), abs=1e-11)


def test_none_and_all_leave_the_ends_possible():
    assert interval(0, 30)[0] == 0
    assert interval(30, 30)[1] == 1
    assert interval(0, 0) == (0, 1)


def test_more_specimens_narrow_the_interval():
    widths = [high - low for low, high in (interval(n / 2, n) for n in (2, 8, 32, 128))]

    assert all(more > less for more, less in pairwise(widths))


@pytest.mark.parametrize(("k", "n"), [(0, 30), (41, 43), (3, 3), (0, 0)])
def test_estimate_is_how_a_guide_reads_the_count(k, n):
    assert estimate(k, n) == share(f"{k}/{n}")


@pytest.mark.parametrize(("k", "n", "held"), [(3, 10, 0.8), (0, 5, 0.5), (7, 9, 0.7)])
def test_factor_is_the_integral_over_all_shares(k, n, held):
    def likelihood(x):
        return x**k * (1 - x) ** (n - k)

    free, _ = quad(lambda z: likelihood(math.sin(z) ** 2) * 2 / math.pi, 0, math.pi / 2)

    assert against(k, n, held) == pytest.approx(free / likelihood(held))


def test_log_beta_is_symmetric():
    assert log_beta(2.5, 0.5) == log_beta(0.5, 2.5)
