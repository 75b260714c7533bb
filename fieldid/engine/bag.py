"""The verdict on a set: its members alone and together, and what became of the whole.

Model page: "A set"; the arithmetic is in `sets`.
"""

from dataclasses import replace

from fieldid.engine.claim import factor, odds
from fieldid.engine.find import Item, MemberVerdict, PartState, Verdict
from fieldid.engine.members import missing, set_say, surplus
from fieldid.engine.one import ranked, weigh
from fieldid.engine.prepare import Tables
from fieldid.engine.reasons import conflicts
from fieldid.engine.saying import (
    SEEN_ONCE,
    UNSEEN,
    Case,
    answer,
    leading,
    looked_on,
    part_states,
    year_shares,
)
from fieldid.engine.setflags import Apart, at_once, set_flags
from fieldid.engine.sets import SetPosterior
from fieldid.engine.strays import stray_say
from fieldid.engine.words import (
    called,
    evidence,
    likely,
    percent,
    tells_nothing,
    times,
)


def bag(told: Case, whole: SetPosterior, verdict: Verdict) -> Verdict:
    """The verdict with what belongs to a set alone."""
    guide, items = told.tables.guide, told.items
    apart = [_apart(told.tables, item) for item in items]
    return replace(
        verdict,
        flags=set_flags(told, whole, apart, verdict.claim),
        whole_set=_whole_set(told, whole),
        members=tuple(_member(told, whole, i, each) for i, each in enumerate(apart)),
        missing=missing(guide, items),
        surplus=surplus(guide, items),
        set_say=set_say(guide, items),
    )


def _apart(tables: Tables, item: Item) -> Apart:
    """What follows from one item, whatever the others are."""
    return weigh(tables, item), conflicts(tables, item)


def _member(told: Case, whole: SetPosterior, i: int, apart: Apart) -> MemberVerdict:
    tables, item, (own, _) = told.tables, told.items[i], apart
    first = ranked(own.years)[0]
    weighed = factor(tables, whole, told.first) / odds(
        tables, whole.without[i], (told.first, told.first)
    )
    return MemberVerdict(
        member=str(item.member),
        model_years=year_shares(tables, own),
        outside=own.outside,
        replaced=part_states(tables, item, own),
        leading=leading(tables, own, first),
        say=answer(
            tables, [item], own, [each for each in told.found if each.item == i]
        ),
        stray=whole.stray[i],
        stray_say=stray_say(told, whole, i),
        factor=weighed,
        factor_say=_factor_say(told, str(item.member), weighed),
    )


def _factor_say(told: Case, member: str, weighed: float) -> str:
    guide = told.tables.guide
    name, year = called(guide, member), guide.years[told.first].year
    if tells_nothing(weighed):
        return f"The {name}: next to nothing about {year}."
    return f"The {name}: {evidence(weighed, year)}, {times(weighed)}."


def _whole_set(told: Case, whole: SetPosterior) -> tuple[PartState, ...]:
    """The parts that can be replaced on a whole set at once, in guide order."""
    tables, shares = told.tables, whole.whole_set
    said = at_once(told, whole)
    return tuple(
        PartState(
            part.id,
            shares[p],
            _at_once(shares[p], said[p], looked_on(tables, told.items, p)),
        )
        for p, part in enumerate(tables.guide.parts)
        if any(world.whole[p] for world in tables.worlds)
    )


def _at_once(share: float, said: bool, looked: int) -> str:
    if said:
        return f"replaced on the whole set: {likely(share)}, {percent(share)}"
    if looked < 2:
        return SEEN_ONCE if looked else UNSEEN
    kept = 1 - share
    return f"not replaced on the whole set: {likely(kept)}, {percent(kept)}"
