"""How many readings and seconds it takes until one answer has 95 %.

The same simulated specimens are walked through in four orders: the engine's own, the
order of the guide as it would be printed, by lot, and the path of scikit-learn's
decision tree trained on other simulated specimens. What is known after each reading
is the engine's posterior in all four, so only the order differs.
"""

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from sklearn.tree import DecisionTreeClassifier

from fieldid.engine import Item, Tables
from fieldid.engine.find import Reading
from fieldid.engine.gain import prospects
from fieldid.engine.guide import Choice, Clue, Guide, Measure
from fieldid.engine.one import Posterior, weigh
from specimens import Specimen, specimen

SURE = 0.95
LEAF = 5

Order = Callable[[Item, Posterior, dict[str, Reading]], Iterator[str]]
"""From what is known and what the specimen would show: clues to look at, best first."""


@dataclass(frozen=True)
class Walk:
    """How one specimen went: was it told with 95 %, and was that the truth?"""

    readings: int
    seconds: float
    sure: bool
    right: bool


def walk(tables: Tables, found: Specimen, order: Order) -> Walk:
    """One specimen, clue by clue, until an answer has 95 % or nothing is left."""
    shown = dict(found.readings)
    item = Item()
    seconds = 0.0
    cost = {clue.id: clue.seconds for clue in tables.guide.clues}
    while True:
        posterior = weigh(tables, item)
        answers = [*posterior.years, posterior.outside]
        best = max(range(len(answers)), key=answers.__getitem__)
        left = next(order(item, posterior, shown), None)
        if answers[best] >= SURE or left is None:
            years = [y.year for y in tables.guide.years] + [None]
            sure = answers[best] >= SURE
            return Walk(len(item.readings), seconds, sure, years[best] == found.year)
        item = Item((*item.readings, (left, shown[left])))
        seconds += cost[left]


def engine_order(tables: Tables) -> Order:
    """Best gain per second first."""

    def order(item, posterior, shown):
        ranked = prospects(
            tables, item, posterior, claimed=None, away=False, without=()
        )
        return (tables.guide.clues[found.k].id for found in ranked)

    return order


def printed_order(guide: Guide) -> Order:
    """As the guide lists them."""
    return lambda item, posterior, shown: _left([c.id for c in guide.clues], item)


def lot_order(guide: Guide, dice: random.Random) -> Order:
    """Any clue that is left."""

    def order(item, posterior, shown):
        ids = [clue.id for clue in guide.clues]
        dice.shuffle(ids)
        return _left(ids, item)

    return order


def tree_order(guide: Guide, examples: list[Specimen]) -> Order:
    """The clues on a trained decision tree's path, then what is left of the guide."""
    columns = [(clue, column) for clue in guide.clues for column in range(_width(clue))]
    table = np.array([_row(guide, dict(e.readings)) for e in examples])
    tree = DecisionTreeClassifier(
        criterion="entropy", min_samples_leaf=LEAF, random_state=0
    ).fit(table, [e.year or 0 for e in examples])
    nodes = tree.tree_

    def order(item, posterior, shown):
        asked = {clue for clue, _ in item.readings}
        row = _row(guide, shown)
        node = 0
        while nodes.children_left[node] != -1:
            clue = columns[nodes.feature[node]][0].id
            if clue not in asked:
                asked.add(clue)
                yield clue
            smaller = row[nodes.feature[node]] <= nodes.threshold[node]
            node = (nodes.children_left if smaller else nodes.children_right)[node]
        yield from _left([c.id for c in guide.clues if c.id not in asked], item)

    return order


def compare(tables: Tables, *, specimens: int, examples: int) -> list[tuple]:
    """Rows of (order, mean readings, mean seconds, share sure, share right)."""
    guide = tables.guide
    dice = random.Random(2)
    trained = [specimen(guide, dice) for _ in range(examples)]
    tried = [specimen(guide, random.Random(10**6 + i)) for i in range(specimens)]
    orders = {
        "best gain per second": engine_order(tables),
        "printed order": printed_order(guide),
        "by lot": lot_order(guide, random.Random(3)),
        "decision tree": tree_order(guide, trained),
    }
    return [
        (name, *_means([walk(tables, found, order) for found in tried]))
        for name, order in orders.items()
    ]


def _means(walks: list[Walk]) -> tuple[float, float, float, float]:
    n = len(walks)
    sure = [w for w in walks if w.sure]
    return (
        sum(w.readings for w in walks) / n,
        sum(w.seconds for w in walks) / n,
        len(sure) / n,
        sum(w.right for w in sure) / max(len(sure), 1),
    )


def _left(ids: list[str], item: Item) -> Iterator[str]:
    asked = [clue for clue, _ in item.readings]
    return (clue for clue in ids if clue not in asked)


def _width(clue: Clue) -> int:
    """Columns of a clue: one an option and one for "can't tell"; a size and whether
    it was taken; one a character.
    """
    kind = clue.kind
    if isinstance(kind, Choice):
        return len(kind.options) + 1
    if isinstance(kind, Measure):
        return 2
    return sum(field.width for field in kind.fields)


def _row(guide: Guide, readings: dict[str, Reading]) -> list[float]:
    return [x for clue in guide.clues for x in _columns(clue, readings[clue.id])]


def _columns(clue: Clue, reading: Reading) -> list[float]:
    kind = clue.kind
    if isinstance(kind, Choice):
        ids = [option.id for option in kind.options]
        return [float(reading == id) for id in ids] + [float(reading is None)]
    if isinstance(kind, Measure):
        return [0.0, 0.0] if reading is None else [float(reading), 1.0]
    if reading is None:
        return [-1.0] * _width(clue)
    return [float(ord(a)) for a in str(reading)]
