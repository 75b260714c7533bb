"""A census with one specimen more or one less: text to text, and file to file.

The other rows stay byte for byte, unless a column has to be added for a clue that no
specimen had read before. No field is written that a spreadsheet takes for a formula.
"""

import csv
import io
from collections.abc import Sequence
from pathlib import Path

from fieldid.census.cells import SIZE, guarded, reading_text, unguarded, years_text
from fieldid.census.read import (
    MAY,
    NEEDED,
    PARTED,
    columned,
    loads,
    physical,
    rows,
)
from fieldid.census.specimens import Specimen
from fieldid.engine.find import Reading
from fieldid.engine.guide import Guide
from fieldid.guides.document import created, opened, saved


def append(path: Path, guide: Guide, specimen: Specimen) -> None:
    """Adds a specimen to a guide's census, which may be a new file.

    What would not be read again is refused and not written: a CensusError.
    """
    if not path.exists():
        text = with_specimen("", guide, specimen)
        loads(text, guide, file=str(path))
        created(path, text)
        return
    document = opened(path)
    text = with_specimen(document.text, guide, specimen)
    loads(text, guide, file=str(path))
    saved(document, text)


def remove(path: Path, name: str) -> None:
    """Takes the specimen of this name out of a census; it may have gone already."""
    document = opened(path)
    saved(document, without_specimen(document.text, name))


def with_specimen(text: str, guide: Guide, specimen: Specimen) -> str:
    """The text with one specimen more, at its end; of no text a whole one is made."""
    fields = _fields(guide, specimen)
    found, _ = rows(text)
    if not found:
        header = [*NEEDED, *MAY, *(clue.id for clue in columned(guide))]
        return _line(header) + _line([fields.get(name, "") for name in header])
    header = found[0][1]
    new = [name for name in fields if name not in header and fields[name]]
    if not new:
        end = "" if text.endswith("\n") else "\n"
        return text + end + _line([fields.get(name, "") for name in header])
    others = [[*map(_safe, row), *("" for _ in new)] for _, row in found[1:]]
    wider = [[*header, *new], *others]
    last = [fields.get(name, "") for name in wider[0]]
    return "".join(map(_line, [*wider, last]))


def without_specimen(text: str, name: str) -> str:
    """The text without the rows of the specimen of this name."""
    found, _ = rows(text)
    lines = physical(text)
    if not found or "specimen" not in found[0][1]:
        return text
    place = found[0][1].index("specimen")
    starts = [line for line, _ in found] + [len(lines) + 1]
    kept = lines[: starts[0] - 1]
    for (line, fields), stop in zip(found, starts[1:], strict=True):
        if len(fields) <= place or unguarded(fields[place]) != name:
            kept += lines[line - 1 : stop - 1]
    return "".join(kept)


def with_name(text: str, old: str, new: str, *, column: str = "") -> str:
    """The text in which a clue's column is called `new`; with a `column`, what stands
    in that one: an answer of the clue, or parts in the column of those that are gone.
    """
    found, wrong = rows(text)
    if wrong or not found:
        return text
    header = found[0][1]
    fixed = (*NEEDED, *MAY)
    if not column and (old in fixed or new in (*fixed, *header)):
        return text
    lines = physical(text)
    starts = [line for line, _ in found] + [len(lines) + 1]
    kept = lines[: starts[0] - 1]
    for i, (line, fields) in enumerate(found):
        own = lines[line - 1 : starts[i + 1] - 1]
        if not column:
            named = [new if each == old and i == 0 else each for each in fields]
        else:
            named = [
                _named(each, old, new) if i and header[n : n + 1] == [column] else each
                for n, each in enumerate(fields)
            ]
        kept += own if named == fields else [_line([*map(_safe, named)]), *_empty(own)]
    return "".join(kept)


def _empty(lines: Sequence[str]) -> Sequence[str]:
    """The empty lines behind a row."""
    end = max(n for n, line in enumerate(lines) if line.strip(" \t\r\n,"))
    return lines[end + 1 :]


def _named(field: str, old: str, new: str) -> str:
    """A field that names one thing, or several parts."""
    names = [
        new if each.strip() == old else each.strip() for each in field.split(PARTED)
    ]
    return f"{PARTED} ".join(names) if new in names else field


def _fields(guide: Guide, specimen: Specimen) -> dict[str, str]:
    """What stands in each column."""
    item = specimen.item
    readings = dict(item.readings)
    return {
        "specimen": guarded(specimen.name),
        "model_year": years_text(specimen.years),
        "how": f"{specimen.how}: {specimen.note}" if specimen.note else specimen.how,
        "member": guarded(item.member or ""),
        "gone": f"{PARTED} ".join(item.gone),
        **{
            clue.id: _reading(readings[clue.id])
            for clue in columned(guide)
            if clue.id in readings
        },
    }


def _reading(value: Reading) -> str:
    """A reading as text; a size below 0 is a number and no formula."""
    text = reading_text(value)
    return guarded(text) if isinstance(value, str) else text


def _safe(field: str) -> str:
    """Somebody else's field, guarded unless it is a number."""
    return field if SIZE.fullmatch(field) else guarded(unguarded(field))


def _line(fields: Sequence[str]) -> str:
    written = io.StringIO()
    csv.writer(written, lineterminator="\n").writerow(fields)
    return written.getvalue()
