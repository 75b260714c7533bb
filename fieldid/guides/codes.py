"""Codes: whether the fields of one are sound, and whether a text is such a code."""

from collections.abc import Iterator
from typing import Any

from fieldid.engine.code import UNREADABLE
from fieldid.engine.guide import Code, Field, Layout, layouts
from fieldid.guides.names import twice
from fieldid.guides.numbers import check_before, check_meaning
from fieldid.guides.records import code
from fieldid.guides.refusals import Finding, Path, Refusal, quote, refusal
from fieldid.guides.times import Times, check_build_year, check_year

DIGITS = "0123456789"
MONTHS = 12
WEEKS = "how weeks are counted: 'iso' or 'sunday'"
FIELDS = "one or more, each as [[clue.field]]"
_WIDEST = {"month": 1, "year": 4}
_EXACTLY = {"week": 2, "day": 2}
_FIGURES = ("year", "week", "day")
_TABLED = ("year-letter", "model-year")

Years = tuple[int, int] | None


def check_code(clue: Any, path: Path, known: Times) -> Iterator[Finding]:
    """A code has fields or layouts, and all of them are sound."""
    fields, found = clue.get("field"), clue.get("layout")
    if fields and found:
        yield (*path, "layout"), refusal("field-and-layout")
    if fields == () and found == ():
        yield (*path, "field"), refusal("missing", wants=FIELDS)
    means = clue.get("means")
    yield from _check_fields(fields or (), (*path, "field"), known, (None, means))
    for place, layout in enumerate(found or ()):
        at = (*path, "layout", place)
        years = layout.get("years")
        yield from _check_span(years, (*at, "years"), known, means)
        yield from _check_fields(
            layout.get("field", ()), (*at, "field"), known, (years, means)
        )


def code_of(clue: Any, known: Times) -> Code | None:
    """The code as a record; None if something in it was refused."""
    tables = clue.get("layout", ())
    whole = {"field", "layout", "means", "lag"} <= clue.keys()
    whole = whole and all({"years", "field"} <= each.keys() for each in tables)
    fields = [*clue.get("field", ())]
    fields += [field for each in tables for field in each.get("field", ())]
    whole = whole and all(set(Field.__slots__) <= field.keys() for field in fields)
    if not whole or any(check_code(clue, (), known)) or any(check_meaning(clue, ())):
        return None
    return code(clue)


def fold(text: str, kind: Code) -> str:
    """The code in capitals where no alphabet has small letters at that place.

    >>> from fieldid.engine.guide import Code, Field
    >>> fields = (Field("month", "month", 1, "ABC"), Field("n", "plain", 2, "017"))
    >>> fold("c17", Code(fields))
    'C17'
    """
    found = [_alphabets(layout) for layout in layouts(kind)]
    # What fits none keeps its letters where it must; `unfit` will say so.
    same = [each for each in found if len(each) == len(text)] or found
    return "".join(
        a.upper() if a.isascii() and not _has_small(same, i) else a
        for i, a in enumerate(text)
    )


def unfit(text: str, kind: Code) -> Refusal | None:
    """Why a text, ? included, is not a reading of the code; None if it is one."""
    known = layouts(kind)
    lengths = sorted({len(_alphabets(layout)) for layout in known})
    if len(text) not in lengths:
        count = " or ".join(map(str, lengths))
        most = f"{count} characters, {UNREADABLE} for each that cannot be read"
        return refusal("code-length", value=quote(text), count=len(text), most=most)
    told = [
        _unread(text, layout)
        for layout in known
        if len(_alphabets(layout)) == len(text)
    ]
    return None if None in told else told[0]


def _unread(text: str, layout: Layout) -> Refusal | None:
    """Why a text of its length cannot be laid out so; None if it can."""
    places = [each for each in layout.fields for _ in range(each.width)]
    for a, each in zip(text, places, strict=True):
        if a not in each.alphabet + UNREADABLE:
            return _foreign(text, a, each.name, each.alphabet)
    return None


