"""Writes the census that comes along, of specimens drawn by lot from a guide; with
--check it compares. Run it after the guide or what draws specimens has changed.

The specimens are invented. They are drawn from the guide as it is but for what
`AS_IT_WAS` changes, so that the census has something to disagree about.
"""

import csv
import io
import sys
from pathlib import Path

from fieldid.census.cells import reading_text
from fieldid.census.read import MAY, NEEDED, beside
from fieldid.engine import prepare
from fieldid.engine.lot import among, lots, pick
from fieldid.engine.specimen import Specimen, specimen
from fieldid.guides.load import loads
from fieldid.paths import RULES

GUIDE = RULES / "wrackham-teale-dotterel.toml"
SEED = 1957
MANY = 44
AS_IT_WAS = (
    # Most faces had lines, in all years.
    (
        'seen = [{ years = "1954-1965", share = "sometimes" }]',
        'seen = [{ years = "1954-1965", share = "always" }]',
    ),
    # The cap of 1957 had a star more often than a lantern.
    (
        'seen = [{ years = "1957-1958", share = "nearly always" }]',
        'seen = [{ years = "1957-1958", share = "sometimes" }]',
    ),
    (
        'seen = [{ years = "1960-1961", share = "nearly always" },',
        'seen = [{ years = "1957-1961", share = "often" },',
    ),
)
HOWS = (
    "catalogue: invented, like the club",
    "receipt: invented, like the club",
    "works record: invented, like the club",
    "family: invented, like the club",
)


def census() -> str:
    """The text of the census."""
    text = GUIDE.read_text("utf-8")
    for old, new in AS_IT_WAS:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    guide = loads(text.encode(), file="as it was")
    tables = prepare(guide)
    draw = lots(SEED)
    clues = [clue.id for clue in guide.clues]
    members = guide.members.all
    written = io.StringIO()
    rows = csv.writer(written, lineterminator="\n")
    rows.writerow([*NEEDED, *MAY, *clues])
    for number in range(1, MANY + 1):
        member = members[among(draw, len(members))]
        found = specimen(tables, draw, y=None, member=member)
        gone = found.replaced[3] and draw() < 0.15
        rows.writerow(
            [
                f"D{number:02}",
                year(tables.cells[found.cell].year, draw()),
                HOWS[pick(draw, [4, 2, 1, 3])],
                member,
                "grip" if gone else "",
                *fields(guide, found, gone),
            ]
        )
    return written.getvalue()


def year(true: int, lot: float) -> str:
    """What is known of the year: of most all, of some something, of few nothing."""
    if lot < 0.06:
        return ""
    if lot < 0.16 and true > 1954:
        return f"{true - 1} 0.3; {true} 0.7"
    return str(true)


def fields(guide, found: Specimen, gone: bool) -> list[str]:
    """What was read; of a part that is gone nothing."""
    parts = {clue.id: clue.part for clue in guide.clues}
    return [
        "" if gone and parts[name] == "grip" else reading_text(reading)
        for name, reading in found.readings
    ]


def main() -> int:
    path: Path = beside(GUIDE)
    made = census()
    if "--check" in sys.argv:
        return int(path.read_text("utf-8") != made)
    path.write_text(made, "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
