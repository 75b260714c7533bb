"""A claim weighed: Bayes factors, and what each cited clue is worth taken alone.

Model page: "A claim".
"""

from collections.abc import Sequence

from fieldid.engine.find import Cited, Claim, ClaimVerdict, Item
from fieldid.engine.guide import Clue, Measure
from fieldid.engine.one import Posterior, weigh
from fieldid.engine.prepare import Tables, likelihood, tables_for
from fieldid.engine.sets import SetPosterior, weigh_set
from fieldid.engine.special import TINY, Vector
from fieldid.engine.typical import MOST, common, shown, typical
from fieldid.engine.words import BARE, evidence, strength, tells_nothing, times, years

# A hair under a half, so that the last bit never decides what fits half as well.
HALF = 0.5 - 1e-9

Weighed = Posterior | SetPosterior


def claim(
    tables: Tables, items: Sequence[Item], posterior: Weighed, said: Claim
) -> ClaimVerdict:
    """What everything that was read, and each cited clue, says of the claim."""
    y = place(tables, said.model_year)
    weighed = factor(tables, posterior, y)
    return ClaimVerdict(
        said.model_year,
        weighed,
        strength(weighed),
        _say(weighed, said.model_year),
        tuple(_cited(tables, items, clue, y) for clue in said.cites),
    )


def place(tables: Tables, year: int) -> int:
    """Where the model year stands in the guide."""
    return [y.year for y in tables.guide.years].index(year)


def factor(tables: Tables, posterior: Weighed, y: int) -> float:
    """Bayes factor of the model year at place `y` against all the rest."""
    return odds(tables, [*posterior.years, posterior.outside], (y, y))


def odds(tables: Tables, shares: Vector, lead: tuple[int, int]) -> float:
    """Odds of the years from one place to another after the readings over odds before.

    `shares` are the probabilities of the model years, and last of outside, which the
    rest includes. What is ruled out altogether counts as next to nothing, so that
    the factor is a number.
    """
    first, last = lead
    before = sum(tables.prior[tables.stretches[first][0] : tables.stretches[last][1]])
    rest_before = sum(tables.prior) - before
    inside = sum(shares[first : last + 1])
    rest = sum(p for y, p in enumerate(shares) if not first <= y <= last)
    return max(inside, TINY) / max(rest, TINY) / (before / rest_before)


def weigh_all(tables: Tables, items: Sequence[Item]) -> Weighed:
    """What the readings say of one object, or of a set."""
    return weigh(tables, items[0]) if len(items) == 1 else weigh_set(tables, items)


def alone(tables: Tables, item: Item, clue: str) -> Posterior:
    """What one reading says by itself."""
    only = tuple(reading for reading in item.readings if reading[0] == clue)
    return weigh(tables, Item(only, (), item.member))


def fitting(tables: Tables, shares: Vector) -> list[int]:
    """The model years that the readings fit at least half as well as the best one,
    however many of each were made.
    """
    fits = [
        p / sum(tables.prior[start:stop])
        for p, (start, stop) in zip(shares, tables.stretches, strict=True)
    ]
    best = max(fits)
    return [
        year.year
        for year, fit in zip(tables.guide.years, fits, strict=True)
        if fit >= HALF * best
    ]


def _cited(tables: Tables, items: Sequence[Item], cite: str, y: int) -> Cited:
    clue = tables.guide.clues[tables.places[cite]]
    readers = [
        Item(((cite, reading),), (), item.member)
        for item in items
        if (reading := dict(item.readings).get(cite)) is not None
    ]
    if not readers:
        return Cited(cite, False, *_unread(tables, items, clue, y))
    opening = f"Taken alone, the {clue.name}"
    return Cited(cite, True, *_worth(tables, readers, y, opening))


def _unread(
    tables: Tables, items: Sequence[Item], clue: Clue, y: int
) -> tuple[float, str]:
    """What a clue would be worth that nobody has read yet."""
    able = [item for item in items if clue.part not in item.gone]
    if not able:
        part = next(part.name for part in tables.guide.parts if part.id == clue.part)
        return 1.0, f"With the {part} went the {clue.name}."
    supposed = _supposed(tables, able, clue, y)
    if not supposed:
        year = tables.guide.years[y].year
        return 1.0, f"The guide does not say what the {clue.name} of a {year} shows."
    opening = f"{_if_read(tables, supposed, clue, y)}, the {clue.name} alone"
    return _worth(tables, supposed, y, opening)


def _worth(
    tables: Tables, readers: Sequence[Item], y: int, opening: str
) -> tuple[float, str]:
    """The factor of one clue's readings alone, and a sentence that opens as given."""
    posterior = weigh_all(tables, readers)
    weighed = factor(tables, posterior, y)
    told = evidence(weighed, tables.guide.years[y].year)
    fits = fitting(tables, posterior.years)
    shared = years(fits)
    if tells_nothing(weighed) or 1 < weighed <= BARE:
        why = f"any of {shared}" if len(fits) > 1 else f"it fits {shared} best"
        return weighed, f"{opening} would prove next to nothing: {why}."
    if weighed < 1:
        return weighed, f"{opening} would be {told} and point to {shared}."
    return weighed, f"{opening} would be {told}."


def _supposed(tables: Tables, items: Sequence[Item], clue: Clue, y: int) -> list[Item]:
    """The items with what the model year at place `y` mostly shows, where the guide
    says it, and nothing else.
    """
    k = tables.places[clue.id]
    found = []
    for item in items:
        table = tables_for(tables, item.member)[k]
        reading = typical(tables, table, *tables.stretches[y])
        if reading is not None:
            found.append(Item(((clue.id, reading),), (), item.member))
    return found


def _if_read(tables: Tables, supposed: Sequence[Item], clue: Clue, y: int) -> str:
    """What is supposed, in words; the reading only if all have the same."""
    readings = list(dict.fromkeys(item.readings[0][1] for item in supposed))
    table = tables_for(tables, supposed[0].member)[tables.places[clue.id]]
    orig = likelihood(table, readings[0]).orig
    if isinstance(clue.kind, Measure):
        how = "usual on"
    else:
        most = common(tables, orig, *tables.stretches[y]) > MOST
        how = "on most" if most else "most often on"
    where = " on all of them" if len(supposed) > 1 else ""
    what = f" ({shown(clue, readings[0])})" if len(readings) == 1 else ""
    return f"If read{where} as {how} {tables.guide.years[y].year}s{what}"


def _say(weighed: float, year: int) -> str:
    if tells_nothing(weighed):
        return f"What was read so far speaks neither for nor against {year}."
    way = "better" if weighed > 1 else "worse"
    return (
        f"What was read is {evidence(weighed, year)}: "
        f"that year fits {times(weighed)} {way} than the rest."
    )
