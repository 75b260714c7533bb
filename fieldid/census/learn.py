"""What confirmed specimens say of the shares: the passes of the EM over a census.

Model page: "Learning from confirmed specimens". Where a specimen's year is uncertain
it counts in each cell by its probability, and a reading counts for the shares of the
works by the probability that its part is the original one, both by the engine's own
arithmetic (`one.weigh`) with the shares of the pass before. What replaced parts show,
how often they are replaced and what other clues say stays as the guide has it.

What is climbed is `log P(readings) + sum(A * log(share))` over all stretches and
options, `A` being the guide's own shares: as if in each stretch one specimen more had
been seen, which shows what the guide says; half and half where it says half.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fieldid.census.climb import MOST_PASSES, Climbed, Expected, Rows, climb
from fieldid.census.looks import Known, judged, known, shown
from fieldid.census.specimens import Census
from fieldid.census.stretches import Stretches, stretches
from fieldid.engine.one import Posterior, fit, told
from fieldid.engine.prepare import Tables
from fieldid.engine.special import dot
from fieldid.errors import CensusError, Problem


@dataclass(frozen=True, slots=True)
class Counted:
    """One reading of the clue at place `k` in one cell of the specimen at place `i`:
    how probable it is that it was built there with the part original, and of each
    option that this is what the part then shows.
    """

    i: int
    k: int
    cell: int
    stretch: int
    looked: float
    shown: Sequence[float]


@dataclass(frozen=True, slots=True)
class Learned:
    """The shares that a census leads to, and how its readings count under them."""

    found: Stretches
    climbed: Climbed
    counted: tuple[Counted, ...]


def learn(tables: Tables, census: Census, *, most: int = MOST_PASSES) -> Learned:
    """The shares at the end of at most so many passes."""
    found = stretches(tables)
    specimens = [known(tables, found, each) for each in census.specimens]
    _check(census, specimens)

    def expect(shares: Rows) -> Expected:
        posteriors = [judged(each, shares) for each in specimens]
        counts = [[0.0] * len(row) for row in shares]
        for each, posterior in zip(specimens, posteriors, strict=True):
            _add(counts, each, posterior, shares)
        log = sum(posterior.log_evidence for posterior in posteriors)
        return Expected(tuple(map(tuple, counts)), log)

    climbed = climb(expect, found.guide, prior=found.guide, most=most)
    posteriors = [judged(each, climbed.shares) for each in specimens]
    counted = tuple(_counted(specimens, posteriors, climbed.shares))
    return Learned(found, climbed, counted)


def _check(census: Census, specimens: Sequence[Known]) -> None:
    """Refuses specimens that cannot be: under the guide their readings never occur."""
    problems = []
    for each, own in zip(census.specimens, specimens, strict=True):
        states, _ = told(own.tables, own.item)
        likely, _ = fit(own.tables.forest, states)
        if not dot(own.tables.prior, likely) > 0:
            wrong = "these readings cannot be of that model year under the guide"
            right = "another year, other readings, or a guide that leaves them possible"
            problems.append(Problem(census.file, each.line, each.name, wrong, right))
    if problems:
        raise CensusError(problems)


def _add(
    counts: list[list[float]], each: Known, posterior: Posterior, shares: Rows
) -> None:
    """Counts a specimen's readings: each option of each stretch by how probable it is
    that it was built there, with the part original, and truly shows that option.
    """
    for look in each.looks:
        looked: dict[int, float] = {}
        original = posterior.original[each.tables.part_of[look.k]][:-1]
        for x, p in zip(look.at, original, strict=True):
            looked[x] = looked.get(x, 0.0) + p
        for x, p in looked.items():
            for o, share in enumerate(shown(look, x, shares)):
                counts[x][o] += p * share


def _counted(
    specimens: Sequence[Known], posteriors: Sequence[Posterior], shares: Rows
) -> Iterator[Counted]:
    """Every reading of a choice in every cell that it can be of."""
    for i, (each, posterior) in enumerate(zip(specimens, posteriors, strict=True)):
        for look in each.looks:
            original = posterior.original[each.tables.part_of[look.k]]
            by = {x: shown(look, x, shares) for x in dict.fromkeys(look.at)}
            for n, x in enumerate(look.at):
                yield Counted(i, look.k, each.cells[n], x, original[n], by[x])
