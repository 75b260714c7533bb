"""Codes: whether the fields of one are sound, and whether a text is such a code."""

from collections.abc import Iterable, Iterator
from typing import Any

from fieldid.engine.code import UNREADABLE
from fieldid.engine.guide import Field
from fieldid.guides.names import twice
from fieldid.guides.records import field
from fieldid.guides.refusals import Finding, Path, Refusal, quote, refusal
from fieldid.guides.times import Times, check_build_year, check_year

DIGITS = "0123456789"
MONTHS = 12
_WIDEST = {"month": 1, "year": 4}
_TABLED = {"year-letter": check_build_year, "model-year": check_year}


def check_fields(tables: list[Any], path: Path, known: Times) -> Iterator[Finding]:
    """Every field of a code is sound, and each has its own name."""
    yield from twice(tables, path, "name")
    for place, table in enumerate(tables):
        yield from _check_alphabet(table, (*path, place, "alphabet"))
        yield from _check_width(table, (*path, place, "width"))
        yield from _check_codes(table, (*path, place, "codes"), known)


def fields_of(tables: list[Any], known: Times) -> tuple[Field, ...] | None:
    """The fields as records; None if one of them was refused."""
    read = all(set(Field.__slots__) <= table.keys() for table in tables)
    if not read or any(check_fields(tables, (), known)):
        return None
    return tuple(field(table) for table in tables)


def fold(text: str, fields: Iterable[Field]) -> str:
    """The code in capitals where the alphabet has no small letters.

    >>> fold("c17", [Field("month", "month", 1, "ABC"), Field("n", "plain", 2, "017")])
    'C17'
    """
    alphabets = [each.alphabet for each in fields for _ in range(each.width)]
    # What is too long keeps its end; `unfit` will say so.
    alphabets += [""] * (len(text) - len(alphabets))
    return "".join(
        a.upper() if a.isascii() and alphabet == alphabet.upper() else a
        for a, alphabet in zip(text, alphabets, strict=False)
    )


def unfit(text: str, fields: Iterable[Field]) -> Refusal | None:
    """Why a text, ? included, is not a reading of the code; None if it is one."""
    places = [each for each in fields for _ in range(each.width)]
    if len(text) != len(places):
        most = f"{len(places)} characters, {UNREADABLE} for each that cannot be read"
        return refusal("code-length", value=quote(text), count=len(text), most=most)
    for a, each in zip(text, places, strict=True):
        if a not in each.alphabet + UNREADABLE:
            return _foreign(text, a, each.name, each.alphabet)
    return None


def _check_alphabet(table: Any, path: Path) -> Iterator[Finding]:
    alphabet, means = table.get("alphabet"), table.get("means")
    if alphabet is None:
        return
    for place, a in enumerate(alphabet):
        if a == UNREADABLE or a.isspace() or not a.isprintable():
            yield path, refusal("alphabet-mark", value=quote(a))
        elif a in alphabet[:place]:
            yield path, refusal("alphabet-repeats", value=quote(a))
    if means == "year":
        if sorted(set(alphabet)) != list(DIGITS):
            yield path, refusal("alphabet-digits", value=quote(alphabet))
    elif len(alphabet) < (least := MONTHS if means == "month" else 2):
        why = ", a month each" if means == "month" else ""
        count = len(alphabet)
        yield path, refusal("alphabet-short", count=count, most=least, why=why)


def _check_width(table: Any, path: Path) -> Iterator[Finding]:
    width, means = table.get("width", 0), table.get("means")
    most = _WIDEST.get(means, width)
    if width > most:
        told = refusal("width", value=width, kind=quote(means), most=most)
        yield path, told


def _check_codes(table: Any, path: Path, known: Times) -> Iterator[Finding]:
    codes, means = table.get("codes"), table.get("means")
    if codes is None or means is None:
        return
    if means not in _TABLED:
        if codes:
            yield path, refusal("codes-unwanted", kind=quote(means))
    elif not codes:
        wants = f"a table of years for a field of kind {quote(means)}"
        yield path, refusal("missing", wants=wants)
    for year, text in codes if means in _TABLED else ():
        key = (*path, str(year))
        yield from _TABLED[means](year, key, known)
        yield from _check_text(text, table, key)


def _check_text(text: str, table: Any, path: Path) -> Iterator[Finding]:
    """What stands for a year fits the field; unlike a reading it has no ?."""
    width, alphabet = table.get("width"), table.get("alphabet")
    if width is not None and len(text) != width:
        most = f"{width}, the width of the field"
        told = refusal("code-length", value=quote(text), count=len(text), most=most)
        yield path, told
    for a in text if alphabet else ():
        if a not in alphabet:
            yield path, _foreign(text, a, table.get("name", "the field"), alphabet)
            return


def _foreign(text: str, a: str, name: str, alphabet: str) -> Refusal:
    return refusal(
        "code-character",
        value=quote(text),
        character=quote(a),
        field=quote(name),
        alphabet=quote(alphabet),
    )
