"""A guide with numbers, layouts and older marks, against brute force and pyAgrum."""

import math
import random
from itertools import product
from pathlib import Path

import pytest

import network
import oracle
from bags import any_reading
from fieldid.engine.find import Item
from fieldid.engine.guide import layouts
from fieldid.engine.one import weigh
from fieldid.engine.prepare import likelihood, prepare, tables_for
from fieldid.engine.sets import weigh_set
from fieldid.guides.load import load
from make import month

GUIDE = load(Path(__file__).parents[1] / "rules" / "fen-bittern.toml")
TABLES = prepare(GUIDE)
SEEDS = range(40)
PAIRS = range(20)


def close(x):
    return pytest.approx(x, abs=1e-9, rel=1e-9)


def item(seed: int, member: str | None = None) -> Item:
    """Readings by lot, whatever they say, some unread."""
    dice = random.Random(seed)
    gone = ("shaft",) if dice.random() < 0.15 else ()
    readings = tuple(
        (clue.id, any_reading(clue, dice) if dice.random() < 0.9 else None)
        for clue in GUIDE.clues
        if clue.part not in gone and dice.random() < 0.7
    )
    return Item(readings, gone, member)


def pair(seed: int) -> tuple[Item, ...]:
    return tuple(item(1000 + 2 * seed + i, member) for i, member in enumerate("12"))


@pytest.mark.parametrize("seed", SEEDS)
def test_posterior_equals_brute_force(seed):
    found = item(seed)

    got = weigh(TABLES, found)

    want = oracle.truth(GUIDE, dict(found.readings), found.gone)
    assert list(got.years) == close(list(want.years.values()))
    assert got.outside == close(want.outside)
    assert [sum(r) for r in got.replaced] == close(list(want.replaced.values()))
    assert got.log_evidence == close(want.log_evidence)


@pytest.mark.parametrize("seed", SEEDS)
def test_posterior_equals_inference_library(seed):
    """Source: pyAgrum's lazy propagation on the same network, exact inference."""
    found = item(seed)

    got = weigh(TABLES, found)

    cell, replaced, evidence = network.posterior(
        GUIDE, dict(found.readings), found.gone, None
    )
    assert list(got.cells) == close(cell)
    assert [sum(r) for r in got.replaced] == close(list(replaced.values()))
    assert got.log_evidence == close(math.log(evidence))


@pytest.mark.parametrize("seed", PAIRS)
def test_set_equals_brute_force(seed):
    items = pair(seed)

    got = weigh_set(TABLES, items)

    want = oracle.set_truth(GUIDE, [told(each) for each in items])
    assert list(got.years) == close(list(want.years.values()))
    assert got.outside == close(want.outside)
    assert list(got.stray) == close(want.stray)
    assert list(got.whole_set) == close(list(want.whole_set.values()))
    assert got.log_evidence == close(want.log_evidence)


@pytest.mark.parametrize("seed", PAIRS[::4])
def test_set_equals_inference_library(seed):
    """Source: as above, with the sources of parts replaced on all as variables."""
    items = pair(seed)

    got = weigh_set(TABLES, items)

    cell, strays, whole, evidence = network.set_posterior(
        GUIDE, [told(each) for each in items]
    )
    assert list(got.cells) == close(cell)
    assert list(got.stray) == close(strays)
    assert list(got.whole_set) == close(whole)
    assert got.log_evidence == close(math.log(evidence))


def every(clue: str) -> list[str]:
    """All readings of a code that have no ?, layout by layout, each once."""
    return list(
        dict.fromkeys(
            "".join(characters)
            for layout in layouts(GUIDE.clues[TABLES.places[clue]].kind)
            for characters in product(
                *(field.alphabet for field in layout.fields for _ in range(field.width))
            )
        )
    )


def summed(clue: str) -> tuple[list[float], float]:
    """The likelihoods of all readings together, by cell and outside."""
    table = tables_for(TABLES, None)[TABLES.places[clue]]
    found = [likelihood(table, reading) for reading in every(clue)]
    cells = [sum(column) for column in zip(*(a.orig for a in found), strict=True)]
    return cells, sum(a.out for a in found)


def test_readings_of_a_code_are_a_distribution():
    cells, outside = summed("date-code")

    assert cells == close([1.0] * len(TABLES.cells))
    assert outside == close(1)


def test_readings_of_a_mark_are_all_but_the_older_ones():
    """Of those from before the first layout nothing can be read."""
    cells, outside = summed("mark")

    q = math.exp(-1 / 18)
    assert outside == close(1)
    for cell, total in zip(TABLES.cells, cells, strict=True):
        late = max(cell.t - month("1949-12"), 0)
        known = q**late - q ** (cell.t - month("1943-01") + 1)
        assert total == close(0.97 * known + 0.03)


def told(found: Item):
    return dict(found.readings), found.gone, found.member
