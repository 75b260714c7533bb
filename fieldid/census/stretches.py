"""What a census can learn: the shares of a choice's options, stretch by stretch.

A stretch of a clue is all its cells with the same shares from the same spans. Within it
the options that original parts show have shares that add up to one, which is all that
the engine needs of them.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.census.climb import Row, Rows
from fieldid.engine.cells import Cell
from fieldid.engine.choice import weight
from fieldid.engine.guide import Choice, Guide, Option, Span
from fieldid.engine.prepare import Tables

Ruling = tuple[int | None, ...]
"""Of each option the place of the span that counts; None where none does."""


@dataclass(frozen=True, slots=True)
class Stretches:
    """`guide[x]` are the shares of the options in stretch `x` as the guide has them,
    `rulings[x]` the spans that they come from. `at[m][k]` says which stretch each cell
    is in for the member at place `m` and the clue at place `k`; it is empty for a clue
    that is no choice.
    """

    guide: Rows
    rulings: tuple[Ruling, ...]
    at: tuple[tuple[tuple[int, ...], ...], ...]


def stretches(tables: Tables) -> Stretches:
    """All stretches of a guide, clue by clue in the order of their cells."""
    known: dict[tuple[int, Ruling, Row], int] = {}
    at: list[tuple[tuple[int, ...], ...]] = []
    for m, member in enumerate(tables.members):
        rows: list[tuple[int, ...]] = []
        for k, clue in enumerate(tables.guide.clues):
            twin = _twin(tables, m, k)
            if not isinstance(clue.kind, Choice):
                rows.append(())
            elif twin < m:
                rows.append(at[twin][k])
            else:
                told = _ruled(tables.guide, clue.kind, tables.cells, member)
                rows.append(
                    tuple(known.setdefault((k, *each), len(known)) for each in told)
                )
        at.append(tuple(rows))
    return Stretches(
        tuple(row for _, _, row in known),
        tuple(ruling for _, ruling, _ in known),
        tuple(at),
    )


def ruling(option: Option, cell: Cell, member: str | None) -> int | None:
    """The place of the option's span that counts in a cell: the one with the largest
    weight, of several the first.
    """
    best, most = None, 0.0
    for s, span in enumerate(option.seen):
        w = weight(replace(option, seen=(span,)), cell, member)
        if w > most:
            best, most = s, w
    return best


def full(span: Span, cell: Cell) -> bool:
    """Whether a span that counts in a cell holds there in full, and does not fade.

    >>> span = Span(since=10, until=12, fade=2, share=0.3)
    >>> [full(span, Cell(1900, t, 1.0)) for t in (9, 10, 12, 13)]
    [False, True, True, False]
    """
    return (span.since is None or span.since <= cell.t) and (
        span.until is None or cell.t <= span.until
    )


def _twin(tables: Tables, m: int, k: int) -> int:
    """The first member for whom the clue says the same."""
    return next(i for i in range(m + 1) if tables.clues[i][k] is tables.clues[m][k])


def _ruled(
    guide: Guide, kind: Choice, cells: Sequence[Cell], member: str | None
) -> list[tuple[Ruling, Row]]:
    """Cell by cell which spans count and the shares `A(o|c)` that follow."""
    found = []
    for cell in cells:
        raised = [weight(o, cell, member) + guide.floor for o in kind.options]
        total = sum(raised)
        spans = tuple(ruling(o, cell, member) for o in kind.options)
        found.append((spans, tuple(w / total for w in raised)))
    return found
