"""How sure one gets with every clue that is read, and which years stay alike."""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.draw import charts
from fieldid.draw.nodes import Node
from fieldid.engine import Tables
from fieldid.engine.guide import Clue
from fieldid.engine.words import percent
from fieldid.learn.simulate import EACH, WALKS, Sureness, mistaken, sureness
from fieldid.web.shares import LEAST

ALIKE = 0.1
"""Two years are named as hard to tell apart from this share on."""
USUAL = 3
"""So many looks are named beside the curve: what one does in a hurry."""


@dataclass(frozen=True, slots=True)
class Chart:
    """A picture and its numbers: heads of columns, and rows that begin with theirs."""

    drawn: Node
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Sure:
    """How sure one gets with every look, and which years stay alike."""

    curve: Chart
    curve_say: str
    matrix: Chart
    matrix_say: str


def sure(tables: Tables, first: Clue) -> Sure:
    """Counted on specimens; `first` is the clue that one begins with."""
    steps, rows = sureness(tables), mistaken(tables)
    names = [str(year.year) for year in tables.guide.years]
    return Sure(
        _curve(steps),
        _curve_say(steps, first),
        Chart(
            charts.matrix(names, rows),
            ("Is of", "Ends up as"),
            tuple(
                (name, _row_say(names, row))
                for name, row in zip(names, rows, strict=True)
            ),
        ),
        _matrix_say(names, rows),
    )


def _row_say(names: Sequence[str], row: Sequence[float]) -> str:
    """The years that a year ends up as, the most frequent first."""
    told = sorted(
        ((-p, name) for name, p in zip(names, row, strict=True) if p >= LEAST)
    )
    say = ", ".join(f"{name}: {percent(-p)}" for p, name in told)
    return f"{say}; any other under 1 %" if len(told) < len(row) else say


def _curve(steps: Sequence[Sureness]) -> Chart:
    return Chart(
        charts.curve([(str(step.looks), step.right) for step in steps]),
        ("Clues read", "Leading year right", "Thought right", "Seconds"),
        tuple(
            (
                str(step.looks),
                percent(step.right),
                percent(step.told),
                f"{step.seconds:.0f}",
            )
            for step in steps
        ),
    )


def _curve_say(steps: Sequence[Sureness], first: Clue) -> str:
    few, last = steps[min(USUAL, len(steps) - 1)], steps[-1]
    return (
        f"After the best {few.looks} clues, which take {few.seconds:.0f} seconds, the "
        f"leading year is right {percent(few.right)} of the time; after "
        f"{last.looks} clues and {last.seconds:.0f} seconds {percent(last.right)}. "
        f"Begin with the {first.name}; what tells most after it depends on what was "
        f"seen, and the app asks for that. "
        f"Counted on {WALKS} specimens drawn from this guide. “Thought right” is the "
        f"probability that the app itself gave its leading year, on average: the "
        f"nearer it is to the share that was right, the more its figures can be "
        f"trusted."
    )


def _matrix_say(names: Sequence[str], rows: Sequence[Sequence[float]]) -> str:
    """Pairs of years of which one takes much of the other's probability."""
    pairs = [
        (max(rows[i][k], rows[k][i]), f"{names[k]} and {names[i]}")
        for i in range(len(names))
        for k in range(i)
    ]
    alike = [pair for p, pair in sorted(pairs, reverse=True) if p >= ALIKE]
    counted = f"Counted on {EACH} specimens of each year, read whole."
    if not alike:
        return f"Read whole, no two years are hard to tell apart. {counted}"
    return f"Hardest to tell apart: {'; '.join(alike)}. {counted}"
