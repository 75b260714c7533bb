"""A specimen's readings as a row of numbers, as a decision tree takes them."""

from fieldid.engine.find import Reading
from fieldid.engine.guide import Choice, Clue, Code, Guide, layouts

UNREAD = -1.0


def row(guide: Guide, readings: dict[str, Reading]) -> list[float]:
    """The columns of all clues, one after the other."""
    return [x for clue in guide.clues for x in _columns(clue, readings[clue.id])]


def owners(guide: Guide) -> list[str]:
    """The clue of each column."""
    return [clue.id for clue in guide.clues for _ in _columns(clue, None)]


def _columns(clue: Clue, reading: Reading) -> list[float]:
    """A choice has a column for each option and one for "can't tell"; a code one for
    each character; a size or a number itself, and whether there is one.
    """
    kind = clue.kind
    if isinstance(kind, Choice):
        ids = [option.id for option in kind.options]
        return [*(float(reading == id) for id in ids), float(reading is None)]
    if isinstance(kind, Code):
        width = max(sum(f.width for f in each.fields) for each in layouts(kind))
        told = [] if reading is None else [float(ord(a)) for a in str(reading)]
        return told + [UNREAD] * (width - len(told))
    return [0.0, 0.0] if reading is None else [float(reading), 1.0]
