"""What is often cited and says little, and what is seldom cited and says much."""

from dataclasses import dataclass
from statistics import median

from fieldid.engine import Item, Tables
from fieldid.engine.claim import odds
from fieldid.engine.guide import Choice, Clue
from fieldid.engine.one import weigh
from fieldid.engine.words import tells_nothing
from fieldid.learn.worth import Worth, worths


@dataclass(frozen=True, slots=True)
class Told:
    """A clue, its worth, and by how much any of its answers can at most raise the odds
    of one model year; None where answers are not chosen.
    """

    worth: Worth
    most: float | None


@dataclass(frozen=True, slots=True)
class Myths:
    """Popular clues that tell less than most, weakest first; and those that are not
    popular and are among the best quarter, strongest first.
    """

    weak: tuple[Told, ...]
    humble: tuple[Told, ...]


def myths(tables: Tables) -> Myths:
    """Empty on both sides for a guide that names no popular clue."""
    told = worths(tables)
    if not any(worth.clue.popular for worth in told):
        return Myths((), ())
    middle = median(worth.bits for worth in told)
    weak = [w for w in reversed(told) if w.clue.popular and w.bits < middle]
    best = told[: max(len(told) // 4, 1)]
    humble = [w for w in best if not w.clue.popular]
    return Myths(
        tuple(Told(worth, most(tables, worth.clue)) for worth in weak),
        tuple(Told(worth, most(tables, worth.clue)) for worth in humble),
    )


def most(tables: Tables, clue: Clue) -> float | None:
    """The largest Bayes factor that one answer gives one model year, taken alone; 1 if
    that is too near to one to be worth a word.
    """
    if not isinstance(clue.kind, Choice):
        return None
    found = 1.0
    for option in clue.kind.options:
        alone = weigh(tables, Item(((clue.id, option.id),)))
        shares = [*alone.years, alone.outside]
        for y in range(len(alone.years)):
            found = max(found, odds(tables, shares, (y, y)))
    return 1.0 if tells_nothing(found) else found
