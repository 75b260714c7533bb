"""A guide as one tree of questions on paper, where a browser runs no scripts."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count

from fieldid.engine import Verdict
from fieldid.engine.flags import is_replaced
from fieldid.engine.gain import WORTHWHILE
from fieldid.engine.guide import Clue, Guide
from fieldid.engine.words import capital, listed
from fieldid.web.asking import Ask, Printed
from fieldid.web.growing import Bud, grown

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


def tree(guide: Guide) -> Question | Leaf:
    """The guide's tree of questions."""
    return _node(guide, grown(guide), count(1))


def clues(node: Question | Leaf) -> Iterator[Clue]:
    """The clues of all questions, from the top."""
    if isinstance(node, Question):
        yield node.ask.clue
        for answer in node.answers:
            yield from clues(answer.then)


def _node(guide: Guide, bud: Bud, numbers: Iterator[int]) -> Question | Leaf:
    """The bud with all that grew on it, numbered from the top."""
    if bud.ask is None:
        return Leaf(capital(bud.verdict.say), tuple(_more(guide, bud.verdict)))
    number = next(numbers)
    answers = tuple(
        Answer(printed, _node(guide, child, numbers)) for printed, child in bud.branches
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
