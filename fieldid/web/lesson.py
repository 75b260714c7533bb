"""What a guide teaches, ready for its page: charts, and each as a table beside it."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fieldid.draw import charts
from fieldid.draw.nodes import Node
from fieldid.engine import Tables
from fieldid.engine.guide import Clue, Guide, Measure, ModelYear, Part
from fieldid.engine.range import brackets
from fieldid.engine.words import (
    capital,
    figure,
    listed,
    month,
    percent,
    strength,
    times,
)
from fieldid.learn.myths import Told, myths
from fieldid.learn.seen import Change, Seen, changes, seen, sizes
from fieldid.learn.simulate import EACH, WALKS, Sureness, mistaken, sureness
from fieldid.learn.worth import Worth, whole, worths
from fieldid.web.marks import Row, rows
from fieldid.web.prepared import tables_of

ALIKE = 0.1
"""Two years are named as hard to tell apart from this share on."""
NEARLY_ALL = 0.95
USUAL = 3
"""So many looks are named beside the curve: what one does in a hurry."""


@dataclass(frozen=True, slots=True)
class Chart:
    """A picture and its numbers: heads of columns, and rows that begin with theirs."""

    drawn: Node
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class PartLesson:
    """A part, the places on it that the clues are at, and how often it is replaced."""

    part: Part
    spots: tuple[str, ...]
    clues: tuple[Clue, ...]
    say: str


@dataclass(frozen=True, slots=True)
class Turn:
    """What a clue shows from a model year on, what it shows more often and what no
    more, in words.
    """

    clue: Clue
    new: str
    more: str
    gone: str


@dataclass(frozen=True, slots=True)
class YearLesson:
    """A model year, when it was built, and what changed."""

    year: ModelYear
    built: str
    turns: tuple[Turn, ...]


@dataclass(frozen=True, slots=True)
class ClueLesson:
    """A clue with what it tells, alone and when."""

    row: Row
    tells: str
    chart: Chart | None


@dataclass(frozen=True, slots=True)
class Sure:
    """How sure one gets with every look, and which years stay alike."""

    curve: Chart
    curve_say: str
    matrix: Chart
    matrix_say: str


@dataclass(frozen=True, slots=True)
class Said:
    """A clue, and a sentence on what it is worth."""

    clue: Clue
    say: str


@dataclass(frozen=True, slots=True)
class Lesson:
    """All of it; `sure` is none for a guide that brackets, of whose marks an object has
    few.
    """

    parts: tuple[PartLesson, ...]
    bits: Chart
    bits_say: str
    minutes: Chart
    weak: tuple[Said, ...]
    humble: tuple[Said, ...]
    sure: Sure | None
    years: tuple[YearLesson, ...]
    clues: tuple[ClueLesson, ...]


# The simulation takes seconds, and the build prints each page twice to learn its hash.
@lru_cache(maxsize=64)
def lesson(guide: Guide) -> Lesson:
    """What the guide's page shows."""
    tables = tables_of(guide)
    told, named = worths(tables), myths(tables)
    return Lesson(
        parts=tuple(_part(guide, part) for part in guide.parts),
        bits=_bars(told, "bits", lambda worth: worth.bits),
        bits_say=_bits_say(tables),
        minutes=_bars(told, "bits a minute", lambda worth: worth.per_minute),
        weak=tuple(_said(tables, each) for each in named.weak),
        humble=tuple(_said(tables, each) for each in named.humble),
        sure=None if brackets(guide) else _sure(tables, _quickest(told)),
        years=tuple(_years(tables)),
        clues=tuple(_clue(tables, row, told) for row in rows(guide)),
    )


def _part(guide: Guide, part: Part) -> PartLesson:
    clues = tuple(clue for clue in guide.clues if clue.part == part.id)
    spots = tuple(dict.fromkeys(clue.spot for clue in clues if clue.spot))
    return PartLesson(part, spots, clues, _replaced_say(guide, part))


def _replaced_say(guide: Guide, part: Part) -> str:
    say = f"Replaced on {percent(part.replaced)} of them"
    if part.follows is None:
        return f"{say}."
    above = next(each.name for each in guide.parts if each.id == part.follows)
    return f"{say}, and on {percent(part.share)} where the {above} was replaced."


def _bars(told: Sequence[Worth], unit: str, of: Callable[[Worth], float]) -> Chart:
    """The clues by one of their figures, the greatest first."""
    ranked = sorted(told, key=lambda worth: -of(worth))
    figures = [f"{of(worth):.2f}" for worth in ranked]
    drawn = [
        (capital(worth.clue.name), of(worth), said)
        for worth, said in zip(ranked, figures, strict=True)
    ]
    return Chart(
        charts.bars(drawn),
        ("Clue", capital(unit)),
        tuple((name, said) for name, _, said in drawn),
    )


def _bits_say(tables: Tables) -> str:
    years = len(tables.guide.years)
    return (
        f"To tell {years} years apart, and what is none of them, takes "
        f"{whole(tables):.1f} bits; each bit halves the doubt."
    )


def _said(tables: Tables, told: Told) -> Said:
    """What the clue tells on average, and what it can say at best."""
    say = f"{told.worth.bits:.1f} of {whole(tables):.1f} bits on average."
    if told.most is not None:
        best = (
            "No answer to it favours any year."
            if told.most == 1
            else "The answer that tells most raises the odds of its year "
            f"{times(told.most)}: {strength(told.most)}."
        )
        say = f"{say} {best}"
    return Said(told.worth.clue, say)


