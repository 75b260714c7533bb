"""A packed guide whose form is right, against itself: what no single value can tell is
wrong. It is laid out once more as the tables of a guide's file, so that the checks of
`check` say of it what they say of a file, in its words.

One thing is not asked: whether a span, a size or a flag speaks of a year that is one of
the guide's. A packed guide holds clues of other guides, which may speak of more.
"""

from collections.abc import Iterator
from typing import Any

from fieldid.guides.check import check
from fieldid.guides.givenfit import given
from fieldid.guides.refusals import Finding, Path, quote, refusal
from fieldid.guides.times import check_model_years

MOST_MONTHS = 12_000
"""Model years and months of building, taken together."""
MOST_STEPS = 4_000_000
"""Months times answers: what a slow phone judges with in a few seconds."""
MOST_WHOLE_SETS = 10
"""Parts that are replaced on whole sets: each doubles the worlds of a set."""
ANSWERS = 40
"""A measure, a code or a number counts as so many answers."""

Packed = dict[str, Any]


def problems(packed: Packed) -> list[Finding]:
    """All that is wrong across a packed guide. Where an id stands twice, no name says
    what it means.
    """
    found = list(_found(packed))
    twice = [each for each in found if each[1].code == "id-twice"]
    return twice or found


def _found(packed: Packed) -> Iterator[Finding]:
    tables = _tables(packed)
    yield from check(tables)
    yield from check_model_years(_years(packed))
    yield from _check_ends(packed)
    yield from _check_prices(packed)
    yield from _check_own(packed)
    yield from _check_work(packed)


def _tables(packed: Packed) -> Packed:
    """The guide as `check` sees it, without its years."""
    members, prices = packed["members"], packed["prices"]
    tables: Packed = {
        "drawing": packed["drawing"],
        "verdict": packed["verdict"],
        "part": [_part(part) for part in packed["parts"]],
        "clue": [_clue(clue) for clue in packed["clues"]],
        "set": members,
        "flag": packed["flags"],
        "prices": prices and _prices(prices),
    }
    return {key: _tupled(each) for key, each in tables.items()}


def _tupled(value: Any) -> Any:
    """The value with its lists as tuples, as the checks know them."""
    if isinstance(value, dict):
        return {key: _tupled(each) for key, each in value.items()}
    return tuple(map(_tupled, value)) if isinstance(value, list) else value


def _part(part: Packed) -> Packed:
    follows = part["follows"] and {"part": part["follows"], "share": part["share"]}
    return {"id": part["id"], "follows": follows}


def _clue(clue: Packed) -> Packed:
    kind = clue["kind"]
    said: Packed = {key: clue[key] for key in ("id", "part", "spot")}
    said["kind"] = kind["name"]
    match kind["name"]:
        case "choice":
            own = {"option": kind["options"], "replacement": kind["replacement"]}
        case "measure":
            size = [kind["low"], kind["high"]]
            own = {"range": size, "size": kind["sizes"], "unit": kind["unit"]}
        case "code":
            layout = [
                {"years": each["years"], "field": each["fields"]}
                for each in kind["layouts"]
            ]
            own = {"field": kind["fields"], "layout": layout, **_meaning(kind)}
        case _:
            own = {"first": kind["first"], "last": kind["last"], **_meaning(kind)}
    return said | own


def _meaning(kind: Packed) -> Packed:
    return {"means": kind["means"], "lag": kind["lag"] or None}


def _prices(prices: Packed) -> Packed:
    many = prices["set"]
    off = [[each["part"], each["off"]] for each in prices["parts"]]
    return {"off": off, "set": many and {"worth": []}, "worth": []}


def _years(packed: Packed) -> list[Packed]:
    return [
        {"year": y["year"], "years": None, "built": (y["opens"], y["closes"])}
        for y in packed["years"]
    ]


def _check_ends(packed: Packed) -> Iterator[Finding]:
    """What ends does so after it starts."""
    for place, y in enumerate(packed["years"]):
        if y["closes"] < y["opens"]:
            value = f"{y['opens']} to {y['closes']}"
            yield ("years", place), refusal("backwards", value=quote(value))
    for place, clue in enumerate(packed["clues"]):
        kind, at = clue["kind"], ("clues", place, "kind")
        if kind["name"] == "measure" and kind["high"] <= kind["low"]:
            value = f"{kind['low']} to {kind['high']}"
            yield at, refusal("backwards", value=quote(value))
        years = [year for year, _ in kind.get("first", ())]
        if years != sorted(years):
            yield (*at, "first"), refusal("backwards", value=_ends(years))


def _ends(years: list[int]) -> str:
    return quote(f"{years[0]} to {years[-1]}")


def _check_prices(packed: Packed) -> Iterator[Finding]:
    prices = packed["prices"] or {"worth": [], "set": None}
    many = prices["set"] or {"worth": []}
    years = [y["year"] for y in packed["years"]]
    for table, path in ((prices, ("prices",)), (many, ("prices", "set"))):
        for year, _ in table["worth"]:
            if year not in years:
                words = {"value": year, "what": "model year", "nearest": ""}
                at: Path = (*path, "worth", str(year))
                yield at, refusal("year-outside", **words)


def _check_own(packed: Packed) -> Iterator[Finding]:
    """A drawing of its own belongs to an option of a clue, and a member."""
    clues = {
        clue["id"]: [each["id"] for each in clue["kind"].get("options", ())]
        for clue in packed["clues"]
    }
    members = (packed["members"] or {"all": []})["all"]
    for place, (clue, option, member, _) in enumerate(packed["own"]):
        for at, name, known, what in (
            (0, clue, clues, "clue of this guide"),
            (1, option, clues.get(clue, [option]), "option of this clue"),
            (2, member, [None, *members], "member of the set"),
        ):
            if name not in known:
                words = {"value": quote(name), "what": what, "nearest": ""}
                yield ("own", place, at), refusal("unknown-name", **words)


def _check_work(packed: Packed) -> Iterator[Finding]:
    """A guide that is right may still take a phone for ever."""
    months = sum(max(0, y["closes"] - y["opens"] + 1) for y in packed["years"])
    if months > MOST_MONTHS:
        yield ("years",), given("too-many", count=months, most=MOST_MONTHS)
    answers = sum(len(clue["kind"].get("options", ())) or ANSWERS
                  for clue in packed["clues"])  # fmt: skip
    if (steps := months * answers) > MOST_STEPS:
        yield ("clues",), given("too-much", count=steps, most=MOST_STEPS)
    whole = sum(1 for part in packed["parts"] if part["whole_set"] > 0)
    if whole > MOST_WHOLE_SETS:
        yield ("parts",), given("too-many", count=whole, most=MOST_WHOLE_SETS)
