"""An audit while it runs: bit by bit, in one process or several, with the same figures.

Whoever runs it takes one step after another and may stop at any; what was done until
then is kept.
"""

import multiprocessing
import signal
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from functools import partial
from typing import Any

from fieldid.audit.shares import FACTORS, Key, Moved, Shaken, handles
from fieldid.audit.walked import Walked, walked
from fieldid.audit.worlds import WORLDS, nth
from fieldid.engine import Guide, Tables, prepare
from fieldid.engine.range import brackets
from fieldid.learn.walk import Known

BIT = 5
"""Specimens that are walked in one step. It must not depend on the processes: sums
of other pieces would end in other last digits.
"""
SAMPLE = 300
"""So many verdicts are judged again for every share."""
SEED = 1
SPECIMENS, OF_MANY_YEARS = 1000, 200
"""Specimens that are enough; where a guide brackets, walks are long."""

Team = Callable[[Callable[..., Any], Iterable[Any]], Iterator[Any]]
"""Does something with each of some tasks, in their order."""


def usual(guide: Guide) -> int:
    """How many specimens are drawn where nobody says."""
    return OF_MANY_YEARS if brackets(guide) else SPECIMENS


class Run:
    """The audit of a guide: `done` of `total` pieces of work, and what came of them.

    `walks` has the specimens of each world in turn; `moves` what each share does, by
    the factor that it is moved by, added up over the first of the guide's own.
    """

    def __init__(
        self, guide: Guide, *, specimens: int, seed: int = SEED, processes: int = 1
    ) -> None:
        self.tables = prepare(guide)
        self.specimens = specimens
        self.seed = seed
        self.walks: tuple[list[Walked], ...] = tuple([] for _ in WORLDS)
        self.moves = {key: Moved() for key in _keys(self.tables)}
        self.judged = 0
        self.total = len(WORLDS) * specimens + min(specimens, SAMPLE)
        self._processes = processes

    @property
    def done(self) -> int:
        """How many specimens were walked or judged again."""
        return sum(map(len, self.walks)) + self.judged

    @property
    def whole(self) -> bool:
        """Whether all of it was done."""
        return self.done == self.total

    def steps(self) -> Iterator[int]:
        """Does all of it, and says after every step how much was done."""
        with _team(self.tables, self._processes) as work:
            yield from self._walking(work)
            yield from self._shaking(work)

    def _walking(self, work: Team) -> Iterator[int]:
        for w, walks in enumerate(self.walks):
            tasks = [(self.seed, w, some) for some in _pieces(self.specimens)]
            for found in work(Bench.walk, tasks):
                walks += found
                yield self.done

    def _shaking(self, work: Team) -> Iterator[int]:
        sample = self.walks[0][:SAMPLE]
        tasks = [[sample[i] for i in some] for some in _pieces(len(sample))]
        for task, found in zip(tasks, work(Bench.shake, tasks), strict=True):
            for key, moved in found.items():
                self.moves[key] += moved
            self.judged += len(task)
            yield self.done


class Bench:
    """What one process works with; what it has worked out once it keeps."""

    def __init__(self, guide: Guide) -> None:
        self._tables = prepare(guide)
        self._worlds = [prepare(world.guide(guide)) for world in WORLDS]
        self._shaken = Shaken(self._tables)
        self._known: Known = {}

    def walk(self, task: tuple[int, int, range]) -> list[Walked]:
        """Specimens of a world, judged by the guide as it is."""
        seed, w, some = task
        return [
            walked(self._tables, nth(self._worlds[w], seed, i), self._known)
            for i in some
        ]

    def shake(self, task: list[Walked]) -> dict[Key, Moved]:
        """What shares do to the verdicts on some specimens."""
        found: dict[Key, Moved] = {}
        for each in task:
            for key, moved in self._shaken.moves(each):
                found[key] = found.get(key, Moved()) + moved
        return found


def _keys(tables: Tables) -> list[Key]:
    return [(handle, factor) for handle in handles(tables) for factor in FACTORS]


def _pieces(count: int) -> list[range]:
    return [range(i, min(i + BIT, count)) for i in range(0, count, BIT)]


@contextmanager
def _team(tables: Tables, processes: int) -> Iterator[Team]:
    """This process alone, or others that have nothing of its threads."""
    if processes == 1:
        bench = Bench(tables.guide)
        yield lambda do, tasks: map(partial(do, bench), tasks)
        return
    pool = ProcessPoolExecutor(
        processes,
        mp_context=multiprocessing.get_context("spawn"),
        initializer=_begin,
        initargs=(tables.guide,),
    )
    try:
        yield lambda do, tasks: pool.map(partial(_there, do), tasks)
    finally:
        pool.shutdown(cancel_futures=True)


_benches: list[Bench] = []
"""The bench of a process that was begun for this."""


def _begin(guide: Guide) -> None:
    # Whoever stops the audit from the keyboard stops the first process alone.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _benches.append(Bench(guide))


def _there(do: Callable[..., Any], task: Any) -> Any:
    return do(_benches[0], task)
