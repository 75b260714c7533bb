"""Small invented guides of choices alone, of which every state can be worked out."""

import random

from fieldid.engine.guide import Clue, Guide, Option
from make import choice, guide, model_year, option, part, span

PARTS = (
    part("head", 0.02),
    part("shaft", 0.25),
    part("collar", 0.1, follows="shaft", share=0.85),
    part("grip", 0.4, follows="shaft", share=0.7),
)


def turnstone() -> Guide:
    """Five years of irons with six things to look at, on four parts."""
    return guide(
        choice(
            "rings",
            option("green", span((1951, 1952), share=0.8)),
            option("navy", span((1952, 1954), until="1953-06", fade=3)),
            option("red", span((1954, 1955))),
            option("none"),
            part="collar",
            replacement=(("none", 0.8), ("red", 0.1)),
            seconds=8,
            unreadable=0.1,
        ),
        choice(
            "scoring",
            option("dots", span((1951, 1953))),
            option("lines", span((1953, 1955))),
            seconds=3,
        ),
        choice(
            "numeral",
            option("plain", span((1951, 1952))),
            option("boxed", span((1953, 1954))),
            option("barred", span((1955, 1955)), span((1951, 1951), share=0.1)),
            seconds=5,
            misread=0.04,
        ),
        choice(
            "label",
            option("oval", span((1951, 1952))),
            option("shield", span((1953, 1955))),
            option("strip", span((1954, 1955), share=0.5)),
            part="shaft",
            seconds=6,
            unreadable=0.3,
        ),
        choice(
            "cap",
            option("domed", span((1951, 1953), share=0.9)),
            option("flat", span((1953, 1955))),
            option("hollow", span((1955, 1955), share=0.4)),
            part="grip",
            seconds=4,
            unreadable=0.2,
        ),
        choice(
            "sole",
            option("wide", span((1951, 1951)), span((1954, 1954))),
            option("narrow", span((1952, 1953)), span((1955, 1955))),
            seconds=20,
            misread=0.1,
        ),
        id="turnstone",
        title="Turnstone",
        years=tuple(
            model_year(year, f"{year - 1}-09", f"{year}-09", volume=volume)
            for year, volume in zip(range(1951, 1956), (1, 1.5, 2, 1, 0.6), strict=True)
        ),
        parts=PARTS,
    )


def drawn(seed: int, years: int = 4, clues: int = 4) -> Guide:
    """A guide by lot: what was made when, how sure that is, how long a look takes."""
    dice = random.Random(seed)
    return guide(
        *(_clue(dice, k, years) for k in range(clues)),
        id=f"drawn-{seed}",
        years=tuple(
            model_year(1951 + y, volume=dice.choice((0.5, 1, 2))) for y in range(years)
        ),
        parts=PARTS,
    )


def _clue(dice: random.Random, k: int, years: int) -> Clue:
    return choice(
        f"clue-{k}",
        *(_option(dice, f"option-{o}", years) for o in range(dice.choice((2, 3)))),
        part=dice.choice(PARTS).id,
        seconds=dice.choice((3, 5, 8, 12, 20, 30)),
        unreadable=dice.choice((0, 0.1, 0.3)),
        misread=dice.choice((0.01, 0.03, 0.1)),
    )


def _option(dice: random.Random, id: str, years: int) -> Option:
    first = 1951 + dice.randrange(years)
    last = min(first + dice.randrange(years), 1950 + years)
    return option(id, span((first, last), share=dice.choice((0.5, 0.8, 1.0))))
