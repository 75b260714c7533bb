"""What follows from the guide alone, worked out once: Guide to Tables."""

from dataclasses import dataclass

from fieldid.engine.cells import Cell, cells, stretches
from fieldid.engine.choice import ChoiceTable, choice_likelihood, choice_table
from fieldid.engine.code import CodeTable, code_likelihood, code_table
from fieldid.engine.find import Reading, measured
from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure, Number
from fieldid.engine.likelihood import Likelihood, applies
from fieldid.engine.measure import (
    MeasureTable,
    measure_for,
    measure_likelihood,
    measure_outcomes,
    measure_table,
)
from fieldid.engine.number import (
    NumberTable,
    number_likelihood,
    number_outcomes,
    number_table,
)
from fieldid.engine.parts import Forest, World, forest, worlds
from fieldid.engine.special import Vector

ClueTable = ChoiceTable | MeasureTable | CodeTable | NumberTable


@dataclass(frozen=True, slots=True)
class Tables:
    """A guide with all that judging needs.

    `prior` has one entry a cell and a last one for outside; `stretches` says which
    cells are each model year's; `worlds` is what can have been replaced on a whole
    set. `clues[m]` are the tables for the member at place `m` of `members`, which
    begins with None, the member that is not known.
    """

    guide: Guide
    cells: tuple[Cell, ...]
    stretches: tuple[tuple[int, int], ...]
    prior: Vector
    forest: Forest
    worlds: tuple[World, ...]
    part_of: tuple[int, ...]
    places: dict[str, int]
    members: tuple[str | None, ...]
    clues: tuple[tuple[ClueTable, ...], ...]


def prepare(guide: Guide) -> Tables:
    """Tables of a guide without problems."""
    all_cells = cells(guide)
    members = (None, *(guide.members.all if guide.members else ()))
    part_places = {part.id: p for p, part in enumerate(guide.parts)}
    trees = forest(guide)
    by_clue = [_by_member(guide, clue, all_cells, members) for clue in guide.clues]
    return Tables(
        guide,
        all_cells,
        stretches(guide),
        [*((1 - guide.outside) * cell.spread for cell in all_cells), guide.outside],
        trees,
        worlds(guide, trees),
        tuple(part_places[clue.part] for clue in guide.clues),
        {clue.id: k for k, clue in enumerate(guide.clues)},
        members,
        tuple(tuple(rows[m] for rows in by_clue) for m in range(len(members))),
    )


def tables_for(tables: Tables, member: str | None) -> tuple[ClueTable, ...]:
    """The clue tables of one set member."""
    return tables.clues[tables.members.index(member)]


def likelihood(table: ClueTable, reading: Reading) -> Likelihood:
    """Likelihood of a reading that is not None and fits its clue."""
    match table:
        case ChoiceTable():
            return choice_likelihood(table, str(reading))
        case MeasureTable():
            return measure_likelihood(table, reading)
        case CodeTable():
            return code_likelihood(table, str(reading))
        case NumberTable():
            return number_likelihood(table, measured(reading).value)


def outcomes(
    table: ClueTable,
    original: Vector,
    replaced: float,
    outside: float,
    whole: Vector = (),
) -> tuple[Likelihood, ...] | list[Likelihood]:
    """Likelihoods of the readings that the clue may give; what they leave over is
    any other reading. The arguments are as for `measure_outcomes`.
    """
    match table:
        case ChoiceTable():
            return table.likelihoods
        case MeasureTable():
            return measure_outcomes(table, original, replaced, outside, whole)
        case CodeTable():
            return table.clean
        case NumberTable():
            return number_outcomes(table, original, replaced, outside, whole)


def _by_member(
    guide: Guide,
    clue: Clue,
    all_cells: tuple[Cell, ...],
    members: tuple[str | None, ...],
) -> list[ClueTable]:
    """The clue's table for each member; those for whom the same counts share one."""
    known: dict[tuple[bool, ...], ClueTable] = {}
    found: list[ClueTable] = []
    for member in members:
        counts = tuple(applies(*limits, member) for limits in _limits(clue))
        if counts not in known:
            known[counts] = (
                measure_for(found[0], all_cells, member)
                if found and isinstance(found[0], MeasureTable)
                else _table(guide, clue, all_cells, member)
            )
        found.append(known[counts])
    return found


def _limits(clue: Clue) -> list[tuple[tuple[str, ...], tuple[str, ...]]]:
    """For whom alone, or for whom not, each span or size of the clue counts."""
    match clue.kind:
        case Choice(options):
            spans = [span for option in options for span in option.seen]
            return [(span.members, span.excluded) for span in spans]
        case Measure(sizes=sizes):
            return [(size.members, size.excluded) for size in sizes]
        case Code() | Number():
            return []


def _table(
    guide: Guide, clue: Clue, all_cells: tuple[Cell, ...], member: str | None
) -> ClueTable:
    match clue.kind:
        case Choice():
            return choice_table(guide, clue, clue.kind, all_cells, member)
        case Measure():
            return measure_table(clue, clue.kind, all_cells, member)
        case Code():
            return code_table(clue, clue.kind, all_cells)
        case Number():
            return number_table(clue, clue.kind, all_cells)
