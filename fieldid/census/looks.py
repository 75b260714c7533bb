"""A specimen under shares that are still being learned: its cells, and its readings.

Only the cells that it can be of are looked at, and of each clue only the one reading,
since thousands of passes ask the same again. The arithmetic stays the engine's.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.census.climb import Row, Rows
from fieldid.census.specimens import Specimen
from fieldid.census.stretches import Stretches
from fieldid.engine.choice import ChoiceTable
from fieldid.engine.find import Item
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.one import Posterior, weigh
from fieldid.engine.prepare import ClueTable, Tables, likelihood, tables_for
from fieldid.engine.special import Vector, dot

READ = "read"
"""The one reading of a clue that a specimen's own tables know."""


@dataclass(frozen=True, slots=True)
class Look:
    """The reading of the choice at place `k`: which stretch each of the specimen's
    cells is in, and how likely the reading is where each option is the true one.
    """

    k: int
    at: tuple[int, ...]
    misread: Vector


@dataclass(frozen=True, slots=True)
class Known:
    """A specimen with tables of its own: `cells` are the places of those that it can
    be of, and `looks` its readings of choices.
    """

    tables: Tables
    item: Item
    cells: tuple[int, ...]
    looks: tuple[Look, ...]


def known(tables: Tables, found: Stretches, specimen: Specimen) -> Known:
    """What never changes of a specimen."""
    item = specimen.item
    prior = _prior(tables, specimen)
    cells = tuple(c for c, p in enumerate(prior[:-1]) if p > 0)
    at = found.at[tables.members.index(item.member)]
    read = {name: reading for name, reading in item.readings if reading is not None}
    row: list[ClueTable] = []
    looks = []
    for k, table in enumerate(tables_for(tables, item.member)):
        name = tables.guide.clues[k].id
        if name in read:
            likely = likelihood(table, read[name])
            if isinstance(table, ChoiceTable):
                looks.append(Look(k, tuple(at[k][c] for c in cells), likely.by_source))
            table = _one_reading(likely, [likely.orig[c] for c in cells])
        row.append(table)
    own = replace(
        tables,
        cells=tuple(tables.cells[c] for c in cells),
        stretches=(),
        prior=[*(prior[c] for c in cells), prior[-1]],
        members=(item.member,),
        clues=(tuple(row),),
    )
    readings = tuple((name, READ) for name in read)
    return Known(own, replace(item, readings=readings), cells, tuple(looks))


def judged(each: Known, shares: Rows) -> Posterior:
    """What is to be thought of the specimen where the options have these shares."""
    [row] = each.tables.clues
    told = list(row)
    for look in each.looks:
        table = row[look.k]
        assert isinstance(table, ChoiceTable)
        by = {x: dot(shares[x], look.misread) for x in dict.fromkeys(look.at)}
        told[look.k] = _one_reading(table.likelihoods[0], [by[x] for x in look.at])
    return weigh(replace(each.tables, clues=(tuple(told),)), each.item)


def shown(look: Look, x: int, shares: Rows) -> Row:
    """What an original part in the stretch truly shows, given what was read of it: the
    probability of each option. The rest of a reading's probability is a mistake.
    """
    weights = [share * w for share, w in zip(shares[x], look.misread, strict=True)]
    total = sum(weights)
    return tuple(w / total for w in weights)


def _prior(tables: Tables, specimen: Specimen) -> Vector:
    """The specimen's cells before its readings: its own model years, each spread over
    its months as the guide builds; of an unknown year those of the guide, and outside.
    """
    if not specimen.years:
        return tables.prior
    shares = dict(specimen.years)
    prior: list[float] = []
    for year, (start, stop) in zip(tables.guide.years, tables.stretches, strict=True):
        prior += [shares.get(year.year, 0.0) / (stop - start)] * (stop - start)
    return [*prior, 0.0]


def _one_reading(likely: Likelihood, orig: Sequence[float]) -> ChoiceTable:
    """A table that knows one reading, as likely in each cell as is said here."""
    return ChoiceTable((READ,), (replace(likely, orig=tuple(orig)),), ())
