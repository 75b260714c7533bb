"""How one value of a guide stands in a form's field, and what is read off it again.

Nothing is refused here but what cannot be read at all: what is read goes into the file,
and the guide's own schema says what is wrong with it.
"""

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from string import ascii_lowercase, ascii_uppercase, digits
from typing import Any, Literal

from fieldid import draw
from fieldid.draw.params import Number, Several, checks
from fieldid.guides.shares import WORDS
from fieldid.guides.written import written
from fieldid.workbench.fields.wording import said


class MisreadError(Exception):
    """What stands in a field cannot be made a value; the message says why."""


@dataclass(frozen=True, slots=True)
class Kind:
    """`show` makes text of a value, and `read` a value of text that is not blank.

    `mode` is the keyboard that a phone shows; `words` are offered while typing.
    """

    show: Callable[[Any], str]
    read: Callable[[str], Any]
    input: Literal["line", "area", "pick", "drawn", "picture"] = "line"
    mode: str = "text"
    words: tuple[str, ...] = ()


def plain(text: str) -> str:
    """What counts of a field's text: no blanks round it, one kind of end of line."""
    return text.replace("\r\n", "\n").replace("\r", "\n").strip()


def _shown(value: Any) -> str:
    """A value as people write it; one that has no place here as TOML has it."""
    if isinstance(value, bool | list | Mapping):
        return written(value)
    return str(value)


def number(text: str) -> Any:
    """A number, whole or with a point or a comma; other text stays text."""
    if _WHOLE.fullmatch(text):
        return int(text.replace(" ", ""))
    if _DECIMAL.fullmatch(text):
        return float(text.replace(",", "."))
    return text


def grouped(text: str) -> Any:
    """A number that never has three decimals, as a count or money: of three digits
    behind a point or a comma, these part thousands.

    >>> grouped("14,000"), grouped("1.060"), grouped("12,5"), grouped("soon")
    (14000, 1060, 12.5, 'soon')
    """
    return int(_APART.sub("", text)) if _GROUPED.fullmatch(text) else number(text)


def _amount(text: str) -> Any:
    """A number that may have any decimals, so that 6,125 could be either."""
    if "," in text and _GROUPED.fullmatch(text):
        whole, split = _APART.sub("", text), text.replace(",", ".")
        raise MisreadError(f"{text} can be read in two ways: write {whole} or {split}.")
    return number(text)


def _share(text: str) -> Any:
    """A number, a count, a word, or a number of per cent."""
    match = _PERCENT.fullmatch(text)
    if match:
        return round(float(match[1].replace(",", ".")) / 100, 6)
    lower = text.lower()
    if lower in WORDS:
        return lower
    # A count is 41 / 43 as well; what is none is told as it was typed.
    close = text.replace(" ", "")
    return number(close) if _COUNT.fullmatch(close) else number(text)


def _money_off(text: str) -> Any:
    return text if "%" in text else grouped(text)


def _years(text: str) -> Any:
    match = _FROM_TO.fullmatch(text)
    if match:
        return f"{match[1]}-{match[2]}"
    return int(text) if _YEAR.fullmatch(text) else text


def first_year(value: Any) -> Any:
    """The first year of one or of a run; None where there is none to be read.

    >>> first_year("1951-1954"), first_year(1951), first_year("soon")
    (1951, 1951, None)
    """
    match = _FROM_TO.fullmatch(value) if isinstance(value, str) else None
    return int(match[1]) if match else int(value) if _is_year(value) else None


def _is_year(value: Any) -> bool:
    return _YEAR.fullmatch(str(value)) is not None


def _day(text: str) -> Any:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return text


def _truth(text: str) -> Any:
    return {"true": True, "false": False}.get(text, text)


def _list_shown(value: Any) -> str:
    if isinstance(value, list) and all(_is_simple(each) for each in value):
        return ", ".join(map(str, value))
    return _shown(value)


def _list(text: str) -> list[str]:
    return [each for each in (part.strip() for part in text.split(",")) if each]


def _two_shown(value: Any) -> str:
    if isinstance(value, list) and value and not any(map(_is_many, value)):
        return " to ".join(map(_shown, value))
    return _shown(value)


def _two(text: str) -> Any:
    # Of a range without its end one number is there, and two are wanted.
    return [number(end) for end in ends(text) if end]


def ends(text: str) -> tuple[str, ...]:
    """What stands at each end of a range, of which one may be left out.

    >>> ends("3 to 12"), ends("3 mm - 12 mm"), ends("3 to"), ends("3")
    (('3', '12'), ('3 mm', '12 mm'), ('3', ''), ('3',))
    """
    return tuple(end.strip() for end in _TO.split(text))


def _table_shown(value: Any) -> str:
    if not isinstance(value, Mapping):
        return _shown(value)
    return "\n".join(f"{key} = {_shown(each)}" for key, each in value.items())


def _table(each: Callable[[str], Any]) -> Callable[[str], dict[str, Any]]:
    def read(text: str) -> dict[str, Any]:
        found: dict[str, Any] = {}
        for line in filter(None, map(str.strip, text.split("\n"))):
            key, sign, value = _PAIR.fullmatch(line).groups()  # type: ignore[union-attr]  # it fits every line
            if not sign:
                raise MisreadError(_unequal(line))
            if key in found:
                raise MisreadError(said("key-twice", {"value": key}))
            found[key] = each(value) if value else ""
        return found

    return read


