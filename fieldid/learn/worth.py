"""What each clue is worth before anything is known, and which of them are myths."""

from dataclasses import dataclass

from fieldid.engine import Item, Tables
from fieldid.engine.gain import Prospect, entropy, prospects
from fieldid.engine.guide import Clue
from fieldid.engine.one import weigh
from fieldid.engine.special import round9


@dataclass(frozen=True, slots=True)
class Worth:
    """How many bits of the model year a reading of the clue tells on average, and how
    many of them a minute of looking gives.
    """

    clue: Clue
    bits: float
    per_minute: float


def worths(tables: Tables) -> tuple[Worth, ...]:
    """Every clue, the one that tells most first.

    The bits are the mutual information of the reading and the model year (Shannon,
    1948), replaced parts, mistakes and what cannot be read included.
    """
    found = _prospects(tables, Item())
    clues = tables.guide.clues
    # Where nothing is told the difference of two entropies may fall below nothing.
    told = [
        Worth(clues[p.k], max(p.bits, 0.0), max(60 * p.bits_per_second, 0.0))
        for p in found
    ]
    return tuple(sorted(told, key=lambda worth: -round9(worth.bits)))


def quickest(tables: Tables) -> tuple[Clue, ...]:
    """Every clue, in the order in which a phone asks while nothing is known."""
    return tuple(tables.guide.clues[p.k] for p in _prospects(tables, Item()))


def once_known(tables: Tables, clue: Clue) -> float:
    """How many bits the clue tells at most once it is known which member of a set the
    object is; 0 where there are no sets.
    """
    members = tables.guide.members
    told = (
        prospect.bits
        for member in (members.all if members else ())
        for prospect in _prospects(tables, Item(member=member))
        if tables.guide.clues[prospect.k] is clue
    )
    return max(told, default=0.0)


def whole(tables: Tables) -> float:
    """How many bits it takes to know the model year when nothing is known yet."""
    before = weigh(tables, Item())
    return entropy([*before.years, before.outside])


def _prospects(tables: Tables, item: Item) -> list[Prospect]:
    return prospects(
        tables, item, weigh(tables, item), claimed=None, away=False, without=()
    )
