"""Ways to go about an object: what to look at next, and what to believe.

All stop by one rule: their own belief gives an answer 95 %, or nothing is left of
which it expects 0.02 bits. A decision tree also stops where it ends.
"""

import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from sklearn.tree import DecisionTreeClassifier

from fieldid.engine import Item, Tables
from fieldid.engine.find import Reading
from fieldid.engine.gain import WORTHWHILE, Prospect, prospects
from fieldid.engine.guide import Guide
from fieldid.engine.one import Posterior, weigh
from naive import naive
from rows import owners, row
from scores import place
from specimens import Specimen

SURE = 0.95
LEAF = 5

Order = Callable[[Item, list[Prospect], dict[str, Reading]], Iterator[str]]
"""From what is known, what is still worth it, and what would be read: clues to look
at, best first.
"""


@dataclass(frozen=True, slots=True)
class Walk:
    """How one specimen went: what was looked at, and what is believed of each model
    year and of outside in the end.
    """

    readings: int
    seconds: float
    answers: Sequence[float]
    truth: int


class Method:
    """An order of looking together with a belief, which remembers its states."""

    def __init__(self, tables: Tables, order: Order, belief=weigh) -> None:
        self.tables = tables
        self._order = order
        self._belief = belief
        self._known: dict[Item, tuple[Posterior, list[Prospect]]] = {}

    def walk(self, found: Specimen) -> Walk:
        """One specimen, clue by clue, until the rule says stop."""
        shown = dict(found.readings)
        item, seconds = Item(), 0.0
        cost = {clue.id: clue.seconds for clue in self.tables.guide.clues}
        while True:
            posterior, left = self._state(item)
            answers = (*posterior.years, posterior.outside)
            if stops(answers, left):
                truth = place(self.tables.guide, found)
                return Walk(len(item.readings), seconds, answers, truth)
            clue = next(self._order(item, left, shown))
            item = Item((*item.readings, (clue, shown[clue])))
            seconds += cost[clue]

    def _state(self, item: Item) -> tuple[Posterior, list[Prospect]]:
        if item not in self._known:
            self._known[item] = state(self.tables, item, self._belief)
        return self._known[item]


def state(tables: Tables, item: Item, belief=weigh) -> tuple[Posterior, list[Prospect]]:
    """What is believed, and every clue that is left, the most bits a second first."""
    posterior = belief(tables, item)
    return posterior, prospects(
        tables, item, posterior, claimed=None, away=False, without=()
    )


def stops(answers: Sequence[float], left: Sequence[Prospect]) -> bool:
    """The one rule for all."""
    return max(answers) >= SURE or all(each.bits < WORTHWHILE for each in left)


def best(tables: Tables) -> Method:
    """Ours: the most bits a second."""
    return Method(tables, by_gain(tables))


def without_parts(tables: Tables) -> Method:
    """Naive Bayes, by its own bits a second."""
    return Method(tables, by_gain(tables), naive)


def printed(tables: Tables) -> Method:
    """As the guide lists its clues."""
    ids = [clue.id for clue in tables.guide.clues]
    return Method(tables, lambda item, left, shown: unread(ids, item))


def by_lot(tables: Tables, dice: random.Random) -> Method:
    """Any clue that is left."""

    def order(item, left, shown):
        ids = [clue.id for clue in tables.guide.clues]
        dice.shuffle(ids)
        return unread(ids, item)

    return Method(tables, order)


def along(tables: Tables, tree: DecisionTreeClassifier) -> Method:
    """The clues on a trained tree's path, then what is left of the guide."""
    guide = tables.guide
    ids = [clue.id for clue in guide.clues]

    def order(item, left, shown):
        asked = [clue for clue, _ in item.readings]
        for node in path(tree, row(guide, shown)):
            clue = owner(guide, tree, node)
            if clue and clue not in asked:
                yield clue
        yield from unread(ids, item)

    return Method(tables, order)


def by_gain(tables: Tables) -> Order:
    """The clue of the most bits a second that is worth it."""
    ids = [clue.id for clue in tables.guide.clues]
    return lambda item, left, shown: (
        ids[each.k] for each in left if each.bits >= WORTHWHILE
    )


def unread(ids: Sequence[str], item: Item) -> Iterator[str]:
    """Those of some clues that were not read."""
    asked = [clue for clue, _ in item.readings]
    return (clue for clue in ids if clue not in asked)


def trained(guide: Guide, examples: Sequence[Specimen]) -> DecisionTreeClassifier:
    """scikit-learn's decision tree, from specimens with their truth."""
    table = np.array([row(guide, dict(each.readings)) for each in examples])
    truth = [place(guide, each) for each in examples]
    return DecisionTreeClassifier(
        criterion="entropy", min_samples_leaf=LEAF, random_state=0
    ).fit(table, truth)


class Alone:
    """A decision tree by itself: the shares of its examples are what it believes."""

    def __init__(self, tables: Tables, tree: DecisionTreeClassifier) -> None:
        self._guide = tables.guide
        self._tree = tree
        self._seconds = {clue.id: clue.seconds for clue in tables.guide.clues}

    def walk(self, found: Specimen, sure: float = SURE) -> Walk:
        """One specimen, from the root on until a node is sure, or a leaf."""
        shown = dict(found.readings)
        asked: dict[str, float] = {}
        for node in path(self._tree, row(self._guide, shown)):
            answers = self._shares(node)
            clue = owner(self._guide, self._tree, node)
            if max(answers) >= sure or clue is None:
                break
            asked[clue] = self._seconds[clue]
        truth = place(self._guide, found)
        return Walk(len(asked), sum(asked.values()), answers, truth)

    def _shares(self, node: int) -> list[float]:
        """The shares at a node, with one example more that is shared as at the root,
        so that nothing is called impossible.
        """
        answers = [0.0] * (len(self._guide.years) + 1)
        count = self._tree.tree_.n_node_samples[node]
        here, root = (self._tree.tree_.value[n][0] for n in (node, 0))
        for answer, own, all_over in zip(self._tree.classes_, here, root, strict=True):
            answers[answer] = float((own * count + all_over) / (count + 1))
        return answers


def path(tree: DecisionTreeClassifier, numbers: Sequence[float]) -> Iterator[int]:
    """The nodes that a row of numbers passes, root and leaf included."""
    nodes, node = tree.tree_, 0
    while node != -1:
        yield node
        smaller = np.float32(numbers[nodes.feature[node]]) <= nodes.threshold[node]
        node = int((nodes.children_left if smaller else nodes.children_right)[node])


def owner(guide: Guide, tree: DecisionTreeClassifier, node: int) -> str | None:
    """The clue that a node asks for; None at a leaf."""
    feature = tree.tree_.feature[node]
    return None if feature < 0 else owners(guide)[feature]
