"""Special functions, held against the standard library and scipy."""

import math

import pytest
from scipy import special as reference

from fieldid.engine.special import erfc, erfcx, phi, rescale, round9


@pytest.mark.parametrize("u", [x / 16 for x in range(-96, 97)])
def test_erfc_equals_standard_library(u):
    """Source: Python's math.erfc (the C library's)."""
    assert erfc(u) == pytest.approx(math.erfc(u), rel=1e-11)


@pytest.mark.parametrize("u", [0, 0.3, 2.499, 2.5, 2.501, 5, 26, 1e3, 1e8])
def test_scaled_tail_equals_scipy(u):
    """Source: scipy.special.erfcx (the Faddeeva package)."""
    assert erfcx(u) == pytest.approx(reference.erfcx(u), rel=1e-11)


@pytest.mark.parametrize("z", [-8, -1.96, -0.5, 0, 0.5, 1.96, 8])
def test_normal_share_equals_scipy(z):
    """Source: scipy.special.ndtr; phi(1.96) = 0.975 is in every normal table."""
    assert phi(z) == pytest.approx(reference.ndtr(z), rel=1e-11)


def test_rescale_leaves_large_weights_alone():
    assert rescale([[1.0, 2.0**-900]]) == ([[1.0, 2.0**-900]], 0)


def test_rescale_counts_each_lift():
    assert rescale([[2.0**-1010], [0.0]]) == ([[2.0**-10], [0.0]], 2)


def test_rescale_gives_up_on_nothing():
    assert rescale([[0.0, 0.0]]) == ([[0.0, 0.0]], 0)


@pytest.mark.parametrize(("x", "want"), [(0.0, 0.0), (1e-10, 0.0), (5.1e-10, 1e-9)])
def test_rounding_keeps_nine_places(x, want):
    assert round9(x) == want
