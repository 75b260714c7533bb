"""The sentences of a verdict, the same for one object and for a set."""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.advice import what
from fieldid.engine.claim import Weighed
from fieldid.engine.find import Item, PartState
from fieldid.engine.flags import EVEN, is_outside, is_replaced, replaced, untold
from fieldid.engine.gain import WORTHWHILE, Prospect, separator
from fieldid.engine.one import Posterior, ranked
from fieldid.engine.prepare import Tables
from fieldid.engine.range import brackets, covered, named, run
from fieldid.engine.special import Vector, round9
from fieldid.engine.words import (
    NOTHING,
    hundredth,
    likely,
    month,
    percent,
    within_a_point,
)

CANNOT_TELL = 0.33
"""A leading year that is less likely than this is not leaned to."""
SETTLED = 0.90
UNSEEN = "not looked at"
SEEN_ONCE = "looked at on one of them alone"
USUAL = "such parts are usually replaced"
STANDS_OUT = 2.0
"""The likeliest build month is named if it is so many times as likely as the mean month
of its stretch.
"""
TAILS = 0.05
"""What the stretch of build months leaves out at each end."""

Shares = tuple[tuple[int, float], ...]
"""Probability of each model year, or of each build month."""


@dataclass(frozen=True, slots=True)
class Case:
    """What a verdict is told from; `first` and `second` are the places of the two
    likeliest model years, `found` what can still be looked at.
    """

    tables: Tables
    items: tuple[Item, ...]
    posterior: Weighed
    found: tuple[Prospect, ...]
    first: int
    second: int | None


def year_shares(tables: Tables, posterior: Weighed) -> Shares:
    """Probability of every model year, in the guide's order."""
    years = tables.guide.years
    return tuple((y.year, p) for y, p in zip(years, posterior.years, strict=True))


def month_shares(tables: Tables, cells: Vector) -> Shares:
    """Probability of every build month, whatever the model year, in their order."""
    months = sorted({cell.t: None for cell in tables.cells})
    share = dict.fromkeys(months, 0.0)
    for cell, p in zip(tables.cells, cells[:-1], strict=True):
        share[cell.t] += p
    return tuple(share.items())


def likeliest(shares: Shares) -> int:
    """The first of the likeliest years or months."""
    return max(shares, key=lambda share: round9(share[1]))[0]


def leading(tables: Tables, posterior: Weighed, first: int) -> int | None:
    """The leading model year; none where none of them is the likeliest answer."""
    return None if is_outside(posterior) else tables.guide.years[first].year


def part_states(
    tables: Tables, item: Item, posterior: Posterior
) -> tuple[PartState, ...]:
    """Each part's probability of being replaced, in words."""
    seen = seen_parts(tables, [item])
    shares = [replaced(posterior, p) for p in range(len(tables.guide.parts))]
    return tuple(
        PartState(part.id, share, _part(tables, item, p, share, part.id in seen))
        for p, (part, share) in enumerate(zip(tables.guide.parts, shares, strict=True))
    )


def seen_parts(tables: Tables, items: Sequence[Item]) -> list[str]:
    """The parts that anything was read on; a part may stand there more than once."""
    read = [
        clue for item in items for clue, reading in item.readings if reading is not None
    ]
    return [clue.part for clue in tables.guide.clues if clue.id in read]


def looked_on(tables: Tables, items: Sequence[Item], p: int) -> int:
    """On how many items the part was read, or is gone."""
    part = tables.guide.parts[p].id
    return sum(
        part in item.gone or part in seen_parts(tables, [item]) for item in items
    )


def _part(tables: Tables, item: Item, p: int, share: float, seen: bool) -> str:
    if tables.guide.parts[p].id in item.gone:
        return "gone"
    # How often such a part is original or replaced says nothing of this one.
    if untold(tables, item, p):
        return f"{UNSEEN}; {USUAL}"
    if is_replaced(share):
        return f"replaced: {likely(share)}, {percent(share)}"
    if not seen:
        return UNSEEN
    return f"original: {likely(1 - share)}, {percent(1 - share)}"


def is_read(items: Sequence[Item]) -> bool:
    """Whether the items say anything at all."""
    return any(
        item.gone or any(reading is not None for _, reading in item.readings)
        for item in items
    )


def answer(
    tables: Tables,
    items: Sequence[Item],
    posterior: Weighed,
    found: Sequence[Prospect],
) -> str:
    """Which year it is, and how sure that is; `found` can still be looked at."""
    first = ranked(posterior.years)[0]
    p, year = round9(posterior.years[first]), tables.guide.years[first].year
    if is_outside(posterior):
        p = posterior.outside
        return f"looks like none of these: {likely(p)}, {percent(p)}"
    if not is_read(items):
        return "nothing read yet"
    if brackets(tables.guide):
        return _bracketed(tables, posterior)
    alike = level(posterior)
    if len(alike) > 2:
        return _many(posterior, alike, found)
    if alike:
        return _either(tables, posterior, alike, found)
    if p < CANNOT_TELL:
        return f"{_cannot(found)}: {year} leads with {percent(p)}"
    if hundredth(p) < EVEN:
        return f"leaning to {year}: {percent(p)}, so more likely another"
    lead = f"{year}" if p >= SETTLED else f"leaning to {year}"
    return f"{lead}: {likely(p)}, {percent(p)}"


