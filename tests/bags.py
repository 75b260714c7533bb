"""Small sets by lot: guides of a few cells with every kind of clue, and finds under
them, drawn without any regard to likelihood.

Small enough that all of a set can be enumerated: see `oracle.set_truth`.
"""

import random
from dataclasses import replace

from fieldid.engine.find import Item
from fieldid.engine.guide import (
    Choice,
    Clue,
    Field,
    Guide,
    Measure,
    Members,
    ModelYear,
    Number,
    Option,
    Part,
    Size,
    layouts,
)
from make import choice, code, guide, measure, month, span

MEMBERS = ("5", "6", "W")
LETTERS = "ABCDEFGHJKLMX"


def small_guide(seed: int) -> Guide:
    """Two or three model years of a few months, three parts, five clues."""
    dice = random.Random(seed)
    years = tuple(
        _year(1950 + i, dice, volume=dice.choice((0.5, 1.0, 2.0)))
        for i in range(dice.choice((2, 3)))
    )
    return guide(
        _option_clue("face", "head", dice),
        _code_clue(dice.choice(("head", "shaft")), dice),
        _option_clue("label", "shaft", dice),
        _size_clue(dice.choice(("shaft", "grip")), dice),
        _option_clue("cap", "grip", dice),
        id=f"by-lot-{seed}",
        floor=dice.choice((0.01, 0.1)),
        outside=dice.choice((0.02, 0.2)),
        years=years,
        parts=_parts(dice),
        members=Members(
            MEMBERS,
            stray=dice.choice((0.0, 0.04, 0.3)),
            stray_for=(("W", dice.choice((0.2, 1.0))),),
        ),
    )


def small_set(guide: Guide, seed: int) -> tuple[Item, ...]:
    """Items with readings by lot, some unread, some parts gone."""
    dice = random.Random(seed)
    return tuple(_item(guide, member, dice) for member in MEMBERS)


def settled(guide: Guide) -> Guide:
    """The guide with neither strays nor replacement on a whole set."""
    parts = tuple(replace(part, whole_set=0.0) for part in guide.parts)
    return replace(guide, parts=parts, members=Members(MEMBERS, stray=0.0))


def any_reading(clue: Clue, dice: random.Random) -> str | float:
    """A reading that fits the clue, whatever the guide says."""
    kind = clue.kind
    if isinstance(kind, Choice):
        return dice.choice(kind.options).id
    if isinstance(kind, Measure):
        return round(dice.uniform(kind.low, kind.high), 1)
    if isinstance(kind, Number):
        return float(dice.randint(kind.first[0][1], kind.last))
    known = layouts(kind)
    fields = (dice.choice(known) if len(known) > 1 else known[0]).fields
    return "".join(
        dice.choice(field.alphabet + "??")
        for field in fields
        for _ in range(field.width)
    )


def _item(guide: Guide, member: str, dice: random.Random) -> Item:
    parts = guide.parts
    gone = tuple(p.id for p in parts if dice.random() < 0.15 and _can_go(guide, p))
    readings = tuple(
        (clue.id, any_reading(clue, dice) if dice.random() < 0.8 else None)
        for clue in guide.clues
        if clue.part not in gone and dice.random() < 0.7
    )
    return Item(readings, gone, member)


def _can_go(guide: Guide, part: Part) -> bool:
    """Whether there are readings that forbid it: one that is gone and never replaced
    by itself was replaced on all, where what is never misread must be the same.
    """
    sure = any(clue.part == part.id and clue.misread == 0 for clue in guide.clues)
    return part.replaced > 0 or (part.whole_set > 0 and not sure)


def _year(year: int, dice: random.Random, *, volume: float) -> ModelYear:
    opens = month(f"{year - 1}-10") + dice.randint(0, 3)
    return ModelYear(year, opens, opens + dice.randint(0, 2), volume)


def _parts(dice: random.Random) -> tuple[Part, ...]:
    """A grip that follows a shaft that may follow the head, in an order by lot."""
    above = dice.choice((None, "head"))
    rates = (0.0, 0.1, 0.4)
    parts = [
        Part("head", "head", dice.choice(rates), None, 0.0, dice.choice((0.0, 0.1))),
        Part("shaft", "shaft", 0.2, above, 0.5 if above else 0.0, dice.choice(rates)),
        Part("grip", "grip", dice.choice(rates), "shaft", 0.7, dice.choice(rates)),
    ]
    dice.shuffle(parts)
    return tuple(parts)


def _option_clue(id: str, part: str, dice: random.Random) -> Clue:
    """Three options, the first for the early years, one for a member alone."""
    options = (
        Option("a", "a", ("b",), (span((1950, 1950), share=0.8),)),
        Option("b", "b", (), (span((1951, 1952), until="1951-01", fade=2),)),
        Option("c", "c", (), (span((1950, 1952), members=(dice.choice(MEMBERS),)),)),
    )
    given = dice.choice(((), (("c", 0.7), ("a", 0.2))))
    return choice(
        id, *options, part=part, replacement=given, misread=dice.choice((0.0, 0.05))
    )


def _size_clue(part: str, dice: random.Random) -> Clue:
    sizes = (Size((1950, 1950), 40.0, 3.0), Size((1951, 1951), 50.0, 4.0, ("5", "6")))
    return measure("length", *sizes, part=part, wear=dice.choice((0.0, 2.0)))


def _code_clue(part: str, dice: random.Random) -> Clue:
    digit = Field("y", "year", 1, "0123456789", dice.choice((0.0, 0.1)))
    table = ((1950, "P"), (1951, "Q"))
    pattern = Field("p", "model-year", 1, "PQRO", 0.0, table)
    letter = Field("m", "month", 1, LETTERS, 0.03)
    return code("stamp", *dice.sample((digit, pattern, letter), 2), part=part)
