"""What an audit found, as plain records: of all of it, or of what was done so far."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fieldid.audit.figures import Figures, Share, figures, share
from fieldid.audit.run import Run
from fieldid.audit.shares import DOWN, UP, Handle
from fieldid.audit.walked import Walked
from fieldid.audit.worlds import WORLDS
from fieldid.engine import Tables
from fieldid.engine.gain import WORTHWHILE
from fieldid.engine.guide import Choice, Span
from fieldid.engine.range import brackets
from fieldid.engine.special import round9
from fieldid.engine.words import month

TOP = 10
"""So many shares and confusions are named."""
SECONDS = (15, 30, 45, 60, 90, 120, 180, 300)
"""After so many it is said how many verdicts there are."""
NONE_OF_THESE = "none of these"


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A world that is not as the guide says, and how its verdicts go there."""

    name: str
    say: str
    figures: Figures


@dataclass(frozen=True, slots=True)
class Confused:
    """Specimens of one year that were told as another: so many of the year's."""

    year: str
    told: str
    times: Share


@dataclass(frozen=True, slots=True)
class Asked:
    """A clue, in how many walks it was asked, and the most bits that it ever promised.

    `worth` is whether that was ever enough for a look.
    """

    clue: str
    name: str
    times: Share
    bits: float
    worth: bool


@dataclass(frozen=True, slots=True)
class Shaken:
    """A share with its odds four times as large and as small: the mean change of the
    probability of what was told, over all verdicts judged again, and how many of them
    then tell something else, at most.
    """

    clue: str
    name: str
    option: str
    label: str
    span: str
    share: float
    raised: float
    lowered: float
    others: int


@dataclass(frozen=True, slots=True)
class Audit:
    """All of it. `own` is none if not one specimen was walked; `whole` says whether all
    was done. A guide that brackets has no `matrix`, whose rows are years and last what
    is none of these, and whose columns are what was told; it has `width`, the years
    that a range holds in the middle.
    """

    guide: str
    title: str
    brackets: bool
    specimens: int
    seed: int
    whole: bool
    own: Figures | None
    elsewhere: tuple[Elsewhere, ...]
    names: tuple[str, ...]
    matrix: tuple[tuple[float, ...], ...]
    confused: tuple[Confused, ...]
    width: float | None
    within: tuple[tuple[int, float], ...]
    asked: tuple[Asked, ...]
    judged: int
    shaken: tuple[Shaken, ...]


def report(run: Run) -> Audit:
    """What the run found so far."""
    tables, walks = run.tables, run.walks[0]
    ranges = brackets(tables.guide)
    return Audit(
        guide=tables.guide.id,
        title=tables.guide.title,
        brackets=ranges,
        specimens=run.specimens,
        seed=run.seed,
        whole=run.whole,
        own=figures(walks) if walks else None,
        elsewhere=tuple(_elsewhere(run)),
        names=_names(tables),
        matrix=() if ranges else _matrix(tables, walks),
        confused=() if ranges else tuple(_confused(tables, walks)),
        width=_width(walks) if ranges and walks else None,
        within=() if ranges or not walks else tuple(_within(walks)),
        asked=tuple(_asked(tables, walks)) if walks else (),
        judged=run.judged,
        shaken=tuple(_shaken(run)),
    )


def _elsewhere(run: Run) -> Iterator[Elsewhere]:
    for world, walks in zip(WORLDS[1:], run.walks[1:], strict=True):
        if walks:
            yield Elsewhere(world.name, world.say, figures(walks))


def _names(tables: Tables) -> tuple[str, ...]:
    return (*(str(year.year) for year in tables.guide.years), NONE_OF_THESE)


def _matrix(tables: Tables, walks: Sequence[Walked]) -> tuple[tuple[float, ...], ...]:
    """For each year a row: the share of its specimens that was told as each."""
    found = Counter((each.year, each.told[0]) for each in walks)
    each_year = Counter(each.year for each in walks)
    places = range(len(_names(tables)))
    return tuple(
        tuple(found[y, z] / max(each_year[y], 1) for z in places) for y in places
    )


def _confused(tables: Tables, walks: Sequence[Walked]) -> Iterator[Confused]:
    """The most frequent first; ties in the guide's order."""
    names = _names(tables)
    each_year = Counter(each.year for each in walks)
    found = Counter((each.year, each.told[0]) for each in walks if not each.right)
    for (year, told), count in sorted(
        found.items(), key=lambda pair: (-pair[1], pair[0])
    )[:TOP]:
        yield Confused(names[year], names[told], share(count, each_year[year]))


def _width(walks: Sequence[Walked]) -> float:
    widths = sorted(each.told[1] - each.told[0] + 1 for each in walks)
    return widths[(len(widths) - 1) // 2]


def _within(walks: Sequence[Walked]) -> Iterator[tuple[int, float]]:
    for seconds in SECONDS:
        told = sum(each.sure and each.seconds <= seconds for each in walks)
        yield seconds, told / len(walks)


def _asked(tables: Tables, walks: Sequence[Walked]) -> Iterator[Asked]:
    """The clues, in guide order."""
    times = Counter(clue for each in walks for clue, _ in each.item.readings)
    for k, clue in enumerate(tables.guide.clues):
        bits = max(each.bits[k] for each in walks)
        asked = share(times[clue.id], len(walks))
        yield Asked(clue.id, clue.name, asked, bits, bits >= WORTHWHILE)


def _shaken(run: Run) -> Iterator[Shaken]:
    """The shares that move verdicts most, by the way that moves more."""
    if not run.judged:
        return
    found = [_one(run, handle) for handle, factor in run.moves if factor == UP]
    most = sorted(found, key=lambda each: -round9(max(each.raised, each.lowered)))
    yield from (each for each in most[:TOP] if max(each.raised, each.lowered) > 0)


def _one(run: Run, handle: Handle) -> Shaken:
    clue = run.tables.guide.clues[handle.k]
    assert isinstance(clue.kind, Choice)
    option = clue.kind.options[handle.o]
    span = option.seen[handle.s]
    up, down = run.moves[handle, UP], run.moves[handle, DOWN]
    return Shaken(
        clue=clue.id,
        name=clue.name,
        option=option.id,
        label=option.label,
        span=spelled(span),
        share=span.share,
        raised=up.change / run.judged,
        lowered=down.change / run.judged,
        others=max(up.others, down.others),
    )


def spelled(span: Span) -> str:
    """When a span counts, in words.

    >>> spelled(Span((1954, 1957), until=12 * 1957 + 2))
    '1954 to 1957, until March 1957'
    """
    found = []
    if span.years:
        first, last = span.years
        found.append(f"{first}" if first == last else f"{first} to {last}")
    if span.since is not None:
        found.append(f"from {month(span.since)}")
    if span.until is not None:
        found.append(f"until {month(span.until)}")
    if span.members:
        found.append(f"{' '.join(span.members)} alone")
    if span.excluded:
        found.append(f"not {' '.join(span.excluded)}")
    return ", ".join(found) or "always"
