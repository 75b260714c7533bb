"""Which single share moves verdicts most: each one moved, and all finds judged again.

A share of a span is made four times as large and as small, and so are the odds of its
option against all others wherever the span counts (but for the guide's floor). What an
author calls one half may then be anything from a fifth to four fifths: a guess that is
not counted is hardly better. The readings stay as they are.

Nothing is inferred anew: in a posterior that knows each cell with the clue's part
original and with it replaced, a changed likelihood is a factor.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TypeVar

from fieldid.audit.walked import Walked, answer
from fieldid.engine import Tables
from fieldid.engine.choice import ChoiceTable, choice_likelihood, choice_table
from fieldid.engine.guide import Choice, Clue
from fieldid.engine.likelihood import Likelihood
from fieldid.engine.one import Posterior, weigh
from fieldid.engine.special import Vector

_Each = TypeVar("_Each")

UP, DOWN = 4.0, 0.25
FACTORS = (UP, DOWN)


@dataclass(frozen=True, slots=True)
class Handle:
    """A share of the guide: places of the clue, of its option, and of the span."""

    k: int
    o: int
    s: int


@dataclass(frozen=True, slots=True)
class Moved:
    """What a share does to some verdicts, added up: by how much the probability of what
    was told changes, and how many then tell something else.
    """

    change: float = 0.0
    others: int = 0

    def __add__(self, more: "Moved") -> "Moved":
        return Moved(self.change + more.change, self.others + more.others)


Key = tuple[Handle, float]
"""A share, and what it is multiplied by."""


def handles(tables: Tables) -> tuple[Handle, ...]:
    """All shares of spans, in guide order."""
    return tuple(
        Handle(k, o, s)
        for k, clue in enumerate(tables.guide.clues)
        if isinstance(clue.kind, Choice)
        for o, option in enumerate(clue.kind.options)
        for s in range(len(option.seen))
    )


class Shaken:
    """The tables of a guide with one share moved, made when they are first needed."""

    def __init__(self, tables: Tables) -> None:
        self._tables = tables
        self._made: dict[tuple[Handle, float, int], ChoiceTable] = {}

    def moves(self, found: Walked) -> Iterator[tuple[Key, Moved]]:
        """What each share of each clue that was read does to the verdict, both ways;
        shares that are not named do nothing.
        """
        posterior = weigh(self._tables, found.item)
        readings = dict(found.item.readings)
        for handle in handles(self._tables):
            reading = readings.get(self._tables.guide.clues[handle.k].id)
            if reading is not None:
                now = choice_likelihood(
                    self._own(handle.k, found.item.member), str(reading)
                )
                for factor in FACTORS:
                    table = self._moved(handle, factor, found.item.member)
                    then = choice_likelihood(table, str(reading))
                    shares = self._shares(posterior, handle.k, now, then)
                    yield (handle, factor), self._move(found, shares)

    def _own(self, k: int, member: str | None) -> ChoiceTable:
        table = self._tables.clues[self._tables.members.index(member)][k]
        assert isinstance(table, ChoiceTable)
        return table

    def _moved(self, handle: Handle, factor: float, member: str | None) -> ChoiceTable:
        """Members for whom the same spans count share one table."""
        key = (handle, factor, id(self._own(handle.k, member)))
        if key not in self._made:
            guide = self._tables.guide
            clue = with_share(guide.clues[handle.k], handle, factor)
            assert isinstance(clue.kind, Choice)
            self._made[key] = choice_table(
                guide, clue, clue.kind, self._tables.cells, member
            )
        return self._made[key]

    def _shares(
        self, posterior: Posterior, k: int, now: Likelihood, then: Likelihood
    ) -> Vector:
        """The model years and outside, with another likelihood of one reading."""
        p = self._tables.part_of[k]
        original, replaced = posterior.original[p], posterior.replaced[p]
        later = _ratio(then.rep, now.rep)
        weights = [
            x * _ratio(b, a) + y * later
            for x, y, a, b in zip(original, replaced, now.orig, then.orig, strict=False)
        ]
        years = [sum(weights[start:stop]) for start, stop in self._tables.stretches]
        outside = posterior.outside
        total = sum(years) + outside
        return [each / total for each in (*years, outside)]

    def _move(self, found: Walked, shares: Vector) -> Moved:
        first, last = found.told
        p = sum(shares[first : last + 1])
        told, _ = answer(self._tables, shares)
        return Moved(abs(p - found.p), int(told != found.told))


def with_share(clue: Clue, handle: Handle, factor: float) -> Clue:
    """The clue with one share moved; a share weighs, so it may be more than 1."""
    kind = clue.kind
    assert isinstance(kind, Choice)
    option = kind.options[handle.o]
    span = option.seen[handle.s]
    seen = _with(option.seen, handle.s, replace(span, share=factor * span.share))
    options = _with(kind.options, handle.o, replace(option, seen=seen))
    return replace(clue, kind=replace(kind, options=options))


def _with(row: tuple[_Each, ...], i: int, other: _Each) -> tuple[_Each, ...]:
    return (*row[:i], other, *row[i + 1 :])


def _ratio(then: float, now: float) -> float:
    """What cannot be stays so: its weight is 0 whatever it is multiplied by."""
    return then / now if now > 0 else 0.0
