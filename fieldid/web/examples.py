"""Worked examples of a guide, by which a phone checks its own arithmetic.

Made from the guide alone, so that a guide of anybody's brings its own. Each kind of
question comes once, and no more than that, since a phone keeps them all: what the first
model year shows, with a claim; mixtures of years, one with a part gone, looked at from
a step away, and one without tools; and, if the guide knows sets, three of those. Each
reads nearly all clues, so all of a guide's arithmetic is tried; the tests have more.
"""

from collections.abc import Iterator, Sequence
from typing import Any

from fieldid.engine import Claim, Find, Item, Tables, judge
from fieldid.engine.find import Reading
from fieldid.engine.guide import Guide
from fieldid.engine.prepare import tables_for
from fieldid.engine.typical import typical
from fieldid.guides.pack import plain
from fieldid.web.prepared import tables_of

DIGITS = 10
"""One more than must agree, and few enough for a short file."""
MANY = 100
"""The verdicts of a guide with so many years are long, and two finds must do."""

UNLIMITED: dict[str, Any] = {"away": False, "without": (), "photos": False}

Example = tuple[Find, dict[str, Any]]
"""A find, and what `judge` is told beside it."""


def examples(guide: Guide) -> dict[str, Any]:
    """The guide's id with finds and their verdicts; the phone has the guide itself."""
    tables = tables_of(guide)
    cases = [
        {"find": plain(find), **limits, "verdict": plain(judge(tables, find, **limits))}
        for find, wished in _finds(tables)
        for limits in (UNLIMITED | wished,)
    ]
    return {"guide": guide.id, "cases": _short(cases)}


def _finds(tables: Tables) -> Iterator[Example]:
    guide = tables.guide
    tools = tuple(dict.fromkeys(clue.needs for clue in guide.clues if clue.needs))
    able = tuple(part.id for part in guide.parts if part.replaced > 0)[:1]
    members = guide.members.all if guide.members else (None, None)
    last = len(guide.years) - 1
    claim = Claim(guide.years[0].year, tuple(clue.id for clue in guide.clues[:2]))
    yield Find(guide.id, (Item(_shown(tables, 0, None)),), claim), {}
    mixed = Item(_mixed(tables, last, members[0], able), able, members[0])
    yield Find(guide.id, (mixed,)), {"away": True, "without": tools}
    if last < MANY:
        member = members[-1]
        whole = Item(_mixed(tables, last // 2, member, ()), (), member)
        yield Find(guide.id, (whole,)), {"without": tools}
    if guide.members:
        yield from _sets(tables, guide.members.all)


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
    """Every other reading of another year, some not told, some not looked at, none on
    what is gone.
    """
    other = (5 * y + 3) % len(tables.guide.years)
    pairs = zip(
        _shown(tables, y, member),
        _shown(tables, other, member),
        tables.guide.clues,
        strict=True,
    )
    found: list[tuple[str, Reading]] = []
    for k, (own, strange, clue) in enumerate(pairs):
        if clue.part in gone or (k + y) % 5 == 1:
            continue
        untold = (k + y) % 5 == 0
        found.append((clue.id, None) if untold else strange if k % 2 else own)
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


def _short(value: Any) -> Any:
    """The same with numbers to ten digits, after the point if below one."""
    if isinstance(value, float):
        return round(value, DIGITS) if abs(value) < 1 else float(f"{value:.{DIGITS}g}")
    if isinstance(value, dict):
        return {key: _short(each) for key, each in value.items()}
    return [_short(each) for each in value] if isinstance(value, list) else value
