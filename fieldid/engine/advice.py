"""What to look at next, in words: the clue, on which member, and why."""

from collections.abc import Sequence
from itertools import combinations

from fieldid.engine.claim import Weighed
from fieldid.engine.find import Item, Next
from fieldid.engine.gain import WORTHWHILE, Prospect, between, separates
from fieldid.engine.one import ranked
from fieldid.engine.prepare import Tables
from fieldid.engine.range import brackets
from fieldid.engine.special import round9
from fieldid.engine.words import called, figure, percent

RIVALS = 4
"""How many of the most probable model years a reason is sought among."""


def advice(
    tables: Tables, items: Sequence[Item], posterior: Weighed, prospect: Prospect
) -> Next:
    """A prospect with its reason in words."""
    clue = tables.guide.clues[prospect.k]
    effort = f"{figure(clue.seconds)} seconds; {clue.needs or 'no tools'}"
    return Next(
        items[prospect.item].member,
        clue.id,
        what(tables, items, (prospect.k, prospect.item)),
        prospect.bits,
        prospect.bits_per_second,
        f"{_reason(tables, posterior, prospect)}; {effort}",
    )


def what(tables: Tables, items: Sequence[Item], place: tuple[int, int]) -> str:
    """What there is to look at: a clue, in a set with the member that it is on, by the
    places of the two.
    """
    k, i = place
    name = tables.guide.clues[k].name
    member = items[i].member
    if member is None or len(items) == 1:
        return f"the {name}"
    return f"the {called(tables.guide, member)}'s {name}"


def _reason(tables: Tables, posterior: Weighed, prospect: Prospect) -> str:
    if prospect.bits < WORTHWHILE:
        return "tells next to nothing now"
    if brackets(tables.guide):
        return f"leaves about {percent(2**-prospect.bits)} of the years open"
    rivals = ranked(posterior.years)[:RIVALS]
    # The first pair can nearly always be told apart, so the others need no look.
    pairs = sorted(
        combinations(sorted(rivals), 2),
        key=lambda pair: -round9(between(prospect.rows, *pair)),
    )
    i, j = next(
        (pair for pair in pairs if separates(tables, prospect, *pair)),
        (rivals[0], rivals[0]),
    )
    years = tables.guide.years
    if i == j:
        return f"tells {years[i].year} from anything else"
    return f"tells {years[i].year} from {years[j].year}"
