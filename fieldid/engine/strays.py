"""Which members of a set are probably strays, and why, in words."""

import math

from fieldid.engine.claim import alone, fitting
from fieldid.engine.find import Item
from fieldid.engine.flags import EVEN
from fieldid.engine.members import often_apart
from fieldid.engine.one import read
from fieldid.engine.prepare import Tables
from fieldid.engine.saying import Case, is_read, likeliest, month_shares
from fieldid.engine.sets import SetPosterior, by_year
from fieldid.engine.special import TINY, Vector, round9
from fieldid.engine.words import called, likely, month, percent, years


def is_stray(told: Case, whole: SetPosterior, i: int) -> bool:
    """Whether the item at place `i` is more likely a stray than not, after something
    was read off it.
    """
    return round9(whole.stray[i]) > EVEN and is_read([told.items[i]])


def stray_say(told: Case, whole: SetPosterior, i: int) -> str:
    """The sentence about a probable stray; empty for any other item."""
    member = told.items[i].member
    if member is None or not is_stray(told, whole, i):
        return ""
    guide, p = told.tables.guide, whole.stray[i]
    rest = "the others speak" if len(told.items) > 2 else "the other speaks"
    why = _why(told.tables, told.items[i], _others(whole, i), rest)
    calm = " That is no alarm: it was often bought apart."
    return (
        f"The {called(guide, member)} is probably a stray "
        f"({likely(p)}, {percent(p)}){why}.{calm if often_apart(guide, member) else ''}"
    )


def _others(whole: SetPosterior, i: int) -> list[float]:
    """Probability of each cell, and last of outside, by all items but one."""
    weights = [sum(column) for column in zip(*whole.others[i], strict=True)]
    total = sum(weights)
    return [w / total for w in weights]


def _why(tables: Tables, item: Item, others: Vector, rest: str) -> str:
    """What the reading that goes least with the others was made for; empty if none
    does by itself, or the others speak for no year.
    """
    if round9(others[-1]) > EVEN:
        return ""
    least = 0.0
    why = ""
    for k in read(tables, item):
        clue = tables.guide.clues[k]
        own = alone(tables, item, clue.id)
        # By the logarithm, since nine places of a small number are less than it has.
        together = round9(math.log(max(_together(tables, own.cells, others), TINY)))
        made, wanted = _apart(tables, own.cells, others)
        if together < least and made != wanted:
            least = together
            why = f", with the {clue.name} made {made}, while {rest} for {wanted}"
    return why


def _together(tables: Tables, own: Vector, others: Vector) -> float:
    """How many times more often than by chance two go together that say this of each
    cell (and outside).
    """
    return sum(
        p * q / prior
        for p, q, prior in zip(own, others, tables.prior, strict=True)
        if prior > 0
    )


def _apart(tables: Tables, own: Vector, others: Vector) -> tuple[str, str]:
    """What each speaks for: years, or months where they share a year."""
    made = fitting(tables, by_year(tables, own))
    wanted = fitting(tables, by_year(tables, others))
    if not any(year in made for year in wanted):
        return f"for {years(made)}", years(wanted)
    t, u = (likeliest(month_shares(tables, cells)) for cells in (own, others))
    return f"about {month(t)}", f"about {month(u)}"
