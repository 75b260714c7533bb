"""The one shape that all kinds of clues answer in; a leaf.

Model page: "Clues: how likely a reading is".
"""

from dataclasses import dataclass

from fieldid.engine.special import Vector


@dataclass(frozen=True, slots=True)
class Likelihood:
    """How likely a reading is: in each cell while the part is original, when it
    is replaced, and on an object outside the guide.
    """

    orig: Vector
    rep: float
    out: float


def applies(
    members: tuple[str, ...], excluded: tuple[str, ...], member: str | None
) -> bool:
    """Whether a span or size counts for this set member (None: not known)."""
    return (not members or member in members) and member not in excluded


def blend(orig: Vector, spread: Vector, out: float) -> float:
    """What a replaced part shows when the guide does not say: half the line's own
    mixture over all years, half anything.
    """
    return 0.5 * sum(p * x for p, x in zip(spread, orig, strict=True)) + 0.5 * out
