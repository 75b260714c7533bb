"""Every way in which a guide or a find is refused: a code, what is wrong, what
would be right. rules/README.md shows this table; a test compares the two.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from marshmallow import ValidationError

Path = tuple[str | int, ...]
"""Where in a file: keys and places, as ("clue", 0, "option", 2, "like")."""

REFUSALS: dict[str, tuple[str, str]] = {
    # The file
    "unreadable": ("cannot be read: {why}", "a file that can be opened"),
    "too-large": ("is larger than {most} bytes", "at most {most} bytes"),
    "not-utf-8": ("has a byte that is not UTF-8: {value}", "a file saved as UTF-8"),
    "not-toml": (
        "is not TOML: {why}",
        "this line as TOML: text in quotes, lists in [ ]",
    ),
    "not-json": ("is not JSON: {why}", "JSON as rules/README.md shows it"),
    "too-deep": ("is nested too deeply", "tables that lie less deep"),
    "later-format": (
        "format {value} cannot be read by this version",
        "{known}, or a newer fieldid",
    ),
    # Keys and values
    "missing": ("is missing", "{wants}"),
    "unknown-key": ("is not a key that is known here", "{nearest}"),
    "key-twice": ("the key {value} stands twice in one table", "each key once"),
    "not-that": ("{value} does not fit here", "{wants}"),
    "share-limits": (
        "{value} is outside {least} to {most}",
        "a share from {least} to {most}",
    ),
    "too-few": ("has {count}", "{wants}"),
    "listed-twice": ("{value} is listed twice", "each of them once"),
    "count-over": (
        "{value} has more seen than looked at",
        "the number seen first, then the number looked at",
    ),
    "unread-kind": ("{value} is a kind that this version cannot read", "{nearest}"),
    "backwards": ("{value} ends before it starts", "the earlier or smaller one first"),
    "no-room": ("{value} is both ends", "a smaller and a larger one"),
    # Names
    "file-name": ("{value} is not the name of the file", "{stem}"),
    "id-twice": ("{value} is used twice", "another one"),
    "unknown-name": ("{value} is no {what}", "{nearest}"),
    "like-itself": ("{value} is this option itself", "the id of another option"),
    "circle": ("parts follow in a circle: {chain}", "one of them that follows none"),
    "chain": ("{count} parts follow one after the other", "at most {most}"),
    "no-set": ("the guide has no [set] to name members of", "a [set] with members"),
    "range-set": (
        "the verdict on a set is a year, and that of this guide a range",
        'no [set], or verdict = "year"',
    ),
    "unknown-drawing": ("{value} is no drawing that is here", "{nearest}"),
    "no-spot": ("the drawing {drawing} has no spot {value}", "spot = {nearest}"),
    "picture": ("{why}", "{use}"),
    # Other guides
    "include-missing": ("{value} is no guide beside this one", "{nearest}"),
    "include-circle": (
        "guides include each other in a circle: {chain}",
        "one of them that includes none",
    ),
    "include-broken": (
        "{value} has mistakes of its own: {count}",
        "that guide without mistakes",
    ),
    "include-clash": (
        "it has a clue {value}, and so has this guide or one included before",
        "another id for one of the two",
    ),
    # Years and months
    "year-or-years": ("has {found} of year and years", "one of the two"),
    "run-built": (
        "one window cannot serve a run of years",
        "a [[model_year]] for each year with its own window",
    ),
    "year-twice": ("{value} is a model year twice", "each model year once"),
    "year-order": ("{value} stands after {before}", "model years in rising order"),
    "too-many-years": ("makes {count} model years", "at most {most}"),
    "built-far": (
        "the window lies more than a year from {year}",
        "months nearer to it",
    ),
    "built-long": ("the window has {count} months", "at most {most} months"),
    "year-outside": ("{value} is no {what} of this guide", "{nearest}"),
    "month-outside": (
        "{value} is outside the months in which this guide's objects were built",
        "a month from {least} to {most}",
    ),
    "never": (
        "nothing was built in these years and months",
        "years and months that meet",
    ),
    "fade-alone": ("has no month to fade from", "from or to beside it, or no fade"),
    "members-and-except": ("stands beside members", "one of the two"),
    # Measures
    "outside-range": (
        "{value} is outside the range",
        "a number from {least} to {most} ({unit})",
    ),
    "not-measured": (
        "is no size with its error",
        "a number alone, or a table of value and error, two numbers",
    ),
    "error-limits": (
        "the error {value} does not fit here",
        "a number above 0 and at most {most} ({unit}), or the value alone",
    ),
    "overlap": (
        "size {other} covers {year} too, for the same members",
        "one size for a year and a member",
    ),
    # Numbers, and codes that mean not-before
    "number-order": (
        "{value} is not above {before}, the first number of the year before",
        "numbers that rise from year to year",
    ),
    "number-last": (
        "{value} is below {least}, the first number of {year}",
        "{least} or more",
    ),
    "outside-numbers": (
        "{value} is outside the numbers of this clue",
        "a whole number from {least} to {most}",
    ),
    "lag-unwanted": ("stands beside {means}", 'means = "not-before", or no lag'),
    # Codes
    "field-and-layout": ("stands beside field", "one of the two"),
    "layout-year": ("{value} is not among the years of its layout", "{nearest}"),
    "no-model-year": (
        "a mark of a kind that means not-before knows no model year",
        "the kind 'year-letter'",
    ),
    "weeks-unwanted": ("a field of kind {kind} counts no weeks", "no weeks here"),
    "alphabet-repeats": ("{value} stands twice in the alphabet", "each character once"),
    "alphabet-mark": (
        "{value} cannot be a character of an alphabet",
        "characters that can be seen, and no ?",
    ),
    "alphabet-short": ("the alphabet has {count}", "{most} characters or more{why}"),
    "alphabet-digits": ("{value} is not all the digits", "the ten digits"),
    "width": ("{value} is too wide for a field of kind {kind}", "at most {most}"),
    "width-exact": ("{value} is not the width of a {kind}", "{right}"),
    "codes-unwanted": (
        "a field of kind {kind} has no codes",
        "the kind 'year-letter' or 'model-year', or no codes",
    ),
    "code-length": ("{value} has the length {count}", "{most}"),
    "code-character": (
        "{value} has {character}, which is not in the alphabet of {field}",
        "one of {alphabet}",
    ),
    # Flags
    "when-empty": (
        "waits for nothing",
        "clue with is, over or under; part with replaced_over; or year_in",
    ),
    "when-alone": ("stands alone", "{needs} beside it"),
    "when-kind": ("does not suit {clue}, which is a {kind}", "{wants}"),
    # Prices
    "put-right-alone": (
        "{part} takes nothing off that could be put right",
        "{part} in [prices.off] too",
    ),
    "prices-set": ("the guide has no [set] to price", "a [set], or no [prices.set]"),
    # Finds
    "no-item": ("is empty", "one item, the object that was read"),
    "many-items": (
        "has {count} items, and the guide has no [set]",
        "one item, or a guide with a [set]",
    ),
    "more-items": (
        "has {count} items, and the set has {most} members",
        "at most {most} items, each member once",
    ),
    "no-member": ("is missing in a set", "{nearest}"),
    "member-twice": (
        "{value} is the member of items[{before}] too",
        "{nearest}",
    ),
    "unknown-guide": ("{value} is no guide that is here", "{nearest}"),
    "never-gone": (
        "the guide says that {value} is never replaced, so it cannot be gone",
        "a part that can be replaced",
    ),
    "gone-and-read": (
        "{value} was read, and its part {part} is gone",
        "null, or a part that is not gone",
    ),
}


@dataclass(frozen=True, slots=True)
class Refusal:
    """One refusal with its words filled in."""

    code: str
    wrong: str
    right: str
    words: Mapping[str, object] = field(default_factory=dict, compare=False, repr=False)


Finding = tuple[Path, Refusal]


def refusal(code: str, **words: object) -> Refusal:
    """The refusal with this code and these words.

    >>> refusal("id-twice", value="'shaft'")
    Refusal(code='id-twice', wrong="'shaft' is used twice", right='another one')
    """
    wrong, right = REFUSALS[code]
    return Refusal(code, wrong.format(**words), right.format(**words), words)


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
    """A value as a message shows it: text in quotes, on one line, never long.

    >>> quote("a"), quote(3.5), quote(True), quote(["a"])
    ("'a'", '3.5', 'true', 'a list')
    """
    if isinstance(value, str):
        return repr(value if len(value) <= 40 else f"{value[:37]}...")
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        # Python refuses to print numbers of thousands of digits.
        return "a number far too large" if abs(value) > 1e15 else repr(value)
    if isinstance(value, list):
        return "a list"
    return "a table" if isinstance(value, Mapping) else str(value)


def figure(number: float) -> str:
    """A number that a message states, without an exponent.

    >>> figure(12.0), figure(0.000001)
    ('12', '0.000001')
    """
    return f"{number:.6f}".rstrip("0").rstrip(".")


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
