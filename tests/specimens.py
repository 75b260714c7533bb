"""Specimens drawn by lot from a guide's own model, and finds read off them.

What a part shows is worked out here a second time, from the records alone: a draw
that asked the engine for its likelihoods could not show that they are wrong.
"""

import random
from dataclasses import dataclass
from datetime import date, timedelta

from fieldid.engine.find import Item, Reading
from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Field,
    Guide,
    Layout,
    Measure,
    ModelYear,
    Number,
    Option,
    layouts,
)

LOOK_ALIKES = ("0OQDC", "1IL7T", "2Z", "5S", "6G", "8B3", "UVY", "MNWH", "4A")
LOOK_ALIKES += ("9GQ", "EF", "PR", "KX")

Cell = tuple[int, int] | None
"""Model year and build month; None for an object that is none of these."""


@dataclass(frozen=True, slots=True)
class Specimen:
    """An object as it is: `cell` and `replaced` are what nobody can see."""

    cell: Cell
    replaced: tuple[str, ...]
    readings: tuple[tuple[str, Reading], ...]
    member: str | None

    @property
    def year(self) -> int | None:
        return self.cell[0] if self.cell else None


def specimen(guide: Guide, dice: random.Random, member: str | None = None) -> Specimen:
    """An object with what its clues read, None where one cannot be told."""
    cell = None if dice.random() < guide.outside else cell_by_lot(guide, dice)
    replaced = replaced_by_lot(guide, dice)
    readings = []
    for clue in guide.clues:
        hidden = dice.random() < clue.unreadable
        reading = shown(guide, clue, cell, clue.part in replaced, member, dice)
        readings.append((clue.id, None if hidden else reading))
    return Specimen(cell, replaced, tuple(readings), member)


def look(
    guide: Guide, found: Specimen, dice: random.Random, *, seen: float, lost: float
) -> Item:
    """What somebody reads off a specimen: a share `seen` of the clues, in any order,
    and a share `lost` of the replaced parts gone.
    """
    gone = tuple(p for p in found.replaced if dice.random() < lost)
    on_gone = [clue.id for clue in guide.clues if clue.part in gone]
    readings = [
        (clue, _smudged(reading, dice) if clue in _codes(guide) else reading)
        for clue, reading in found.readings
        if clue not in on_gone and dice.random() < seen
    ]
    dice.shuffle(readings)
    return Item(tuple(readings), gone, found.member)


def cell_by_lot(guide: Guide, dice: random.Random) -> Cell:
    volumes = [y.volume for y in guide.years]
    y: ModelYear = dice.choices(guide.years, volumes)[0]
    return y.year, dice.randint(y.opens, y.closes)


def replaced_by_lot(
    guide: Guide, dice: random.Random, on_all: tuple[str, ...] = ()
) -> tuple[str, ...]:
    """Ids of the replaced parts, in guide order, but for those replaced on a whole
    set, which nothing follows here.
    """
    parts = {part.id: part for part in guide.parts}
    state: dict[str, bool] = {}

    def draw(id: str) -> bool:
        part = parts[id]
        if id not in state:
            free = part.follows is not None and part.follows not in on_all
            after = free and draw(part.follows)
            rate = max(part.share, part.replaced) if after else part.replaced
            state[id] = dice.random() < rate
        return state[id]

    return tuple(p.id for p in guide.parts if p.id not in on_all and draw(p.id))


def shown(guide, clue: Clue, cell, replaced, member, dice) -> Reading:
    """What the clue shows and is read as."""
    kind = clue.kind
    if replaced and isinstance(kind, Choice) and kind.replacement:
        given = dict(kind.replacement)
        shares = [given.get(o.id, 0.0) + guide.floor for o in kind.options]
        return mistaken(kind, dice.choices(kind.options, shares)[0], clue, dice)
    if replaced:
        # Half the line's own mixture over all years, half anything.
        cell, member = cell_by_lot(guide, dice) if dice.random() < 0.5 else None, None
    if isinstance(kind, Choice):
        return _choice(guide, clue, kind, cell, member, dice)
    if isinstance(kind, Measure):
        return _measure(clue, kind, cell, member, dice)
    if isinstance(kind, Number):
        return _number(clue, kind, cell, dice)
    return _code(clue, kind, cell, dice)


def _choice(guide, clue, kind: Choice, cell, member, dice) -> str:
    if cell is None:
        return dice.choice(kind.options).id
    shares = [made(o, cell, member) + guide.floor for o in kind.options]
    return mistaken(kind, dice.choices(kind.options, shares)[0], clue, dice)


def made(option: Option, cell, member) -> float:
    """The largest share of the option's spans that cover the cell."""
    year, t = cell
    best = 0.0
    for span in option.seen:
        first, last = span.years or (year, year)
        if first <= year <= last and _counts(span, member):
            late = t - (t if span.until is None else span.until)
            early = (t if span.since is None else span.since) - t
            away = max(late, early, 0)
            best = max(best, span.share * max(0.0, 1 - away / (span.fade + 1)))
    return best


def _counts(made, member) -> bool:
    """Whether a span or a size is of this set member."""
    if made.members:
        return member in made.members
    return member not in made.excluded


