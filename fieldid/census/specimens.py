"""A census as frozen records: what is known of each confirmed specimen. A leaf."""

from dataclasses import dataclass

from fieldid.engine.find import Item

HOWS = (
    "catalogue",
    "receipt",
    "works record",
    "inscription",
    "photograph",
    "family",
    "other",
)
"""How a specimen's year was confirmed; a colon and words of one's own may follow."""


@dataclass(frozen=True, slots=True)
class Specimen:
    """One object whose model year was confirmed by something else than its readings.

    `years` are the model years that it may be of, each with its probability; none where
    nothing is known of the year. `line` is where it stands in its file, from 1 on.
    """

    name: str
    years: tuple[tuple[int, float], ...]
    how: str
    note: str
    item: Item
    line: int = 0


@dataclass(frozen=True, slots=True)
class Census:
    """All specimens of one guide, in the order of their file; `file` names it."""

    guide: str
    specimens: tuple[Specimen, ...]
    file: str = ""
