"""Sizes that somebody types with their unit."""

import re

from fieldid.workbench.fields.kinds import TWO, MisreadError, ends
from fieldid.workbench.forms.form import Opened, Slot

SIZES = ("mean", "sd", "wear", "range")
"""What of a measure is in its unit."""


def is_unit(typed: str, unit: str) -> bool:
    """Whether a unit is the clue's own, or none was typed.

    >>> is_unit("MM.", "mm"), is_unit("", "mm"), is_unit("cm", "mm")
    (True, True, False)
    """
    return typed.rstrip(".").casefold() in ("", unit.rstrip(".").casefold())


def not_in(typed: str, unit: str) -> str:
    """What is told of a size in another unit."""
    return f"{typed} is not in {unit}. Work it out in {unit}, and type the number."


def without_unit(opened: Opened, slot: Slot, typed: str) -> str:
    """A size of a measure without the measure's own unit; a MisreadError if it is in
    another one.
    """
    units = [each for each in opened.slots if each.path == ("unit",)]
    unit = opened.sent(units[0]) if units else ""
    if not unit or slot.path[-1] not in SIZES:
        return typed
    if slot.entry.kind is TWO:
        return " to ".join(_without(unit, end) for end in ends(typed))
    return _without(unit, typed)


def _without(unit: str, typed: str) -> str:
    found = _WITH_UNIT.fullmatch(typed)
    if not found:
        return typed
    if not is_unit(found["unit"], unit):
        raise MisreadError(not_in(typed, unit))
    return found["size"]


_WITH_UNIT = re.compile(
    r"(?P<size>-?[0-9.,].*?[0-9]|[0-9])\s*(?P<unit>[^\d\s.,-][^\d]*)"
)
