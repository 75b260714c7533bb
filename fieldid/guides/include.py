"""What a guide takes over from others: their clues with the parts that these are on,
their red flags, and their cautions if it has none of its own.

Another guide is checked by itself, so that what comes from it may speak of years that
this guide does not have.
"""

from collections.abc import Container, Iterator, Sequence
from dataclasses import replace

from fieldid import draw
from fieldid.engine.guide import Clue, Guide, GuideFlag, Part
from fieldid.guides.refusals import Finding, quote, refusal

WHOLE = "whole"
"""The spot of a drawing for what has no spot of its own in it."""


def clashes(clues: Sequence[str], others: Sequence[Guide]) -> Iterator[Finding]:
    """Ids that stand for two clues: `clues` are the guide's own, `others` what its
    `include` names. The same clue may come by two ways.
    """
    known: dict[str, Clue | None] = dict.fromkeys(clues)
    for place, other in enumerate(others):
        for clue in other.clues:
            taken = _taken(clue, other)
            before = known.setdefault(clue.id, taken)
            if before is None or replace(before, spot=taken.spot) != taken:
                told = refusal("include-clash", value=quote(clue.id))
                yield ("include", place), told


def joined(guide: Guide, others: Sequence[Guide]) -> Guide:
    """The guide with what the others know behind its own: clues, the parts that it
    lacks, and flags; their cautions in place of none.
    """
    clues = {clue.id: clue for clue in guide.clues}
    parts = {part.id: part for part in guide.parts}
    for other in others:
        for clue in other.clues:
            taken = replace(_taken(clue, other), spot=_spot(clue.spot, guide.drawing))
            clues.setdefault(clue.id, taken)
            for part in _chain(clue.part, other.parts):
                parts.setdefault(part.id, part)
    flags = [flag for other in others for flag in other.flags if _fits(flag, parts)]
    cautions = [caution for other in others for caution in other.cautions]
    return replace(
        guide,
        clues=tuple(clues.values()),
        parts=tuple(parts.values()),
        flags=tuple(dict.fromkeys((*guide.flags, *flags))),
        # Its own are about handling just this object.
        cautions=guide.cautions or tuple(dict.fromkeys(cautions)),
    )


def _fits(flag: GuideFlag, parts: Container[str]) -> bool:
    """Whether the parts that the flag speaks of are there; its clues always are."""
    return all(when.part is None or when.part in parts for when in flag.when)


def _taken(clue: Clue, other: Guide) -> Clue:
    """The clue with the source of its own guide, if it names none itself."""
    return replace(clue, source=clue.source or other.source)


def _spot(spot: str, drawing: str) -> str:
    """The spot, or in a drawing without it the whole object."""
    spots = draw.SCENES[drawing]
    return next((each for each in (spot, WHOLE) if each in spots), spots[0])


def _chain(part: str, parts: Sequence[Part]) -> list[Part]:
    """The part, what it follows and so on."""
    by_id = {each.id: each for each in parts}
    chain = [by_id[part]]
    while (above := chain[-1].follows) is not None:
        chain.append(by_id[above])
    return chain
