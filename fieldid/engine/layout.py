"""How a code is laid out, and what each layout should read at each date.

Model page: "code". A date is a cell, or a month in which a mark was given.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.cells import Cell
from fieldid.engine.guide import Field, Layout
from fieldid.engine.special import Vector
from fieldid.engine.weeks import days_in, week

MANY = 200
"""Of more clean readings than this the months are left unread in the ranking."""

IN_YEAR = ("week", "day")
"""Fields that tell the part of a year alone, and many of them: never in the ranking."""

Texts = tuple[str, ...] | None
"""What a field should read, each text as often; None where nothing is said."""

Row = tuple[tuple[float, tuple[int, ...]], ...]
"""What a layout should read at a date: shares, each with a place among the texts of
every field; empty where the layout was not in use.
"""


@dataclass(frozen=True, slots=True)
class LayoutTable:
    """One layout: for each field the distinct things that it should read, the distinct
    rows of these, and which row each date has.
    """

    fields: tuple[Field, ...]
    texts: tuple[tuple[Texts, ...], ...]
    rows: tuple[Row, ...]
    which: tuple[int, ...]


def layout_table(layout: Layout, dates: Sequence[Cell]) -> LayoutTable:
    """What the layout should read at all dates."""
    texts: list[dict[Texts, int]] = [{} for _ in layout.fields]
    rows: dict[Row, int] = {}
    which = []
    for date in dates:
        row = _row(layout, date, texts) if used(layout, date) else ()
        which.append(rows.setdefault(row, len(rows)))
    return LayoutTable(
        layout.fields,
        tuple(tuple(known) for known in texts),
        tuple(rows),
        tuple(which),
    )


def layout_weights(
    known: Sequence[Layout], dates: Sequence[Cell], m: float, *, silent: float
) -> tuple[Vector, ...]:
    """How often the code is laid out in each way, date by date: all ways in use alike,
    the others as often as a reading is wrong. At a date with none in use each weighs
    as much as `silent`: nothing, or as if any might have been.
    """
    found: list[list[float]] = [[] for _ in known]
    for date in dates:
        in_use = [used(layout, date) for layout in known]
        rest = m if any(in_use) else silent
        pull = [1.0 if each else rest for each in in_use]
        total = sum(pull) or 1.0
        for weights, x in zip(found, pull, strict=True):
            weights.append(x / total)
    return tuple(found)


def used(layout: Layout, date: Cell) -> bool:
    """Whether the layout was in use."""
    if layout.years is None:
        return True
    return layout.years[0] <= date.t // 12 <= layout.years[1]


def fits(reading: str, fields: Sequence[Field], blank: str) -> bool:
    """Whether a text, with `blank` for what was not read, can be read of the fields."""
    alphabets = [field.alphabet for field in fields for _ in range(field.width)]
    return len(reading) == len(alphabets) and all(
        a == blank or a in alphabet
        for a, alphabet in zip(reading, alphabets, strict=True)
    )


def clean_of(
    tables: Sequence[LayoutTable], blank: str
) -> list[tuple[str, tuple[int, ...]]]:
    """The distinct readings without a mistake, layout by layout, in order of the dates,
    each with the places of the layouts that it may be of; `blank` stands for each
    character that stays unread.

    They must not overlap, so that a layout which can be taken for another before it
    has none of its own. Months, too, stay unread where there are many.
    """
    found: list[tuple[str, tuple[int, ...]]] = []
    for place, table in enumerate(tables):
        family = _family(tables, place)
        own = _clean(table, IN_YEAR, blank)
        if len(own) > MANY:
            own = _clean(table, (*IN_YEAR, "month"), blank)
        before = [reading for reading, others in found if place in others]
        alike = [tables[i] for i in family]
        if not any(_overlap(a, b, alike, blank) for a in own for b in before):
            found += [(reading, family) for reading in own]
    return found


def _row(layout: Layout, date: Cell, texts: list[dict[Texts, int]]) -> Row:
    """The date's row, with what its fields should read noted among the texts."""
    row = []
    days = range(1, days_in(date.t) + 1)
    for year, number, held in _weeks(layout.fields, date.t):
        places = []
        for field, known in zip(layout.fields, texts, strict=True):
            right = _right(field, date, year, number, held)
            places.append(known.setdefault(right, len(known)))
        row.append((len(held) / len(days), tuple(places)))
    return tuple(row)


def _weeks(fields: Sequence[Field], t: int) -> list[tuple[int, int, list[int]]]:
    """The weeks of a month, each with its year and its days in the month; the whole
    month as one of its own year, if no field tells a week.
    """
    days = range(1, days_in(t) + 1)
    counted = next((field.weeks for field in fields if field.weeks), None)
    if counted is None:
        return [(t // 12, 0, list(days))]
    held: dict[tuple[int, int], list[int]] = {}
    for day in days:
        held.setdefault(week(t, day, counted), []).append(day)
    return [(year, number, days) for (year, number), days in held.items()]


def _right(
    field: Field, date: Cell, year: int, number: int, days: Sequence[int]
) -> Texts:
    """What the field should read in a week, or month, of this year."""
    match field.means:
        case "month":
            return (field.alphabet[date.t % 12],)
        case "year":
            return (str(year)[-field.width :],)
        case "year-letter":
            return _coded(field, year)
        case "model-year":
            return _coded(field, date.year)
        case "week":
            return (f"{number:02}",)
        case "day":
            return tuple(f"{day:02}" for day in days)
    return None


def _coded(field: Field, year: int) -> Texts:
    text = dict(field.codes).get(year)
    return None if text is None else (text,)


def _clean(table: LayoutTable, unread: Sequence[str], blank: str) -> list[str]:
    """The layout's distinct clean readings, with fields of these meanings unread.

    Fields that say nothing about the date stay unread too. A date on which a dating
    field is silent has no clean reading: the readings must not overlap.
    """
    told = [
        texts if field.means not in unread else ()
        for field, texts in zip(table.fields, table.texts, strict=True)
    ]
    dating = [any(right is not None for right in texts) for texts in told]
    readings: dict[str, None] = {}
    for row in table.rows:
        for _, places in row:
            right = [
                texts[place] if tells else (blank * field.width,)
                for field, texts, place, tells in zip(
                    table.fields, told, places, dating, strict=True
                )
            ]
            if all(right):
                readings["".join(each[0] for each in right if each)] = None
    return list(readings)


def _family(tables: Sequence[LayoutTable], place: int) -> tuple[int, ...]:
    """The layout with all that it may be taken for, and all that these may be."""
    family = [place]
    for i in family:
        family += [
            k
            for k in range(len(tables))
            if k not in family and _confusable(tables[i].fields, tables[k].fields)
        ]
    return tuple(sorted(family))


def _confusable(a: Sequence[Field], b: Sequence[Field]) -> bool:
    """Whether there is a text that both can be: a character for both at each place."""
    first, second = (
        [field.alphabet for field in fields for _ in range(field.width)]
        for fields in (a, b)
    )
    return len(first) == len(second) and all(
        any(character in y for character in x)
        for x, y in zip(first, second, strict=True)
    )


def _overlap(a: str, b: str, tables: Sequence[LayoutTable], blank: str) -> bool:
    """Whether a text of any of the layouts can be read as both."""
    if len(a) != len(b):
        return False
    both = zip(a, b, strict=True)
    if any(x != y for x, y in both if blank not in (x, y)):
        return False
    return any(
        fits(a, table.fields, blank) and fits(b, table.fields, blank)
        for table in tables
    )
