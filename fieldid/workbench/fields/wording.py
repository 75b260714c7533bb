"""How a form says what is wrong: the file's refusals in the words of the trade.

A refusal that has no wording here is told in that of the file, without the quotes round
what was typed. The raw page and the command keep the file's wording.
"""

import re
from collections.abc import Mapping

from fieldid.errors import Problem
from fieldid.guides.refusals import REFUSALS
from fieldid.guides.shares import WANTS, WORDS

SHARE = (
    "a number from 0 to 1, as 0.15; per cent, as 15 %; a count, as 41/43; or a word: "
    + ", ".join(WORDS)
)

FORMS = {
    "missing": "Fill this in.",
    "too-few": "Needed here: {wants}.",
    "not-that": "{value} does not fit here; would be right: {wants}",
    "unknown-key": "This is not known here. Empty the field to take it out.",
    "key-twice": "{value} stands twice here; would be right: a single line for it",
    "like-itself": "{value} is this answer itself; would be right: another answer",
    "no-set": "The guide has no set to name members of: fill in its page Set first.",
    "range-set": (
        "A guide with a set answers with a model year, and this one with a range: "
        "change that on the page of the guide itself, or take the set out."
    ),
    "no-spot": "The drawing has no place {value}; would be right: {nearest}",
    # Years and months
    "year-or-years": "Fill in one of the two: the model year, or the run of years.",
    "run-built": (
        "A run of years is built from January to December: enter a year by itself to "
        "say more."
    ),
    "too-many-years": "That makes {count} model years; would be right: at most {most}",
    "year-twice": "{value} is there already.",
    "year-order": (
        "{value} is there already, in the years up to {before}, or out of order."
    ),
    "fade-alone": "Fill in a from month or a to month too, or leave this empty.",
    "members-and-except": "Fill in one of the two kinds of members, not both.",
    # Measures and numbers
    "outside-range": (
        "{value} is outside the range; would be right: {least} to {most} {unit}"
    ),
    "overlap": "Size {other} is for {year} too, and for the same members.",
    "lag-unwanted": (
        "This is only for a date that the object was made after: choose that above, or "
        "leave this empty."
    ),
    # Codes
    "field-and-layout": "A code has stretches of its own or layouts, not both.",
    "no-model-year": (
        "A mark that was made before the object tells no model year; would be right: "
        "the year of building, by a table"
    ),
    "weeks-unwanted": "Only weeks are counted so: leave this open.",
    "alphabet-short": "Needed here: {most} characters or more{why}, and not {count}.",
    "width": "Too wide for what it stands for; would be right: at most {most}",
    "width-exact": "Not the width of what it stands for; would be right: {right}",
    "codes-unwanted": (
        "What it stands for needs no table: choose a year by a table above, or leave "
        "this empty."
    ),
    # Flags
    "when-empty": "Fill in what it waits for.",
    "when-alone": "This needs more beside it: {needs}.",
    "when-kind": "This does not suit a {kind}: fill in {wants} in its place.",
    # Prices
    "put-right-alone": (
        "{part} takes nothing off that could be put right: say above what it takes off."
    ),
    "prices-set": "The guide has no set to price: fill in its page Set first.",
}
"""What a form says where the file's own wording would not do, by refusal."""

