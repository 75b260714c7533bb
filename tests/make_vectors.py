"""Writes the shared vectors: finds and the verdicts that both engines must give.

Run from the project's folder: `python tests/make_vectors.py` writes them anew,
`--check` says whether those on disk are what the engine says now. One file a guide:
the packed guide, without its drawings, and cases of find, limits and verdict.
Numbers keep twelve digits: three more than the engines must agree to, and few enough
that another machine's last bit changes no file.
"""

import argparse
import json
import random
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

TESTS = Path(__file__).parent
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

import kittiwake  # noqa: E402  # the path must be set first
from fieldid.engine import Claim, Find, Guide, Item, judge, prepare  # noqa: E402
from fieldid.engine.guide import Choice, Clue, Code, Measure  # noqa: E402
from fieldid.guides.load import load  # noqa: E402
from fieldid.guides.pack import pack, plain  # noqa: E402
from specimens import look, specimen  # noqa: E402  # as above

RULES = TESTS.parent / "rules"
VECTORS = TESTS / "vectors"
SIMULATED = {"wrackham-teale-dotterel": 50, "tarn-corncrake": 90}
SIMULATED_OF_OTHERS = 25
DIGITS = 12
TOLERANCE = 1e-9

Case = tuple[Find, dict[str, Any]]
"""A find, and the limits that `judge` takes beside it."""


def guides() -> list[Guide]:
    """All guides: those of the tests, those of the product, and one in records for
    what no file may say (a choice with one option).
    """
    files = [*sorted(TESTS.glob("rules/*.toml")), *sorted(RULES.glob("*.toml"))]
    return [_bare(guide) for guide in [*map(load, files), _one_option()]]


def vectors(guide: Guide) -> dict[str, Any]:
    """The packed guide and its cases, as they stand in the file."""
    tables = prepare(guide)
    judged = [
        {
            "find": plain(find),
            **limits,
            "verdict": plain(judge(tables, find, **limits)),
        }
        for find, limits in cases(guide)
    ]
    return {"guide": pack(guide) | {"scene": None}, "cases": _short(judged)}


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
    cases = ",\n".join(map(_json, made["cases"]))
    VECTORS.mkdir(exist_ok=True)
    (VECTORS / f"{guide.id}.json").write_text(
        f'{{"guide":{_json(made["guide"])},\n"cases":[\n{cases}\n]}}\n'
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


def cases(guide: Guide) -> list[Case]:
    dice = random.Random(guide.id)
    number = SIMULATED.get(guide.id, SIMULATED_OF_OTHERS)
    return [*_edges(guide), *(_simulated(guide, dice) for _ in range(number))]


def _simulated(guide: Guide, dice: random.Random) -> Case:
    member = dice.choice((None, *guide.members.all)) if guide.members else None
    found = specimen(guide, dice, member)
    item = look(guide, found, dice, seen=dice.choice((0.3, 0.6, 0.9)), lost=0.15)
    claim = None
    if dice.random() < 0.3:
        cites = dice.sample([clue.id for clue in guide.clues], 2)
        claim = Claim(dice.choice(guide.years).year, tuple(cites))
    tools = sorted({clue.needs for clue in guide.clues if clue.needs})
    limits = {
        "away": dice.random() < 0.15,
        "without": tuple(tools if dice.random() < 0.2 else ()),
    }
    return Find(guide.id, (item,), claim), limits


def _edges(guide: Guide) -> Iterator[Case]:
    """Picked by hand: nothing, everything, the ends of everything."""
    first, last = guide.years[0].year, guide.years[-1].year
    able = tuple(part.id for part in guide.parts if part.replaced > 0)
    every = {
        "none": {},
        "untold": dict.fromkeys([clue.id for clue in guide.clues]),
        "lowest": {clue.id: _end(clue, 0) for clue in guide.clues},
        "highest": {clue.id: _end(clue, -1) for clue in guide.clues},
        "mixed": {c.id: _end(c, -(k % 2)) for k, c in enumerate(guide.clues)},
        "blurred": {c.id: _blurred(c) for c in guide.clues if isinstance(c.kind, Code)},
    }
    for readings in every.values():
        yield _case(guide, readings)
        yield _case(guide, readings, claim=Claim(last, tuple(readings)))
    yield _case(guide, {}, gone=able)
    yield _case(guide, every["highest"], gone=able[:1])
    yield _case(guide, {}, claim=Claim(first, (guide.clues[0].id,)))
    yield _case(guide, {}, away=True)
    yield _case(guide, {}, without=[clue.needs for clue in guide.clues])
    for year in guide.years:
        yield _case(guide, _of_year(guide, year.year))
    for clue in guide.clues:
        yield _case(guide, {clue.id: _end(clue, 0)}, claim=Claim(first, (clue.id,)))
    for member in guide.members.all if guide.members else ():
        yield _case(guide, every["mixed"], member=member)


def _case(
    guide: Guide, readings, gone=(), member=None, claim=None, away=False, without=()
) -> Case:
    item = Item(tuple(readings.items()), tuple(gone), member)
    tools = tuple(dict.fromkeys(tool for tool in without if tool))
    return Find(guide.id, (item,), claim), {"away": away, "without": tools}


def _end(clue: Clue, end: int) -> str | float:
    """The first (0) or the last (-1) of the readings that the clue may have."""
    kind = clue.kind
    if isinstance(kind, Choice):
        return kind.options[end].id
    if isinstance(kind, Measure):
        return (kind.low, kind.high)[end]
    return "".join(field.alphabet[end] * field.width for field in kind.fields)


def _blurred(clue: Clue) -> str:
    return "?" * sum(field.width for field in clue.kind.fields)


def _of_year(guide: Guide, year: int) -> dict[str, str | float | None]:
    """What an object of the middle of the year shows that nothing happened to."""
    y = next(y for y in guide.years if y.year == year)
    calm = replace(
        guide,
        years=(replace(y, opens=(y.opens + y.closes) // 2, closes=y.closes),),
        parts=tuple(replace(part, replaced=0.0) for part in guide.parts),
        clues=tuple(replace(c, misread=0.0, unreadable=0.0) for c in guide.clues),
        outside=0.0,
        floor=1e-6,
    )
    return dict(specimen(calm, random.Random(year)).readings)


def _bare(guide: Guide) -> Guide:
    """Without drawings, which no verdict depends on and which change often."""
    return replace(guide, clues=tuple(map(_undrawn, guide.clues)))


def _undrawn(clue: Clue) -> Clue:
    if isinstance(clue.kind, Choice):
        options = tuple(replace(o, picture=None) for o in clue.kind.options)
        clue = replace(clue, kind=replace(clue.kind, options=options))
    return replace(clue, picture=None)


def _one_option() -> Guide:
    """The small guide in records, with a choice of one option added."""
    guide = kittiwake.GUIDE
    kind = replace(kittiwake.SCORING.kind, options=kittiwake.SCORING.kind.options[:1])
    single = replace(kittiwake.SCORING, id="dots", name="dots", kind=kind)
    return replace(guide, clues=(*guide.clues, single))


def _short(value: Any) -> Any:
    """The value with its numbers cut to twelve digits, after the point if below 1."""
    if isinstance(value, float):
        if abs(value) < 1:
            return round(value, DIGITS)
        return float(f"{value:.{DIGITS}g}")
    if isinstance(value, dict):
        return {key: _short(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [_short(each) for each in value]
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


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


if __name__ == "__main__":
    sys.exit(main())
