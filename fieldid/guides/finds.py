"""A find from JSON, and finds and verdicts to JSON.

A find is written by people and by other programs: what comes in becomes a Find that
the engine can judge, or one sentence that says why not. A log is what a phone exports:
many finds, each with what else its owner keeps of it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from marshmallow import EXCLUDE, ValidationError, fields

from fieldid.engine.find import Claim, Find, Flag, Item, Verdict
from fieldid.engine.guide import FORMAT, Guide
from fieldid.errors import FindError, nearest
from fieldid.guides.fields import Format, Text, Wanted, Word, Year
from fieldid.guides.items import check_items
from fieldid.guides.jsontext import find_error, json_table
from fieldid.guides.months import month_text
from fieldid.guides.names import Names
from fieldid.guides.pack import plain
from fieldid.guides.readings import as_read
from fieldid.guides.refusals import Finding, Path, findings, quote, refusal
from fieldid.guides.tables import Readings, Table, Tables, TableSchema, Texts

MOST_BYTES = 1_000_000
"""A find is a few hundred bytes; a megabyte is a mistake."""
MOST_LOG_BYTES = 10_000_000
"""No phone exports more in one file."""
LOG_FORMAT = 1


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


class Kept(Wanted):
    """The finds of a log; each is looked at by itself."""

    wants = 'a list of tables, each as {"find": {}}'

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> list[Any]:
        if not isinstance(value, list):
            raise self.not_that(value)
        return value


class EntrySchema(TableSchema):
    """One find of a log; what else its owner keeps of it is for the phone to read."""

    class Meta:
        """Keys that only the phone knows are passed over."""

        unknown = EXCLUDE

    find = Table(
        FindSchema(),
        written='{"format": 1, "guide": "...", "items": []}',
        required=True,
    )


class LogSchema(TableSchema):
    """A whole log."""

    format = Format(LOG_FORMAT)
    app = Word("fieldid", required=True)
    finds = Kept(required=True)
    own = fields.Raw(load_default=None)
    """Its owner's prices and wants, which are for the phone to read."""


def load_all(
    source: bytes, guides: Sequence[Guide], *, name: str = "find"
) -> Iterator[Find | FindError]:
    """Each find of a log, or the one of a file with nothing else.

    A find that cannot be judged comes as its error, and costs the others nothing.
    """
    try:
        kept = _log(source, name)
        if kept is None:
            yield load(source, guides, name=name)
            return
    except FindError as error:
        yield error
        return
    for i, entry in enumerate(kept):
        try:
            yield _kept(entry, guides, name, ("finds", i))
        except FindError as error:
            yield error


def load(
    source: str | bytes | Mapping[str, Any],
    guides: Iterable[Guide],
    *,
    name: str = "find",
) -> Find:
    """The find under the one of the guides that it names.

    `name` is what the error calls it: a file's name, or a line's number.
    """
    if isinstance(source, str | bytes):
        source = json_table(source, name, MOST_BYTES)
    return _judgeable(_loaded(FindSchema(), source, name, ()), guides, name, ())


def find_json(find: Find) -> dict[str, Any]:
    """The find as the file that `load` reads."""
    return {
        "format": FORMAT,
        "guide": find.guide,
        "items": [
            {
                "member": item.member,
                "readings": {clue: plain(value) for clue, value in item.readings},
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


def _log(source: bytes, name: str) -> list[Any] | None:
    """What a log keeps; None if the file is no log."""
    if b'"finds"' not in source:
        return None
    table = json_table(source, name, MOST_LOG_BYTES)
    if "finds" not in table:
        return None
    log: dict[str, Any] = _loaded(LogSchema(), table, name, ())
    return log["finds"]  # type: ignore[no-any-return]  # Kept lets lists alone pass


def _kept(entry: object, guides: Iterable[Guide], name: str, at: Path) -> Find:
    """The find of one entry of a log."""
    if not isinstance(entry, Mapping):
        told = refusal("not-that", value=quote(entry), wants='a table, as {"find": {}}')
        raise find_error(name, at, told)
    data = _loaded(EntrySchema(), entry, name, at)
    return _judgeable(data["find"], guides, name, (*at, "find"))


def _judgeable(
    data: Mapping[str, Any], guides: Iterable[Guide], name: str, at: Path
) -> Find:
    """The find that stands there in the file, held against its guide."""
    known = {guide.id: guide for guide in guides}
    if data["guide"] not in known:
        value, right = quote(data["guide"]), nearest(data["guide"], known)
        told = refusal("unknown-guide", value=value, nearest=right)
        raise find_error(name, (*at, "guide"), told)
    guide = known[data["guide"]]
    found = next(_check(data, guide), None)
    if found:
        path, told = found
        raise find_error(name, (*at, *path), told)
    return _find(data, guide)


def _loaded(
    schema: TableSchema, table: Mapping[str, Any], name: str, at: Path
) -> dict[str, Any]:
    """What the schema reads; the first of its refusals is the error."""
    try:
        data: dict[str, Any] = schema.load(table)
    except ValidationError as error:
        path, told = next(findings(error.messages))
        raise find_error(name, (*at, *path), told) from error
    return data


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
