"""The passes of the EM, against worked examples of the literature."""

import math
from itertools import pairwise

import pytest

from fieldid.census.climb import Expected, climb

# C. B. Do and S. Batzoglou, "What is the expectation maximization algorithm?", Nature
# Biotechnology 26 (2008), figure 1: five times one of two coins is drawn, unseen, and
# tossed ten times.
HEADS = (5, 9, 8, 4, 7)
TOSSES = 10
# Dempster, Laird and Rubin (1977), section 1: 197 animals of four kinds, as likely as
# 1/2 + p/4, (1 - p)/4, (1 - p)/4 and p/4 (the data are of C. R. Rao, 1965).
ANIMALS = (125, 18, 20, 34)


def coins(shares):
    """Which coin it was is expected by what it showed; each is as often drawn."""
    counts = [[0.0, 0.0], [0.0, 0.0]]
    log = 0.0
    for heads in HEADS:
        tails = TOSSES - heads
        both = [0.5 * h**heads * t**tails for h, t in shares]
        log += math.log(sum(both))
        for row, weight in zip(counts, both, strict=True):
            row[0] += heads * weight / sum(both)
            row[1] += tails * weight / sum(both)
    return Expected(tuple(map(tuple, counts)), log)


def linkage(shares):
    """The first kind is two that look alike, as likely as 1/2 and p/4."""
    [(p, rest)] = shares
    first, second, third, fourth = ANIMALS
    hidden = first * (p / 4) / (0.5 + p / 4)
    log = first * math.log(0.5 + p / 4) + (second + third) * math.log(rest / 4)
    return Expected(
        ((hidden + fourth, second + third),), log + fourth * math.log(p / 4)
    )


def none(rows):
    return tuple((0.0,) * len(row) for row in rows)


def tossed(most):
    start = ((0.6, 0.4), (0.5, 0.5))
    found = climb(coins, start, prior=none(start), most=most)
    return [round(row[0], 2) for row in found.shares]


def test_first_pass_is_that_of_the_coins():
    assert tossed(1) == [0.71, 0.58]


def test_tenth_pass_is_that_of_the_coins():
    assert tossed(10) == [0.80, 0.52]


def test_linkage_is_that_of_dempster_laird_and_rubin():
    """Their table 1 gives the passes from 0.5 on."""
    start = ((0.5, 0.5),)
    passes = [
        climb(linkage, start, prior=none(start), most=most).shares[0][0]
        for most in range(1, 9)
    ]

    assert passes == pytest.approx(
        [
            *(0.608247423, 0.624321051, 0.626488879, 0.626777323),
            *(0.626815632, 0.626820719, 0.626821395, 0.626821484),
        ],
        abs=1e-9,
    )


def test_linkage_settles_at_the_root():
    """The maximum solves 197 p^2 - 15 p - 68 = 0."""
    start = ((0.5, 0.5),)
    found = climb(linkage, start, prior=none(start))

    assert found.settled
    assert found.shares[0][0] == pytest.approx((15 + 53809**0.5) / 394, abs=1e-9)


@pytest.mark.parametrize("prior", [0.0, 0.5, 4.0])
def test_no_pass_falls(prior):
    start = ((0.6, 0.4), (0.5, 0.5))
    found = climb(coins, start, prior=((prior,) * 2,) * 2)

    assert found.settled
    assert all(after >= before - 1e-12 for before, after in pairwise(found.heights))
    assert found.heights[-1] > found.heights[0]


def test_row_that_nothing_speaks_of_stays():
    start = ((0.7, 0.3),)
    found = climb(lambda shares: Expected(((0.0, 0.0),), 0.0), start, prior=none(start))

    assert found.shares == start


def test_passes_that_run_out_are_told():
    start = ((0.5, 0.5),)

    assert not climb(linkage, start, prior=none(start), most=2).settled
