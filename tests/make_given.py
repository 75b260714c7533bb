"""Writes what the phone knows of guides that are given, and the vectors for both sides.

Run from the project's folder: `python tests/make_given.py` writes
`static/phone/guests/described.js`, the description of a packed guide as Python draws it
from records and schemas, and `tests/given.json`: guides with mistakes, each with what
must be said of it. `--check` says whether those on disk are what it would write.
"""

import argparse
import json
import sys
from collections.abc import Iterator
from copy import deepcopy
from itertools import islice
from pathlib import Path
from typing import Any

TESTS = Path(__file__).parent
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

from fieldid import draw  # noqa: E402  # the path must be set first
from fieldid.guides import check, given, giventables, times  # noqa: E402
from fieldid.guides.givendrawing import DRAWING  # noqa: E402
from fieldid.guides.givenfit import GIVEN, misfits  # noqa: E402
from fieldid.guides.givenshape import described  # noqa: E402
from fieldid.guides.load import load  # noqa: E402
from fieldid.guides.pack import dump  # noqa: E402
from fieldid.guides.refusals import REFUSALS, Finding, place  # noqa: E402
from mistaken import CASES  # noqa: E402

DESCRIBED = TESTS.parent / "static" / "phone" / "guests" / "described.js"
VECTORS = TESTS / "given.json"
HEAD = """/**
 * What a guide that is given must look like, and how a mistake is said: drawn from
 * Python's records and schemas. Written by tests/make_given.py, not by hand.
 */
"""
BASE = TESTS / "guides" / "plover.toml"


def base() -> dict[str, Any]:
    """A packed guide without mistakes and with all that a guide may have, as a file
    that was given has it.
    """
    whole: dict[str, Any] = given.parsed(dump(load(BASE)).decode())
    return whole


def changed(guide: dict[str, Any], changes: Any) -> dict[str, Any]:
    """The guide with values set, or dropped where a change names none."""
    made = deepcopy(guide)
    for (*path, last), *value in changes:
        at: Any = made
        for key in path:
            at = at[key]
        if not value:
            del at[last]
        elif isinstance(at, list) and last == len(at):
            at.append(value[0])
        else:
            at[last] = value[0]
    return made


def found(guide: Any) -> list[list[str]]:
    """What Python says of a packed guide: place, code and words."""
    return [[place(path), told.code, told.wrong] for path, told in _found(guide)]


def _found(guide: Any) -> list[Finding]:
    wrong = list(islice(misfits(guide, described()), given.MOST_TOLD))
    return wrong or giventables.problems(guide)[: given.MOST_TOLD]


def _described() -> str:
    """The module, a value a line where that is long."""
    said = {**{code: wrong for code, (wrong, _) in REFUSALS.items()}, **GIVEN}
    limits = {
        "bytes": given.MOST_BYTES,
        "json": given.MOST_DEEP,
        "head": given.MOST_HEAD,
        "told": given.MOST_TOLD,
        "file": given.FILE_FORMAT,
        "chain": check.MOST_PARTS_IN_A_CHAIN,
        "window": times.MOST_MONTHS,
        "months": giventables.MOST_MONTHS,
        "steps": giventables.MOST_STEPS,
        "answers": giventables.ANSWERS,
        "whole": giventables.MOST_WHOLE_SETS,
    }
    return "".join(
        (
            HEAD,
            _constant("LIMITS", limits),
            _constant("REFUSALS", {code: said[code] for code in _codes(said)}),
            _constant("SCENES", [[n, list(spots)] for n, spots in draw.SCENES.items()]),
            _constant("DRAWING", DRAWING),
            _constant("DESCRIBED", described()),
        )
    )


def _codes(said: dict[str, str]) -> list[str]:
    """The codes that the phone's checks name."""
    modules = [path for path in DESCRIBED.parent.glob("*.js") if path != DESCRIBED]
    text = "".join(path.read_text("utf-8") for path in modules)
    return [code for code in said if f'"{code}"' in text]


def _constant(name: str, value: Any) -> str:
    return f"\nexport const {name} = {_lines(value, 0)};\n"


def _lines(value: Any, deep: int) -> str:
    """JSON on one line where it fits, else an entry a line."""
    flat = json.dumps(value, ensure_ascii=False)
    if len(flat) + 2 * deep < 100 or not isinstance(value, dict | list):
        return flat
    pad = "  " * (deep + 1)
    if isinstance(value, dict):
        entries = [f"{json.dumps(k)}: {_lines(v, deep + 1)}" for k, v in value.items()]
    else:
        entries = [_lines(each, deep + 1) for each in value]
    first, last = "{}" if isinstance(value, dict) else "[]"
    return f"{first}\n{pad}" + f",\n{pad}".join(entries) + f",\n{'  ' * deep}{last}"


def _vectors() -> str:
    guide = base()
    cases = [
        {"says": says, "changes": changes, "found": found(changed(guide, changes))}
        for says, changes in CASES
    ]
    written = json.dumps({"guide": guide, "cases": cases})
    return written.replace('{"says"', '\n{"says"') + "\n"


def _files() -> Iterator[tuple[Path, str]]:
    yield DESCRIBED, _described()
    yield VECTORS, _vectors()


def stale() -> list[Path]:
    """The files on disk that are not what would be written."""
    return [
        path
        for path, text in _files()
        if not path.exists() or path.read_text("utf-8") != text
    ]


def main() -> int:
    """Write the files, or check them: 1 if one is stale."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="only say what differs")
    if parser.parse_args().check:
        old = stale()
        print(*(f"{path} is stale" for path in old), sep="\n")
        return bool(old)
    for path, text in _files():
        path.write_text(text, "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
