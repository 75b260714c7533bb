"""Brute force of offers: every cell with every state of every part and every stray,
term by term from the model page.

What is said of the object comes from `oracle`; amounts and decisions are worked out
here a second time, in fractions, from the records alone.
"""

import math
from collections import defaultdict
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

import oracle
from fieldid.engine.guide import Guide, Prices

Worth = dict[int, float]
"""Probability of each amount in hundredths."""


@dataclass(frozen=True)
class Sums:
    """How probable what was read is, and how it is shared out over the amounts."""

    evidence: float
    worth: Worth

    @property
    def mean(self) -> float:
        return sum(x * p for x, p in self.worth.items())

    def at(self, share: float) -> int:
        run = 0.0
        for amount in sorted(self.worth):
            run += self.worth[amount]
            if run >= share - 1e-10:
                return amount
        raise AssertionError(run)

    def better(self, keep: float, price: float) -> float:
        """What the better of buying and leaving it is worth, knowing this."""
        return max(keep * self.mean - price, 0.0)

    def knowing(self, keep: float, price: float) -> float:
        """The same, for somebody who is told the amount first."""
        return sum(p * max(keep * x - price, 0.0) for x, p in self.worth.items())


def half_up(x: Fraction) -> int:
    return math.floor(x + Fraction(1, 2))


def cents(x: float) -> int:
    return half_up(100 * Fraction(str(x)))


def takes(off, worth: int) -> int:
    """An amount and a share of a worth, no more than all of it."""
    share = half_up(Fraction(str(off.share)) * worth)
    return min(cents(off.amount) + share, worth)


@dataclass(frozen=True)
class Priced:
    """For one place: the whole, what an item counts for, by part what it takes off, and
    what a stray does.
    """

    whole: int
    portion: int
    offs: dict[str, int]
    stray: int

    def lost(self, replaced) -> int:
        """What these replaced parts take off together, no more than all of the item."""
        return min(sum(self.offs.get(p, 0) for p in replaced), self.portion)


def priced(guide: Guide, prices: Prices, items, condition: str, year) -> Priced:
    """The amounts for one place."""
    n, many = len(items), len(items) > 1 and prices.set
    whole = _whole(guide, prices, items, condition, year)
    step = 1
    if n > 1:
        scale = (f * 10**e for e in range(12) for f in (1, 2, 5))
        step = next(s for s in scale if whole <= 1000 * s)
    portion = whole // n // step * step
    stray = takes(prices.set.stray, portion) if many else 0
    offs = _offs(prices, portion, step)
    return Priced(whole, portion, offs, half_up(Fraction(stray, step)) * step)


def _whole(guide: Guide, prices: Prices, items, condition: str, year) -> int:
    many = len(items) > 1 and prices.set
    table = prices.set if many else prices
    worth = cents(dict(table.worth).get(year, table.other))
    worth *= 1 if many else len(items)
    here = [member for _, _, member in items]
    lacking = [m for m in guide.members.usual if m not in here] if many else []
    lost = [takes(prices.set.missing, worth) for m in lacking if not apart(guide, m)]
    lost += [takes(off, worth) for name, off in prices.condition if name == condition]
    return max(worth - sum(lost), 0)


def _offs(prices: Prices, portion: int, step: int) -> dict:
    offs = {}
    for each in prices.parts:
        offs[each.part] = takes(each.off, portion)
        if each.put_right is not None:
            offs[each.part] = min(offs[each.part], cents(each.put_right))
    return {p: half_up(Fraction(x, step)) * step for p, x in offs.items()}


def apart(guide: Guide, member: str) -> bool:
    return dict(guide.members.stray_for).get(member, 0.0) > guide.members.stray


def one(guide: Guide, item, prices: Prices, condition="") -> Sums:
    """One object, (readings, gone, member)."""
    readings, gone, member = item
    read = oracle._tabled(guide, readings, gone, member)
    found: Worth = defaultdict(float)
    for c in [*oracle.cells(guide), None]:
        sheet = priced(guide, prices, [item], condition, c and c[0])
        for states in product((False, True), repeat=len(guide.parts)):
            replaced = dict(zip((p.id for p in guide.parts), states, strict=True))
            weight = guide.outside if c is None else (1 - guide.outside) * c[2]
            weight *= oracle._parts(guide, replaced) * all(replaced[p] for p in gone)
            weight *= math.prod(table[c, replaced[part]] for part, table in read)
            lost = sheet.lost(p for p, was in replaced.items() if was)
            found[sheet.whole - lost] += weight
    return _sums(found)


def several(guide: Guide, items, prices: Prices, condition="") -> Sums:
    """A set of such items: also every world, and who is a stray."""
    spots = [*oracle.cells(guide), None]
    prior = {
        c: guide.outside if c is None else (1 - guide.outside) * c[2] for c in spots
    }
    sheet = {c: priced(guide, prices, items, condition, c and c[0]) for c in spots}
    found: Worth = defaultdict(float)
    for world in product((False, True), repeat=len(guide.parts)):
        whole = dict(zip((p.id for p in guide.parts), world, strict=True))
        given = oracle._worlds(guide, whole) * oracle._from_sources(guide, whole, items)
        if given == 0:
            continue
        by_state = [_states(guide, whole, item, spots) for item in items]
        as_stray = [
            sum(prior[c] * p for c in spots for p in each[c].values())
            for each in by_state
        ]
        for c in spots:
            here = sheet[c]
            choices = []
            for item, states, strayed in zip(items, by_state, as_stray, strict=True):
                s = oracle._stray(guide, item[2])
                lost = [
                    (here.lost(replaced), (1 - s) * p)
                    for replaced, p in states[c].items()
                ]
                calm = apart(guide, item[2])
                lost.append((0 if calm else here.stray, s * strayed))
                choices.append(lost)
            for chosen in product(*choices):
                weight = prior[c] * given * math.prod(p for _, p in chosen)
                found[here.whole - sum(lost for lost, _ in chosen)] += weight
    return _sums(found)


def _states(guide: Guide, whole: dict, item, spots) -> dict:
    """By cell the likelihood of each combination of replaced parts."""
    readings, gone, member = item
    free = {
        clue.id: readings[clue.id]
        for clue in guide.clues
        if readings.get(clue.id) is not None and not whole[clue.part]
    }
    read = oracle._tabled(guide, free, gone, member)
    found: dict = {c: {} for c in spots}
    for replaced, weight in oracle.states(guide, whole, gone):
        key = tuple(p for p, was in replaced.items() if was)
        for c in spots:
            found[c][key] = weight * math.prod(t[c, replaced[p]] for p, t in read)
    return found


def _sums(found: Worth) -> Sums:
    total = sum(found.values())
    return Sums(total, {x: p / total for x, p in found.items()})
