"""Prices and deals by lot, and the finds of the shared offers, the same every time."""

import random
from collections.abc import Iterator
from dataclasses import replace

import bags
import kittiwake
from fieldid.engine import Find, Guide
from fieldid.engine.deal import Deal
from fieldid.engine.guide import Off, PartPrice, Prices, SetPrices

Case = tuple[Find, Prices, Deal]


def prices_by_lot(guide: Guide, dice: random.Random) -> Prices:
    """A price for most model years and parts; for the whole set now and then none."""
    years = [y.year for y in guide.years if dice.random() < 0.8]
    parts = [p.id for p in guide.parts if dice.random() < 0.8]
    own = dice.random() < 0.5
    return Prices(
        currency=dice.choice(("EUR", "GBP", "")),
        date="" if own else "2026-02-01",
        source="" if own else "Invented.",
        worth=tuple((y, round(dice.uniform(5, 300), 2)) for y in years),
        other=dice.choice((0.0, 12.5)),
        condition=(("worn", Off(share=0.2)), ("poor", Off(15.0, 0.3))),
        parts=tuple(_part(id, dice) for id in parts),
        set=_set(years, dice) if guide.members and dice.random() < 0.8 else None,
    )


def deal_by_lot(dice: random.Random, *, near: float) -> Deal:
    """A deal in which about as much is asked as the find may be worth."""
    return Deal(
        asked=dice.choice((None, round(near * dice.uniform(0.2, 1.5), 2), near)),
        margin=dice.choice((0.0, 25.0, 33.3)),
        condition=dice.choice(("", "worn", "poor")),
        costs=dice.choice((0.0, 7.5)),
        hour=dice.choice((0.0, 40.0, 4000.0)),
    )


def guides() -> list[Guide]:
    """The guide of the tests, and small ones by lot with sets of three members."""
    plain = tuple(replace(clue, picture=None) for clue in kittiwake.GUIDE.clues)
    return [replace(kittiwake.GUIDE, clues=plain), *map(bags.small_guide, range(8))]


def cases(guide: Guide) -> Iterator[Case]:
    """Finds under a guide with prices and a deal each; of a set one, two and all."""
    dice = random.Random(guide.id)
    for seed in range(4 if guide.id.startswith("by-lot") else 12):
        for find in _finds(guide, seed):
            near = dice.choice((20.0, 80.0, 250.0))
            yield find, prices_by_lot(guide, dice), deal_by_lot(dice, near=near)


def _finds(guide: Guide, seed: int) -> list[Find]:
    if not guide.id.startswith("by-lot"):
        return [kittiwake.random_find(seed)]
    items = bags.small_set(guide, 100 + seed)
    sizes = (1, 3) if seed % 2 else (2,)
    return [Find(guide.id, items[:size]) for size in sizes]


def _part(id: str, dice: random.Random) -> PartPrice:
    off = dice.choice((Off(share=0.4), Off(12.0), Off(3.5, 0.1)))
    return PartPrice(id, off, dice.choice((None, 9.0)))


def _set(years: list[int], dice: random.Random) -> SetPrices:
    return SetPrices(
        worth=tuple((y, round(dice.uniform(50, 3000), 2)) for y in years),
        other=30.0,
        missing=dice.choice((Off(), Off(share=0.1))),
        stray=dice.choice((Off(20.0), Off(share=0.6))),
    )
