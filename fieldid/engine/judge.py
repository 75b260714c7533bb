"""The one door: Tables and a Find in, a Verdict out."""

from collections.abc import Sequence
from dataclasses import replace

from fieldid.engine.advice import advice
from fieldid.engine.bag import bag
from fieldid.engine.claim import Weighed, claim, place
from fieldid.engine.find import Claim, Find, Item, Verdict
from fieldid.engine.flags import flags
from fieldid.engine.gain import (
    WORTHWHILE,
    Prospect,
    prospects,
    whatever_is_claimed,
)
from fieldid.engine.one import Posterior, ranked, weigh
from fieldid.engine.prepare import Tables
from fieldid.engine.range import brackets, ends, lead
from fieldid.engine.reasons import conflicts, weights
from fieldid.engine.saying import (
    Case,
    Shares,
    answer,
    built,
    exhausted,
    is_read,
    leading,
    month_shares,
    part_states,
    runner_up,
    year_shares,
)
from fieldid.engine.setgain import set_prospects
from fieldid.engine.sets import weigh_set


def judge(
    tables: Tables,
    find: Find,
    *,
    away: bool = False,
    without: Sequence[str] = (),
    photos: bool = False,
) -> Verdict:
    """The verdict on the find's one object, or on its set.

    `away`, `without` and `photos` limit what to look at next, as for `prospects`.
    """
    items = tuple(counted(tables, item) for item in find.items)
    claimed = place(tables, find.claim.model_year) if find.claim else None
    if len(items) > 1:
        whole = weigh_set(tables, items)
        found = set_prospects(
            tables,
            items,
            whole,
            claimed=claimed,
            away=away,
            without=without,
            photos=photos,
        )
        told = _case(tables, items, whole, found)
        return bag(told, whole, _common(told, find.claim))
    posterior = weigh(tables, items[0])
    found = prospects(
        tables,
        items[0],
        posterior,
        claimed=claimed,
        away=away,
        without=without,
        photos=photos,
    )
    told = _case(tables, items, posterior, found)
    return _one(told, posterior, _common(told, find.claim))


def counted(tables: Tables, item: Item) -> Item:
    """The item without readings on parts that are gone: they say nothing any more."""
    part_of = {clue.id: clue.part for clue in tables.guide.clues}
    readings = tuple(r for r in item.readings if part_of[r[0]] not in item.gone)
    # The same item if nothing falls away, so that what is known of it can be kept.
    return item if readings == item.readings else replace(item, readings=readings)


def _case(
    tables: Tables,
    items: tuple[Item, ...],
    posterior: Weighed,
    found: Sequence[Prospect],
) -> Case:
    first, second, *_ = [*ranked(posterior.years), None]
    if not any(each.bits >= WORTHWHILE for each in found):
        # Nothing left would test the claim; the year may still be worth looking for.
        found = whatever_is_claimed(tables, found)
    return Case(tables, items, posterior, tuple(found), first, second)


def _common(told: Case, said: Claim | None) -> Verdict:
    """What one object and a set have in common."""
    tables, items, posterior = told.tables, told.items, told.posterior
    months = _months(tables, posterior)
    return Verdict(
        guide=tables.guide.id,
        model_years=year_shares(tables, posterior),
        outside=posterior.outside,
        built=months,
        replaced=(),
        log_evidence=posterior.log_evidence,
        leading=leading(tables, posterior, told.first),
        say=answer(tables, items, posterior, told.found),
        runner_up=runner_up(told),
        built_say=built(months) if is_read(items) else "",
        weights=(),
        claim=claim(tables, items, posterior, said) if said else None,
        flags=(),
        next=tuple(advice(tables, items, posterior, each) for each in told.found),
        exhausted=exhausted(told),
    )


def _one(told: Case, posterior: Posterior, verdict: Verdict) -> Verdict:
    """The verdict with what belongs to one object alone."""
    tables, [item] = told.tables, told.items
    best = lead(tables, posterior.years)
    return replace(
        verdict,
        replaced=part_states(tables, item, posterior),
        weights=weights(tables, item, posterior, best),
        flags=flags(tables, item, posterior, conflicts(tables, item), verdict.claim),
        range=ends(tables, item, posterior),
    )


def _months(tables: Tables, posterior: Weighed) -> Shares:
    """When it was built; a guide that brackets says no more of that than its range."""
    return () if brackets(tables.guide) else month_shares(tables, posterior.cells)
