"""A find from JSON, and finds and verdicts to JSON.

A find is written by people and by other programs: what comes in becomes a Find that
the engine can judge, or one sentence that says why not.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NoReturn

from marshmallow import ValidationError

from fieldid.engine.find import Claim, Find, Flag, Item, Verdict
from fieldid.engine.guide import FORMAT, Guide
from fieldid.errors import FindError, Problem, nearest
from fieldid.guides.fields import Format, Text, Year
from fieldid.guides.items import check_items
from fieldid.guides.months import month_text
from fieldid.guides.names import Names
from fieldid.guides.pack import plain
from fieldid.guides.readings import as_read
from fieldid.guides.refusals import (
    Finding,
    Path,
    Refusal,
    findings,
    place,
    quote,
    refusal,
)
from fieldid.guides.tables import Readings, Table, Tables, TableSchema, Texts

MOST_BYTES = 1_000_000
"""A find is a few hundred bytes; a megabyte is a mistake."""


class ItemSchema(TableSchema):
    """One object."""

    member = Text(load_default=None, allow_none=True)
    readings = Readings(load_default=())
    gone = Texts(least=0, load_default=())


class ClaimSchema(TableSchema):
    """What the seller says."""

    model_year = Year(required=True)
    cites = Texts(least=0, load_default=())


class FindSchema(TableSchema):
    """A whole find."""

    format = Format(FORMAT)
    guide = Text(required=True)
    items = Tables(
        lambda table: ItemSchema(), written='{"readings": {}}', least=0, required=True
    )
    claim = Table(
        ClaimSchema(),
        written='{"model_year": 1952, "cites": []}',
        load_default=None,
        allow_none=True,
    )


def load(
    source: str | bytes | Mapping[str, Any],
    guides: Iterable[Guide],
    *,
    name: str = "find",
) -> Find:
    """The find under the one of the guides that it names.

    `name` is what the error calls it: a file's name, or a line's number.
    """
    table = source if isinstance(source, Mapping) else _table(source, name)
    try:
        data: dict[str, Any] = FindSchema().load(table)
    except ValidationError as error:
        raise _error(name, *next(findings(error.messages))) from error
    known = {guide.id: guide for guide in guides}
    if data["guide"] not in known:
        value, right = quote(data["guide"]), nearest(data["guide"], known)
        told = refusal("unknown-guide", value=value, nearest=right)
        raise _error(name, ("guide",), told)
    guide = known[data["guide"]]
    found = next(_check(data, guide), None)
    if found:
        raise _error(name, *found)
    return _find(data, guide)


def find_json(find: Find) -> dict[str, Any]:
    """The find as the file that `load` reads."""
    return {
        "format": FORMAT,
        "guide": find.guide,
        "items": [
            {
                "member": item.member,
                "readings": dict(item.readings),
                "gone": list(item.gone),
            }
            for item in find.items
        ],
        "claim": plain(find.claim),
    }


def verdict_json(verdict: Verdict) -> dict[str, Any]:
    """The verdict as other programs read it: all its fields, months as "1951-09"."""
    mirrored: dict[str, Any] = plain(verdict)
    whole_set = mirrored.pop("whole_set")
    return mirrored | {
        "model_years": _years_json(verdict.model_years),
        "built": [{"month": month_text(t), "probability": p} for t, p in verdict.built],
        "stray": [
            {"member": each.member, "probability": each.stray}
            for each in verdict.members
        ],
        "whole_set_replaced": whole_set,
        "members": [
            plain(each) | {"model_years": _years_json(each.model_years)}
            for each in verdict.members
        ],
        "flags": [_flag_json(flag) for flag in verdict.flags],
    }


def _years_json(years: Iterable[tuple[int, float]]) -> list[dict[str, Any]]:
    return [{"year": year, "probability": p} for year, p in years]


def _flag_json(flag: Flag) -> dict[str, Any]:
    mirrored: dict[str, Any] = plain(flag)
    on_part = flag.kind in ("gone", "replaced", "whole-set")
    named = {"part": flag.about[0]} if on_part else {}
    return mirrored | named


def _table(source: str | bytes, name: str) -> Mapping[str, Any]:
    """The JSON object of a text."""
    text = _text(source, name)
    try:
        table = json.loads(
            text, object_pairs_hook=_once(name), parse_constant=_constant
        )
    except RecursionError as error:
        raise _error(name, (), refusal("too-deep")) from error
    except json.JSONDecodeError as error:
        why = f"{error.msg.lower()} (column {error.colno})"
        raise _error(name, (), refusal("not-json", why=why), error.lineno) from error
    except ValueError as error:
        # Python reads no number of thousands of digits.
        why = str(error).split(";")[0]
        raise _error(name, (), refusal("not-json", why=why)) from error
    if not isinstance(table, Mapping):
        wants = 'a table, as {"format": 1, "guide": "...", "items": []}'
        raise _error(name, (), refusal("not-that", value=quote(table), wants=wants))
    return table


def _text(source: str | bytes, name: str) -> str:
    if len(source) > MOST_BYTES:
        raise _error(name, (), refusal("too-large", most=MOST_BYTES))
    if isinstance(source, str):
        return source.removeprefix("\ufeff")
    try:
        return source.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        byte = f"0x{error.object[error.start]:02x}"
        raise _error(name, (), refusal("not-utf-8", value=byte)) from error


def _once(name: str) -> Any:
    """Makes an object of its pairs; of a key that stands twice JSON keeps the last."""

    def table(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        made: dict[str, Any] = {}
        for key, value in pairs:
            if key in made:
                raise _error(name, (), refusal("key-twice", value=quote(key)))
            made[key] = value
        return made

    return table


def _constant(word: str) -> NoReturn:
    """NaN and Infinity are Python's, not JSON's."""
    raise ValueError(f"{word} is no number")


def _check(data: Mapping[str, Any], guide: Guide) -> Iterator[Finding]:
    """What does not fit the guide."""
    yield from check_items(data["items"], guide)
    if data["claim"]:
        yield from _check_claim(data["claim"], guide)


def _check_claim(claim: Any, guide: Guide) -> Iterator[Finding]:
    year, years = claim["model_year"], [y.year for y in guide.years]
    if year not in years:
        right = f"one of {years[0]} to {years[-1]}"
        told = refusal("year-outside", value=year, what="model year", nearest=right)
        yield ("claim", "model_year"), told
    clues = Names("clue of this guide", tuple(clue.id for clue in guide.clues))
    for i, name in enumerate(claim["cites"]):
        yield from clues.unknown(name, ("claim", "cites", i))


def _find(data: Mapping[str, Any], guide: Guide) -> Find:
    clues = {clue.id: clue for clue in guide.clues}
    items = tuple(
        Item(
            tuple(
                (name, as_read(value, clues[name])) for name, value in item["readings"]
            ),
            item["gone"],
            item["member"],
        )
        for item in data["items"]
    )
    return Find(guide.id, items, Claim(**data["claim"]) if data["claim"] else None)


def _error(name: str, path: Path, told: Refusal, line: int = 0) -> FindError:
    return FindError(str(Problem(name, line, place(path), told.wrong, told.right)))