def level(posterior: Weighed) -> tuple[int, ...]:
    """The places of the likeliest years that are told as equally likely; none where
    one leads.
    """
    best = max(posterior.years)
    # Of many years each has so little that a point is much of it.
    alike = [
        y
        for y, p in enumerate(posterior.years)
        if within_a_point(best, p) and best < NOTHING * p
    ]
    return tuple(alike) if len(alike) > 1 else ()


def _cannot(found: Sequence[Prospect]) -> str:
    return f"cannot tell{_yet(found)}"


def _yet(found: Sequence[Prospect]) -> str:
    return " yet" if worthwhile(found) else ""


def _many(posterior: Weighed, alike: Sequence[int], found: Sequence[Prospect]) -> str:
    """How many years are level, none of which leads."""
    if len(alike) == len(posterior.years):
        return f"nothing tells the years apart{_yet(found)}"
    shares = [posterior.years[y] for y in alike]
    most = percent(max(shares))
    about = "" if percent(min(shares)) == most else " or just below"
    return f"{_cannot(found)}: {len(alike)} years are level at {most}{about}"


def _either(
    tables: Tables,
    posterior: Weighed,
    both: Sequence[int],
    found: Sequence[Prospect],
) -> str:
    """That it is one of two years, neither of which leads."""
    name = " or ".join(str(tables.guide.years[y].year) for y in both)
    each = [percent(posterior.years[y]) for y in both]
    shares = f"{each[0]} each" if each[0] == each[1] else " and ".join(each)
    if max(round9(posterior.years[y]) for y in both) < CANNOT_TELL:
        return f"{_cannot(found)}: {name} with {shares}"
    settled = round9(sum(posterior.years[y] for y in both)) >= SETTLED
    return f"{name}: {shares}" if settled else f"leaning to {name}: {shares}"


def _bracketed(tables: Tables, posterior: Weighed) -> str:
    """Which range of years it is, and how sure that is."""
    found = run(posterior.years)
    name, p = named(tables.guide, found), covered(posterior, found)
    if found == (0, len(posterior.years) - 1):
        return f"{name} so far"
    return f"{name}: {likely(p)}, {percent(p)}"


def runner_up(told: Case) -> str:
    """The second year, and what worth a look would best tell it from the first; before
    it none of these, where that is more likely, or the first, where none of these
    leads. A range has none, nor have years that are level.
    """
    if told.second is None or brackets(told.tables.guide):
        return ""
    first, second = (told.tables.guide.years[y].year for y in (told.first, told.second))
    most, share = (told.posterior.years[y] for y in (told.first, told.second))
    outside, lost = told.posterior.outside, is_outside(told.posterior)
    likelier = round9(share) < round9(outside) and not lost
    none = [f"none of these, {percent(outside)}"] if likelier else []
    if level(told.posterior):
        return "".join(none)
    before = [f"{first}, {percent(most)}"] if lost else none
    say = ", then ".join([*before, f"{second}, {percent(share)}"])
    best = separator(told.tables, worthwhile(told.found), told.first, told.second)
    if best is None and _told_apart(told):
        return say
    if best is None:
        return f"{say}; no clue left would tell {second} from {first}"
    named = what(told.tables, told.items, (best.k, best.item))
    return f"{say}; {named} would best tell {second} from {first}"


def built(months: Shares) -> str:
    """The stretch of months that leaves out 5 % at each end, and the likeliest of them
    if it stands out.

    Empty where every month is ruled out.
    """
    inside = sum(p for _, p in months)
    if inside == 0:
        return ""
    run = 0.0
    since = until = months[0][0]
    for t, p in months:
        before, run = run, run + p / inside
        if round9(before) <= TAILS:
            since = t
        if round9(before) < 1 - TAILS:
            until = t
    if since == until:
        return f"built about {month(since)}"
    say = f"built between {month(since)} and {month(until)}"
    stretch = tuple((t, p) for t, p in months if since <= t <= until)
    best = likeliest(stretch)
    mean = sum(p for _, p in stretch) / len(stretch)
    if round9(dict(stretch)[best] / mean) < STANDS_OUT:
        return say
    return f"{say}, most likely about {month(best)}"


def worthwhile(found: Sequence[Prospect]) -> list[Prospect]:
    """What is still worth a look."""
    return [each for each in found if each.bits >= WORTHWHILE]


def _told_apart(told: Case) -> bool:
    """Whether something left would tell the two likeliest years apart, worth it or
    not.
    """
    second = told.first if told.second is None else told.second
    return separator(told.tables, told.found, told.first, second) is not None


def exhausted(told: Case) -> str:
    """Why there is nothing left to look at; empty while something can gain."""
    if worthwhile(told.found):
        return ""
    if told.second is None or round9(told.posterior.years[told.first]) >= SETTLED:
        return "Nothing left to look at would change this."
    if brackets(told.tables.guide):
        return "Nothing left to look at would narrow this."
    if _told_apart(told):
        return "Nothing left to look at would change this."
    if len(level(told.posterior)) > 2:
        return "The clues cannot tell these years apart any further."
    years = [told.tables.guide.years[y].year for y in (told.first, told.second)]
    return f"The clues cannot tell {min(years)} from {max(years)} any further."
