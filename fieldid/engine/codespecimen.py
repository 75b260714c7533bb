"""A code as somebody reads it off a specimen: its date, its layout, its characters."""

import math
from collections.abc import Sequence

from fieldid.engine.code import CodeTable, character
from fieldid.engine.guide import Field
from fieldid.engine.later import staying
from fieldid.engine.layout import LayoutTable, Texts
from fieldid.engine.lot import Draw, among, exponential, pick


def spelled(table: CodeTable, draw: Draw, source: int) -> str | None:
    """What is read where the code is of the cell at place `source`; of the last source
    anything. None where no code was given yet.
    """
    if source >= len(table.which):
        return _anything(table, draw)
    date = table.which[source]
    if table.code.means == "not-before":
        if draw() < table.misread:
            return _anything(table, draw)
        date -= _late(table.code.lag, draw)
    weights = [row[date] for row in table.weights] if date >= 0 else ()
    if sum(weights) == 0:
        return None
    layout = table.layouts[pick(draw, weights)]
    return _laid_out(layout, draw, date, table.misread)


def _late(lag: float, draw: Draw) -> int:
    """How many months a mark is older than what it is on."""
    fade = -math.log(staying(12 * lag))
    return math.floor(exponential(draw) / fade)


def _anything(table: CodeTable, draw: Draw) -> str:
    layout = table.layouts[among(draw, len(table.layouts))]
    return "".join(_by_lot(field, draw) for field in layout.fields)


def _laid_out(layout: LayoutTable, draw: Draw, date: int, m: float) -> str:
    """A reading of the layout, which may not have been in use at the date."""
    row = layout.rows[layout.which[date]]
    if not row:
        return "".join(_by_lot(field, draw) for field in layout.fields)
    _, places = row[pick(draw, [share for share, _ in row])]
    return "".join(
        _field(field, texts[place], draw, m)
        for field, texts, place in zip(layout.fields, layout.texts, places, strict=True)
    )


def _field(field: Field, right: Texts, draw: Draw, m: float) -> str:
    """One field as it is read where it should read any of `right`."""
    if right is None or draw() < field.odd:
        return _by_lot(field, draw)
    meant = right[among(draw, len(right))]
    return "".join(_character(field.alphabet, o, draw, m) for o in meant)


def _character(alphabet: Sequence[str], o: str, draw: Draw, m: float) -> str:
    return alphabet[pick(draw, [character(alphabet, a, o, m) for a in alphabet])]


def _by_lot(field: Field, draw: Draw) -> str:
    alphabet = field.alphabet
    return "".join(alphabet[among(draw, len(alphabet))] for _ in range(field.width))
