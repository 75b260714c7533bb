"""The open table of animals as a guide, and the game of asking for an animal's type.

Types stand where model years do and traits are choices; nothing is misread, gone or
replaced, so that only the order of the questions is on trial.
"""

import csv
import io
import math
from collections import Counter
from dataclasses import dataclass

from scipy.stats import entropy
from sklearn.tree import DecisionTreeClassifier

from fieldid.engine import Find, Guide, Item, Tables, Verdict, judge
from fieldid.engine.guide import Clue, ModelYear, Option, Span
from make import choice, guide, model_year, part
from opendata import ZOO, text

FIRST = 1901
"""The year that stands for the commonest type; the next one is the next."""
TINY = 1e-6

Animal = dict[str, str]
"""Its name, its type, and what it shows of each trait."""


@dataclass(frozen=True)
class Game:
    """What was asked for one animal, and the type that was told in the end."""

    asked: tuple[str, ...]
    told: str


def animals() -> tuple[Animal, ...]:
    """All of the table; below the names two rows say what the columns are."""
    head, _, _, *rows = csv.reader(io.StringIO(text(ZOO)), delimiter="\t")
    return tuple(dict(zip(head, row, strict=True)) for row in rows if row)


ANIMALS = animals()
TRAITS = tuple(column for column in ANIMALS[0] if column not in ("name", "type"))
COUNTS = Counter(animal["type"] for animal in ANIMALS)
YEARS = {kind: FIRST + i for i, (kind, _) in enumerate(COUNTS.most_common())}
TYPES = {year: kind for kind, year in YEARS.items()}
VALUES = {trait: sorted({each[trait] for each in ANIMALS}) for trait in TRAITS}


def by_share() -> Guide:
    """How many of each type show a trait is known, as a census of a line tells it."""
    years = [model_year(y, volume=COUNTS[kind]) for kind, y in YEARS.items()]
    return _guide(years, _shares)


def by_animal() -> Guide:
    """Each animal is known, as a build month of its type."""
    years = []
    opens = 12 * FIRST
    for kind, year in YEARS.items():
        closes = opens + COUNTS[kind] - 1
        years.append(ModelYear(year, opens, closes, volume=COUNTS[kind]))
        opens = closes + 1
    return _guide(years, _months)


def _guide(years: list[ModelYear], seen) -> Guide:
    return guide(
        *(_clue(trait, seen) for trait in TRAITS),
        years=tuple(years),
        parts=(part(replaced=0.0),),
        floor=TINY,
        outside=TINY,
    )


def _clue(trait: str, seen) -> Clue:
    options = [Option(value, value, (), seen(trait, value)) for value in VALUES[trait]]
    return choice(trait, *options, misread=TINY)


def _shares(trait: str, value: str) -> tuple[Span, ...]:
    of = Counter(each["type"] for each in ANIMALS if each[trait] == value)
    return tuple(Span((YEARS[k], YEARS[k]), share=n / COUNTS[k]) for k, n in of.items())


def _months(trait: str, value: str) -> tuple[Span, ...]:
    in_order = sorted(ANIMALS, key=lambda each: YEARS[each["type"]])
    months = [12 * FIRST + i for i, a in enumerate(in_order) if a[trait] == value]
    return tuple(Span(since=t, until=t) for t in months)


def play(tables: Tables, animal: Animal) -> Game:
    """Always the question that ranks first, until none is worth asking."""
    item = Item()
    verdict = _judged(tables, item)
    while not verdict.exhausted and len(item.readings) < len(TRAITS):
        trait = verdict.next[0].clue
        item = Item((*item.readings, (trait, animal[trait])))
        verdict = _judged(tables, item)
    told = max(verdict.model_years, key=lambda pair: pair[1])[0]
    return Game(tuple(trait for trait, _ in item.readings), TYPES[told])


def _judged(tables: Tables, item: Item) -> Verdict:
    return judge(tables, Find(tables.guide.id, (item,)))


def type_bits() -> float:
    """The entropy of the type: the fewest yes-or-no questions that could do."""
    return float(entropy(list(COUNTS.values()), base=2))


def answer_bits(game: Game) -> float:
    """The most that the answers to a game's questions can tell."""
    return sum(math.log2(len(VALUES[trait])) for trait in game.asked)


def tree_questions(*, one_by_one: bool) -> list[int]:
    """How many questions scikit-learn's tree asks for each animal until all are told;
    it asks "at most so many legs?", or `one_by_one` "six legs?".
    """
    rows = [_one_hot(each) if one_by_one else _numbers(each) for each in ANIMALS]
    tree = DecisionTreeClassifier(criterion="entropy", random_state=0)
    tree.fit(rows, [animal["type"] for animal in ANIMALS])
    # A path has the leaf on it too.
    return [int(path.sum()) - 1 for path in tree.decision_path(rows)]


def _numbers(animal: Animal) -> list[int]:
    return [int(animal[trait]) for trait in TRAITS]


def _one_hot(animal: Animal) -> list[bool]:
    return [animal[trait] == v for trait in TRAITS for v in VALUES[trait]]
