"""What a guide without mistakes still cannot do: years that no clue tells apart."""

from collections.abc import Iterable, Iterator
from itertools import combinations

from fieldid.engine import Tables, prepare
from fieldid.engine.guide import Guide
from fieldid.engine.prepare import ClueTable, outcomes

ALIKE = 1e-9
"""Likelihoods nearer than this are the same number, computed twice."""

Profile = tuple[tuple[float, ...], ...]
"""For each reading that a clue may give: its likelihood in each model year."""


def warnings(guide: Guide) -> tuple[str, ...]:
    """A sentence for each clue that tells nothing and each pair that is alike."""
    tables = prepare(guide)
    profiles = [_profile(tables, k) for k in range(len(guide.clues))]
    return (*_idle(guide, profiles), *_alike(guide, profiles))


def _idle(guide: Guide, profiles: list[Profile]) -> Iterator[str]:
    for clue, profile in zip(guide.clues, profiles, strict=True):
        if all(max(row) - min(row) <= ALIKE for row in profile):
            yield f"the clue {clue.id!r} tells nothing about the year"


def _alike(guide: Guide, profiles: list[Profile]) -> Iterator[str]:
    rows = [row for profile in profiles for row in profile]
    for (i, one), (j, other) in combinations(enumerate(guide.years), 2):
        if all(abs(row[i] - row[j]) <= ALIKE for row in rows):
            yield f"{one.year} and {other.year} cannot be told apart by any clue"


def _profile(tables: Tables, k: int) -> Profile:
    """The clue's readings as they are for an unknown member and for each known one."""
    return tuple(
        _by_year(tables, reading)
        for table in _distinct(member[k] for member in tables.clues)
        for reading in _readings(tables, table)
    )


def _readings(tables: Tables, table: ClueTable) -> Iterator[tuple[float, ...]]:
    """The likelihood of each reading to expect, cell by cell, on an original part."""
    *prior, outside = tables.prior
    for reading in outcomes(table, prior, 0.0, outside):
        yield tuple(reading.orig)


def _by_year(tables: Tables, reading: tuple[float, ...]) -> tuple[float, ...]:
    """The likelihood averaged over each model year's build months."""
    return tuple(
        sum(reading[start:stop]) / (stop - start) for start, stop in tables.stretches
    )


def _distinct(found: Iterable[ClueTable]) -> list[ClueTable]:
    """Members for whom a clue is the same share one table."""
    return list({id(table): table for table in found}.values())