def _unequal(line: str) -> str:
    """What is told of a line without its sign.

    >>> _unequal("1954 A"), _unequal("two rings usually")[-26:]
    ('= is missing in 1954 A; would be right: 1954 = A', 'right: two rings = usually')
    >>> _unequal("1954"), _unequal("rings")[-12:]
    ('= is missing in 1954; would be right: 1954 = ...', ' rings = ...')
    """
    first, _, rest = line.partition(" ")
    if not _YEAR.fullmatch(first):
        first, _, rest = line.rpartition(" ")
    right = f"{first or rest} = {rest if first and rest else '...'}"
    return f"= is missing in {line}; would be right: {right}"


def _alphabet(text: str) -> str:
    """The characters, without blanks; a stretch of them is not written out.

    >>> _alphabet("A B C"), _alphabet("A B - C D")
    ('ABC', 'AB-CD')
    """
    for stretch in (_ALL.fullmatch(text), *_STRETCH.finditer(text)):
        if stretch and (all_of := _between(*stretch.groups())):
            raise MisreadError(f"Write out every character, as {all_of}.")
    return "".join(text.split())


def _between(first: str, last: str) -> str:
    """All characters from one to another of its sort; none if they are none."""
    is_one_sort = any(first in sort and last in sort for sort in _SORTS)
    return "".join(map(chr, range(ord(first), ord(last) + 1))) if is_one_sort else ""


def _picture_shown(value: Any) -> str:
    if not isinstance(value, Mapping):
        return _shown(value)
    return "\n".join(f"{key} = {_list_shown(each)}" for key, each in value.items())


def _picture(text: str) -> Any:
    """Lines of a shape and what is particular about it, each as its shape wants it."""
    lines = _table(str)(text)
    shape = draw.SHAPES.get(lines.get("shape", ""))
    known = checks(shape) if shape else {}
    return {key: _parameter(value, known.get(key)) for key, value in lines.items()}


def _parameter(text: str, check: object) -> Any:
    if text.startswith("["):
        try:
            return tomllib.loads(f"x = {text}")["x"]
        except ValueError:
            return text
    if isinstance(check, Several):
        return [_parameter(each, check.each) for each in _list(text)]
    return number(text) if isinstance(check, Number) else text


def _is_simple(value: Any) -> bool:
    """Whether a value in a list can be told from the commas round it."""
    return isinstance(value, str) and value == value.strip() != "" and "," not in value


def _is_many(value: Any) -> bool:
    return isinstance(value, list | Mapping)


_WHOLE = re.compile(r"-?[0-9]{1,3}( [0-9]{3}){1,4}|-?[0-9]{1,15}")
_DECIMAL = re.compile(r"-?[0-9]{0,15}[.,][0-9]{1,15}")
_GROUPED = re.compile(r"-?[1-9][0-9]{0,2}([ .,])[0-9]{3}(?:\1[0-9]{3}){0,3}")
_APART = re.compile("[ .,]")
_PERCENT = re.compile(r"([0-9]{1,3}(?:[.,][0-9]{1,4})?|[.,][0-9]{1,4}) ?%")
_COUNT = re.compile(r"-?[0-9.,]+(?:/[0-9]+)?")
_YEAR = re.compile(r"[0-9]{4}")
_FROM_TO = re.compile(r"([0-9]{4})\s*(?:-|\u2013|to)\s*([0-9]{4})")
_TO = re.compile(r"\s+(?:to|-|\u2013)(?:\s+|$)|\u2013")
_SORTS = (ascii_uppercase, ascii_lowercase, digits)
# Between blanks a hyphen is a character of its own, if others stand round it.
_ALL = re.compile(r"(\w)\s*[-\u2013]\s*(\w)")
_STRETCH = re.compile(
    r"(?<!\w)(\w)(?:\s+to\s+|[-\u2013]|\s*(?:\.{2,3}|\u2026)\s*)(\w)(?!\w)"
)
_PAIR = re.compile(r"([^=:]*?)\s*(?:([=:])\s*(.*))?")

LINE = Kind(_shown, str)
AREA = Kind(_shown, str, "area")
AMOUNT = Kind(_shown, _amount, mode="decimal")
MONEY = Kind(_shown, grouped, mode="decimal")
COUNT = Kind(_shown, grouped, mode="numeric")
SHARE = Kind(_shown, _share, words=tuple(WORDS))
ALPHABET = Kind(_shown, _alphabet)
YEAR = Kind(_shown, number, mode="numeric")
YEARS = Kind(_shown, _years)
DAY = Kind(_shown, _day)
TWO = Kind(_two_shown, _two)
LIST = Kind(_list_shown, _list)
PICK = Kind(_shown, str, "pick")
TRUTH = Kind(_shown, _truth, "pick")
SHARES = Kind(_table_shown, _table(_share), "area")
TEXTS = Kind(_table_shown, _table(str), "area")
NUMBERS = Kind(_table_shown, _table(grouped), "area")
OFFS = Kind(_table_shown, _table(_money_off), "area")
OFF = Kind(_shown, _money_off)
DRAWN = Kind(_shown, str, "drawn")
"""As PICK, with a drawing of each."""
PICTURE = Kind(_picture_shown, _picture, "picture")
ODD = Kind(written, str)
"""A key that is not known: it can only be emptied, and so taken out."""