def mistaken(kind: Choice, true: Option, clue: Clue, dice) -> str:
    others = [o for o in kind.options if o is not true]
    if not others or dice.random() >= clue.misread:
        return true.id
    pull = [5.0 if o.id in true.like or true.id in o.like else 1.0 for o in others]
    return dice.choices(others, pull)[0].id


def _measure(clue: Clue, kind: Measure, cell, member, dice) -> float:
    sizes = [
        size
        for size in kind.sizes
        if cell and size.years[0] <= cell[0] <= size.years[1] and _counts(size, member)
    ]
    x = dice.uniform(kind.low, kind.high)
    if sizes and dice.random() >= clue.misread:
        worn = dice.expovariate(1 / kind.wear) if kind.wear else 0.0
        x = dice.gauss(sizes[0].mean, sizes[0].sd) - worn
    return round(min(max(x, kind.low), kind.high), 2)


def _number(clue: Clue, kind: Number, cell, dice) -> float:
    """A number of the year that it was made in, or of one before it by its lag."""
    years = dict(kind.first)
    year = cell[1] // 12 if cell else None
    if year is not None and kind.means == "not-before":
        year -= int(dice.expovariate(1 / kind.lag))
    if year not in years or dice.random() < clue.misread:
        return float(dice.randint(kind.first[0][1], kind.last))
    later = [n for y, n in kind.first if y > year]
    return float(dice.randint(years[year], min(later, default=kind.last + 1) - 1))


def _code(clue: Clue, kind: Code, cell, dice) -> str:
    if cell and kind.means == "not-before":
        late = dice.expovariate(1 / kind.lag) * 12
        # For what was made before any such mark, anything may be read.
        cell = _given(kind, None, cell[1] - int(late), clue, dice)
    known = layouts(kind)
    in_use = [cell is not None and _used(layout, cell[1]) for layout in known]
    pull = [1.0 if use else clue.misread for use in in_use]
    k = 0
    if len(known) > 1:
        k = dice.choices(range(len(known)), pull if any(in_use) else None)[0]
    return _laid_out(clue, known[k], cell if in_use[k] else None, dice)


def _given(kind: Code, model: int | None, t: int, clue: Clue, dice) -> Cell:
    """The month in which a mark was given; None if none were or it is misread."""
    given = any(_used(layout, t) for layout in layouts(kind))
    return (model, t) if given and dice.random() >= clue.misread else None


def _used(layout: Layout, t: int) -> bool:
    return not layout.years or layout.years[0] <= t // 12 <= layout.years[1]


def _laid_out(clue: Clue, layout: Layout, cell, dice) -> str:
    day = _day(layout, cell[1], dice) if cell else None
    model = cell[0] if cell else None
    return "".join(_field(clue, f, (model, day), layout, dice) for f in layout.fields)


def _day(layout: Layout, t: int, dice) -> date:
    """A day of the month by lot, if any field tells one from the others."""
    first = date(t // 12, t % 12 + 1, 1)
    if all(field.means not in ("week", "day") for field in layout.fields):
        return first
    days = [first + timedelta(i) for i in range(31)]
    return dice.choice([day for day in days if day.month == first.month])


def _field(clue: Clue, field: Field, when, layout: Layout, dice) -> str:
    right = _right(field, when, layout) if when[1] else None
    if right is None or dice.random() < field.odd:
        return "".join(dice.choice(field.alphabet) for _ in range(field.width))
    return "".join(_character(clue, field, o, dice) for o in right)


def _right(field: Field, when, layout: Layout) -> str | None:
    """What the works meant to stamp."""
    model, day = when
    weeks = next((f.weeks for f in layout.fields if f.weeks), "")
    year, number = _week(day, weeks) if weeks else (day.year, 0)
    if field.means == "month":
        return field.alphabet[day.month - 1]
    if field.means == "year":
        return str(year)[-field.width :]
    if field.means in ("week", "day"):
        return f"{number if field.means == 'week' else day.day:02}"
    keys = {"year-letter": year, "model-year": model}
    return dict(field.codes).get(keys[field.means]) if field.means in keys else None


def _week(day: date, weeks: str) -> tuple[int, int]:
    if weeks == "iso":
        return day.isocalendar()[:2]
    sunday = day - timedelta((day.weekday() + 1) % 7)
    return sunday.year, (sunday.timetuple().tm_yday + 6) // 7


def _character(clue: Clue, field: Field, right: str, dice) -> str:
    others = [a for a in field.alphabet if a != right]
    if not others or dice.random() >= clue.misread:
        return right
    alike = [group for group in LOOK_ALIKES if right in group]
    pull = [5.0 if any(a in group for group in alike) else 1.0 for a in others]
    return dice.choices(others, pull)[0]


def _codes(guide: Guide) -> tuple[str, ...]:
    return tuple(clue.id for clue in guide.clues if isinstance(clue.kind, Code))


def _smudged(reading: Reading, dice: random.Random) -> Reading:
    """A code with a character in eight that cannot be read."""
    if reading is None:
        return None
    return "".join("?" if dice.random() < 1 / 8 else a for a in str(reading))
