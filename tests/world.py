"""The world's date codes as guides, and what a reading of one leaves possible.

In these guides nothing is ever misread, so that a reading is possible exactly where it
is right.
"""

from fieldid.engine import prepare
from fieldid.engine.prepare import likelihood, tables_for
from fieldid.guides.load import load
from fieldid.guides.months import month_text
from fieldid.guides.readings import as_read, misfit
from make import PLOVER

WORLD = PLOVER.parents[1] / "rules" / "world"
TABLES = {path.stem: prepare(load(path)) for path in sorted(WORLD.glob("*.toml"))}


def shares(guide: str, clue: str, text: str) -> dict[str, float]:
    """The months in which an object may have been built that shows this, each with
    how likely it is there.
    """
    tables = TABLES[guide]
    k = tables.places[clue]
    kind = tables.guide.clues[k]
    assert misfit(text, kind) is None
    found = likelihood(tables_for(tables, None)[k], as_read(text, kind))
    return {
        month_text(cell.t): x
        for cell, x in zip(tables.cells, found.orig, strict=True)
        if x
    }


def months(*args: str) -> list[str]:
    return sorted(shares(*args))


def years(*args: str) -> list[int]:
    return sorted({int(month[:4]) for month in months(*args)})


def refuses(guide: str, clue: str, text: str) -> bool:
    """Whether a reading has characters that the code cannot have."""
    tables = TABLES[guide]
    return misfit(text, tables.guide.clues[tables.places[clue]]) is not None
