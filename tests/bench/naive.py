"""Naive Bayes without parts: each clue by itself tells of the model year.

What a clue shows in a year comes from the guide: the mean over its months, original
or replaced as often as the part is. That a shaft's four clues go together, or two
clues to one month, it does not know.
"""

from fieldid.engine import Item, Tables
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.one import Posterior, read
from fieldid.engine.parts import pair
from fieldid.engine.special import dot


def naive(tables: Tables, item: Item) -> Posterior:
    """What it believes, as the engine tells it: parts as often replaced as ever."""
    prior = _prior(tables)
    weights = prior
    for k, reading in read(tables, item).items():
        told = [*by_year(tables, k, reading), reading.out]
        weights = [w * x for w, x in zip(weights, told, strict=True)]
    total = sum(weights)
    *years, outside = (w / total for w in weights)
    cells = [
        tables.prior[c] * year / before
        for (start, stop), year, before in zip(
            tables.stretches, years, prior[:-1], strict=True
        )
        for c in range(start, stop)
    ]
    rates = [replaced(tables, p) for p in range(len(tables.guide.parts))]
    cells.append(outside)
    return Posterior(
        original=tuple([(1 - rate) * x for x in cells] for rate in rates),
        replaced=tuple([rate * x for x in cells] for rate in rates),
        cells=cells,
        years=tuple(years),
        outside=outside,
        log_evidence=0.0,
    )


def by_year(tables: Tables, k: int, reading: Likelihood) -> list[float]:
    """How likely a reading of a clue is in each model year."""
    rate = replaced(tables, tables.part_of[k])
    found = []
    for start, stop in tables.stretches:
        spread = tables.prior[start:stop]
        own = dot(spread, reading.orig[start:stop]) / sum(spread)
        found.append((1 - rate) * own + rate * reading.rep)
    return found


def replaced(tables: Tables, p: int) -> float:
    """How often a part is replaced, whatever it follows."""
    return pair(tables.forest, p, p)[3]


def _prior(tables: Tables) -> list[float]:
    years = [sum(tables.prior[start:stop]) for start, stop in tables.stretches]
    return [*years, tables.prior[-1]]
