"""Writes the shared offers: finds, prices and deals, and what both engines must answer.

Run from the project's folder: `python tests/make_offers.py` writes them anew; the tests
say whether the file is what the engine says now. Numbers as in the vectors.
"""

import sys
from pathlib import Path
from typing import Any

TESTS = Path(__file__).parent
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

import offers  # noqa: E402  # the path must be set first
from fieldid.engine import Guide, prepare  # noqa: E402
from fieldid.engine.offer import offer  # noqa: E402
from fieldid.guides.pack import pack, plain  # noqa: E402
from make_vectors import as_json, short  # noqa: E402

FILE = TESTS / "offers.json"


def made(guide: Guide) -> dict[str, Any]:
    """A packed guide and its cases, as they stand in the file."""
    tables = prepare(guide)
    cases = [
        {
            "find": plain(find),
            "prices": plain(prices),
            "deal": plain(deal),
            "offer": plain(offer(tables, find, prices=prices, deal=deal)),
        }
        for find, prices, deal in offers.cases(guide)
    ]
    return {"guide": pack(guide) | {"scene": None, "own": []}, "cases": short(cases)}


def main() -> None:
    """Write the file, one case a line, so that a change shows its case."""
    parts = []
    for guide in offers.guides():
        each = made(guide)
        cases = ",\n".join(map(as_json, each["cases"]))
        parts.append(f'{{"guide":{as_json(each["guide"])},\n"cases":[\n{cases}\n]}}')
    FILE.write_text("[" + ",\n".join(parts) + "]\n")


if __name__ == "__main__":
    main()
