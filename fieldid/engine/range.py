"""A guide that brackets: its answer is a range of model years, and its two ends are
set by readings.

Model page: "Ranges".
"""

from collections.abc import Sequence

from fieldid.engine.claim import Weighed, alone
from fieldid.engine.find import Item, Range
from fieldid.engine.guide import Guide
from fieldid.engine.one import Posterior, ranked, read
from fieldid.engine.prepare import Tables
from fieldid.engine.special import Vector, round9
from fieldid.engine.typical import told
from fieldid.engine.words import listed

FAINT = 0.1
"""A year is outside the range from this share of the likeliest year down."""
HARD = 0.05
"""An end is hard if the year beyond it has less than this share of the likeliest."""
NEAR = 3
"""An end so many years beyond those of all readings is set by none of them."""

Run = tuple[int, int]
"""The first and the last of some model years, by place."""
Own = Sequence[tuple[str, Vector]]
"""Each reading in words, and the probability of each year by it alone."""


def brackets(guide: Guide) -> bool:
    """Whether the guide's answer is a range."""
    return guide.verdict == "range"


def lead(tables: Tables, years: Vector) -> Run:
    """The years that lead: the likeliest one, or the range."""
    first = ranked(years)[0]
    return run(years) if brackets(tables.guide) else (first, first)


def run(years: Vector) -> Run:
    """From the first to the last year that is more than a tenth as probable as the
    likeliest.

    >>> run([0.0, 0.04, 0.5, 0.06, 0.4, 0.0])
    (2, 4)
    """
    most = max(years)
    inside = [y for y, p in enumerate(years) if round9(p) > round9(FAINT * most)]
    return (inside[0], inside[-1]) if inside else (0, len(years) - 1)


def named(guide: Guide, found: Run) -> str:
    """The years in words; an end that is the guide's own is open."""
    first, last = (guide.years[y].year for y in found)
    early, late = found[0] == 0, found[1] == len(guide.years) - 1
    if found[0] == found[1]:
        return f"{first}"
    if early and late:
        return f"any year from {first} to {last}"
    if late:
        return f"{first} or later"
    return f"{last} or earlier" if early else f"{first} to {last}"


def ends(tables: Tables, item: Item, posterior: Posterior) -> Range | None:
    """The range, how probable it is, and which readings set its ends; None if the
    guide's answer is a year.
    """
    guide = tables.guide
    if not brackets(guide):
        return None
    found = run(posterior.years)
    own = _own(tables, item)
    return Range(
        guide.years[found[0]].year,
        guide.years[found[1]].year,
        covered(posterior, found),
        named(guide, found),
        _start(guide, own, found[0]),
        _stop(guide, own, found[1]),
    )


def covered(posterior: Weighed, found: Run) -> float:
    """How probable it is that the object is of one of the years."""
    return sum(posterior.years[found[0] : found[1] + 1])


def decades(
    model_years: Sequence[tuple[int, float]],
) -> tuple[tuple[str, float], ...]:
    """The probability of each decade, under its name.

    >>> decades([(1959, 0.25), (1960, 0.5), (1961, 0.25)])
    (('1950s', 0.25), ('1960s', 0.75))
    """
    found: dict[str, float] = {}
    for year, p in model_years:
        name = f"{year // 10}0s"
        found[name] = found.get(name, 0.0) + p
    return tuple(found.items())


def meet(one: Run, other: Run) -> bool:
    """Whether two runs have a year in common."""
    return one[0] <= other[1] and other[0] <= one[1]


def own_run(tables: Tables, item: Item, k: int) -> Run:
    """The range by the reading of the clue at place `k` alone."""
    return run(alone(tables, item, tables.guide.clues[k].id).years)


def _own(tables: Tables, item: Item) -> Own:
    readings = dict(item.readings)
    clues = [tables.guide.clues[k] for k in read(tables, item)]
    return [
        (f"the {told(clue, readings[clue.id])}", alone(tables, item, clue.id).years)
        for clue in clues
    ]


def _start(guide: Guide, own: Own, since: int) -> str:
    """What sets the start: the latest of the starts that lie there or just before."""
    starts = [run(years)[0] for _, years in own]
    latest = max((y for y in starts if since - NEAR <= y <= since), default=0)
    if latest == 0:
        return ""
    by = [each for each, y in zip(own, starts, strict=True) if y == latest]
    return f"{_hardness(by, latest - 1)} before {guide.years[since].year}: {_by(by)}."


def _stop(guide: Guide, own: Own, until: int) -> str:
    """What sets the end: the earliest of the ends that lie there or just behind."""
    last = len(guide.years) - 1
    stops = [run(years)[1] for _, years in own]
    earliest = min((y for y in stops if until <= y <= until + NEAR), default=last)
    if earliest == last:
        return ""
    by = [each for each, y in zip(own, stops, strict=True) if y == earliest]
    return f"{_hardness(by, earliest + 1)} after {guide.years[until].year}: {_by(by)}."


def _hardness(by: Own, beyond: int) -> str:
    """How surely the year beyond an end is ruled out by one of its readings."""
    least = min(round9(years[beyond] / max(years)) for _, years in by)
    return "Not" if least < HARD else "Hardly"


def _by(by: Own) -> str:
    return listed([what for what, _ in by])