def _alphabets(layout: Layout) -> list[str]:
    """The alphabet of each character."""
    return [field.alphabet for field in layout.fields for _ in range(field.width)]


def _has_small(found: list[list[str]], i: int) -> bool:
    alphabets = "".join(each[i] for each in found if i < len(each))
    return alphabets != alphabets.upper()


def _check_span(
    years: Years, path: Path, known: Times, means: str | None
) -> Iterator[Finding]:
    """Something was built while the layout was in use, or later if it tells a date
    before the making.
    """
    if years is None or means is None:
        return
    yield from check_before(years[0], path, known)
    ends = years[1] if means == "made" else known.opens // 12 if known.years else 0
    if known.years and not known.unread and ends < known.opens // 12:
        yield path, refusal("never")


def _check_fields(
    tables: Any, path: Path, known: Times, use: tuple[Years, str | None]
) -> Iterator[Finding]:
    """Every field of a layout is sound, and each has its own name; `use` is the span
    of the layout and what the code means.
    """
    yield from twice(tables, path, "name")
    for place, table in enumerate(tables):
        at = (*path, place)
        yield from _check_alphabet(table, (*at, "alphabet"))
        yield from _check_width(table, (*at, "width"))
        yield from _check_weeks(table, (*at, "weeks"))
        yield from _check_codes(table, (*at, "codes"), known, use[0])
        if table.get("means") == "model-year" and use[1] == "not-before":
            yield (*at, "kind"), refusal("no-model-year")


def _check_alphabet(table: Any, path: Path) -> Iterator[Finding]:
    alphabet, means = table.get("alphabet"), table.get("means")
    if alphabet is None:
        return
    for place, a in enumerate(alphabet):
        if a == UNREADABLE or a.isspace() or not a.isprintable():
            yield path, refusal("alphabet-mark", value=quote(a))
        elif a in alphabet[:place]:
            yield path, refusal("alphabet-repeats", value=quote(a))
    if means in _FIGURES:
        if sorted(set(alphabet)) != list(DIGITS):
            yield path, refusal("alphabet-digits", value=quote(alphabet))
    elif len(alphabet) < (least := MONTHS if means == "month" else 2):
        why = ", a month each" if means == "month" else ""
        count = len(alphabet)
        yield path, refusal("alphabet-short", count=count, most=least, why=why)


def _check_width(table: Any, path: Path) -> Iterator[Finding]:
    width, means = table.get("width"), table.get("means")
    if width is None:
        return
    if width > (most := _WIDEST.get(means, width)):
        yield path, refusal("width", value=width, kind=quote(means), most=most)
    if width != (right := _EXACTLY.get(means, width)):
        yield path, refusal("width-exact", value=width, kind=means, right=right)


def _check_weeks(table: Any, path: Path) -> Iterator[Finding]:
    weeks, means = table.get("weeks"), table.get("means")
    if weeks is None or means is None:
        return
    if means == "week" and not weeks:
        yield path, refusal("missing", wants=WEEKS)
    if means != "week" and weeks:
        yield path, refusal("weeks-unwanted", kind=quote(means))


def _check_codes(
    table: Any, path: Path, known: Times, span: Years
) -> Iterator[Finding]:
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
        yield from _check_coded(year, means, key, known, span)
        yield from _check_text(text, table, key)


def _check_coded(
    year: int, means: str, path: Path, known: Times, span: Years
) -> Iterator[Finding]:
    """A year that something stands for is one of the guide, or of the layout."""
    if means == "model-year":
        yield from check_year(year, path, known)
    elif span is None:
        yield from check_build_year(year, path, known)
    elif not span[0] <= year <= span[1]:
        right = min(span, key=lambda end: abs(end - year))
        yield path, refusal("layout-year", value=year, nearest=right)


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
