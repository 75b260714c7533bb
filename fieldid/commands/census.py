"""`fieldid census`: what confirmed specimens say of a guide's shares, and their counts
written into the guide.
"""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from fieldid.census.accept import accept, chosen, overruled
from fieldid.census.propose import Proposal
from fieldid.census.read import beside, load
from fieldid.census.telling import (
    Told,
    as_json,
    counted_say,
    expects_say,
    named,
    passes_say,
    tell,
    unforeseen_say,
    verdict_say,
    when,
)
from fieldid.commands.shelf import path_of
from fieldid.engine.guide import Guide
from fieldid.errors import UsageError
from fieldid.guides import load as guides
from fieldid.guides.document import opened


@dataclass(frozen=True, slots=True)
class Wishes:
    """What to print, and which proposals to write into the guide, on which day."""

    on: date
    as_json: bool = False
    accept: tuple[str, ...] = ()
    accept_all: bool = False


def census(name: str, file: Path | None, wishes: Wishes) -> None:
    """Prints what the census of a guide says; writes what is accepted."""
    path = path_of(name)
    # Opened first, so that a change while the census is worked out is noticed.
    document = opened(path)
    guide = guides.load(path)
    told = tell(guide, load(file or beside(path), guide))
    taken = _taken(told, wishes)
    if wishes.as_json:
        print(json.dumps(as_json(told), ensure_ascii=False))
    else:
        print("\n".join(story(guide, told)))
    if taken:
        count = len(told.census.specimens)
        made = accept(document, guide, taken, specimens=count, on=wishes.on)
        if not wishes.as_json:
            print("\n".join(_written(path, made, taken)))


def story(guide: Guide, told: Told) -> Iterator[str]:
    """The whole of it, line by line."""
    specimens = told.census.specimens
    known = sum(len(each.years) == 1 for each in specimens)
    yield guide.title + (" (invented)" if guide.fiction else "")
    yield f"{told.census.file}: {len(specimens)} specimens, {known} of a known year."
    yield passes_say(told)
    agree = [each for each in told.proposals if each.agrees]
    disagree = [each for each in told.proposals if not each.agrees]
    if disagree:
        yield "\nDisagreements, the strongest first"
        for each in disagree:
            yield from _told(guide, each)
    if agree:
        yield "\nAgree"
        for each in agree:
            yield f"  {each.name}: {counted_say(each)}; {expects_say(each)}"
    if told.unforeseen:
        yield "\nSeen where the guide has no span of it"
        for other in told.unforeseen:
            yield f"  {other.clue}.{other.option}: {unforeseen_say(other)}"


def _told(guide: Guide, each: Proposal) -> Iterator[str]:
    _, option = named(guide, each)
    yield f"  {each.name} ({option.label}; {when(option.seen[each.span])})"
    yield f"    {counted_say(each)}; {expects_say(each)}; {verdict_say(each)}"


def _taken(told: Told, wishes: Wishes) -> tuple[Proposal, ...]:
    if wishes.accept_all and wishes.accept:
        raise UsageError("--accept-all takes all that disagree; leave out --accept")
    if wishes.accept_all:
        return tuple(each for each in told.proposals if not each.agrees)
    return chosen(told.proposals, wishes.accept)


def _written(path: Path, guide: Guide, taken: Sequence[Proposal]) -> Iterator[str]:
    yield f"\n{path}: written"
    for each in taken:
        yield f'  {each.name}: share = "{each.count}"'
    for each in overruled(guide, taken):
        yield (
            f"  {each.name} counts no longer: another span of this option covers its "
            "years with a larger share; shorten that one"
        )
