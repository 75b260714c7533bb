"""Small guides against the true optimum, by dynamic programming over every state.

A state is what was read so far. From the last readings back to the first, the cost of
each state is the least over its clues of the clue's seconds and the mean cost of the
states that it leads to. The stopping rule is that of the other comparisons.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from statistics import fmean

from fieldid.engine import Item, Tables, prepare
from fieldid.engine.gain import WORTHWHILE, Prospect
from fieldid.engine.guide import Choice
from methods import state, stops
from report import Record, at_most
from turnstone import drawn, turnstone

GOAL = 1.05
DRAWN = 30
"""How many small guides are drawn by lot."""


@dataclass(frozen=True, slots=True)
class Cost:
    """What is expected until the rule says stop."""

    seconds: float
    questions: float


STOPPED = Cost(0.0, 0.0)

Choose = Callable[[Sequence[tuple[Prospect, Cost]]], tuple[Prospect, Cost]]
"""One of the clues that are left, the engine's choice first, each with its cost."""


class Programme:
    """Every state of a guide of choices alone, worked out once."""

    def __init__(self, tables: Tables) -> None:
        assert all(isinstance(clue.kind, Choice) for clue in tables.guide.clues)
        self.tables = tables
        self._state = cache(lambda item: state(tables, item))

    @property
    def states(self) -> int:
        """How many states were worked out."""
        return self._state.cache_info().currsize

    def least(self) -> Cost:
        """The optimum: no way of asking takes fewer seconds."""
        return self._expected(
            lambda found: min(found, key=lambda each: each[1].seconds)
        )

    def ours(self) -> Cost:
        """The engine's choice in every state."""
        return self._follow(
            lambda left: next(each for each in left if each.bits >= WORTHWHILE)
        )

    def fixed(self) -> Cost:
        """The guide's order."""
        return self._follow(lambda left: min(left, key=lambda each: each.k))

    def _follow(self, pick: Callable[[Sequence[Prospect]], Prospect]) -> Cost:
        """What it costs to look at the one clue that is picked in each state."""

        @cache
        def cost(item: Item) -> Cost:
            posterior, left = self._state(item)
            if stops((*posterior.years, posterior.outside), left):
                return STOPPED
            return self._after(item, pick(left), cost)

        return cost(Item())

    def _expected(self, choose: Choose) -> Cost:
        """What it costs if the costs of all clues that are left can be compared."""

        @cache
        def cost(item: Item) -> Cost:
            posterior, left = self._state(item)
            if stops((*posterior.years, posterior.outside), left):
                return STOPPED
            return choose([(each, self._after(item, each, cost)) for each in left])[1]

        return cost(Item())

    def _after(self, item: Item, asked: Prospect, cost: Callable[[Item], Cost]) -> Cost:
        """A clue's own cost, and the mean of what comes after each of its readings."""
        clue = self.tables.guide.clues[asked.k]
        found = Cost(clue.seconds, 1.0)
        for a, share in outcomes(self.tables, asked):
            if share > 0:
                then = cost(self._with(item, asked.k, a))
                found = Cost(
                    found.seconds + share * then.seconds,
                    found.questions + share * then.questions,
                )
        return found

    def _with(self, item: Item, k: int, a: str | None) -> Item:
        """The item with one reading more; readings in the guide's order, so that one
        state is one item however it was reached.
        """
        read = {**dict(item.readings), self.tables.guide.clues[k].id: a}
        ids = [clue.id for clue in self.tables.guide.clues]
        return Item(tuple((id, read[id]) for id in ids if id in read))


def outcomes(tables: Tables, asked: Prospect) -> list[tuple[str | None, float]]:
    """Every answer with its probability; None is "can't tell"."""
    clue = tables.guide.clues[asked.k]
    shares = [sum(row) for row in asked.rows]
    ids = [option.id for option in clue.kind.options]
    total = sum(shares[: len(ids)])
    seen = 1 - clue.unreadable
    return [
        (None, clue.unreadable),
        *((id, seen * share / total) for id, share in zip(ids, shares, strict=False)),
    ]


def measure(*, quick: bool) -> list[Record]:
    programme = Programme(prepare(turnstone()))
    least, ours, fixed = programme.least(), programme.ours(), programme.fixed()
    ratios = [
        found.ours().seconds / found.least().seconds
        for found in _programmes(DRAWN // 6 if quick else DRAWN)
    ]
    name = "invented guide of six clues"
    return [
        Record(
            f"{name}: optimum", least.seconds, "s", note=f"{programme.states} states"
        ),
        Record(f"{name}: ours", ours.seconds, "s"),
        Record(f"{name}: fixed order", fixed.seconds, "s"),
        Record(f"{name}: questions of the optimum", least.questions, ""),
        Record(f"{name}: our questions", ours.questions, ""),
        at_most(GOAL, f"{name}: ours / optimum", ours.seconds / least.seconds, "times"),
        at_most(
            GOAL,
            f"{len(ratios)} guides by lot: ours / optimum, mean",
            fmean(ratios),
            "times",
        ),
        Record("the same, worst", max(ratios), "times"),
    ]


def _programmes(count: int) -> list[Programme]:
    """Those guides by lot whose first state does not already stop."""
    found = [Programme(prepare(drawn(seed))) for seed in range(3 * count)]
    return [each for each in found if each.least().seconds > 0][:count]
