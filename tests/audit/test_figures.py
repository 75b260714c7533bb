"""Figures of an audit, against scipy and against sums by hand."""

from itertools import product
from math import prod

import pytest
from scipy.stats import binom, binomtest

from fieldid.audit.figures import RARE, chance, figures, quantile, rows, share
from fieldid.audit.walked import Walked
from fieldid.engine import Item


def walk(p: float, right: bool, seconds: float = 10.0) -> Walked:
    year = 0 if right else 1
    return Walked(year, Item(), seconds, (0, 0), p, p >= 0.95, (), 2 * (1 - p) ** 2)


@pytest.mark.parametrize(("count", "of"), [(0, 7), (3, 10), (41, 43), (500, 500)])
def test_interval_is_the_one_of_scipy(count, of):
    theirs = binomtest(count, of).proportion_ci(0.95, "wilson")
    ours = share(count, of)

    assert (ours.low, ours.high) == pytest.approx((theirs.low, theirs.high), abs=1e-12)
    assert ours.share == count / of


def test_nothing_is_known_of_none():
    assert (share(0, 0).low, share(0, 0).high) == (0.0, 1.0)


@pytest.mark.parametrize("p", [0.03, 0.4, 0.5, 0.97])
@pytest.mark.parametrize("count", [0, 3, 12, 20])
def test_chance_is_that_of_the_binomial(p, count):
    low, high = binom.cdf(count, 20, p), binom.sf(count - 1, 20, p)

    assert chance([p] * 20, count) == pytest.approx(min(2 * min(low, high), 1.0))


def test_chance_takes_each_probability_by_itself():
    shares = [0.9, 0.6, 0.8, 0.95]
    known = [0.0] * 5
    for each in product((0, 1), repeat=4):
        known[sum(each)] += prod(
            p if true else 1 - p for p, true in zip(shares, each, strict=True)
        )

    for count in range(5):
        tails = sum(known[: count + 1]), sum(known[count:])
        assert chance(shares, count) == pytest.approx(min(2 * min(tails), 1.0))


def test_every_verdict_is_in_one_row():
    found = [walk(p, True) for p in (0.0, 0.3, 0.499, 0.5, 0.95, 0.99, 1.0, 1 + 1e-16)]

    assert sum(row.true.of for row in rows(found)) == len(found)
    assert [row.low for row in rows(found)] == [0.0, 0.3, 0.5, 0.95, 0.99]


def test_row_that_is_not_so_is_named():
    """Nine in ten told a hundred times, and true sixty times."""
    wrong = figures([walk(0.92, i < 60) for i in range(100)])
    good = figures([walk(0.92, i < 92) for i in range(100)])

    assert wrong.rows[0].far
    assert wrong.rows[0].chance < RARE
    assert wrong.error == pytest.approx(0.32)
    assert not good.rows[0].far
    assert good.error == pytest.approx(0.0)


def test_error_weighs_rows_by_their_verdicts():
    found = figures([walk(0.6, True)] * 3 + [walk(0.85, False)])

    assert found.error == pytest.approx((3 * 0.4 + 0.85) / 4)
    assert found.error_by_chance == pytest.approx(
        (2 / 3.141592653589793) ** 0.5 * ((3 * 0.24) ** 0.5 + 0.1275**0.5) / 4
    )


def test_sure_verdicts_are_counted_by_themselves():
    found = figures([walk(0.96, True), walk(0.96, False), walk(0.7, True)])

    assert (found.right.count, found.right.of) == (2, 3)
    assert (found.sure.count, found.sure.of) == (2, 3)
    assert (found.right_if_sure.count, found.right_if_sure.of) == (1, 2)
    assert found.told == pytest.approx(2.62 / 3)
    assert found.brier == pytest.approx((2 * 2 * 0.04**2 + 2 * 0.3**2) / 3)


def test_half_and_nine_in_ten_are_counted():
    found = figures([walk(0.9, True, seconds) for seconds in range(10, 0, -1)])

    assert (found.seconds.half, found.seconds.nine_tenths) == (5, 9)
    assert quantile([7], 0.5) == 7
