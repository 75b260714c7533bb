"""Every way in which a census is refused, beside those of guides and finds: a code,
what is wrong, what would be right. rules/README.md shows this table; a test compares.
"""

from collections.abc import Mapping

from fieldid.guides.refusals import Refusal

REFUSALS: Mapping[str, tuple[str, str]] = {
    "not-csv": ("is not CSV: {why}", "fields in double quotes, with quotes doubled"),
    "no-header": ("has no first line that names the columns", "{wants}"),
    "semicolons": (
        "the columns are parted by {value}",
        "commas: save it as CSV with commas",
    ),
    "column-missing": ("the column {value} is missing", "{wants}"),
    "column-unknown": ("{value} is no column that is known here", "{nearest}"),
    "column-twice": ("the column {value} stands twice", "each column once"),
    "column-unnamed": ("column {count} has no name", "a name, or no such column"),
    "row-length": ("has {count} fields", "{most} fields, one for each column"),
    "too-many-rows": ("has more than {most} specimens", "at most {most} specimens"),
    "specimen-missing": ("has no name", "a name or number of the specimen's own"),
    "specimen-twice": ("{value} is the specimen in line {before} too", "another name"),
    "too-long": ("has {count} characters", "at most {most} characters"),
    "how": ("{value} is no way to confirm a year that is known here", "{nearest}"),
    "how-other": ("does not say how", "words behind it, as 'other: dated by its box'"),
    "years": ("{value} does not say a model year", "{wants}"),
    "years-sum": ("the probabilities add up to {value}", "1 in all"),
    "year-twice": ("{value} stands twice", "each model year once"),
    "no-number": ("{value} is no number", "{wants}"),
}


def refusal(code: str, **words: object) -> Refusal:
    """The refusal with this code and these words.

    >>> refusal("column-twice", value="'how'").wrong
    "the column 'how' stands twice"
    """
    wrong, right = REFUSALS[code]
    return Refusal(code, wrong.format(**words), right.format(**words))
