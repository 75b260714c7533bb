"""Code clues: stamped or printed strings of fixed-width fields, ? for unreadable.

Model page: "code".
"""

from dataclasses import dataclass, replace

from fieldid.engine.cells import Cell
from fieldid.engine.guide import Clue, Code, Field
from fieldid.engine.likelihood import Likelihood, blend, halves
from fieldid.engine.special import Vector

LOOK_ALIKES = (
    "0OQDC",
    "1IL7T",
    "2Z",
    "5S",
    "6G",
    "8B3",
    "UVY",
    "MNWH",
    "4A",
    "9GQ",
    "EF",
    "PR",
    "KX",
)
LOOK_ALIKE = 5.0
UNREADABLE = "?"


@dataclass(frozen=True, slots=True)
class CodeTable:
    """What each field should read in each cell, field by field (None: not said),
    and the likelihoods of the clean readings.

    The sources of a replaced part are the cells, and a last one that shows anything.
    """

    code: Code
    misread: float
    sources: Vector
    expected: tuple[tuple[str | None, ...], ...]
    clean: tuple[Likelihood, ...]


def code_table(clue: Clue, kind: Code, cells: tuple[Cell, ...]) -> CodeTable:
    """The table of a code clue."""
    expected = tuple(
        tuple(_expected(field, cell) for cell in cells) for field in kind.fields
    )
    sources = halves([cell.spread for cell in cells])
    bare = CodeTable(kind, clue.misread, sources, expected, ())
    clean = tuple(code_likelihood(bare, reading) for reading in _clean(bare))
    return replace(bare, clean=clean)


def code_likelihood(table: CodeTable, reading: str) -> Likelihood:
    """Likelihood of a reading of the code's full length."""
    orig = [1.0] * (len(table.sources) - 1)
    out = 1.0
    start = 0
    for field, expected in zip(table.code.fields, table.expected, strict=True):
        text = reading[start : start + field.width]
        start += field.width
        uniform = _uniform(field, text)
        out *= uniform
        by_text = {
            right: _field(field, text, right, uniform, table.misread)
            for right in dict.fromkeys(expected)
        }
        orig = [x * by_text[right] for x, right in zip(orig, expected, strict=True)]
    by_source = (*orig, out)
    return Likelihood(tuple(orig), blend(table.sources, by_source), out, by_source)


def _expected(field: Field, cell: Cell) -> str | None:
    """What the field should read in the cell; None where nothing is said."""
    year = cell.t // 12
    match field.means:
        case "month":
            return field.alphabet[cell.t % 12]
        case "year":
            return str(year)[-field.width :]
        case "year-letter":
            return dict(field.codes).get(year)
        case "model-year":
            return dict(field.codes).get(cell.year)
    return None


def _clean(table: CodeTable) -> list[str]:
    """The distinct readings without a mistake, in the order of the cells.

    Fields that say nothing about the date stay unread. A cell on which a dating
    field is silent has no clean reading: the readings must not overlap.
    """
    dating = [any(right is not None for right in row) for row in table.expected]
    readings = {
        "".join(
            right or UNREADABLE * field.width
            for field, right in zip(table.code.fields, row, strict=True)
        ): None
        for row in zip(*table.expected, strict=True)
        if all(right or not told for right, told in zip(row, dating, strict=True))
    }
    return list(readings)


def _uniform(field: Field, text: str) -> float:
    """Probability of what was read if every character were drawn by lot."""
    share = 1.0
    for a in text:
        if a != UNREADABLE:
            share /= len(field.alphabet)
    return share


def _field(
    field: Field, text: str, right: str | None, uniform: float, m: float
) -> float:
    """Likelihood of one field where it should read `right`."""
    if right is None:
        return uniform
    exact = 1.0
    for a, o in zip(text, right, strict=True):
        exact *= _character(field.alphabet, a, o, m)
    return (1 - field.odd) * exact + field.odd * uniform


def _character(alphabet: str, a: str, o: str, m: float) -> float:
    """Probability of reading `a` where `o` stands.

    >>> _character("ABC", "?", "A", 0.02)
    1.0
    >>> _character("ABC", "B", "A", 0.02)
    0.01
    """
    if a == UNREADABLE:
        return 1.0
    if a == o:
        return 1 - m
    alike = _alike(o)
    pull = {b: LOOK_ALIKE if b in alike else 1.0 for b in alphabet if b != o}
    return m * pull[a] / sum(pull.values())


def _alike(o: str) -> str:
    """The characters that are easily taken for `o`, with itself.

    >>> _alike("Q")
    '0OQDC9GQ'
    """
    return "".join(group for group in LOOK_ALIKES if o in group)