def _quickest(told: Sequence[Worth]) -> Clue:
    """The clue that tells most a second while nothing is known."""
    return max(told, key=lambda worth: worth.per_minute).clue


def _sure(tables: Tables, first: Clue) -> Sure:
    steps, rows = sureness(tables), mistaken(tables)
    names = [str(year.year) for year in tables.guide.years]
    return Sure(
        _curve(steps),
        _curve_say(steps, first),
        Chart(
            charts.matrix(names, rows),
            ("Is of", *names),
            tuple(
                (name, *map(_share, row)) for name, row in zip(names, rows, strict=True)
            ),
        ),
        _matrix_say(names, rows),
    )


def _curve(steps: Sequence[Sureness]) -> Chart:
    return Chart(
        charts.curve([(str(step.looks), step.right) for step in steps]),
        ("Clues read", "Leading year is right", "It says so itself", "Seconds"),
        tuple(
            (
                str(step.looks),
                percent(step.right),
                percent(step.told),
                f"{step.seconds:.0f}",
            )
            for step in steps
        ),
    )


def _curve_say(steps: Sequence[Sureness], first: Clue) -> str:
    few, last = steps[min(USUAL, len(steps) - 1)], steps[-1]
    return (
        f"After the best {few.looks} clues, which take {few.seconds:.0f} seconds, the "
        f"leading year is right {percent(few.right)} of the time; after "
        f"{last.looks} clues and {last.seconds:.0f} seconds {percent(last.right)}. "
        f"Begin with the {first.name}; what tells most after it depends on what was "
        f"seen, and the app asks for that. "
        f"Counted on {WALKS} specimens drawn from this guide."
    )


def _matrix_say(names: Sequence[str], rows: Sequence[Sequence[float]]) -> str:
    """Pairs of years of which one takes much of the other's probability."""
    pairs = [
        (max(rows[i][k], rows[k][i]), f"{names[i]} and {names[k]}")
        for i in range(len(names))
        for k in range(i)
    ]
    alike = [pair for p, pair in sorted(pairs, reverse=True) if p >= ALIKE]
    counted = f"Counted on {EACH} specimens of each year, read whole."
    if not alike:
        return f"Read whole, no two years are hard to tell apart. {counted}"
    return f"Hardest to tell apart: {'; '.join(alike)}. {counted}"


def _years(tables: Tables) -> Iterator[YearLesson]:
    """The model years of which there is something to say."""
    for y, changed in enumerate(changes(tables)):
        year = tables.guide.years[y]
        turns = (*(_turn(change, y) for change in changed), *_resized(tables, y))
        if year.note or turns:
            built = f"{month(year.opens)} to {month(year.closes)}"
            yield YearLesson(year, built, turns)


def _turn(change: Change, y: int) -> Turn:
    new = [_new_say(each, each.shares[y]) for each in change.new]
    more = [
        f"{each.option.label} (on {_share(each.shares[y])}, "
        f"before on {_share(each.shares[y - 1])})"
        for each in change.more
    ]
    gone = [option.label for option in change.gone]
    return Turn(change.clue, listed(new), listed(more), listed(gone))


def _resized(tables: Tables, y: int) -> Iterator[Turn]:
    """The sizes that are not those of the year before."""
    for clue in tables.guide.clues:
        known = sizes(tables, clue)
        now, before = known[y], known[y - 1] if y else None
        if isinstance(clue.kind, Measure) and now and before and now != before:
            unit = clue.kind.unit
            say = f"{figure(now)} {unit} (before {figure(before)} {unit})"
            yield Turn(clue, say, "", "")


def _new_say(found: Seen, share: float) -> str:
    """What is new, with its share where it is not nearly all."""
    label = found.option.label
    return label if share >= NEARLY_ALL else f"{label} (on {_share(share)})"


def _clue(tables: Tables, row: Row, told: Sequence[Worth]) -> ClueLesson:
    worth = next(each for each in told if each.clue is row.clue)
    return ClueLesson(
        row,
        f"Tells {worth.bits:.1f} of {whole(tables):.1f} bits on average, in "
        f"{figure(row.clue.seconds)} seconds.",
        _spans(tables, seen(tables, row.clue)),
    )


def _spans(tables: Tables, found: Sequence[Seen]) -> Chart | None:
    if not any(any(each.shares) for each in found):
        return None
    years = [year.year for year in tables.guide.years]
    return Chart(
        charts.spans(years, [(each.option.label, each.shares) for each in found]),
        ("Year", *(capital(each.option.label) for each in found)),
        tuple(_span_rows(years, found)),
    )


def _span_rows(
    years: Sequence[int], found: Sequence[Seen]
) -> Iterator[tuple[str, ...]]:
    """A row a year; years in which all was the same are one."""
    cells = [tuple(_share(each.shares[y]) for each in found) for y in range(len(years))]
    start = 0
    for y in range(1, len(years) + 1):
        if y == len(years) or cells[y] != cells[start]:
            first, last = years[start], years[y - 1]
            name = str(first) if first == last else f"{first}-{last}"
            yield (name, *cells[start])
            start = y


def _share(share: float) -> str:
    """A share as a whole per cent; unlike a probability it may be none or all.

    >>> _share(0.0), _share(0.004), _share(0.85), _share(1.0)
    ('0', 'under 1 %', '85 %', '100 %')
    """
    if share == 0:
        return "0"
    return f"{100 * share:.0f} %" if share >= 0.005 else "under 1 %"
