"""The generator against its published value, and what is drawn against arithmetic."""

import math
from statistics import fmean

import pytest

from fieldid.engine.lot import MODULUS, among, exponential, lots, normal, pick

MANY = 20_000


def test_ten_thousandth_lot_is_the_published_one():
    """ISO C++ [rand.predef]: the 10,000th of a minstd_rand from its default seed, 1."""
    draw = lots(0)
    drawn = [draw() for _ in range(10_000)]

    assert round(drawn[-1] * MODULUS) == 399268537


def test_any_whole_seed_draws_inside_the_unit():
    for seed in (0, 1, MODULUS - 2, MODULUS - 1, MODULUS, 2**53):
        draw = lots(seed)
        assert all(0 < draw() < 1 for _ in range(100)), seed


def test_places_come_as_often_as_they_weigh():
    draw = lots(1)
    picked = [pick(draw, (1.0, 0.0, 3.0)) for _ in range(MANY)]

    assert picked.count(1) == 0
    assert picked.count(2) / MANY == pytest.approx(0.75, abs=0.01)


def test_rounding_never_picks_what_weighs_nothing():
    """A draw just below 1 of weights whose sum is a little too large."""
    assert pick(lambda: 1.0, (0.1, 0.2, 0.0)) == 1


def test_places_alike_come_alike():
    draw = lots(2)
    placed = [among(draw, 4) for _ in range(MANY)]

    assert all(
        placed.count(i) / MANY == pytest.approx(0.25, abs=0.015) for i in range(4)
    )


@pytest.mark.parametrize(
    ("drawing", "mean", "square"), [(normal, 0.0, 1.0), (exponential, 1.0, 2.0)]
)
def test_variables_have_their_moments(drawing, mean, square):
    """The first two; by chance alone off by four standard errors once in 16,000."""
    draw = lots(3)
    drawn = [drawing(draw) for _ in range(MANY)]
    fourth = {normal: 3.0, exponential: 24.0}[drawing]

    assert fmean(drawn) == pytest.approx(mean, abs=4 / math.sqrt(MANY))
    assert fmean(x * x for x in drawn) == pytest.approx(
        square, abs=4 * math.sqrt((fourth - square**2) / MANY)
    )
