"""From a guide's checked tables to the engine's records; nothing can fail here."""

from collections.abc import Sequence
from typing import Any

from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Condition,
    Field,
    Guide,
    GuideFlag,
    Layout,
    Measure,
    Members,
    ModelYear,
    Number,
    Option,
    Part,
    Size,
    Span,
)
from fieldid.guides.prices import prices

_TABLES = (
    *("include", "model", "model_year", "part", "clue", "set", "flag", "caution"),
    "prices",
)


def guide(data: dict[str, Any]) -> Guide:
    """The guide that the tables describe."""
    said = {key: value for key, value in data.items() if key not in _TABLES}
    return Guide(
        **said,
        **data["model"],
        years=tuple(y for table in data["model_year"] for y in model_years(table)),
        parts=tuple(_part(table) for table in data["part"]),
        clues=tuple(_clue(table, data["model"]["misread"]) for table in data["clue"]),
        members=Members(**data["set"]) if data["set"] else None,
        flags=tuple(_flag(table) for table in data["flag"]),
        cautions=tuple(table["say"] for table in data["caution"]),
        prices=prices(data["prices"]) if data["prices"] else None,
    )


def model_years(table: dict[str, Any]) -> tuple[ModelYear, ...]:
    """The model years of one table: one, or a run of plain ones."""
    first, last = table["years"] or (table["year"], table["year"])
    built = table["year"] and table["built"]
    said = {key: table[key] for key in ("volume", "note") if key in table}
    return tuple(
        ModelYear(year, *(built or (12 * year, 12 * year + 11)), **said)
        for year in range(first, last + 1)
    )


def code(table: dict[str, Any]) -> Code:
    """A code, of the keys of its clue."""
    layouts = tuple(
        Layout(each["years"], _fields(each["field"])) for each in table["layout"]
    )
    return Code(_fields(table["field"]), table["means"], table["lag"] or 0.0, layouts)


def _part(table: dict[str, Any]) -> Part:
    follows = table["follows"] or {"part": None, "share": 0.0}
    return Part(**{**table, "follows": follows["part"], "share": follows["share"]})


def _clue(table: dict[str, Any], misread: float) -> Clue:
    own = {key: table[key] for key in Clue.__slots__ if key in table}
    return Clue(
        **{
            **own,
            "kind": _kind(table),
            "name": table["name"] or table["id"].replace("-", " "),
            "misread": misread if table["misread"] is None else table["misread"],
            "spot": table["spot"] or table["part"],
        }
    )


def _fields(tables: Sequence[dict[str, Any]]) -> tuple[Field, ...]:
    return tuple(Field(**each) for each in tables)


def _kind(table: dict[str, Any]) -> Choice | Measure | Code | Number:
    match table["kind"]:
        case "choice":
            options = tuple(_option(option) for option in table["option"])
            return Choice(options, table["replacement"])
        case "measure":
            sizes = tuple(Size(**size) for size in table["size"])
            low, high = table["range"]
            unit, wear, helper = table["unit"], table["wear"], table["helper"]
            return Measure(unit, low, high, wear, sizes, helper)
        case "number":
            means, lag = table["means"], table["lag"] or 0.0
            return Number(means, lag, table["first"], table["last"])
    return code(table)


def _option(table: dict[str, Any]) -> Option:
    return Option(**{**table, "seen": tuple(Span(**span) for span in table["seen"])})


def _flag(table: dict[str, Any]) -> GuideFlag:
    conditions = tuple(c for when in table["when"] for c in _conditions(when))
    return GuideFlag(conditions, table["say"], table["ask"])


def _conditions(when: dict[str, Any]) -> list[Condition]:
    """One table may say several things, which must hold together."""
    together = (("clue", "among", "over", "under"), ("part", "replaced_over"))
    conditions = [
        Condition(**{key: when[key] for key in keys})
        for keys in together
        if when[keys[0]] is not None
    ]
    if when["years"]:
        conditions.append(Condition(years=when["years"]))
    return conditions