PHRASES = {
    WANTS: SHARE,
    "text in quotes": "words",
    'a list of texts, as ["3", "4"]': "one or more, with commas between them",
    'a table of shares, as { none = 0.8, other = "seldom" }': (
        "a line each, as none = usually"
    ),
    'a table of names, as { 2 = "2 iron", W = "wedge" }': "a line each, as W = wedge",
    'a table of years, as { 1951 = "A", 1952 = "B" }': "a line each, as 1951 = A",
    "a table of years, as { 1951 = 1, 1952 = 4201 }": "a line each, as 1951 = 1",
    "a table of model years, as { 1951 = 40, 1952 = 120 }": "a line each, as 1951 = 40",
    'a table, as { shape = "collar", rings = ["green"] }': (
        "a shape of those below, and what is particular about it"
    ),
    'a table, as { worn = "20 %" }': "a line each, as worn = 20 %",
    'a table, as { shaft = "40 %", grip = 5 }': "a line each, as shaft = 40 %",
    "a table, as { grip = 12 }": "a line each, as grip = 12",
    'a table, as follows = { part = "shaft", share = 0.85 }': (
        "a part, and how often it then goes too"
    ),
    "a table, as [model]": "the figures on their page",
    "a table, as [set]": "the members on their page",
    "a table, as [prices]": "the prices on their page",
    "a table, as [prices.set]": "the prices on their page",
    'a list of two, each a year and a month, as "1952-06"': (
        "the first and the last month, as 1951-09 to 1952-10"
    ),
    "a list of two, each a number": ("the smallest and the largest number, as 3 to 12"),
    "a table": "what its page asks for",
    "one or more, each as [[model_year]]": "one model year or more",
    "one or more, each as [[part]]": "one part or more",
    "one or more, each as [[clue]]": "one clue or more",
    "two or more, each as [[clue.option]]": "two answers or more",
    "one or more, each as [[clue.field]]": "one stretch of the code or more",
    "one or more, each as [[clue.layout.field]]": "one stretch of the code or more",
    "a list of tables, each as [[clue.layout]]": "layouts on their pages",
    "one or more, each as [[clue.layout]]": "layouts on their pages",
    "a list of tables, each as [[flag]]": "red flags on their pages",
    "a list of tables, each as [[caution]]": "cautions on their pages",
    'a list of tables, each as { years = "1951-1952" } in seen': "lines with years",
    'one or more, each as { years = "1951-1952", mean = 6.0, sd = 0.25 } in size': (
        "one line or more, each with model years, usual size and give or take"
    ),
    'one or more, each as when = { clue = "grip-cap", is = ["plain"] }': (
        "one line or more that it waits for"
    ),
    "option of this clue": "answer of this clue",
    "is, over or under": "what it reads, above or below",
    "over or under": "above or below",
    "is": "what it reads",
    "clue": "a clue",
    "part": "a part",
    "replaced_over": "how often it is replaced",
}
"""What stands within a refusal, as a form says it."""


NO_NAMES: Mapping[str, str] = {}


def plainly(problem: Problem, names: Mapping[str, str] = NO_NAMES) -> str:
    """What a form says of a problem of the file; `names` are the words that it shows
    in place of short names.
    """
    if problem.code not in REFUSALS:
        return f"{problem.wrong}; would be right: {problem.right}"
    return said(problem.code, problem.words, names)


def said(
    code: str, words: Mapping[str, object], names: Mapping[str, str] = NO_NAMES
) -> str:
    """A refusal as a form says it.

    >>> said("not-that", {"value": "'soon'", "wants": "a year, as 1952"})
    'soon does not fit here; would be right: a year, as 1952'
    >>> said("missing", {"wants": "two or more, each as [[clue.option]]"})
    'Needed here: two answers or more.'
    """
    # What lies on pages of its own has no field to be filled in.
    if code == "missing" and _LISTED.match(str(words["wants"])):
        code = "too-few"
    template = FORMS.get(code) or "; would be right: ".join(REFUSALS[code])
    if str(words.get("value")) in ("a list", "a table"):
        words = {**words, "value": "What stands here"}
    told = {key: phrase(each, names) for key, each in words.items()}
    return template.format(**told)


def phrase(word: object, names: Mapping[str, str] = NO_NAMES) -> str:
    """A word or a phrase of a refusal as a form says it.

    >>> phrase("one of 'shaft', 'grip'"), phrase("text in quotes"), phrase(1952)
    ('one of shaft, grip', 'words', '1952')
    >>> phrase("one of 'navy', 'none'", {"navy": "navy over ivory"})
    'one of “navy over ivory”, none'
    """
    text = str(word)
    if text in PHRASES:
        return PHRASES[text]
    if particular := _PARTICULAR.fullmatch(text):
        return f"a choice below for its {particular[1].replace('_', ' ')}"
    # A find has null where nothing can be read, and whoever types has a ?.
    text = _ONE.sub("1 character", text.removesuffix(", or null"))
    return _QUOTED.sub(lambda found: _shown(found[2], names), text)


def _shown(name: str, names: Mapping[str, str]) -> str:
    return f"“{names[name]}”" if names.get(name, name) != name else name


_LISTED = re.compile("(one|two) or more, each as ")
_ONE = re.compile("^1 characters")
_PARTICULAR = re.compile(r"(\w+) = \.\.\.")
"""What a picture lacks."""
_QUOTED = re.compile(r"(?<!\w)(['\"])(.*?)\1(?!\w)")
