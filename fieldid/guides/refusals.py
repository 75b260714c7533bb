"""Every way in which a guide or a find is refused: a code, what is wrong, what
would be right. rules/README.md shows this table; a test compares the two.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError

Path = tuple[str | int, ...]
"""Where in a file: keys and places, as ("clue", 0, "option", 2, "like")."""

REFUSALS: dict[str, tuple[str, str]] = {
    # The file
    "unreadable": ("cannot be read: {why}", "a file that can be opened"),
    "too-large": ("is larger than {most} bytes", "at most {most} bytes"),
    "not-utf-8": ("has a byte that is not UTF-8: {value}", "a file saved as UTF-8"),
    "not-toml": ("is not TOML: {why}", "this line as TOML"),
    "not-json": ("is not JSON: {why}", "JSON"),
    "too-deep": ("is nested too deeply", "tables that lie less deep"),
    "later-format": ("{value} is not the format read here", "1"),
    # Keys and values
    "missing": ("is missing", "{wants}"),
    "unknown-key": ("is not a key that is known here", "{nearest}"),
    "twice-in-file": ("{value} stands twice in one object", "each key once"),
    "not-that": ("{value} does not fit here", "{wants}"),
    "out-of-range": ("{value} is outside {least} to {most}", "{wants}"),
    "too-few": ("has {count}", "{wants}"),
    "listed-twice": ("{value} is listed twice", "each of them once"),
    "count-over": (
        "{value} has more seen than looked at",
        "the number seen first, then the number looked at",
    ),
    "unread-kind": ("{value} is a kind that this version cannot read", "{nearest}"),
    "backwards": ("{value} ends before it starts", "the earlier one first"),
    # Names
    "file-name": ("{value} is not the file's name", "{stem}"),
    "id-twice": ("{value} is used twice", "another id"),
    "unknown-name": ("{value} is no {what} of this guide", "{nearest}"),
    "like-itself": ("{value} is this option itself", "another option's id"),
    "circle": ("parts follow in a circle: {chain}", "one part that follows none"),
    "chain": (
        "{count} parts follow one another",
        "at most {most}: follow the part that matters most",
    ),
    "no-set": ("{value} is named and the guide has no [set]", "a [set] with members"),
    "no-spot": ("the drawing {drawing} has no spot {value}", "spot = {nearest}"),
    "picture": ("{why}", "a picture as rules/README.md lists them"),
    # Years and months
    "year-or-years": ("has {count} of year and years", "one of the two"),
    "run-built": (
        "a run of years has one window",
        "a [[model_year]] for each year with its own window",
    ),
    "year-order": ("{value} stands after {before}", "model years in rising order"),
    "year-twice": ("{value} is a model year twice", "each model year once"),
    "too-many-years": ("makes {count} model years", "at most {most}"),
    "built-far": (
        "the window lies more than a year from {year}",
        "months near the model year",
    ),
    "built-long": ("the window has {count} months", "at most {most} months"),
    "year-outside": ("{value} is no {what} of this guide", "{nearest}"),
    "month-outside": (
        "{value} is outside the months of this guide",
        "a month from {least} to {most}",
    ),
    "never": (
        "the months lie outside the windows of these years",
        "years and months that meet",
    ),
    "fade-alone": (
        "a fade needs a month to fade from",
        "from or to beside it, or no fade",
    ),
    "members-and-except": ("stands beside members", "one of the two"),
    # Measures
    "mean-outside": ("{value} is outside the range {least} to {most}", "{wants}"),
    "overlap": (
        "covers {year}, which size[{other}] covers too",
        "one size a year for each member",
    ),
    # Codes
    "alphabet-repeats": ("{value} stands twice in the alphabet", "each character once"),
    "alphabet-mark": (
        "{value} cannot be a character of an alphabet",
        "characters that can be seen, and no ?",
    ),
    "alphabet-short": ("has {count} characters", "{wants}"),
    "alphabet-digits": ("lacks {value}", "all ten digits and nothing else"),
    "width": ("{value} does not suit a field of kind {kind}", "{wants}"),
    "codes-unwanted": ("a field of kind {kind} has no codes", "the kind 'year-letter' "
        "or 'model-year', or no codes"),
    "codes-missing": (
        "is missing",
        'a table of years, as {{ 1951 = "A" }}, for kind {kind}',
    ),
    "code-length": ("{value} has {count} characters", "{most} characters"),
    "code-character": (
        "{value} has {character}, which the field {field} lacks",
        "characters from {alphabet}",
    ),
    # Flags
    "when-empty": ("waits for nothing", "{wants}"),
    "when-alone": ("stands without {needs}", "{needs} beside it"),
    "when-kind": ("does not suit the clue {clue}, a {kind}", "{wants}"),
    # Finds
    "no-item": ("is empty", "one item"),
    "many-items": (
        "has {count} items and this version judges one object at a time",
        "one item",
    ),
    "unknown-guide": ("{value} is no guide that is here", "{nearest}"),
    "gone-and-read": (
        "the part {part} is gone, and a clue on it was read",
        "the reading or the part as gone, not both",
    ),
}


@dataclass(frozen=True, slots=True)
class Refusal:
    """One refusal with its words filled in."""

    code: str
    wrong: str
    right: str


Finding = tuple[Path, Refusal]


def refusal(code: str, **words: object) -> Refusal:
    """The refusal with this code and these words.

    >>> refusal("id-twice", value="'shaft'")
    Refusal(code='id-twice', wrong="'shaft' is used twice", right='another id')
    """
    wrong, right = REFUSALS[code]
    return Refusal(code, wrong.format(**words), right.format(**words))


def refused(code: str, **words: object) -> ValidationError:
    """The refusal as the error that marshmallow collects."""
    return ValidationError([refusal(code, **words)])


def findings(messages: Any, path: Path = ()) -> Iterator[Finding]:
    """What marshmallow collected, flat: each refusal with its path."""
    if isinstance(messages, Mapping):
        for key, inner in messages.items():
            yield from findings(inner, (*path, key))
    else:
        for told in messages:
            yield path, told


def quote(value: object) -> str:
    """A value as a message shows it: in quotes, on one line, never long.

    >>> quote("a"), quote(3.0), quote(["a"])
    ("'a'", "'3.0'", 'a list')
    """
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, Sequence) and not isinstance(value, str):
        return "a list"
    if isinstance(value, bool):
        return repr(str(value).lower())
    text = str(value)
    return repr(text if len(text) <= 40 else f"{text[:37]}...")


def place(path: Path) -> str:
    """A path as a message shows it; places count from one.

    >>> place(("clue", 0, "option", 2, "like"))
    'clue[1].option[3].like'
    """
    words = ""
    for key in path:
        if isinstance(key, int):
            words += f"[{key + 1}]"
        else:
            words += "." * bool(words) + (key if _BARE.fullmatch(key) else quote(key))
    return words


_BARE = re.compile(r"[A-Za-z0-9_-]{1,40}")
