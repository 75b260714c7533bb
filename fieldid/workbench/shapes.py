"""What can be drawn, in words for authors: each shape with what is particular to it."""

from functools import lru_cache

from fieldid.draw import SHAPES
from fieldid.draw.params import (
    Check,
    Number,
    OneOf,
    Several,
    Stamped,
    Words,
    checks,
    needed,
)


@lru_cache(maxsize=1)
def shapes() -> tuple[tuple[str, str], ...]:
    """Each shape and what may stand below it."""
    return tuple((name, _told(name)) for name in SHAPES)


def _told(name: str) -> str:
    must = needed(SHAPES[name])
    return "; ".join(
        f"{key}{' (needed)' if key in must else ''}: {words(check)}"
        for key, check in checks(SHAPES[name]).items()
    )


def words(check: Check) -> str:
    """What a parameter may be.

    >>> words(Several(OneOf(("green", "navy")), most=5))
    'with commas, up to 5 of: green, navy'
    """
    match check:
        case OneOf():
            return ", ".join(map(str, check.words))
        case Number():
            return f"a number from {check.low:g} to {check.high:g}"
        case Stamped():
            return f"stamped letters, up to {check.most}"
        case Words():
            return f"words, up to {check.most} letters"
        case Several():
            return f"with commas, up to {check.most} of: {words(check.each)}"
    return "anything"
