"""Finds of the inbox into the census, and out again: what stands there already is not
written twice, and what somebody changed by hand is never taken out.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from json import dumps, loads
from pathlib import Path
from typing import Any

from fieldid.census import read
from fieldid.census.specimens import Specimen
from fieldid.census.write import append, remove, with_specimen
from fieldid.engine.guide import Guide
from fieldid.errors import CensusError, Problem
from fieldid.guides.pack import plain

TAKEN = ("stands there already, and says something else", "another name")
CHANGED = ("was changed since it was written", "the row taken out by hand")


def enter(path: Path, guide: Guide, specimens: Sequence[Specimen]) -> None:
    """Puts the specimens into the census beside a guide's file, those that do not stand
    there already; a CensusError if a name is that of another specimen.
    """
    census = read.beside(path)
    new = [
        specimen
        for specimen, here in _matched(census, guide, specimens)
        if not _alike(census, guide, specimen, here, TAKEN)
    ]
    for specimen in new:
        append(census, guide, specimen)


def leave(path: Path, guide: Guide, rows: str) -> None:
    """Takes out the specimens that were written as these rows say; they may have gone
    already.
    """
    census = read.beside(path)
    written: list[dict[str, Any]] = loads(rows)
    here = _by_name(census, guide)
    standing = [row for row in written if row["name"] in here]
    for row in standing:
        specimen = here[row["name"]]
        if _told(specimen) != row:
            raise _problem(census, specimen, CHANGED)
    for row in standing:
        remove(census, row["name"])


def rows_of(guide: Guide, specimens: Sequence[Specimen]) -> str:
    """The specimens as the census will give them back, to be known again by."""
    return dumps([_told(_written(guide, specimen)) for specimen in specimens])


def _matched(
    census: Path, guide: Guide, specimens: Sequence[Specimen]
) -> Iterator[tuple[Specimen, Specimen | None]]:
    here = _by_name(census, guide)
    for specimen in specimens:
        yield specimen, here.get(specimen.name)


def _alike(
    census: Path,
    guide: Guide,
    specimen: Specimen,
    here: Specimen | None,
    otherwise: tuple[str, str],
) -> bool:
    """Whether it stands there; refused if its name does and it does not."""
    if here is None:
        return False
    if _told(here) != _told(_written(guide, specimen)):
        raise _problem(census, here, otherwise)
    return True


def _by_name(census: Path, guide: Guide) -> dict[str, Specimen]:
    if not census.exists():
        return {}
    found = read.load(census, guide).specimens
    return {specimen.name: specimen for specimen in found}


def _written(guide: Guide, specimen: Specimen) -> Specimen:
    """The specimen as it is read again, its figures rounded as they are written."""
    text = with_specimen("", guide, specimen)
    return read.loads(text, guide, file="").specimens[0]


def _told(specimen: Specimen) -> Any:
    return plain(replace(specimen, line=0))


def _problem(census: Path, here: Specimen, said: tuple[str, str]) -> CensusError:
    wrong, right = said
    return CensusError(
        [Problem(str(census), here.line, "specimen", f"{here.name!r} {wrong}", right)]
    )
