"""A reading against its clue: whether it fits, and what the engine gets."""

from collections.abc import Mapping
from typing import TypeGuard

from fieldid.engine.find import Measured, Reading
from fieldid.engine.guide import Choice, Clue, Code, Measure, Number
from fieldid.errors import nearest
from fieldid.guides.codes import fold, unfit
from fieldid.guides.refusals import Refusal, figure, quote, refusal

MEASURED = ("value", "error")
"""The keys of a size that is only known with an error."""


def misfit(value: object, clue: Clue) -> Refusal | None:
    """Why a value is not a reading of the clue; None if it is one.

    None ("can't tell") is a reading of every clue.
    """
    if value is None:
        return None
    kind = clue.kind
    if isinstance(kind, Choice):
        return _no_option(value, kind)
    if isinstance(kind, Measure):
        return _no_measure(value, kind)
    if isinstance(kind, Number):
        return _no_number(value, kind)
    if not isinstance(value, str):
        return _wrong(value, "a code in quotes, or null")
    return unfit(fold(value, kind), kind)


def as_read(value: object, clue: Clue) -> Reading:
    """A value that fits, as the engine takes it: numbers as fractions, codes folded,
    a size beside its error as one record.

    A code's case means nothing where its alphabet has capitals alone.
    """
    if isinstance(clue.kind, Code) and isinstance(value, str):
        return fold(value, clue.kind)
    if isinstance(value, Mapping):
        return Measured(float(value["value"]), float(value["error"]))
    if isinstance(value, int | float):
        return float(value)
    return None if value is None else str(value)


def _no_option(value: object, kind: Choice) -> Refusal | None:
    ids = [option.id for option in kind.options]
    if not isinstance(value, str):
        return _wrong(value, nearest("", ids) + ", or null")
    if value in ids:
        return None
    return refusal(
        "unknown-name",
        value=quote(value),
        what="option of this clue",
        nearest=nearest(value, ids),
    )


def _no_measure(value: object, kind: Measure) -> Refusal | None:
    if isinstance(value, Mapping):
        return _no_measured(value, kind)
    if not _is_number(value):
        return _wrong(value, f"a number ({kind.unit}), or null")
    return _no_size(value, kind)


def _no_measured(table: Mapping[str, object], kind: Measure) -> Refusal | None:
    """Why a table is not a size with its standard error."""
    value, error = table.get("value"), table.get("error")
    known = len(table) == len(MEASURED) and all(key in table for key in MEASURED)
    if not known or not _is_number(value):
        return refusal("not-measured")
    if told := _no_size(value, kind):
        return told
    most = kind.high - kind.low
    # An error of 0 is none: one reading is not to be written in two ways.
    if _is_number(error) and 0 < error <= most:
        return None
    return refusal(
        "error-limits", value=quote(error), most=figure(most), unit=kind.unit
    )


def _no_size(value: float, kind: Measure) -> Refusal | None:
    # "Not a number" compares false with everything, so this refuses it too.
    if kind.low <= value <= kind.high:
        return None
    return refusal(
        "outside-range",
        value=quote(value),
        least=figure(kind.low),
        most=figure(kind.high),
        unit=kind.unit,
    )


def _no_number(value: object, kind: Number) -> Refusal | None:
    if not _is_number(value):
        return _wrong(value, "a whole number, or null")
    least, most = kind.first[0][1], kind.last
    # "Not a number" compares false with everything, so this refuses it too.
    if not least <= value <= most:
        return refusal("outside-numbers", value=quote(value), least=least, most=most)
    return None if value == int(value) else _wrong(value, "a whole number, or null")


def _is_number(value: object) -> TypeGuard[int | float]:
    """Whether it is a number; JSON's true and false are none."""
    return isinstance(value, int | float) and not isinstance(value, bool)


def _wrong(value: object, wants: str) -> Refusal:
    return refusal("not-that", value=quote(value), wants=wants)
