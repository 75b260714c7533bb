"""Sets drawn by lot from a guide's own model, with strays and parts replaced on all.

As for specimens, nothing of it asks the engine.
"""

import random
from dataclasses import dataclass

from fieldid.engine.find import Reading
from fieldid.engine.guide import Choice, Clue, Guide, Option
from specimens import (
    Cell,
    Specimen,
    cell_by_lot,
    made,
    mistaken,
    replaced_by_lot,
    shown,
)


@dataclass(frozen=True, slots=True)
class Bag:
    """A set as it is: `cell` it was made in, parts replaced on all, who is a stray."""

    cell: Cell
    on_all: tuple[str, ...]
    strays: tuple[bool, ...]
    members: tuple[Specimen, ...]

    @property
    def year(self) -> int | None:
        return self.cell[0] if self.cell else None


def bag(guide: Guide, dice: random.Random, members: tuple[str, ...]) -> Bag:
    """A set with what the clues of its members read."""
    cell = _made_in(guide, dice)
    on_all = _replaced_on_all(guide, dice)
    sources = {
        clue.id: _source(guide, clue, dice)
        for clue in guide.clues
        if clue.part in on_all
    }
    strays = tuple(dice.random() < _stray_share(guide, member) for member in members)
    cells = [_made_in(guide, dice) if stray else cell for stray in strays]
    return Bag(
        cell,
        on_all,
        strays,
        tuple(
            _member(guide, dice, own, on_all, sources, member)
            for own, member in zip(cells, members, strict=True)
        ),
    )


def _member(guide, dice, cell, on_all, sources, member) -> Specimen:
    """One of a set; `sources` are those of the clues on parts replaced on all."""
    replaced = replaced_by_lot(guide, dice, on_all)
    readings = []
    for clue in guide.clues:
        if clue.part in on_all:
            reading = _from_source(guide, clue, sources[clue.id], dice)
        elif clue.part in replaced and cell is not None:
            reading = _from_source(guide, clue, _source(guide, clue, dice), dice)
        else:
            reading = shown(guide, clue, cell, False, member, dice)
        hidden = dice.random() < clue.unreadable
        readings.append((clue.id, None if hidden else reading))
    return Specimen(cell, (*on_all, *replaced), tuple(readings), member)


def _made_in(guide: Guide, dice: random.Random) -> Cell:
    return None if dice.random() < guide.outside else cell_by_lot(guide, dice)


def _stray_share(guide: Guide, member: str) -> float:
    return dict(guide.members.stray_for).get(member, guide.members.stray)


def _replaced_on_all(guide: Guide, dice: random.Random) -> tuple[str, ...]:
    parts = {part.id: part for part in guide.parts}
    state: dict[str, bool] = {}

    def draw(id: str) -> bool:
        part = parts[id]
        if id not in state:
            after = part.follows is not None and draw(part.follows)
            rate = max(part.share, part.whole_set) if after else part.whole_set
            state[id] = dice.random() < rate
        return state[id]

    return tuple(part.id for part in guide.parts if draw(part.id))


def _source(guide: Guide, clue: Clue, dice: random.Random) -> Option | Cell:
    """What a replaced part shows: an option, or what a cell does (None: anything)."""
    kind = clue.kind
    if isinstance(kind, Choice) and kind.replacement:
        given = dict(kind.replacement)
        shares = [given.get(o.id, 0.0) + guide.floor for o in kind.options]
        return dice.choices(kind.options, shares)[0]
    cell = cell_by_lot(guide, dice) if dice.random() < 0.5 else None
    if not isinstance(kind, Choice):
        return cell
    if cell is None:
        return dice.choice(kind.options)
    shares = [made(o, cell, None) + guide.floor for o in kind.options]
    return dice.choices(kind.options, shares)[0]


def _from_source(guide, clue: Clue, source, dice) -> Reading:
    if isinstance(clue.kind, Choice):
        return mistaken(clue.kind, source, clue, dice)
    return shown(guide, clue, source, False, None, dice)
