"""A claim weighed: Bayes factors, and each cited clue's reading taken alone.

Model page: "A claim".
"""

from fieldid.engine.find import Cited, Claim, ClaimVerdict, Item
from fieldid.engine.one import Posterior, weigh
from fieldid.engine.prepare import Tables
from fieldid.engine.special import TINY
from fieldid.engine.words import BARE, evidence, strength, tells_nothing, times, years

# A hair under a half, so that the last bit never decides what fits half as well.
HALF = 0.5 - 1e-9


def claim(
    tables: Tables, item: Item, posterior: Posterior, said: Claim
) -> ClaimVerdict:
    """What everything that was read, and each cited clue, says of the claim."""
    y = place(tables, said.model_year)
    weighed = factor(tables, posterior, y)
    return ClaimVerdict(
        said.model_year,
        weighed,
        strength(weighed),
        _say(weighed, said.model_year),
        tuple(_cited(tables, item, clue, y) for clue in said.cites),
    )


def place(tables: Tables, year: int) -> int:
    """Where the model year stands in the guide."""
    return [y.year for y in tables.guide.years].index(year)


def factor(tables: Tables, posterior: Posterior, y: int) -> float:
    """Bayes factor of the model year at place `y` against all the rest.

    Odds after the readings over odds before; the rest includes outside. What is
    ruled out altogether counts as next to nothing, so that the factor is a number.
    """
    start, stop = tables.stretches[y]
    before = sum(tables.prior[start:stop])
    after = posterior.years[y]
    rest_before = sum(tables.prior) - before
    rest_after = sum(
        p for i, p in enumerate([*posterior.years, posterior.outside]) if i != y
    )
    return max(after, TINY) / max(rest_after, TINY) / (before / rest_before)


def alone(tables: Tables, item: Item, clue: str) -> Posterior:
    """What one reading says by itself."""
    only = tuple(reading for reading in item.readings if reading[0] == clue)
    return weigh(tables, Item(only, (), item.member))


def fitting(posterior: Posterior, tables: Tables) -> list[int]:
    """The model years that the readings fit at least half as well as the best one,
    however many of each were made.
    """
    fits = [
        p / sum(tables.prior[start:stop])
        for p, (start, stop) in zip(posterior.years, tables.stretches, strict=True)
    ]
    best = max(fits)
    return [
        year.year
        for year, fit in zip(tables.guide.years, fits, strict=True)
        if fit >= HALF * best
    ]


def _cited(tables: Tables, item: Item, clue: str, y: int) -> Cited:
    name = tables.guide.clues[tables.places[clue]].name
    if dict(item.readings).get(clue) is None:
        return Cited(clue, 1.0, f"Still to be read: the {name}.")
    posterior = alone(tables, item, clue)
    weighed = factor(tables, posterior, y)
    told = evidence(weighed, tables.guide.years[y].year)
    shared = years(fitting(posterior, tables))
    if tells_nothing(weighed) or 1 < weighed <= BARE:
        say = f"Taken alone, the {name} would prove next to nothing: any of {shared}."
    elif weighed < 1:
        say = f"Taken alone, the {name} would be {told} and point to {shared}."
    else:
        say = f"Taken alone, the {name} would be {told}."
    return Cited(clue, weighed, say)


def _say(weighed: float, year: int) -> str:
    if tells_nothing(weighed):
        return f"What was read so far speaks neither for nor against {year}."
    way = "higher" if weighed > 1 else "lower"
    return (
        f"What was read is {evidence(weighed, year)}: "
        f"its odds are {times(weighed)} {way} than before looking."
    )
