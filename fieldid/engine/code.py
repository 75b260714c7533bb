"""Code clues: stamped or printed strings of fixed-width fields, ? for unreadable.

Model page: "code". What they should read is in `layout`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.engine.cells import Cell
from fieldid.engine.guide import Clue, Code, Field, layouts
from fieldid.engine.later import on_later, staying
from fieldid.engine.layout import (
    LayoutTable,
    Row,
    Texts,
    clean_of,
    fits,
    layout_table,
    layout_weights,
)
from fieldid.engine.likelihood import Likelihood, blend, halves
from fieldid.engine.special import Vector

LOOK_ALIKES = (
    "0OQDC",
    "1IL7T",
    "2Z",
    "5S",
    "6G",
    "8B3",
    "UVY",
    "MNWH",
    "4A",
    "9GQ",
    "EF",
    "PR",
    "KX",
)
ALIKE = {
    a: "".join(group for group in LOOK_ALIKES if a in group)
    for a in "".join(LOOK_ALIKES)
}
"""The characters that each is easily taken for, with itself."""
LOOK_ALIKE = 5.0
UNREADABLE = "?"
NO_MODEL = 0
"""The model year of a month in which marks were given to all."""


@dataclass(frozen=True, slots=True)
class CodeTable:
    """What each layout should read at each date, how often the code is laid out so,
    and the likelihoods of the clean readings.

    Dates are the cells, or of a code that means not-before all months in which its
    marks were given, up to the last cell's: `which` is where each cell stands among
    them. The sources of a replaced part are the cells, and a last one that shows
    anything.
    """

    code: Code
    misread: float
    sources: Vector
    which: tuple[int, ...]
    layouts: tuple[LayoutTable, ...]
    weights: tuple[Vector, ...]
    clean: tuple[Likelihood, ...]


Read = dict[tuple[int, str], Vector]
"""What each text in a field tells of the texts that should be there: many clean
readings have the same one.
"""


def code_table(clue: Clue, kind: Code, cells: tuple[Cell, ...]) -> CodeTable:
    """The table of a code clue."""
    made = kind.means == "made"
    dates = cells if made else _months(kind, cells)
    known = layouts(kind)
    bare = CodeTable(
        kind,
        clue.misread,
        halves([cell.spread for cell in cells]),
        _which(kind, cells, dates),
        tuple(layout_table(layout, dates) for layout in known),
        # Where a code was laid out in no way that is known, no marks were given.
        layout_weights(known, dates, clue.misread, silent=1.0 if made else 0.0),
        (),
    )
    readings = clean_of(bare.layouts, UNREADABLE)
    read: list[Read] = [{} for _ in known]
    clean = tuple(_likelihood(bare, reading, of, read) for reading, of in readings)
    return replace(bare, clean=clean)


def code_likelihood(table: CodeTable, reading: str) -> Likelihood:
    """Likelihood of a reading that fits one of the code's layouts, or several."""
    places = range(len(table.layouts))
    read: list[Read] = [{} for _ in places]
    return _likelihood(table, reading, places, read)


def code_dates(table: CodeTable, spread: Vector, start: int) -> Vector:
    """How much each date weighs on objects of the cells from `start` on, which have
    these weights.
    """
    dates = [0.0] * len(table.weights[0])
    for i, w in zip(table.which[start:], spread, strict=False):
        if i >= 0:
            dates[i] += w
    if table.code.means == "made":
        return dates
    return on_later(dates[::-1], staying(12 * table.code.lag))[::-1]


def _likelihood(
    table: CodeTable, reading: str, of: Sequence[int], read: Sequence[Read]
) -> Likelihood:
    """Likelihood of a reading of one of the layouts at some places; `read` has what is
    known of each layout's fields.
    """
    m = table.misread
    by_date = [0.0] * len(table.weights[0])
    out = 0.0
    for place in of:
        layout, weights = table.layouts[place], table.weights[place]
        if fits(reading, layout.fields, UNREADABLE):
            uniform, by_row = _layout(layout, reading, m, read[place])
            by_date = [
                x + w * by_row[k]
                for x, w, k in zip(by_date, weights, layout.which, strict=True)
            ]
            out += uniform / len(table.layouts)
    if table.code.means == "made":
        orig = by_date
    else:
        later = on_later(by_date, staying(12 * table.code.lag))
        orig = [(1 - m) * (later[i] if i >= 0 else 0.0) + m * out for i in table.which]
    by_source = (*orig, out)
    return Likelihood(tuple(orig), blend(table.sources, by_source), out, by_source)


def _months(kind: Code, cells: tuple[Cell, ...]) -> tuple[Cell, ...]:
    """The months in which marks were given, and those up to the last cell's, in which
    they may still have been in use.
    """
    built = [cell.t // 12 for cell in cells]
    spans = [layout.years or (min(built), max(built)) for layout in layouts(kind)]
    first, last = min(a for a, _ in spans), max(b for _, b in spans)
    stop = 12 * max(last, *built) + 12
    return tuple(Cell(NO_MODEL, t, 0.0) for t in range(12 * first, stop))


def _which(
    kind: Code, cells: tuple[Cell, ...], dates: tuple[Cell, ...]
) -> tuple[int, ...]:
    """Where each cell stands among the dates; below 0 if it is before them all."""
    if kind.means == "made":
        return tuple(range(len(cells)))
    return tuple(max(cell.t - dates[0].t, -1) for cell in cells)


def _layout(
    layout: LayoutTable, reading: str, m: float, read: Read
) -> tuple[float, Vector]:
    """Probability of a reading laid out so: drawn by lot, and for each row."""
    out = 1.0
    start = 0
    by_field = []
    for f, field in enumerate(layout.fields):
        text = reading[start : start + field.width]
        start += field.width
        uniform = _uniform(field, text)
        if (f, text) not in read:
            texts = layout.texts[f]
            read[f, text] = [_field(field, text, t, uniform, m) for t in texts]
        out *= uniform
        by_field.append(read[f, text])
    return out, [_row(row, by_field, out) for row in layout.rows]


def _row(row: Row, by_field: Sequence[Vector], out: float) -> float:
    """Probability of a reading where the layout should read one of these, or, if it
    should not be there at all, anything.
    """
    if not row:
        return out
    total = 0.0
    for share, places in row:
        product = share
        for likes, place in zip(by_field, places, strict=True):
            product *= likes[place]
        total += product
    return total


def _uniform(field: Field, text: str) -> float:
    """Probability of what was read if every character were drawn by lot."""
    share = 1.0
    for a in text:
        if a != UNREADABLE:
            share /= len(field.alphabet)
    return share


def _field(field: Field, text: str, right: Texts, uniform: float, m: float) -> float:
    """Likelihood of one field where it should read any of `right`."""
    if right is None:
        return uniform
    exact = 0.0
    for each in right:
        product = 1.0
        for a, o in zip(text, each, strict=True):
            product *= character(field.alphabet, a, o, m)
        exact += product
    return (1 - field.odd) * exact / len(right) + field.odd * uniform


def character(alphabet: Sequence[str], a: str, o: str, m: float) -> float:
    """Probability of reading `a` where `o` stands.

    >>> character("ABC", "?", "A", 0.02)
    1.0
    >>> character("ABC", "B", "A", 0.02)
    0.01
    """
    if a == UNREADABLE:
        return 1.0
    if a == o:
        return 1 - m
    alike = ALIKE.get(o, "")
    pull = {b: LOOK_ALIKE if b in alike else 1.0 for b in alphabet if b != o}
    return m * pull[a] / sum(pull.values())
