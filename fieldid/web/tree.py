"""A guide as one tree of questions on paper, grown by the engine.

For a phone whose browser runs no scripts. The best clue comes first everywhere, and
the page's room goes where people are likely to arrive and an answer tells most.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from heapq import heappop, heappush
from itertools import count

from fieldid.engine import Find, Item, Tables, Verdict, judge, prepare
from fieldid.engine.flags import is_replaced
from fieldid.engine.gain import WORTHWHILE, gain
from fieldid.engine.guide import Clue, Guide
from fieldid.engine.one import weigh
from fieldid.engine.special import round9
from fieldid.engine.words import capital, listed
from fieldid.web.asking import Ask, Printed, asks, read, skip

QUESTIONS = 100
"""How many questions a page holds; more would load slowly on a poor line."""
RARE = 0.02
"""An answer less likely than this is not printed."""
LEAST_UNTOLD = 0.1
"""How many are thought to leave a question open, at least: newcomers see less than the
guide's author, and paper must not leave them standing at the first question.
"""
NAMED_NEXT = 2
"""How many clues a cut branch names as worth looking at."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """Where the tree ends: the verdict, and what goes with it, in sentences."""

    say: str
    more: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer (None: it cannot be told) and what comes after it."""

    printed: Printed | None
    then: "Question | Leaf"


@dataclass(frozen=True, slots=True)
class Question:
    """A question with its likely answers; `rest` if others were left out."""

    number: int
    ask: Ask
    answers: tuple[Answer, ...]
    rest: bool


@dataclass(frozen=True, slots=True)
class _Trial:
    """A question that might be asked: how likely each printed answer is, and the bits
    that asking is expected to tell.
    """

    ask: Ask
    shares: tuple[float, ...]
    bits: float


@dataclass(slots=True)
class _Bud:
    """A place where the tree may still grow, and how likely one arrives there."""

    item: Item
    tried: tuple[tuple[str, int], ...]
    share: float
    verdict: Verdict
    ask: Ask | None = None
    branches: "tuple[tuple[Printed | None, _Bud], ...]" = ()


# One tree takes seconds, and the build prints each page twice to learn its hash.
@lru_cache(maxsize=64)
def tree(guide: Guide) -> Question | Leaf:
    """The guide's tree of questions."""
    tables = prepare(guide)
    root = _bud(tables, Item(), (), 1.0)
    order = count()
    waiting = [(_urgency(root), next(order), root)]
    asked = 0
    while waiting and asked < QUESTIONS:
        _, _, bud = heappop(waiting)
        _branch(tables, bud)
        asked += bud.ask is not None
        for _, child in bud.branches:
            heappush(waiting, (_urgency(child), next(order), child))
    return _grown(guide, root, count(1))


def clues(node: Question | Leaf) -> Iterator[Clue]:
    """The clues of all questions, from the top."""
    if isinstance(node, Question):
        yield node.ask.clue
        for answer in node.answers:
            yield from clues(answer.then)


def _bud(
    tables: Tables, item: Item, tried: tuple[tuple[str, int], ...], share: float
) -> _Bud:
    return _Bud(item, tried, share, judge(tables, Find(tables.guide.id, (item,))))


def _urgency(bud: _Bud) -> float:
    """The smaller, the sooner: what the next question tells those who get there."""
    bits = max((found.bits for found in bud.verdict.next), default=0.0)
    return -round9(bud.share * bits)


def _branch(tables: Tables, bud: _Bud) -> None:
    """Give a bud its next question and a bud for each likely answer, if it can."""
    best = _next(tables, bud)
    if best is None:
        return
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


def _next(tables: Tables, bud: _Bud) -> _Trial | None:
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


def _trial(tables: Tables, bud: _Bud, ask: Ask) -> _Trial:
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


def _grown(guide: Guide, bud: _Bud, numbers: Iterator[int]) -> Question | Leaf:
    """The bud with all that grew on it, numbered from the top."""
    if bud.ask is None:
        return Leaf(capital(bud.verdict.say), tuple(_more(guide, bud.verdict)))
    number = next(numbers)
    answers = tuple(
        Answer(printed, _grown(guide, child, numbers))
        for printed, child in bud.branches
    )
    return Question(number, bud.ask, answers, len(answers) <= len(bud.ask.answers))


def _more(guide: Guide, verdict: Verdict) -> Iterator[str]:
    if verdict.runner_up:
        yield f"Then {verdict.runner_up}."
    for part, state in zip(guide.parts, verdict.replaced, strict=True):
        if is_replaced(state.probability):
            yield f"{capital(part.name)} {state.say}."
    worth = [found.clue for found in verdict.next if found.bits >= WORTHWHILE]
    names = [clue.name for clue in guide.clues if clue.id in worth[:NAMED_NEXT]]
    yield verdict.exhausted or f"Worth a look next: {listed(names)}."
