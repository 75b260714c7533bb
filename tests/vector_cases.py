"""The finds of the shared vectors: some picked by hand, some drawn by lot."""

import random
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from fieldid.engine import Claim, Find, Guide, Item
from fieldid.engine.find import Measured
from fieldid.engine.guide import Choice, Clue, Code, Measure, Number, layouts
from specimens import look, specimen

SIMULATED = {"wrackham-teale-dotterel": 50, "tarn-corncrake": 90}
SIMULATED_OF_OTHERS = 25
# Many of the small guides, whose verdicts are short; ten members once or twice.
SETS = {"ashlar-kittiwake": 30, "tarn-corncrake": 30}
SETS_OF_OTHERS = 8

# Long guides, whose verdicts are long too: a few readings each, whole and not.
READ: dict[str, tuple[dict[str, str | float], ...]] = {
    "dated-marks": (
        {"us-address": "zip", "german-name": "west", "patent-number": 3_070_900.0},
        {"recycling": "triangle", "german-name": "west"},
        {"diamond": "EE3102", "rd-number": 350_000.0},
        {"copyright": "19?6"},
    ),
    "golf-club-era": (
        {"club-shaft": "hickory", "web": "www"},
        {"club-grip": "wrapped", "swing-weight": 31.6},
    ),
    "iso-weeks": ({"week": "199801"}, {"week": "2020?3"}),
    "london-letters": (
        {"letter": "K"},
        {"letter": "K", "style": "capital"},
        {"letter": "t"},
    ),
    "registered-design": (
        {"diamond": "EE3102"},
        {"diamond": "28??YK"},
        {"diamond": "03??WG"},
        {"diamond": "??????"},
    ),
    "source-date": ({"code": "???542"}, {"code": "1139910"}, {"code": "???6210"}),
    "tyre-code": ({"date": "5300"}, {"date": "031"}, {"date": "??9"}, {}),
    "vehicle-year": ({"number": "4T"}, {"number": "RT"}, {"letter": "9"}, {}),
}

Case = tuple[Find, dict[str, Any]]
"""A find, and the limits that `judge` takes beside it."""


def cases(guide: Guide) -> list[Case]:
    """All finds under a guide, the same every time."""
    if guide.id in READ:
        return [_case(guide, readings) for readings in READ[guide.id]]
    dice = random.Random(guide.id)
    number = SIMULATED.get(guide.id, SIMULATED_OF_OTHERS)
    found = [*_edges(guide), *(_simulated(guide, dice) for _ in range(number))]
    if guide.members:
        number = SETS.get(guide.id, SETS_OF_OTHERS)
        found += [*_set_edges(guide), *(_set(guide, dice, i) for i in range(number))]
    return found


def _simulated(guide: Guide, dice: random.Random) -> Case:
    member = dice.choice((None, *guide.members.all)) if guide.members else None
    found = specimen(guide, dice, member)
    item = look(guide, found, dice, seen=dice.choice((0.3, 0.6, 0.9)), lost=0.15)
    return Find(guide.id, (item,), _claim(guide, dice)), _limits(guide, dice)


def _set(guide: Guide, dice: random.Random, number: int) -> Case:
    """Members of one cell, some strays of another, a part replaced on all by lot."""
    size = len(guide.members.all) if number == 0 else 2
    size = dice.randint(size, min(4, len(guide.members.all)) if number else size)
    members = dice.sample(guide.members.all, size)
    home, elsewhere = (_moment(guide, dice) for _ in range(2))
    whole = [part.id for part in guide.parts if dice.random() < part.whole_set]
    renewed = specimen(guide, dice)
    items = []
    for member in members:
        place = elsewhere if dice.random() < 0.2 else home
        found = specimen(place, dice, member)
        # One source for all: what another object shows stands on every member.
        readings = tuple(
            (
                clue.id,
                dict((renewed if clue.part in whole else found).readings)[clue.id],
            )
            for clue in guide.clues
        )
        found = replace(found, readings=readings)
        seen = dice.choice((0.0, 0.3, 0.6, 0.9))
        items.append(look(guide, found, dice, seen=seen, lost=0.15))
    limits = _limits(guide, dice) | {"photos": dice.random() < 0.3}
    return Find(guide.id, tuple(items), _claim(guide, dice)), limits


def _moment(guide: Guide, dice: random.Random) -> Guide:
    """The guide of one build month alone."""
    year = dice.choice(guide.years)
    t = dice.randint(year.opens, year.closes)
    return replace(guide, years=(replace(year, opens=t, closes=t),), outside=0.0)


