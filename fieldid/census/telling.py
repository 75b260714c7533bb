"""A census in words and as JSON, for the command and for the page."""

from dataclasses import asdict, dataclass
from typing import Any

from fieldid.census.learn import Learned, learn
from fieldid.census.propose import Proposal, Unforeseen, proposals, unforeseen
from fieldid.census.specimens import Census
from fieldid.engine.guide import Choice, Clue, Guide, Option, Span
from fieldid.engine.prepare import prepare
from fieldid.engine.words import hundredth, strength, years
from fieldid.guides.months import month_text


@dataclass(frozen=True, slots=True)
class Told:
    """What a census comes to."""

    census: Census
    learned: Learned
    proposals: tuple[Proposal, ...]
    unforeseen: tuple[Unforeseen, ...]


def tell(guide: Guide, census: Census) -> Told:
    """Everything that a census says of its guide."""
    tables = prepare(guide)
    learned = learn(tables, census)
    return Told(
        census,
        learned,
        proposals(tables, learned),
        unforeseen(tables, learned),
    )


def as_json(told: Told) -> dict[str, Any]:
    """The same as a table for other programs; shares and counts are not rounded."""
    climbed = told.learned.climbed
    return {
        "guide": told.census.guide,
        "specimens": len(told.census.specimens),
        "passes": climbed.passes,
        "settled": climbed.settled,
        "heights": [climbed.heights[0], climbed.heights[-1]],
        "proposals": [{"name": p.name, **asdict(p)} for p in told.proposals],
        "unforeseen": [
            {**asdict(each), "years": list(each.years)} for each in told.unforeseen
        ],
    }


def passes_say(told: Told) -> str:
    """How the shares were found, in a sentence."""
    climbed = told.learned.climbed
    count = f"{climbed.passes} pass{'es' * (climbed.passes != 1)}"
    if climbed.settled:
        return f"The shares settled after {count}."
    return f"The shares have not settled after {count}; take the figures as rough."


def when(span: Span) -> str:
    """A span's years, months and members in words.

    >>> when(Span((1954, 1956), until=23473, fade=4, excluded=("W",)))
    '1954-1956, to 1956-02, not W'
    >>> when(Span())
    'at all times'
    """
    said = []
    if span.years:
        first, last = span.years
        said.append(str(first) if first == last else f"{first}-{last}")
    if span.since is not None:
        said.append(f"from {month_text(span.since)}")
    if span.until is not None:
        said.append(f"to {month_text(span.until)}")
    if span.members:
        said.append(f"only {', '.join(span.members)}")
    if span.excluded:
        said.append(f"not {', '.join(span.excluded)}")
    return ", ".join(said) or "at all times"


def counted_say(each: Proposal) -> str:
    """What was counted, in a phrase.

    >>> from fieldid.census.interval import interval
    >>> counted_say(Proposal("a", "b", 0, .5, .5, 3, 14, 14, "3/14", .2, .05, .45,
    ...             30.0, False))
    '3 of 14: between 5 % and 45 %'
    """
    k, n = each.count.split("/")
    return f"{k} of {n}: between {whole(each.low)} and {whole(each.high)}"


def expects_say(each: Proposal) -> str:
    """What the guide expects of the same specimens, in a phrase."""
    return f"the guide expects {whole(each.expects)}"


def verdict_say(each: Proposal) -> str:
    """Whether the count agrees with the guide, and how strongly it does not."""
    if each.agrees:
        return "agrees"
    # A factor below 1 speaks for the guide, though the interval leaves it out.
    return f"disagrees: {strength(max(each.factor, 1.0))}"


def unforeseen_say(each: Unforeseen) -> str:
    """Where an option was seen without a span of it, in a phrase."""
    count = int(each.seen + 0.5)
    told = years(each.years) or "in several years"
    return f"seen {count} time{'s' * (count != 1)} where no span of it holds: {told}"


def whole(share: float) -> str:
    """A share in whole per cents.

    >>> whole(0.0), whole(0.204), whole(1.0)
    ('0 %', '20 %', '100 %')
    """
    return f"{100 * hundredth(share):.0f} %"


def named(guide: Guide, each: Proposal | Unforeseen) -> tuple[Clue, Option]:
    """The clue and the option that it is about."""
    clue = next(clue for clue in guide.clues if clue.id == each.clue)
    assert isinstance(clue.kind, Choice)
    return clue, next(o for o in clue.kind.options if o.id == each.option)
