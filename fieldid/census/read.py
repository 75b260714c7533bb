"""A census from its file: comma-separated values (RFC 4180), one row a specimen.

Every problem of the file comes at once, each with its line and column.
"""

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from fieldid.census import cells
from fieldid.census.refusals import refusal
from fieldid.census.specimens import Census, Specimen
from fieldid.engine.find import Item
from fieldid.engine.guide import Clue, Guide
from fieldid.errors import CensusError, GuideError, Problem, nearest
from fieldid.guides.items import check_items
from fieldid.guides.read import content, decoded
from fieldid.guides.readings import as_read
from fieldid.guides.refusals import Refusal, quote

NEEDED = ("specimen", "model_year", "how")
MAY = ("member", "gone")
MOST_SPECIMENS = 10_000
LONGEST = 300
"""No field of a census is longer."""
PARTED = ";"
"""Between the parts that are gone, and between the years that it may be of."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the file by column, and the line that it begins in."""

    line: int
    fields: dict[str, str]


def beside(path: Path) -> Path:
    """Where the census of a guide's file lies.

    >>> beside(Path("rules/lapwing.toml")).name
    'lapwing.census.csv'
    """
    return path.with_name(f"{path.stem}.census.csv")


def load(path: Path, guide: Guide) -> Census:
    """The census in a file."""
    try:
        text = decoded(content(path), file=str(path))
    except GuideError as error:
        raise CensusError(error.problems) from error
    return loads(text, guide, file=str(path))


def loads(text: str, guide: Guide, *, file: str) -> Census:
    """The census in a text."""
    lines, wrong = rows(text)
    problems = [Problem(file, line, *_said(key, told)) for line, key, told in wrong]
    header = lines[0][1] if lines else []
    columns = [(key, told) for key, told in _columns(header, guide)]
    problems += [Problem(file, 1, *_said(key, told)) for key, told in columns]
    specimens: list[Specimen] = []
    if not problems:
        before: dict[str, int] = {}
        for line, fields in lines[1:]:
            made, told_of = _specimen(line, fields, header, guide, before)
            problems += [Problem(file, line, *_said(*each)) for each in told_of]
            specimens += made
    if len(lines) - 1 > MOST_SPECIMENS:
        told = refusal("too-many-rows", most=MOST_SPECIMENS)
        problems.append(Problem(file, 0, *_said("", told)))
    if problems:
        raise CensusError(problems)
    return Census(guide.id, tuple(specimens), file)


def rows(
    text: str,
) -> tuple[list[tuple[int, list[str]]], list[tuple[int, str, Refusal]]]:
    """The rows of a text, each with the line that it begins in; and what is no CSV."""
    found: list[tuple[int, list[str]]] = []
    reader = csv.reader(physical(text), strict=True)
    line = 1
    try:
        for fields in reader:
            if any(field.strip() for field in fields):
                found.append((line, [field.strip() for field in fields]))
            line = reader.line_num + 1
    except csv.Error as error:
        return found, [(line, "", refusal("not-csv", why=str(error)))]
    return found, []


def physical(text: str) -> list[str]:
    """The lines of a text with their ends, as CSV knows lines."""
    return list(io.StringIO(text, newline=""))


def columned(guide: Guide) -> tuple[Clue, ...]:
    """The clues that can have a column: not those with the name of another column."""
    return tuple(clue for clue in guide.clues if clue.id not in (*NEEDED, *MAY))


def _said(key: str, told: Refusal) -> tuple[str, str, str]:
    return key, told.wrong, told.right


def _columns(header: Sequence[str], guide: Guide) -> Iterator[tuple[str, Refusal]]:
    """What is wrong with the names of the columns."""
    wants = "a first line as " + ",".join([*NEEDED, *MAY, "a clue"])
    if not header:
        yield "", refusal("no-header", wants=wants)
        return
    if len(header) == 1 and any(sign in header[0] for sign in ";\t"):
        sign = "semicolons" if ";" in header[0] else "tabs"
        yield "", refusal("semicolons", value=sign)
        return
    yield from _names(header, [*NEEDED, *MAY, *(c.id for c in columned(guide))])
    for name in NEEDED:
        if name not in header:
            yield "", refusal("column-missing", value=quote(name), wants=wants)


def _names(
    header: Sequence[str], known: Sequence[str]
) -> Iterator[tuple[str, Refusal]]:
    """What is wrong with a name, or with its standing there."""
    for place, name in enumerate(header):
        if not name:
            yield "", refusal("column-unnamed", count=place + 1)
        elif name in header[:place]:
            yield "", refusal("column-twice", value=quote(name))
        elif name not in known:
            right = nearest(name, known)
            yield "", refusal("column-unknown", value=quote(name), nearest=right)


def _specimen(
    line: int,
    fields: Sequence[str],
    header: Sequence[str],
    guide: Guide,
    before: dict[str, int],
) -> tuple[list[Specimen], list[tuple[str, Refusal]]]:
    """The specimen of a row, or all that is wrong with it."""
    if len(fields) != len(header):
        told = refusal("row-length", count=len(fields), most=len(header))
        return [], [("", told)]
    row = Row(line, dict(zip(header, map(cells.unguarded, fields), strict=True)))
    wrong = [
        (name, refusal("too-long", count=len(value), most=LONGEST))
        for name, value in row.fields.items()
        if len(value) > LONGEST
    ]
    wrong += _named(row, before)
    years, told_years = cells.years(row.fields["model_year"], guide)
    (word, note), told_how = cells.how(row.fields["how"])
    wrong += [
        (name, told)
        for name, told in (("model_year", told_years), ("how", told_how))
        if told
    ]
    item, told_item = _item(row, guide)
    wrong += told_item
    if wrong or item is None:
        return [], wrong
    name = row.fields["specimen"]
    return [Specimen(name, years, word, note, item, line)], []


def _named(row: Row, before: dict[str, int]) -> list[tuple[str, Refusal]]:
    """The specimen has a name, and no other has it."""
    name = row.fields["specimen"]
    if not name:
        return [("specimen", refusal("specimen-missing"))]
    if name in before:
        words = {"value": quote(name), "before": before[name]}
        return [("specimen", refusal("specimen-twice", **words))]
    before[name] = row.line
    return []


def _item(row: Row, guide: Guide) -> tuple[Item | None, list[tuple[str, Refusal]]]:
    """What was read off the specimen, held against the guide as a find is."""
    wrong: list[tuple[str, Refusal]] = []
    values: dict[str, object] = {}
    for clue in columned(guide):
        text = row.fields.get(clue.id, "")
        if text:
            value, told = cells.reading(text, clue)
            wrong += [(clue.id, told)] if told else []
            values |= {} if told else {clue.id: value}
    gone = [piece.strip() for piece in row.fields.get("gone", "").split(PARTED)]
    member = row.fields.get("member") or None
    parts = [name for name in gone if name]
    table = {"member": member, "readings": tuple(values.items()), "gone": parts}
    for path, told in check_items([table], guide):
        # ("items", 0, "readings", the clue), ("items", 0, "gone", 1) or so.
        column = path[3] if path[2] == "readings" else path[2]
        wrong.append((str(column), told))
    if wrong:
        return None, wrong
    clues = {clue.id: clue for clue in guide.clues}
    readings = tuple(
        (name, as_read(value, clues[name])) for name, value in values.items()
    )
    return Item(readings, tuple(parts), member), []
