"""The one door: Tables and a Find in, a Verdict out."""

from collections.abc import Sequence

from fieldid.engine.claim import claim, place
from fieldid.engine.find import Find, Item, PartState, Verdict
from fieldid.engine.flags import flags, is_outside, is_replaced, replaced
from fieldid.engine.gain import WORTHWHILE, Prospect, advice, prospects, separator
from fieldid.engine.one import Posterior, ranked, weigh
from fieldid.engine.prepare import Tables
from fieldid.engine.reasons import conflicts, weights
from fieldid.engine.special import round9
from fieldid.engine.words import likely, month, percent

CANNOT_TELL = 0.33
"""A leading year that is less likely than this is not leaned to."""
SETTLED = 0.90
TAILS = 0.05
"""What the stretch of build months leaves out at each end."""


def judge(
    tables: Tables, find: Find, *, away: bool = False, without: Sequence[str] = ()
) -> Verdict:
    """The verdict on the find's one object.

    `away` and `without` limit what to look at next, as for `prospects`.
    """
    item = _standing(tables, find.items[0])
    posterior = weigh(tables, item)
    first, *others = ranked(posterior)
    second = others[0] if others else None
    weighed = claim(tables, item, posterior, find.claim) if find.claim else None
    claimed = place(tables, find.claim.model_year) if find.claim else None
    found = prospects(
        tables, item, posterior, claimed=claimed, away=away, without=without
    )
    built = _built(tables, posterior)
    years = tables.guide.years
    return Verdict(
        tables.guide.id,
        tuple((y.year, p) for y, p in zip(years, posterior.years, strict=True)),
        posterior.outside,
        built,
        tuple(
            _part(part.id, replaced(posterior, p), part.id in item.gone)
            for p, part in enumerate(tables.guide.parts)
        ),
        posterior.log_evidence,
        None if is_outside(posterior) else years[first].year,
        _say(tables, item, posterior, first),
        _runner_up(tables, posterior, found, first, second),
        _built_say(built),
        weights(tables, item, posterior, first),
        weighed,
        flags(tables, item, posterior, conflicts(tables, item), weighed),
        tuple(advice(tables, posterior, prospect) for prospect in found),
        _exhausted(tables, posterior, found, first, second),
    )


def _standing(tables: Tables, item: Item) -> Item:
    """The item without readings on parts that are gone: they say nothing any more."""
    part_of = {clue.id: clue.part for clue in tables.guide.clues}
    readings = tuple(r for r in item.readings if part_of[r[0]] not in item.gone)
    return Item(readings, item.gone, item.member)


def _built(tables: Tables, posterior: Posterior) -> tuple[tuple[int, float], ...]:
    """Probability of every build month, whatever the model year, in their order."""
    months = sorted({cell.t: None for cell in tables.cells})
    share = dict.fromkeys(months, 0.0)
    for cell, p in zip(tables.cells, posterior.cells[:-1], strict=True):
        share[cell.t] += p
    return tuple(share.items())


def _part(part: str, share: float, gone: bool) -> PartState:
    if gone:
        return PartState(part, share, "gone")
    if is_replaced(share):
        return PartState(part, share, f"replaced: {likely(share)}, {percent(share)}")
    kept = 1 - share
    return PartState(part, share, f"original: {likely(kept)}, {percent(kept)}")


def _say(tables: Tables, item: Item, posterior: Posterior, first: int) -> str:
    p, year = round9(posterior.years[first]), tables.guide.years[first].year
    if is_outside(posterior):
        p = posterior.outside
        return f"looks like none of these: {likely(p)}, {percent(p)}"
    if not item.gone and all(reading is None for _, reading in item.readings):
        return "nothing read yet"
    if p < CANNOT_TELL:
        return f"cannot tell yet: {year} leads with {percent(p)}"
    lead = f"{year}" if p >= SETTLED else f"leaning to {year}"
    return f"{lead}: {likely(p)}, {percent(p)}"


def _runner_up(
    tables: Tables,
    posterior: Posterior,
    found: Sequence[Prospect],
    first: int,
    second: int | None,
) -> str:
    if second is None:
        return ""
    best = separator(tables, found, first, second)
    year = f"{tables.guide.years[second].year}, {percent(posterior.years[second])}"
    if best is None:
        return f"{year}: no clue left would separate them"
    return f"{year}: the {tables.guide.clues[best.k].name} would best separate them"


def _built_say(built: Sequence[tuple[int, float]]) -> str:
    """The stretch of months that leaves out 5 % at each end, and the likeliest.

    Empty where every month is ruled out.
    """
    inside = sum(p for _, p in built)
    if inside == 0:
        return ""
    run = 0.0
    since = until = built[0][0]
    for t, p in built:
        before, run = run, run + p / inside
        if round9(before) <= TAILS:
            since = t
        if round9(before) < 1 - TAILS:
            until = t
    best = max(built, key=lambda share: round9(share[1]))[0]
    return (
        f"built between {month(since)} and {month(until)}, "
        f"most likely about {month(best)}"
    )


def _exhausted(
    tables: Tables,
    posterior: Posterior,
    found: Sequence[Prospect],
    first: int,
    second: int | None,
) -> str:
    """Why there is nothing left to look at; empty while something can gain."""
    if any(prospect.bits >= WORTHWHILE for prospect in found):
        return ""
    if second is None or round9(posterior.years[first]) >= SETTLED:
        return "Nothing left to look at would change this."
    years = sorted((tables.guide.years[first].year, tables.guide.years[second].year))
    return f"The clues cannot tell {years[0]} from {years[1]} any further."
