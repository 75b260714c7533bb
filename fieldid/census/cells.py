"""One field of a census and what it means, both ways: text to record, record to text.

`as_text` undoes what `figure` and `years` do, so that a row that is written is read as
it was meant.
"""

import math
import re

from fieldid.census.refusals import refusal
from fieldid.census.specimens import HOWS
from fieldid.engine.find import Measured, Reading
from fieldid.engine.guide import Clue, Guide, Measure, Number
from fieldid.errors import nearest
from fieldid.guides.refusals import Refusal, quote

CANNOT_TELL = "?"
PLUS_MINUS = "±"
FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet may take for a formula if a field begins with it."""
GUARD = "'"
"""What is written before such a field; spreadsheets take it as the sign of text."""
SLACK = 0.015
"""Thirds are written as .33: so far the probabilities of a year may be off 1."""
WANTS_YEARS = "a model year, as 1956, or several, as '1956 0.7; 1957 0.3', or nothing"


def years(
    text: str, guide: Guide
) -> tuple[tuple[tuple[int, float], ...], Refusal | None]:
    """The model years that a specimen may be of, each with its probability, or why
    the text does not say them; none where nothing is known of the year.
    """
    if text in ("", CANNOT_TELL):
        return (), None
    found: dict[int, float] = {}
    pieces = text.split(";")
    for piece in pieces:
        match = _YEAR.fullmatch(piece.strip())
        if not match or (match[2] is None and len(pieces) > 1):
            return (), refusal("years", value=quote(text), wants=WANTS_YEARS)
        year, share = int(match[1]), float(match[2] or 1)
        known = [y.year for y in guide.years]
        if year not in known:
            right = min(known, key=lambda y: abs(y - year))
            return (), refusal("years", value=quote(text), wants=right)
        if year in found:
            return (), refusal("year-twice", value=year)
        found[year] = share
    total = math.fsum(found.values())
    if abs(total - 1) > SLACK:
        return (), refusal("years-sum", value=f"{total:.6g}")
    kept = [(year, share / total) for year, share in sorted(found.items()) if share > 0]
    return tuple(kept), None


def years_text(given: tuple[tuple[int, float], ...]) -> str:
    """Model years as they are written.

    >>> years_text(((1956, 0.7), (1957, 0.3))), years_text(((1956, 1.0),))
    ('1956 0.7; 1957 0.3', '1956')
    """
    if len(given) == 1:
        return str(given[0][0])
    return "; ".join(f"{year} {share:.6g}" for year, share in given)


def how(text: str) -> tuple[tuple[str, str], Refusal | None]:
    """The word for how it was confirmed and what else was said of it, or why not."""
    word, _, note = (piece.strip() for piece in text.partition(":"))
    if word not in HOWS:
        told = refusal("how", value=quote(word), nearest=nearest(word, HOWS))
        return ("", ""), told
    if word == "other" and not note:
        return ("", ""), refusal("how-other")
    return (word, note), None


def reading(text: str, clue: Clue) -> tuple[object, Refusal | None]:
    """What stands in a clue's column as a find would have it, or why it cannot be."""
    if text == CANNOT_TELL:
        return None, None
    match clue.kind:
        case Measure():
            size = SIZE.fullmatch(text)
            if size and size[2]:
                return {"value": float(size[1]), "error": float(size[2])}, None
            if size:
                return float(size[1]), None
        case Number():
            if _DIGITS.fullmatch(text):
                return int(text), None
        case _:
            return text, None
    return None, refusal("no-number", value=quote(text), wants=_wants(clue))


def reading_text(value: Reading) -> str:
    """A reading as it is written.

    >>> reading_text(None), reading_text(6.0), reading_text(Measured(6.1, 0.2))
    ('?', '6', '6.1±0.2')
    """
    if value is None:
        return CANNOT_TELL
    if isinstance(value, Measured):
        return f"{value.value:.12g}{PLUS_MINUS}{value.error:.12g}"
    return value if isinstance(value, str) else f"{value:.12g}"


def guarded(text: str) -> str:
    """A field that no spreadsheet takes for a formula.

    >>> guarded("=1+1"), guarded("'tis"), guarded("C 24")
    ("'=1+1", "''tis", 'C 24')
    """
    return GUARD + text if text.startswith((*FORMULA, GUARD)) else text


def unguarded(text: str) -> str:
    """The field as it was before it was guarded.

    >>> unguarded("'=1+1"), unguarded("''tis"), unguarded("'tis")
    ('=1+1', "'tis", "'tis")
    """
    inner = text.removeprefix(GUARD)
    return inner if inner != text and inner.startswith((*FORMULA, GUARD)) else text


def _wants(clue: Clue) -> str:
    if isinstance(clue.kind, Measure):
        return f"a size in {clue.kind.unit}, or one with its error as 6.1±0.2, or ?"
    return "digits alone, or ?"


_YEAR = re.compile(r"([12][0-9]{3})(?:\s+([01](?:\.[0-9]{1,12})?))?")
SIZE = re.compile(
    r"(-?[0-9]{1,15}(?:\.[0-9]{1,15})?)"
    r"(?:\s*(?:±|\+-)\s*([0-9]{1,15}(?:\.[0-9]{1,15})?))?"
)
_DIGITS = re.compile(r"[0-9]{1,15}")
