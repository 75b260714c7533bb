"""What a clue is worth, against the mutual information worked out cell by cell."""

import math

import pytest

from fieldid.engine import prepare
from fieldid.engine.guide import Choice, Members, Size
from fieldid.learn.worth import once_known, whole, worths
from kittiwake import GUIDE
from make import choice, guide, measure, option, part, span

TABLES = prepare(GUIDE)
NEVER = part("head", 0.0)
CHOICES = [k for k, clue in enumerate(GUIDE.clues) if isinstance(clue.kind, Choice)]


def information(tables, k):
    """Sum of p(a, y) log2 p(a, y) / (p(a) p(y)), from likelihoods and priors alone."""
    joint: dict[tuple[str, int | None], float] = {}
    part = tables.part_of[k]
    share = replaced_share(tables, part)
    table = tables.clues[0][k]
    for a, like in zip(table.ids, table.likelihoods, strict=True):
        for y, (start, stop) in enumerate(tables.stretches):
            joint[a, y] = sum(
                tables.prior[c] * ((1 - share) * like.orig[c] + share * like.rep)
                for c in range(start, stop)
            )
        joint[a, None] = tables.prior[-1] * like.out
    by_reading: dict = {}
    by_year: dict = {}
    for (a, y), p in joint.items():
        by_reading[a] = by_reading.get(a, 0.0) + p
        by_year[y] = by_year.get(y, 0.0) + p
    return sum(
        p * math.log2(p / (by_reading[a] * by_year[y]))
        for (a, y), p in joint.items()
        if p > 0
    )


def replaced_share(tables, p):
    parent = tables.forest.parent[p]
    first, second = tables.forest.rates[p]
    if parent is None:
        return first
    above = replaced_share(tables, parent)
    return (1 - above) * first + above * second


@pytest.mark.parametrize("k", CHOICES)
def test_bits_are_the_mutual_information(k):
    """Shannon, "A Mathematical Theory of Communication" (1948), section 12."""
    (told,) = (w for w in worths(TABLES) if w.clue is GUIDE.clues[k])
    readable = 1 - told.clue.unreadable

    assert told.bits == pytest.approx(readable * information(TABLES, k), abs=1e-9)
    assert told.per_minute == pytest.approx(60 * told.bits / told.clue.seconds)


def test_clues_come_by_what_they_tell():
    bits = [round(worth.bits, 9) for worth in worths(TABLES)]

    assert len(bits) == len(GUIDE.clues)
    assert bits == sorted(bits, reverse=True)


def test_clue_that_is_the_same_every_year_tells_nothing():
    """And not less than nothing, whatever is rounded."""
    same = choice("face", option("dots", span()), option("lines"))

    (worth,) = worths(prepare(guide(same, outside=0.0)))

    assert worth.bits == pytest.approx(0, abs=1e-9)
    assert worth.bits >= 0


def test_two_years_alike_take_a_bit():
    """Less the outside, which is none of them."""
    plain = prepare(guide(choice("face", option("dots"), option("lines")), outside=0.0))

    assert whole(plain) == pytest.approx(1.0)


def test_size_of_a_member_tells_once_the_member_is_known():
    """Which of two years it is, all of the one bit."""
    length = measure(
        "length",
        Size((1951, 1951), 10.0, 0.1, ("2",)),
        Size((1952, 1952), 20.0, 0.1, ("2",)),
        misread=0.0,
    )
    sets = guide(length, members=Members(("2", "3")), outside=0.0, parts=(NEVER,))
    tables = prepare(sets)

    assert worths(tables)[0].bits == pytest.approx(0.0, abs=1e-9)
    assert once_known(tables, sets.clues[0]) == pytest.approx(1.0, abs=0.05)


def test_without_a_set_there_is_no_member_to_know():
    plain = guide(measure("length", Size((1951, 1951), 10.0, 0.1)))

    assert once_known(prepare(plain), plain.clues[0]) == 0.0
