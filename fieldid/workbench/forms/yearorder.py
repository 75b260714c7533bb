"""A model year in its place among the others of its guide."""

from typing import Any

from fieldid.guides.edit import moved
from fieldid.guides.refusals import Path
from fieldid.workbench.fields.kinds import first_year
from fieldid.workbench.text.drafts import tables
from fieldid.workbench.text.places import held


def in_order(text: str, path: Path) -> tuple[str, Path]:
    """The text in which the model year at `path` stands behind all that are not later,
    and its path there; where the others are in no order, it stays.
    """
    there = held(tables(text), path[:-1])
    years = [_first(table) for table in there] if isinstance(there, list) else []
    place = path[-1]
    if not isinstance(place, int) or place >= len(years) or None in years:
        return text, path
    own = years.pop(place)
    if years != sorted(years):
        return text, path
    to = sum(1 for year in years if year <= own)
    return moved(text, path, to - place), (*path[:-1], to)


def _first(table: Any) -> Any:
    """The first year of a table; None if it has none that can be read."""
    found = held(table, ("year",)) or first_year(held(table, ("years",)))
    return found if isinstance(found, int) else None
