"""A clue as questions for paper: a few answers each, and what is read by each.

A measure is asked in ranges, a code field by field; what dates nothing is not asked.
"""

from dataclasses import dataclass, replace
from itertools import pairwise

from fieldid.engine import Item, Tables
from fieldid.engine.code import UNREADABLE, CodeTable
from fieldid.engine.find import Reading
from fieldid.engine.guide import Choice, Clue, Code, Measure, Number
from fieldid.engine.layout import IN_YEAR
from fieldid.engine.likelihood import applies
from fieldid.engine.prepare import tables_for
from fieldid.engine.words import figure


@dataclass(frozen=True, slots=True)
class Printed:
    """One answer: its words, the reading that it stands for, whether it is drawn."""

    label: str
    reading: str | float
    drawn: bool = False


@dataclass(frozen=True, slots=True)
class Ask:
    """One question: about the clue itself, or about its code's field at `place`."""

    clue: Clue
    place: int
    detail: str
    answers: tuple[Printed, ...]


def asks(tables: Tables, clue: Clue) -> tuple[Ask, ...]:
    """The questions that a clue comes down to."""
    match clue.kind:
        case Choice(options):
            drawn = tuple(Printed(o.label, o.id, bool(o.picture)) for o in options)
            return (Ask(clue, 0, "", drawn),)
        case Measure():
            ranges = _ranges(clue.kind)
            return (Ask(clue, 0, f"In {clue.kind.unit}.", ranges),) if ranges else ()
        case Code():
            return _fields(tables, clue, clue.kind)
        case Number():
            # Nobody looks a number up on paper answer by answer.
            return ()


def read(item: Item, ask: Ask, reading: str | float) -> Item:
    """The item with the question answered."""
    before = dict(item.readings).get(ask.clue.id)
    return _with(item, ask.clue, _merged(ask, before, reading))


def skip(item: Item, ask: Ask) -> Item:
    """The item with the question left open."""
    return _with(item, ask.clue, dict(item.readings).get(ask.clue.id))


def _merged(ask: Ask, before: Reading, reading: str | float) -> Reading:
    if not isinstance(ask.clue.kind, Code):
        return reading
    fields = ask.clue.kind.fields
    start = sum(field.width for field in fields[: ask.place])
    stop = start + fields[ask.place].width
    whole = str(before or UNREADABLE * sum(field.width for field in fields))
    return f"{whole[:start]}{reading}{whole[stop:]}"


def _with(item: Item, clue: Clue, reading: Reading) -> Item:
    others = tuple(pair for pair in item.readings if pair[0] != clue.id)
    return replace(item, readings=(*others, (clue.id, reading)))


def _ranges(kind: Measure) -> tuple[Printed, ...]:
    """Ranges cut halfway between neighbouring sizes, each read as its size when worn.

    Only sizes that hold when the set member is not known.
    """
    made = {s.mean: None for s in kind.sizes if applies(s.members, s.excluded, None)}
    means = sorted(made)
    cuts = [round((a + b) / 2, 1) for a, b in pairwise(means)]
    edges = [kind.low, *cuts, kind.high]
    return tuple(
        Printed(
            _words(low, high, kind),
            max(low, min(high, mean - kind.wear)),
        )
        for mean, (low, high) in zip(means, pairwise(edges), strict=True)
    )


def _words(low: float, high: float, kind: Measure) -> str:
    if low == kind.low:
        return f"under {figure(high)} {kind.unit}"
    if high == kind.high:
        return f"over {figure(low)} {kind.unit}"
    return f"{figure(low)} to {figure(high)} {kind.unit}"


def _fields(tables: Tables, clue: Clue, kind: Code) -> tuple[Ask, ...]:
    table = tables_for(tables, None)[tables.places[clue.id]]
    assert isinstance(table, CodeTable)
    length = sum(field.width for field in kind.fields)
    found = []
    start = 0
    for place, field in enumerate(kind.fields):
        spoken = _characters(start + 1, start + field.width, length)
        start += field.width
        told = table.layouts[0].texts[place] if field.means not in IN_YEAR else ()
        texts = sorted({text for right in told if right for text in right})
        if texts:
            detail = f"Only the {field.name} in it: {spoken}."
            answers = tuple(Printed(text, text) for text in texts)
            found.append(Ask(clue, place, detail, answers))
    return tuple(found)


def _characters(first: int, last: int, length: int) -> str:
    """Which characters of the code, in words.

    >>> _characters(1, 1, 4), _characters(3, 4, 4)
    ('character 1 of 4', 'characters 3 to 4 of 4')
    """
    if first == last:
        return f"character {first} of {length}"
    return f"characters {first} to {last} of {length}"
