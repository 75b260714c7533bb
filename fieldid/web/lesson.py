"""What a guide teaches, ready for its page: charts with their figures beside them.

Bars and bands have no letters and stretch in the cells of a table, so their words stay
text of the page; the matrix and the curve have their figures as a table beside them. A
guide that brackets has neither: of its marks an object has a few, and nobody reads all.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fieldid.draw import charts
from fieldid.draw.nodes import Node
from fieldid.engine import Tables
from fieldid.engine.guide import Clue, Guide, Measure, ModelYear, Part
from fieldid.engine.range import brackets
from fieldid.engine.words import (
    BARELY,
    FACTORS,
    figure,
    listed,
    month,
    percent,
    strength,
    times,
)
from fieldid.learn.myths import Told, myths
from fieldid.learn.seen import Change, Seen, changes, seen, sizes
from fieldid.learn.worth import Worth, once_known, quickest, whole, worths
from fieldid.web.marks import Mark, Row, rows
from fieldid.web.prepared import tables_of
from fieldid.web.shares import runs, share
from fieldid.web.sure import Sure, sure

NEARLY_ALL = 0.95
FIRST = 3
"""So many clues are named for when time is short."""
TENTH = 0.095
NONE = 0.005
"""Fewer bits than this are written as 0.00."""


@dataclass(frozen=True, slots=True)
class Bar:
    """A clue with its bits, and its bits a minute, each with a bar."""

    clue: Clue
    bits: str
    bits_bar: Node
    minute: str
    minute_bar: Node


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
class Answer:
    """An answer, a band of the years in which it was made, and these in figures."""

    mark: Mark
    band: Node | None
    made: str


@dataclass(frozen=True, slots=True)
class ClueLesson:
    """A clue with what it tells, alone and when."""

    row: Row
    tells: str
    answers: tuple[Answer, ...]


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
    lines: Node
    lines_say: str
    bars: tuple[Bar, ...]
    bits_say: str
    nothing: tuple[Said, ...]
    weak: tuple[Said, ...]
    humble: tuple[Said, ...]
    words_say: str
    sure: Sure | None
    years: tuple[YearLesson, ...]
    clues: tuple[ClueLesson, ...]

    @property
    def sources(self) -> bool:
        """Whether any clue names a source of its own."""
        return any(each.row.clue.source for each in self.clues)


# The simulation takes seconds, and a page may be looked at again.
@lru_cache(maxsize=64)
def lesson(guide: Guide) -> Lesson:
    """What the guide's page shows."""
    tables = tables_of(guide)
    told, named = worths(tables), myths(tables)
    years = [year.year for year in guide.years]
    return Lesson(
        parts=tuple(_part(guide, part) for part in guide.parts),
        lines=charts.lines(years),
        lines_say=_lines_say(years),
        bars=tuple(_bars(told)),
        bits_say=_bits_say(tables),
        nothing=tuple(
            Said(worth.clue, _nothing_say(tables, worth.clue))
            for worth in told
            if worth.bits < NONE
        ),
        weak=tuple(_said(tables, each) for each in named.weak),
        humble=tuple(_said(tables, each) for each in named.humble),
        words_say=_words_say((*named.weak, *named.humble)),
        sure=None if brackets(guide) else sure(tables, quickest(tables)[0]),
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


def _lines_say(years: Sequence[int]) -> str:
    step = charts.apart(years)
    every = "a line a year" if step == 1 else f"a line every {step} years"
    return f"The pictures run from {years[0]} to {years[-1]}, with {every}."


def _bars(told: Sequence[Worth]) -> Iterator[Bar]:
    """The clues, the one that tells most first."""
    bits = max((worth.bits for worth in told), default=0.0) or 1.0
    minute = max((worth.per_minute for worth in told), default=0.0) or 1.0
    for worth in told:
        yield Bar(
            worth.clue,
            f"{worth.bits:.2f}",
            charts.bar(worth.bits / bits),
            f"{worth.per_minute:.1f}",
            charts.bar(worth.per_minute / minute),
        )


def _bits_say(tables: Tables) -> str:
    first = listed([clue.name for clue in quickest(tables)[:FIRST]])
    return (
        f"To tell {len(tables.guide.years)} years apart, and what is none of them, "
        f"takes {whole(tables):.1f} bits; each bit halves the doubt. The figures are "
        f"averages, with replaced parts and mistakes in them. When time is short look "
        f"at these first: {first}."
    )


def _bits(bits: float) -> str:
    """As short as tells it from nothing.

    >>> _bits(1.26), _bits(0.04)
    ('1.3', '0.04')
    """
    return f"{bits:.1f}" if bits >= TENTH else f"{bits:.2f}"


def _nothing_say(tables: Tables, clue: Clue) -> str:
    """Why a clue is worth 0.00 bits."""
    later = once_known(tables, clue)
    if later >= NONE:
        return (
            "0.00 as long as it is not known which piece of the set it is, since "
            f"each has its own; then up to {later:.2f} bits."
        )
    return (
        "0.00, since all years show much the same; it is here for what else it "
        "tells, such as whether its part is the first one."
    )


def _said(tables: Tables, told: Told) -> Said:
    """What the clue tells on average, and what it can say at best."""
    say = f"{_bits(told.worth.bits)} of {whole(tables):.1f} bits on average."
    if told.most is not None:
        best = (
            "No answer to it favours any year."
            if told.most == 1
            else "The answer that tells most raises the odds of its year "
            f"{times(told.most)}: {_evidence(told.most)}."
        )
        say = f"{say} {best}"
    return Said(told.worth.clue, say)


def _evidence(factor: float) -> str:
    """
    >>> _evidence(2.1), _evidence(30.0)
    ('evidence barely worth a mention', 'strong evidence')
    """
    word = strength(factor)
    return f"evidence {word}" if word == BARELY else f"{word} evidence"


def _words_say(told: Sequence[Told]) -> str:
    """What the words for evidence mean, if any of them is used."""
    if not any(each.most is not None and each.most > 1 for each in told):
        return ""
    (strongest, most), (great, much), (some, few) = FACTORS
    return (
        "How many times an answer raises the odds has a word, after Kass and Raftery "
        f"(1995): up to {figure(some)} times {BARELY}, up to {figure(great)} {few}, "
        f"up to {figure(strongest)} {much}, and more than that {most}."
    )


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
        f"{each.option.label} (on {share(each.shares[y])}, "
        f"before on {share(each.shares[y - 1])})"
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
            say = f"{figure(now)}\u00a0{unit} (before {figure(before)}\u00a0{unit})"
            yield Turn(clue, say, "", "")


def _new_say(found: Seen, part: float) -> str:
    """What is new, with its share where it is not nearly all."""
    label = found.option.label
    return label if part >= NEARLY_ALL else f"{label} (on {share(part)})"


def _clue(tables: Tables, row: Row, told: Sequence[Worth]) -> ClueLesson:
    worth = next(each for each in told if each.clue.id == row.clue.id)
    tells = (
        f"Tells {_bits(worth.bits)} of {whole(tables):.1f} bits on average, in "
        f"{figure(row.clue.seconds)} seconds."
        if worth.bits >= NONE
        else _nothing_say(tables, row.clue)
    )
    return ClueLesson(row, tells, tuple(_answers(tables, row)))


def _answers(tables: Tables, row: Row) -> Iterator[Answer]:
    """The answers of a choice, with bands where the guide says when any was made."""
    years = [year.year for year in tables.guide.years]
    known = seen(tables, row.clue)
    dated = any(any(each.shares) for each in known)
    for mark, each in zip(row.marks, known, strict=True):
        made = ", ".join(runs(years, each.shares))
        yield Answer(mark, charts.band(each.shares) if dated else None, made)
