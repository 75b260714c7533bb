"""A small invented guide as records: every kind of clue, a chain of three parts.

Small enough to be enumerated in a blink. `random_find` draws readings without any
regard to likelihood, so that contradictions are common.
"""

import random
from dataclasses import replace

from fieldid.engine.find import Claim, Find, Item
from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Condition,
    Field,
    Guide,
    GuideFlag,
    Measure,
    Members,
    ModelYear,
    Option,
    Part,
    Size,
    Span,
)

LETTERS = "ABCDEFGHJKLMX"


def month(year: int, number: int) -> int:
    """The build month counted as the engine does."""
    return 12 * year + number - 1


def span(first: int, last: int, **rest) -> Span:
    return Span((first, last), **rest)


RINGS = Clue(
    "rings",
    "collar",
    "collar rings",
    Choice(
        (
            Option("green", "green", ("navy",), (span(1951, 1952, share=0.8),)),
            Option(
                "navy",
                "navy",
                (),
                (span(1952, 1954, until=month(1953, 6), fade=3),),
            ),
            Option("red", "red", (), (span(1954, 1954, since=month(1953, 10)),)),
            Option("none", "no rings"),
        ),
        (("none", 0.8), ("red", 0.1)),
    ),
    "What colour are the collar rings?",
    misread=0.03,
    seconds=8,
    unreadable=0.2,
)
SCORING = Clue(
    "scoring",
    "head",
    "face scoring",
    Choice(
        (
            Option("dots", "dots", (), (span(1951, 1954, share=0.5),)),
            Option("lines", "lines", (), (span(1951, 1954),)),
        )
    ),
    "Dots or lines?",
    seen_from="away",
    seconds=3,
)
NUMERAL = Clue(
    "numeral",
    "head",
    "sole numeral",
    Choice(
        (
            Option("plain", "plain", (), (span(1951, 1952, excluded=("W",)),)),
            Option("boxed", "boxed", (), (span(1953, 1954),)),
            Option("letter", "a letter", (), (span(1951, 1954, members=("W",)),)),
        )
    ),
    "What does the sole numeral look like?",
)
PAD = Clue(
    "pad",
    "head",
    "pad thickness",
    Measure(
        "mm",
        3.0,
        12.0,
        0.15,
        (
            Size((1951, 1952), 6.0, 0.25),
            Size((1953, 1953), 7.2, 0.3, excluded=("W",)),
        ),
    ),
    "How thick is the pad?",
    needs="callipers",
    seconds=40,
)
LENGTH = Clue(
    "length",
    "shaft",
    "club length",
    Measure("mm", 800.0, 1000.0, 0.0, (Size((1951, 1953), 940.0, 4.0, ("7",)),)),
    "How long is it?",
)
STAMP = Clue(
    "stamp",
    "head",
    "hosel letters",
    Code(
        (
            Field("month", "month", 1, LETTERS, 0.02),
            Field("digit", "year", 1, "0123456789"),
            Field(
                "pattern",
                "model-year",
                2,
                "0123456789",
                0.01,
                ((1951, "17"), (1952, "18"), (1953, "21")),
            ),
            Field("works", "plain", 1, "AB"),
        )
    ),
    "What is stamped on the hosel?",
    unreadable=0.3,
    seconds=15,
)
BAND = Clue(
    "band",
    "grip",
    "grip band letter",
    Code(
        (
            Field(
                "year",
                "year-letter",
                1,
                "PQRST",
                0.0,
                ((1951, "P"), (1952, "Q"), (1953, "R"), (1954, "S")),
            ),
        )
    ),
    "What letter is on the grip band?",
)

GUIDE = Guide(
    1,
    "ashlar-kittiwake",
    "Ashlar 'Kittiwake' forged irons",
    "Ashlar Forge",
    "golf irons",
    True,
    "Invented.",
    "Invented.",
    "2026-01-01",
    "iron",
    0.01,
    0.02,
    0.02,
    (
        ModelYear(1951, month(1950, 9), month(1951, 10), 1.5),
        ModelYear(1952, month(1951, 9), month(1952, 8)),
        ModelYear(1953, month(1952, 10), month(1953, 12), 0.4),
        ModelYear(1954, month(1954, 1), month(1954, 12)),
    ),
    (
        Part("grip", "grip", 0.3, "shaft", 0.7),
        Part("head", "head", 0.02),
        Part("collar", "collar", 0.1, "shaft", 0.85),
        Part("shaft", "shaft", 0.2, "head", 0.5),
    ),
    (RINGS, SCORING, NUMERAL, PAD, LENGTH, STAMP, BAND),
    Members(("7", "W"), ("7",)),
    (
        GuideFlag((Condition(clue="rings", among=("none",)),), "No rings.", "Why?"),
        GuideFlag(
            (
                Condition(clue="stamp", among=("X????",)),
                Condition(years=(1951, 1952)),
            ),
            "A special order.",
        ),
        GuideFlag((Condition(clue="pad", under=5.0),), "Worn thin."),
        GuideFlag((Condition(clue="length", over=960.0),), "Longer than made."),
        GuideFlag((Condition(part="shaft", replaced_over=0.6),), "A later shaft."),
    ),
    ("Have the joint checked.",),
)


NAMES = (("5", "5 iron"), ("6", "6 iron"), ("7", "7 iron"), ("W", "wedge"))
SET = replace(
    GUIDE,
    parts=tuple(
        replace(part, whole_set={"grip": 0.3, "shaft": 0.05}.get(part.id, 0.0))
        for part in GUIDE.parts
    ),
    members=Members(("5", "6", "7", "W"), ("5", "6", "7"), 0.04, (("W", 0.4),), NAMES),
)
"""The same with a set of four, and parts that may be replaced on all of it."""


def one_of(guide: Guide, **changes) -> Guide:
    """The guide with some fields changed."""
    return replace(guide, **changes)


def find(readings=(), gone=(), member=None, claim=None) -> Find:
    """A find of one item under the small guide; readings as a dict or pairs."""
    pairs = tuple(readings.items() if isinstance(readings, dict) else readings)
    return Find(
        GUIDE.id,
        (Item(pairs, tuple(gone), member),),
        Claim(claim) if isinstance(claim, int) else claim,
    )


def bag(*told, claim=None) -> Find:
    """A find of a set; each item as (member, readings) or (member, readings, gone)."""
    items = [
        Item(tuple(readings.items()), tuple(*gone), member)
        for member, readings, *gone in told
    ]
    return Find(SET.id, tuple(items), Claim(claim) if isinstance(claim, int) else claim)


def random_find(seed: int) -> Find:
    """Readings drawn by lot, some unread, some parts gone."""
    dice = random.Random(seed)
    readings = {
        clue.id: _random_reading(clue, dice)
        for clue in GUIDE.clues
        if dice.random() < 0.7
    }
    gone = [part.id for part in GUIDE.parts if dice.random() < 0.1]
    for clue in GUIDE.clues:
        if clue.part in gone:
            readings.pop(clue.id, None)
    return find(readings, gone, dice.choice((None, "7", "W")))


def _random_reading(clue: Clue, dice: random.Random):
    if isinstance(clue.kind, Choice):
        return dice.choice(clue.kind.options).id
    if isinstance(clue.kind, Measure):
        return round(dice.uniform(clue.kind.low, clue.kind.high), 1)
    return "".join(
        dice.choice(field.alphabet + "??")
        for field in clue.kind.fields
        for _ in range(field.width)
    )
