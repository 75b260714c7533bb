"""One find's model years and parts: the engine beside pyAgrum, a general library.

All three answer the same questions, on the same network and readings, and must agree
to 1e-9. Python's engine and the library run in one process; the times are those of
the processor. The library is asked in the faster of its two ways, and all its tables
stand ready; so goals are for choices, whose tables stand ready in the engine as well.
Of sizes and codes the engine first works out how likely they are.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.engine import Find, Item, Tables, prepare
from fieldid.engine.guide import Choice, Guide
from fieldid.engine.one import Posterior, weigh
from fieldid.guides.load import load
from fieldid.paths import RULES
from library import ENGINES, Library
from machine import least
from node import answers, asked
from report import Record, at_least, at_most
from specimens import look, specimen
from turnstone import turnstone

SHIPPED = "wrackham-teale-dotterel"
FINDS = 40
SEEN = 0.5
"""The share of the clues that is read."""
MICRO = 1e6
TURNS = 5
"""How often all three are timed in turn. A machine that others share may be half as
fast for a while, and whichever ran then would look slow; so the fewest seconds count.
"""
AGREE = 1e-9
PYTHON_GOAL, JAVASCRIPT_GOAL = 2, 40

Answer = list[float]
"""Model years, outside, then parts replaced."""


@dataclass(frozen=True)
class Query:
    """A guide with the finds that all are asked about."""

    name: str
    guide: Guide
    items: list[Item]
    goals: bool


@dataclass
class Standing:
    """A query with all that stands ready before it is asked."""

    query: Query

    def __post_init__(self) -> None:
        self.tables = prepare(self.query.guide)
        self.library = Library(self.query.guide, self.query.items)


@dataclass(frozen=True)
class Run:
    """Seconds for all finds, each way, and what the phone's engine told."""

    lazy: float
    shenoy: float
    own: float
    phone: float
    told: list[Answer]


def measure(*, quick: bool) -> list[Record]:
    turns, rounds = (1, 5) if quick else (TURNS, 10)
    shipped = load(RULES / f"{SHIPPED}.toml")
    ready = [
        Standing(query("small guide", turnstone())),
        Standing(query("shipped guide", shipped)),
        Standing(query("with sizes and codes", shipped, whole=True)),
    ]
    runs = [run(ready, rounds) for _ in range(turns)]
    return [
        record
        for each, *found in zip(ready, *runs, strict=True)
        for record in compared(each, found)
    ]


def query(name: str, guide: Guide, *, whole: bool = False) -> Query:
    """A guide with finds that were drawn from it; without `whole`, of choices alone."""
    dice = random.Random(1)
    kinds = {clue.id: clue.kind for clue in guide.clues}
    items = []
    for _ in range(FINDS):
        item = look(guide, specimen(guide, dice), dice, seen=SEEN, lost=0.0)
        read = [r for r in item.readings if whole or isinstance(kinds[r[0]], Choice)]
        items.append(replace(item, readings=tuple(read)))
    return Query(name, guide, items, goals=not whole)


def run(ready: Sequence[Standing], rounds: int) -> list[Run]:
    """All three once, one after the other, for each query."""
    phones = twin([each.query for each in ready], rounds)
    return [
        Run(*library_seconds(each, rounds), own_seconds(each, rounds), *phone)
        for each, phone in zip(ready, phones, strict=True)
    ]


def compared(standing: Standing, runs: Sequence[Run]) -> list[Record]:
    """Times a find, ratios, and how far the three are apart at most."""
    query, tables = standing.query, standing.tables
    theirs = library_answers(standing.library, query, tables)
    ours = [answer(weigh(tables, item)) for item in query.items]
    apart = max(
        abs(a - b)
        for each in (ours, *(run.told for run in runs))
        for one, other in zip(each, theirs, strict=True)
        for a, b in zip(one, other, strict=True)
    )
    lazy = min(run.lazy for run in runs)
    shenoy = min(run.shenoy for run in runs)
    own = min(run.own for run in runs)
    phone = min(run.phone for run in runs)
    best = min(lazy, shenoy)
    each = MICRO / len(query.items)
    return [
        Record(f"{query.name}: library, lazy propagation", lazy * each, "µs a find"),
        Record(f"{query.name}: library, Shafer-Shenoy", shenoy * each, "µs a find"),
        Record(f"{query.name}: Python", own * each, "µs a find"),
        Record(f"{query.name}: JavaScript", phone * each, "µs a find"),
        *ratios(query, best / own, best / phone),
        at_most(AGREE, f"{query.name}: furthest apart", apart, "probability"),
    ]


def ratios(query: Query, python: float, javascript: float) -> list[Record]:
    """How many times as fast as the library."""
    found = (
        ("Python", python, PYTHON_GOAL),
        ("JavaScript", javascript, JAVASCRIPT_GOAL),
    )
    return [
        at_least(goal, f"{query.name}: {language} beside the library", times, "times")
        if query.goals
        else Record(f"{query.name}: {language} beside the library", times, "times")
        for language, times, goal in found
    ]


def answer(posterior: Posterior) -> Answer:
    """What the engine says of one find."""
    parts = [sum(cells) for cells in posterior.replaced]
    return [*posterior.years, posterior.outside, *parts]


def library_answers(
    library: Library, query: Query, tables: Tables, kind=ENGINES[0]
) -> list[Answer]:
    """What the library says of each find, its cells added up to years."""
    engine = library.engine(kind)
    found = []
    for item in query.items:
        cells, *parts = library.ask(engine, library.evidence(item))
        years = [sum(cells[start:stop]) for start, stop in tables.stretches]
        found.append([*years, cells[-1], *(replaced for _, replaced in parts)])
    return found


def library_seconds(standing: Standing, rounds: int) -> list[float]:
    """Seconds for all finds, by each of the library's ways."""
    library = standing.library
    evidence = [library.evidence(item) for item in standing.query.items]
    engines = [library.engine(kind) for kind in ENGINES]
    return [
        least(rounds, lambda e=engine: [library.ask(e, each) for each in evidence])
        for engine in engines
    ]


def own_seconds(standing: Standing, rounds: int) -> float:
    """Seconds for all finds, by the engine in Python."""
    tables, items = standing.tables, standing.query.items
    return least(rounds, lambda: [answer(weigh(tables, item)) for item in items])


def twin(queries: list[Query], rounds: int) -> list[tuple[float, list[Answer]]]:
    """Seconds for all finds in Node, and what it says of each."""
    asks = [
        asked(
            query.guide,
            [Find(query.guide.id, (item,)) for item in query.items],
            "weigh",
        )
        for query in queries
    ]
    return [(told["seconds"], told["posteriors"]) for told in answers(asks, rounds)]
