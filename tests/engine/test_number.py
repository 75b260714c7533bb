"""Numbers: made in a year, or known before it, and what they tell in the ranking."""

import math
from dataclasses import replace

import pytest

from fieldid.engine.cells import cells
from fieldid.engine.find import Item
from fieldid.engine.gain import entropy, prospects
from fieldid.engine.number import CUTS, number_likelihood, number_outcomes, number_table
from fieldid.engine.one import weigh
from fieldid.engine.prepare import prepare, tables_for
from fieldid.engine.typical import shown, typical
from make import guide, model_year, number
from oracle import truth

MADE = number("serial", {1951: 1, 1952: 101}, 400)
PATENT = number("patent", {1940: 1000, 1951: 2000, 1952: 3000, 1953: 7000}, 9999, lag=4)
GUIDE = guide(MADE, PATENT)
CELLS = cells(GUIDE)
EARLY, LATE = 0, 23


def table(clue):
    return number_table(clue, clue.kind, CELLS)


def test_serial_speaks_for_its_year():
    """A hundred numbers in 1951, three hundred in 1952, by hand."""
    found = number_likelihood(table(MADE), 50)

    assert found.orig[EARLY] == pytest.approx(0.98 / 100 + 0.02 / 400)
    assert found.orig[LATE] == pytest.approx(0.02 / 400)
    assert found.out == pytest.approx(1 / 400)


def test_first_and_last_number_belong_to_a_year():
    found = [number_likelihood(table(MADE), n) for n in (1, 100, 101, 400)]

    assert [each.orig[EARLY] > each.orig[LATE] for each in found] == [
        True,
        True,
        False,
        False,
    ]


def test_patent_is_never_younger_than_the_object():
    """A number of 1952 on what was built in 1951 can only be misread."""
    found = number_likelihood(table(PATENT), 3000)

    assert found.orig[EARLY] == pytest.approx(0.02 / 9000)
    assert found.orig[LATE] == pytest.approx(
        0.98 * (1 - math.exp(-1 / 4)) / 4000 + 0.02 / 9000
    )


def test_patent_fades_by_its_lag():
    found = number_likelihood(table(PATENT), 1500)
    early, late = (found.orig[c] - 0.02 / 9000 for c in (EARLY, LATE))

    assert late / early == pytest.approx(math.exp(-1 / 4))


def test_replaced_part_is_half_the_line_half_anything():
    found = number_likelihood(table(MADE), 50)

    mixture = sum(c.spread * x for c, x in zip(CELLS, found.orig, strict=True))
    assert found.rep == pytest.approx(0.5 * mixture + 0.5 * found.out)


@pytest.mark.parametrize("clue", [MADE, PATENT], ids=["made", "not-before"])
def test_gain_equals_brute_force(clue):
    """Every number tried out on the oracle; a short table, so that they are few."""
    short = replace(clue.kind, last=clue.kind.first[-1][1] + 3)
    short = replace(
        short, first=tuple((y, 1 + 4 * i) for i, (y, _) in enumerate(short.first))
    )
    short = replace(short, last=short.first[-1][1] + 6)
    numbered = guide(replace(clue, kind=short, unreadable=0.25))
    tables = prepare(numbered)

    [found] = prospects(
        tables, Item(), weigh(tables, Item()), claimed=None, away=False, without=()
    )

    before = truth(numbered, {})
    rest = [*before.years.values(), before.outside]
    fall = entropy(rest)
    for n in range(1, short.last + 1):
        after = truth(numbered, {clue.id: n})
        told = [*after.years.values(), after.outside]
        share = math.exp(after.log_evidence)
        fall -= share * entropy(told)
        rest = [p - share * x for p, x in zip(rest, told, strict=True)]
    # Marks from before the table are one outcome more.
    fall -= max(sum(rest), 0.0) * entropy(max(p, 0.0) for p in rest)
    assert found.bits == pytest.approx(0.75 * fall, abs=1e-9)


LONG = number("long", {y: 1 + 100 * (y - 1900) for y in range(1900, 1960)}, 9000, lag=9)


def test_many_years_come_in_runs():
    """Each number falls in one of them, and they are about as likely."""
    numbers = number_table(LONG, LONG.kind, CELLS)
    spread = [0.9 * cell.spread for cell in CELLS]

    found = number_outcomes(numbers, spread, 0.08, 0.02)

    assert len(found) <= CUTS
    assert sum(each.out for each in found) == pytest.approx(1)
    for c in (EARLY, LATE):
        seen = sum(each.orig[c] for each in found)
        each = [number_likelihood(numbers, n).orig[c] for n in range(1, 9001)]
        assert seen == pytest.approx(sum(each))
        assert seen <= 1


def test_short_table_is_not_cut():
    spread = [cell.spread for cell in CELLS]

    assert len(number_outcomes(table(PATENT), spread, 0, 0)) == 4


def test_first_number_of_the_usual_year_is_expected():
    tables = prepare(guide(MADE, replace(PATENT, kind=replace(PATENT.kind, lag=0.5))))
    serial, patent = tables_for(tables, None)

    assert typical(tables, serial, *tables.stretches[1]) == 101
    assert typical(tables, patent, *tables.stretches[1]) == 3000


def test_wide_lag_expects_no_number():
    tables = prepare(GUIDE)

    assert typical(tables, tables_for(tables, None)[1], *tables.stretches[1]) is None


def test_serial_of_a_year_without_numbers_is_not_expected():
    later = guide(MADE, years=(model_year(1951), model_year(1953)))
    tables = prepare(later)

    assert typical(tables, tables_for(tables, None)[0], *tables.stretches[1]) is None


def test_number_is_shown_in_figures():
    assert shown(PATENT, 3000.0) == "3000"
