"""Writes the shared vectors: finds, and the verdicts and messages that both engines
must give.

Run from the project's folder: `python tests/make_vectors.py` writes them anew,
`--check` says whether those on disk are what the engine says now. One file a guide:
the packed guide, without its drawings, and cases of find, limits, verdict and message.
Numbers keep twelve digits: three more than the engines must agree to, and few enough
that another machine's last bit changes no file.
"""

import argparse
import json
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

TESTS = Path(__file__).parent
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

import kittiwake  # noqa: E402  # the path must be set first
from fieldid.engine import Find, Guide, Tables, judge, message, prepare  # noqa: E402
from fieldid.engine.guide import Choice, Clue, Members  # noqa: E402
from fieldid.guides.load import load  # noqa: E402
from fieldid.guides.pack import pack, plain  # noqa: E402
from vector_cases import cases  # noqa: E402  # as above

RULES = TESTS.parent / "rules"
VECTORS = TESTS / "vectors"
DIGITS = 12
TOLERANCE = 1e-9


def guides() -> list[Guide]:
    """All guides: those of the tests, those of the product, and one in records for
    what no file may say (a choice with one option).
    """
    ours = [*TESTS.glob("rules/*.toml"), *TESTS.glob("rules/world/*.toml")]
    files = [*sorted(ours), *sorted(RULES.glob("*.toml"))]
    return [_bare(guide) for guide in [*map(load, files), _one_option()]]


def vectors(guide: Guide) -> dict[str, Any]:
    """The packed guide and its cases, as they stand in the file."""
    tables = prepare(guide)
    judged = [_judged(tables, find, limits) for find, limits in cases(guide)]
    return {"guide": pack(guide) | {"scene": None}, "cases": short(judged)}


def differences(found: Any, wanted: Any, path: str = "") -> Iterator[str]:
    """Where two things differ: numbers by more than 1e-9, all else at all."""
    keys = _keys(wanted)
    if _keys(found) != keys:
        yield f"{path}: {_keys(found)}, not {keys}"
    elif keys is not None:
        for key in keys:
            yield from differences(found[key], wanted[key], f"{path}[{key}]")
    elif not _agree(found, wanted):
        yield f"{path}: {found!r}, not {wanted!r}"


def stale(guide: Guide) -> list[str]:
    """Where the file of the guide is not what the engine says now."""
    path = VECTORS / f"{guide.id}.json"
    if not path.exists():
        return [f"{path.name} is missing"]
    return list(differences(json.loads(path.read_text()), vectors(guide)))


def write(guide: Guide) -> None:
    """Write the guide's file, one case a line, so that a change shows its case."""
    made = vectors(guide)
    cases = ",\n".join(map(as_json, made["cases"]))
    VECTORS.mkdir(exist_ok=True)
    (VECTORS / f"{guide.id}.json").write_text(
        f'{{"guide":{as_json(made["guide"])},\n"cases":[\n{cases}\n]}}\n'
    )


def main() -> int:
    """Write the files, or check them: 1 if one is stale."""
    parser = argparse.ArgumentParser(description="Write the shared vectors anew.")
    parser.add_argument("--check", action="store_true", help="only say what differs")
    if not parser.parse_args().check:
        for guide in guides():
            write(guide)
        return 0
    found = [f"{guide.id}{line}" for guide in guides() for line in stale(guide)]
    print(*found or ["The vectors are as the engine says."], sep="\n")
    return 1 if found else 0


def _judged(tables: Tables, find: Find, limits: dict[str, Any]) -> dict[str, Any]:
    verdict = judge(tables, find, **limits)
    told = message(tables, find, verdict)
    return {
        "find": plain(find),
        **limits,
        "verdict": plain(verdict),
        "message": plain(told),
    }


def _bare(guide: Guide) -> Guide:
    """Without drawings, which no verdict depends on and which change often."""
    return replace(guide, clues=tuple(map(_undrawn, guide.clues)))


def _undrawn(clue: Clue) -> Clue:
    if isinstance(clue.kind, Choice):
        options = tuple(replace(o, picture=None) for o in clue.kind.options)
        clue = replace(clue, kind=replace(clue.kind, options=options))
    return replace(clue, picture=None)


def _one_option() -> Guide:
    """The small guide in records, with a choice of one option added; parts that are
    replaced on whole sets, a member with a name, and clues that a photo can show.
    """
    guide = kittiwake.GUIDE
    kind = replace(kittiwake.SCORING.kind, options=kittiwake.SCORING.kind.options[:1])
    single = replace(kittiwake.SCORING, id="dots", name="dots", kind=kind)
    photos = {"rings": "The collar", "scoring": "The head", "numeral": "The head"}
    clues = [replace(clue, photo=photos.get(clue.id, "")) for clue in guide.clues]
    rates = {"grip": 0.3, "shaft": 0.05, "collar": 0.02}
    return replace(
        guide,
        clues=(*clues, single),
        parts=tuple(replace(p, whole_set=rates.get(p.id, 0.0)) for p in guide.parts),
        members=Members(("7", "W"), ("7",), names=(("7", "7 iron"),)),
    )


def short(value: Any) -> Any:
    """The value with its numbers cut to twelve digits, after the point if below 1."""
    if isinstance(value, float):
        if abs(value) < 1:
            return round(value, DIGITS)
        return float(f"{value:.{DIGITS}g}")
    if isinstance(value, dict):
        return {key: short(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [short(each) for each in value]
    return value


def _keys(value: Any) -> list[Any] | None:
    """The keys or places of what holds things; None of what is one thing."""
    if isinstance(value, dict):
        return list(value)
    return list(range(len(value))) if isinstance(value, list) else None


def _agree(found: Any, wanted: Any) -> bool:
    if isinstance(found, float):
        return abs(found - wanted) <= TOLERANCE * max(1.0, abs(wanted))
    return bool(found == wanted)


def as_json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


if __name__ == "__main__":
    sys.exit(main())
