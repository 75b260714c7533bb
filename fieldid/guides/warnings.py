"""What a guide without mistakes may still lack: years that no clue tells apart, years
without a number, and names of which there are two.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import combinations, groupby

from fieldid.engine import Tables, prepare
from fieldid.engine.guide import Choice, Guide
from fieldid.engine.number import NumberTable
from fieldid.engine.prepare import ClueTable, outcomes
from fieldid.engine.range import brackets
from fieldid.engine.words import listed, years

ALIKE = 1e-9
"""Likelihoods nearer than this are the same number, computed twice."""

SPELLED = 3
"""More years than these are drawn together."""

Profile = tuple[tuple[float, ...], ...]
"""For each reading that a clue may give: its likelihood in each model year."""


def warnings(guide: Guide) -> tuple[str, ...]:
    """A sentence for each name that stands twice, each clue that tells nothing, each
    table of serial numbers with gaps, and all years that are alike.
    """
    tables = prepare(guide)
    profiles = [_profile(tables, k) for k in range(len(guide.clues))]
    return (
        *_same_words(guide),
        *_idle(guide, profiles),
        *_gaps(tables),
        *_alike(guide, profiles),
    )


def _same_words(guide: Guide) -> Iterator[str]:
    """Parts, or answers of a clue, that nobody can tell apart by their names."""
    for words in _twice(part.name for part in guide.parts):
        yield f"two parts are called {words!r}"
    for clue in guide.clues:
        if isinstance(clue.kind, Choice):
            for words in _twice(option.label for option in clue.kind.options):
                yield f"two answers of the clue {clue.id!r} are called {words!r}"


def _twice(names: Iterable[str]) -> list[str]:
    """The names that stand there more than once, whatever their capitals.

    >>> _twice(["none", "Two rings", "two  rings", "none", "none"])
    ['none', 'two rings']
    """
    counts = Counter(" ".join(name.casefold().split()) for name in names)
    return [name for name, count in counts.items() if count > 1]


def _idle(guide: Guide, profiles: list[Profile]) -> Iterator[str]:
    for clue, profile in zip(guide.clues, profiles, strict=True):
        if all(max(row) - min(row) <= ALIKE for row in profile):
            yield f"the clue {clue.id!r} tells nothing about the year"


def _gaps(tables: Tables) -> Iterator[str]:
    """If no year of building has a number, the clue tells nothing, and is idle."""
    for clue, table in zip(tables.guide.clues, tables.clues[0], strict=True):
        if not isinstance(table, NumberTable) or table.number.means != "made":
            continue
        numbered = dict(table.number.first)
        without = [year for year in table.years if year not in numbered]
        if 0 < len(without) < len(table.years):
            yield (
                f"the clue {clue.id!r} has no number for {_runs(without)}: "
                "what was built then shows one only by mistake"
            )


def _runs(years: Sequence[int]) -> str:
    """Rising years in words.

    >>> _runs([1950, 1952, 1953, 1954, 1956])
    '1950, 1952 to 1954, 1956'
    """
    found = []
    for _, run in groupby(enumerate(years), lambda placed: placed[1] - placed[0]):
        (_, first), *rest = run
        found.append(f"{first} to {rest[-1][1]}" if rest else str(first))
    return ", ".join(found)


def _alike(guide: Guide, profiles: list[Profile]) -> Iterator[str]:
    """Where the answer is a range of years, neighbours need not differ."""
    if brackets(guide):
        return
    rows = [row for profile in profiles for row in profile]
    for group in cliques(
        len(guide.years),
        lambda i, j: all(abs(row[i] - row[j]) <= ALIKE for row in rows),
    ):
        found = [guide.years[y].year for y in group]
        few = len(found) <= SPELLED
        named = listed([str(year) for year in found]) if few else years(found)
        yield f"{named} cannot be told apart by any clue"


def cliques(size: int, alike: Callable[[int, int], bool]) -> Iterator[list[int]]:
    """Groups of places of which each two are alike, so that every such two are in one;
    `alike` is asked with the lower place first.
    """
    pairs = [pair for pair in combinations(range(size), 2) if alike(*pair)]
    among, left = set(pairs), dict.fromkeys(pairs)
    while left:
        group = list(next(iter(left)))
        for k in range(group[-1] + 1, size):
            if all((i, k) in among for i in group):
                group.append(k)
        for pair in combinations(group, 2):
            left.pop(pair, None)
        yield group


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
