"""A tree of questions as the engine grows it: the best clue first, everywhere.

Its room goes where people are likely to arrive and an answer tells most.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from heapq import heappop, heappush
from itertools import count

from fieldid.engine import Find, Item, Tables, Verdict, judge
from fieldid.engine.gain import WORTHWHILE, gain
from fieldid.engine.guide import Guide
from fieldid.engine.one import weigh
from fieldid.engine.special import round9
from fieldid.web.asking import Ask, Printed, asks, read, skip
from fieldid.web.prepared import tables_of

QUESTIONS = 100
"""How many questions a tree holds; more would load slowly on a poor line."""
RARE = 0.02
"""An answer less likely than this is not printed."""
LEAST_UNTOLD = 0.1
"""How many are thought to leave a question open, at least: newcomers see less than the
guide's author, and paper must not leave them standing at the first question.
"""


@dataclass(slots=True)
class Bud:
    """A place where the tree may still grow, and how likely one arrives there.

    `branches` has what follows each printed answer, and last what follows where it
    cannot be told.
    """

    item: Item
    tried: tuple[tuple[str, int], ...]
    share: float
    verdict: Verdict
    ask: Ask | None = None
    branches: "tuple[tuple[Printed | None, Bud], ...]" = ()


@dataclass(frozen=True, slots=True)
class _Trial:
    """A question that might be asked: how likely each printed answer is, and the bits
    that asking is expected to tell.
    """

    ask: Ask
    shares: tuple[float, ...]
    bits: float


# One tree takes seconds, and several pages of a guide are printed from it.
@lru_cache(maxsize=64)
def grown(guide: Guide) -> Bud:
    """The guide's tree, to be read and not changed."""
    tables = tables_of(guide)
    root = _bud(tables, Item(), (), 1.0)
    room = QUESTIONS

    def branches(bud: Bud) -> bool:
        nonlocal room
        best = _next(tables, bud) if room else None
        if best is None:
            return False
        _branch(tables, bud, best)
        room -= 1
        return True

    _walk(root, branches)
    return root


def pruned(root: Bud, fits: Callable[[list[Bud]], bool]) -> list[Bud]:
    """The questions of a tree that fit together, the most urgent first."""
    kept: list[Bud] = []

    def stays(bud: Bud) -> bool:
        if bud.ask is None or not fits([*kept, bud]):
            return False
        kept.append(bud)
        return True

    _walk(root, stays)
    return kept


def _walk(root: Bud, goes_on: Callable[[Bud], bool]) -> None:
    """Visits the most urgent bud first, and what follows it where it goes on."""
    order = count()
    waiting = [(_urgency(root), next(order), root)]
    while waiting:
        _, _, bud = heappop(waiting)
        if goes_on(bud):
            for _, child in bud.branches:
                heappush(waiting, (_urgency(child), next(order), child))


def _bud(
    tables: Tables, item: Item, tried: tuple[tuple[str, int], ...], share: float
) -> Bud:
    return Bud(item, tried, share, judge(tables, Find(tables.guide.id, (item,))))


def _urgency(bud: Bud) -> float:
    """The smaller, the sooner: what the next question tells those who get there."""
    bits = max((found.bits for found in bud.verdict.next), default=0.0)
    return -round9(bud.share * bits)


def _branch(tables: Tables, bud: Bud, best: _Trial) -> None:
    """Give a bud its question and a bud for each likely answer."""
    bud.ask = ask = best.ask
    tried = (*bud.tried, (ask.clue.id, ask.place))
    unread = bud.share * max(ask.clue.unreadable, LEAST_UNTOLD)
    seen = bud.share - unread
    bud.branches = (
        *(
            (answer, _bud(tables, read(bud.item, ask, answer.reading), tried, seen * p))
            for answer, p in zip(ask.answers, best.shares, strict=True)
            if p >= RARE
        ),
        (None, _bud(tables, skip(bud.item, ask), tried, unread)),
    )


def _next(tables: Tables, bud: Bud) -> _Trial | None:
    """What is left of a code that is being read, else the best clue's question."""
    known = tables.guide.clues
    begun = [clue for clue, _ in bud.tried]
    ranked = [found.clue for found in bud.verdict.next if found.bits >= WORTHWHILE]
    for clue in dict.fromkeys([*begun, *ranked]):
        trials = [
            _trial(tables, bud, ask)
            for ask in asks(tables, known[tables.places[clue]])
            if (clue, ask.place) not in bud.tried
        ]
        best = max(trials, key=lambda trial: round9(trial.bits), default=None)
        if best and best.bits >= WORTHWHILE:
            return best
    return None


def _trial(tables: Tables, bud: Bud, ask: Ask) -> _Trial:
    after = [
        weigh(tables, read(bud.item, ask, answer.reading)) for answer in ask.answers
    ]
    odds = [math.exp(each.log_evidence - bud.verdict.log_evidence) for each in after]
    shares = tuple(p / sum(odds) for p in odds)
    rows = [
        [p * share for share in (*each.years, each.outside)]
        for p, each in zip(shares, after, strict=True)
    ]
    return _Trial(ask, shares, (1 - ask.clue.unreadable) * gain(rows))
