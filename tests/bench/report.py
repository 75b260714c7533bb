"""What the benchmark found, as records, and its two tables: Markdown and JSON.

A measurement is a module of this folder. The first sentence of its docstring is the
heading of its table, and its one function `measure(*, quick: bool)` gives the rows,
a list of `Record`; `run.py` names the modules in the order of the report.
"""

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass


@dataclass(frozen=True, slots=True)
class Record:
    """One figure; `met` is None where there is no goal."""

    name: str
    figure: float
    unit: str
    goal: str = ""
    met: bool | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Section:
    """The records of one measurement."""

    module: str
    title: str
    records: tuple[Record, ...]


def at_least(
    goal: float, name: str, figure: float, unit: str, note: str = ""
) -> Record:
    """A figure that should be as large as the goal, or larger."""
    return Record(name, figure, unit, f"at least {short(goal)}", figure >= goal, note)


def at_most(goal: float, name: str, figure: float, unit: str, note: str = "") -> Record:
    """A figure that should be as small as the goal, or smaller."""
    return Record(name, figure, unit, f"at most {short(goal)}", figure <= goal, note)


def short(figure: float) -> str:
    """A figure with three digits that count, or all of those before the point.

    >>> [short(x) for x in (0.0371, 1.0, 71.28, 1234.5)]
    ['0.0371', '1', '71.3', '1234']
    """
    if abs(figure) >= 100:
        return f"{figure:.0f}"
    return f"{figure:.3g}"


def markdown(facts: dict[str, str], sections: Sequence[Section]) -> str:
    """The report to read: the machine, then a table a measurement."""
    lines = [f"- {key}: {value}" for key, value in facts.items()]
    for section in sections:
        lines += ["", f"## {section.title}", "", *_table(section.records)]
    return "\n".join(["# Benchmark", "", *lines, ""])


def as_json(facts: dict[str, str], sections: Sequence[Section]) -> str:
    """The same for programs."""
    told = {"machine": facts, "sections": [asdict(section) for section in sections]}
    return json.dumps(told, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def _table(records: Sequence[Record]) -> list[str]:
    met = {None: "", True: "yes", False: "**no**"}
    return [
        "| | figure | unit | goal | met | |",
        "|---|--:|---|---|---|---|",
        *(
            f"| {r.name} | {short(r.figure)} | {r.unit} | {r.goal} | {met[r.met]} "
            f"| {r.note} |"
            for r in records
        ),
    ]
