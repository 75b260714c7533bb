"""Worked examples of a guide, by which a phone checks its own arithmetic.

Made from the guide alone, so that a guide of anybody's brings its own. Two for each
model year, or for some of many: what it should show, and what a mixture with another
year shows. A few sets beside them, if the guide knows sets.
"""

from collections.abc import Iterator, Sequence
from typing import Any

from fieldid.engine import Claim, Find, Item, Tables, judge
from fieldid.engine.find import Reading
from fieldid.engine.guide import Guide
from fieldid.engine.prepare import tables_for
from fieldid.engine.typical import typical
from fieldid.guides.pack import pack, plain
from fieldid.web.prepared import tables_of

DIGITS = 12
"""Three more than must agree, and few enough for a short file."""

ROOM = 300
"""So many probabilities of model years, two for each, keep the file short."""
FEWEST = 2
"""So many years are tried however many the guide has."""

UNLIMITED: dict[str, Any] = {"away": False, "without": (), "photos": False}

Example = tuple[Find, dict[str, Any]]
"""A find, and what `judge` is told beside it."""


def examples(guide: Guide) -> dict[str, Any]:
    """The packed guide, its drawings left out, with finds and their verdicts."""
    tables = tables_of(guide)
    cases = [
        {"find": plain(find), **limits, "verdict": plain(judge(tables, find, **limits))}
        for find, wished in _finds(tables)
        for limits in (UNLIMITED | wished,)
    ]
    return {
        "guide": _undrawn(pack(guide) | {"scene": None, "own": []}),
        "cases": _short(cases),
    }


def _finds(tables: Tables) -> Iterator[Example]:
    guide = tables.guide
    tools = tuple(dict.fromkeys(clue.needs for clue in guide.clues if clue.needs))
    members = (None, *(guide.members.all if guide.members else ()))
    able = [part.id for part in guide.parts if part.replaced > 0]
    for y in tried(len(guide.years)):
        year = guide.years[y]
        member = members[y % len(members)]
        whole = Item(_shown(tables, y, member), (), member)
        claim = Claim(year.year, tuple(clue.id for clue in guide.clues[:2]))
        yield Find(guide.id, (whole,), claim), {}
        gone = tuple(able[y % len(able) :][:1]) if able else ()
        mixed = Item(_mixed(tables, y, member, gone), gone, member)
        limits = {"away": y % 3 == 0, "without": tools if y % 2 else ()}
        yield Find(guide.id, (mixed,)), limits
    if guide.members:
        yield from _sets(tables, guide.members.all)


def tried(years: int) -> list[int]:
    """Places of the model years that are tried: all, or some from first to last.

    >>> tried(5), tried(190)
    ([0, 1, 2, 3, 4], [0, 189])
    """
    count = min(years, max(FEWEST, ROOM // years))
    return [i * (years - 1) // max(count - 1, 1) for i in range(count)]


def _sets(tables: Tables, members: Sequence[str]) -> Iterator[Example]:
    """Three small sets, with little left to look at, which is what takes room: all of
    one year, with a stray, and with the same replaced parts on all.
    """
    guide = tables.guide
    own, strange, claimed = (y % len(guide.years) for y in (0, 4, 2))
    claim = Claim(guide.years[claimed].year, (guide.clues[-1].id,))
    able = tuple(part.id for part in guide.parts if part.whole_set > 0)
    renewed = [clue.id for clue in guide.clues if clue.part in able]
    for years, later, limits in (
        ((own, own), (), {"photos": True}),
        ((own, own, strange), (), {}),
        ((claimed, claimed, claimed), renewed, {"away": True}),
    ):
        items = tuple(
            Item(_in_set(tables, y, strange, later, member), (), member)
            for y, member in zip(years, members, strict=False)
        )
        yield Find(guide.id, items, claim), limits


def _in_set(
    tables: Tables, y: int, other: int, later: Sequence[str], member: str
) -> tuple[tuple[str, Reading], ...]:
    """What a member of one year shows, some clues as in another year, one unread."""
    shown = dict(_shown(tables, other, member))
    return tuple(
        (clue, shown[clue] if clue in later else reading)
        for clue, reading in _shown(tables, y, member)[1:]
    )


def _mixed(
    tables: Tables, y: int, member: str | None, gone: tuple[str, ...]
) -> tuple[tuple[str, Reading], ...]:
    """Every other reading of another year, some not told, none on what is gone."""
    other = (5 * y + 3) % len(tables.guide.years)
    pairs = zip(
        _shown(tables, y, member),
        _shown(tables, other, member),
        tables.guide.clues,
        strict=True,
    )
    found: list[tuple[str, Reading]] = []
    for k, (own, strange, clue) in enumerate(pairs):
        if clue.part not in gone and (k + y) % 5:
            found.append(strange if k % 2 else own)
        elif clue.part not in gone:
            found.append((clue.id, None))
    return tuple(found)


def _shown(
    tables: Tables, y: int, member: str | None
) -> tuple[tuple[str, Reading], ...]:
    """What an object of the model year at place `y` shows at every clue."""
    middle = sum(tables.stretches[y]) // 2
    return tuple(
        (clue.id, typical(tables, table, middle, middle + 1))
        for clue, table in zip(
            tables.guide.clues, tables_for(tables, member), strict=True
        )
    )


def _undrawn(packed: Any) -> Any:
    """The same without pictures, which no arithmetic needs."""
    if isinstance(packed, list):
        return [_undrawn(each) for each in packed]
    if isinstance(packed, dict):
        return {
            key: None if key == "picture" else _undrawn(value)
            for key, value in packed.items()
        }
    return packed


def _short(value: Any) -> Any:
    """The same with numbers to twelve digits, after the point if below one."""
    if isinstance(value, float):
        return round(value, DIGITS) if abs(value) < 1 else float(f"{value:.{DIGITS}g}")
    if isinstance(value, dict):
        return {key: _short(each) for key, each in value.items()}
    return [_short(each) for each in value] if isinstance(value, list) else value
