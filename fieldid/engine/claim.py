"""A claim weighed: Bayes factors, and each cited clue's reading taken alone.

Model page: "A claim".
"""

from fieldid.engine.find import Cited, Claim, ClaimVerdict, Item
from fieldid.engine.one import Posterior, weigh
from fieldid.engine.prepare import Tables
from fieldid.engine.words import BARE, strength, tells_nothing, times, years


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

    Odds after the readings over odds before; the rest includes outside.
    """
    start, stop = tables.stretches[y]
    before = sum(tables.prior[start:stop])
    after = posterior.years[y]
    rest_before = sum(tables.prior) - before
    rest_after = sum(
        p for i, p in enumerate([*posterior.years, posterior.outside]) if i != y
    )
    return (after / rest_after) / (before / rest_before)


def alone(tables: Tables, item: Item, clue: str) -> Posterior:
    """What one reading says by itself."""
    only = tuple(reading for reading in item.readings if reading[0] == clue)
    return weigh(tables, Item(only, (), item.member))


def fitting(posterior: Posterior, tables: Tables) -> list[int]:
    """The model years that are at least half as probable as the best one."""
    best = max(posterior.years)
    return [
        year.year
        for year, p in zip(tables.guide.years, posterior.years, strict=True)
        if p >= best / 2
    ]


def _cited(tables: Tables, item: Item, clue: str, y: int) -> Cited:
    name = tables.guide.clues[tables.places[clue]].name
    if dict(item.readings).get(clue) is None:
        return Cited(clue, 1.0, f"The {name} was not read, so it proves nothing yet.")
    posterior = alone(tables, item, clue)
    weighed = factor(tables, posterior, y)
    year = tables.guide.years[y].year
    shared = years(fitting(posterior, tables))
    if tells_nothing(weighed) or 1 < weighed <= BARE:
        say = f"The {name} alone proves next to nothing: it fits {shared}."
    elif weighed < 1:
        say = f"The {name} alone speaks against {year}: it fits {shared}."
    else:
        say = f"The {name} alone speaks for {year} ({strength(weighed)})."
    return Cited(clue, weighed, say)


def _say(weighed: float, year: int) -> str:
    if tells_nothing(weighed):
        return f"What was read so far speaks neither for nor against {year}."
    side = "for" if weighed > 1 else "against"
    way = "higher" if weighed > 1 else "lower"
    return (
        f"What was read speaks {side} {year}: {strength(weighed)}, "
        f"its odds are {times(weighed)} {way} than before looking."
    )
