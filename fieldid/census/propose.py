"""Counts a span, beside what its author wrote: what a census proposes.

Which specimens count for a span of an option: those on which the clue was read (not
"can't tell"), each by the probability that its part is original and that it was built
in a cell where that span is the one that counts for the option and its member (of
several that cover the cell the one with the largest share, as in the engine) and holds
in full. A specimen whose member is not known counts for no span with `members`. They
are looked at; those seen are the ones that truly show the option, misreadings allowed
for. Months in which a span fades count for none, so what is proposed for a span that
fades is its share in its own months, and never how long it fades.

Not proposed: a span in which no specimen was looked at; new spans (what was seen where
the guide has none is told as unforeseen); spans' years and months; sizes, codes and
numbers; how often parts are replaced.
"""

from dataclasses import dataclass

from fieldid.census.interval import against, estimate, interval
from fieldid.census.learn import Counted, Learned
from fieldid.census.stretches import full
from fieldid.engine.guide import Choice, Clue, Option, Span
from fieldid.engine.prepare import Tables
from fieldid.engine.special import round9

FEW = 0.5
"""A specimen that is less probably in a span is not named among those in it."""
ONCE = 1.5
"""What was seen but once where nothing was foreseen may be a slip."""


@dataclass(frozen=True, slots=True)
class Proposal:
    """A span's count beside its share: `seen` of `looked` at, weighted, by `specimens`.

    `expects` is what the guide expects of the same specimens, by the shares of all
    options together. `count` is the share as it would be written, in whole specimens,
    and `proposed` its number. The factor says how strongly the count speaks against
    what the guide expects; it agrees where that lies in the interval.
    """

    clue: str
    option: str
    span: int
    share: float
    expects: float
    seen: float
    looked: float
    specimens: int
    count: str
    proposed: float
    low: float
    high: float
    factor: float
    agrees: bool

    @property
    def name(self) -> str:
        """What the command and the page call it: clue, option and the span's place."""
        return f"{self.clue}.{self.option}.{self.span + 1}"


@dataclass(frozen=True, slots=True)
class Unforeseen:
    """An option that was seen on original parts where the guide has no span of it."""

    clue: str
    option: str
    seen: float
    looked: float
    years: tuple[int, ...]


def proposals(tables: Tables, learned: Learned) -> tuple[Proposal, ...]:
    """All spans in which specimens were looked at: first those that do not agree, the
    strongest first; then those that do.
    """
    found = [
        made
        for k, clue in enumerate(tables.guide.clues)
        if isinstance(clue.kind, Choice)
        for o, option in enumerate(clue.kind.options)
        for s, span in enumerate(option.seen)
        if (made := _proposal(tables, learned, (k, o, s), (clue, option, span)))
    ]
    return tuple(sorted(found, key=lambda each: (each.agrees, -round9(each.factor))))


def unforeseen(tables: Tables, learned: Learned) -> tuple[Unforeseen, ...]:
    """What was seen where no span of it counts, the most often seen first."""
    found = [
        told
        for k, clue in enumerate(tables.guide.clues)
        if isinstance(clue.kind, Choice)
        for o, option in enumerate(clue.kind.options)
        if (told := _unforeseen(tables, learned, (k, o), (clue, option)))
    ]
    return tuple(sorted(found, key=lambda each: -round9(each.seen)))


def _proposal(
    tables: Tables,
    learned: Learned,
    places: tuple[int, int, int],
    named: tuple[Clue, Option, Span],
) -> Proposal | None:
    (k, o, s), (clue, option, span) = places, named
    seen = looked = expects = 0.0
    specimens: dict[int, float] = {}
    for each in learned.counted:
        if each.k == k and _counts_for(tables, learned, each, (o, s)):
            looked += each.looked
            seen += each.looked * each.shown[o]
            expects += each.looked * learned.found.guide[each.stretch][o]
            specimens[each.i] = specimens.get(each.i, 0.0) + each.looked
    n = _whole(looked)
    if n == 0:
        return None
    share = expects / looked
    # The last digits of sums may put it a little outside.
    seen = min(seen, looked)
    low, high = interval(seen, looked)
    whole = min(_whole(seen), n)
    return Proposal(
        clue.id,
        option.id,
        s,
        span.share,
        share,
        seen,
        looked,
        sum(p >= FEW for p in specimens.values()),
        f"{whole}/{n}",
        estimate(whole, n),
        low,
        high,
        against(seen, looked, share),
        low <= share <= high,
    )


def _unforeseen(
    tables: Tables,
    learned: Learned,
    places: tuple[int, int],
    named: tuple[Clue, Option],
) -> Unforeseen | None:
    (k, o), (clue, option) = places, named
    seen = looked = 0.0
    years: dict[int, float] = {}
    for each in learned.counted:
        ruling = learned.found.rulings[each.stretch]
        # Where nothing at all is said of the clue, nothing was to be foreseen.
        if each.k == k and ruling[o] is None and any(s is not None for s in ruling):
            year = tables.cells[each.cell].year
            looked += each.looked
            seen += each.looked * each.shown[o]
            years[year] = years.get(year, 0.0) + each.looked * each.shown[o]
    # An option that never left the works is on no original part, whatever was read.
    if seen < ONCE or not option.seen:
        return None
    told = tuple(year for year, often in sorted(years.items()) if often >= FEW)
    return Unforeseen(clue.id, option.id, seen, looked, told)


def _counts_for(
    tables: Tables, learned: Learned, each: Counted, places: tuple[int, int]
) -> bool:
    """Whether the span is the one that counts for its option there, and in full."""
    o, s = places
    if learned.found.rulings[each.stretch][o] != s:
        return False
    kind = tables.guide.clues[each.k].kind
    assert isinstance(kind, Choice)
    return full(kind.options[o].seen[s], tables.cells[each.cell])


def _whole(count: float) -> int:
    """A count in whole specimens, as a guide takes it."""
    return int(count + 0.5)
