"""The one shape that all kinds of clues answer in; a leaf.

Model page: "Clues: how likely a reading is".
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.special import Vector, dot


@dataclass(frozen=True, slots=True)
class Likelihood:
    """How likely a reading is: in each cell while the part is original, when it
    is replaced, and on an object outside the guide.

    `by_source` is how likely it is from each source that replaced parts come from,
    of which `rep` is the weighted mean; only sets need it.
    """

    orig: Vector
    rep: float
    out: float
    by_source: Vector = ()


def applies(
    members: tuple[str, ...], excluded: tuple[str, ...], member: str | None
) -> bool:
    """Whether a span or size counts for this set member (None: not known)."""
    return (not members or member in members) and member not in excluded


def halves(spread: Vector) -> Vector:
    """Weights of the sources of a replaced part when the guide does not say: half the
    line's own mixture over all years, half anything.
    """
    return [*(0.5 * p for p in spread), 0.5]


def gathered(
    which: Sequence[int],
    sources: Vector,
    original: Vector,
    replaced: float,
    outside: float,
    whole: Vector,
) -> list[float]:
    """How probable it is that each class of cells is shown, and last anything.

    `which` is each cell's class, `original` the probability of each cell with the part
    original, `replaced` that of the part being replaced, `outside` that of none of
    these, and `whole` of each source with the part replaced on the whole set.
    """
    mass = [replaced * w for w in sources]
    for k, p in [*zip(which, original, strict=True), *enumerate(whole)]:
        mass[k] += p
    mass[-1] += outside
    return mass


def blend(sources: Vector, by_source: Vector) -> float:
    """What is shown if the source is not known."""
    return dot(sources, by_source)