def _claim(guide: Guide, dice: random.Random) -> Claim | None:
    if dice.random() >= 0.3:
        return None
    cites = dice.sample([clue.id for clue in guide.clues], 2)
    return Claim(dice.choice(guide.years).year, tuple(cites))


def _limits(guide: Guide, dice: random.Random) -> dict[str, Any]:
    tools = sorted({clue.needs for clue in guide.clues if clue.needs})
    return {
        "away": dice.random() < 0.15,
        "without": tuple(tools if dice.random() < 0.2 else ()),
        "photos": False,
    }


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
    yield _case(guide, {}, photos=True)
    yield _case(guide, {}, without=[clue.needs for clue in guide.clues])
    for year in guide.years:
        yield _case(guide, _of_year(guide, year.year))
    for clue in guide.clues:
        yield _case(guide, {clue.id: _end(clue, 0)}, claim=Claim(first, (clue.id,)))
    for member in guide.members.all if guide.members else ():
        yield _case(guide, every["mixed"], member=member)
    yield from _rough(guide)


def _rough(guide: Guide) -> Iterator[Case]:
    """Measures with an error: small, large, at both ends of the range."""
    measures = [clue for clue in guide.clues if isinstance(clue.kind, Measure)]
    if not measures:
        return
    last = guide.years[-1].year
    for place, part in ((0.0, 0.02), (0.4, 0.005), (0.4, 0.5), (1.0, 1.0)):
        readings = {c.id: _measured(c.kind, place, part) for c in measures}
        yield _case(guide, readings)
        claim = Claim(last, tuple(readings))
        yield _case(guide, _of_year(guide, last) | readings, claim=claim)


def _measured(kind: Measure, place: float, part: float) -> Measured:
    """A size at a place of the range, with an error that is a part of it."""
    width = kind.high - kind.low
    return Measured(kind.low + place * width, part * width)


def _set_edges(guide: Guide) -> Iterator[Case]:
    """Picked by hand: nothing read, all alike, all apart, everything gone."""
    first, last = guide.years[0].year, guide.years[-1].year
    members = guide.members.all[:3]
    able = tuple(part.id for part in guide.parts if part.replaced > 0)
    lows = {clue.id: _end(clue, 0) for clue in guide.clues}
    highs = {clue.id: _end(clue, -1) for clue in guide.clues}
    on_able = [clue.id for clue in guide.clues if clue.part in able]
    claim = Claim(last, tuple(clue.id for clue in guide.clues[::4]))
    rough = [
        {
            c.id: _measured(c.kind, place, 0.05)
            for c in guide.clues
            if isinstance(c.kind, Measure)
        }
        for place in (0.3, 0.31, 0.6)
    ]
    early, late = _of_year(guide, first), _of_year(guide, last)
    for readings, gone in (
        ([{}] * 3, ()),
        (rough, ()),
        ([dict.fromkeys(lows)] * 3, ()),
        ([lows] * 3, ()),
        ([lows, lows, highs], ()),
        ([early, early, late], ()),
        ([late, early, late], ()),
        ([{clue: highs[clue] for clue in on_able}] * 3, ()),
        ([{}] * 3, able),
        ([early, {}, {}], able[:1]),
    ):
        yield _bag(guide, members, readings, gone)
        yield _bag(guide, members[::-1], readings, gone, claim)


def _bag(guide: Guide, members, readings, gone, claim=None) -> Case:
    items = tuple(
        Item(tuple(each.items()), gone, member)
        for member, each in zip(members, readings, strict=False)
    )
    limits = {"away": False, "without": (), "photos": False}
    return Find(guide.id, items, claim), limits


def _case(
    guide: Guide,
    readings,
    gone=(),
    member=None,
    claim=None,
    away=False,
    without=(),
    photos=False,
) -> Case:
    item = Item(tuple(readings.items()), tuple(gone), member)
    tools = tuple(dict.fromkeys(tool for tool in without if tool))
    limits = {"away": away, "without": tools, "photos": photos}
    return Find(guide.id, (item,), claim), limits


def _end(clue: Clue, end: int) -> str | float:
    """The first (0) or the last (-1) of the readings that the clue may have."""
    kind = clue.kind
    if isinstance(kind, Choice):
        return kind.options[end].id
    if isinstance(kind, Measure):
        return (kind.low, kind.high)[end]
    if isinstance(kind, Number):
        return float((kind.first[0][1], kind.last)[end])
    fields = layouts(kind)[end].fields
    return "".join(field.alphabet[end] * field.width for field in fields)


def _blurred(clue: Clue) -> str:
    return "?" * sum(field.width for field in layouts(clue.kind)[0].fields)


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
