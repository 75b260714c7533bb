"""What a packed guide looks like, field by field: a description that Python and the
phone read alike, drawn from the records and from the schemas of a guide's file.

A description is plain data. `is` says the kind of value, the rest are its limits. What
would be right is not said: who was given a guide cannot mend it. No limit of a guide's
file is written here again; what is written here are the fields that a packed guide has
in another form than the file, and how long its lists may be, which a file that anybody
may have made must not choose.
"""

from collections.abc import Callable
from dataclasses import fields
from typing import Any

from fieldid.engine import guide as records
from fieldid.guides import fields as kinds
from fieldid.guides import prices, schema, tables
from fieldid.guides.fields import FIRST_YEAR, HUGE, LAST_YEAR

Shape = dict[str, Any]

MOST_TEXT = 4_000
MOST_NAME = 200
"""Characters of a text that is read, and of one that names something."""
MOST_ROWS = 4_000
"""Rows of a table of years, and drawings that bear something by way of example."""
MOST_LISTED = {
    ("Guide", "years"): 500,
    ("Guide", "parts"): 40,
    ("Guide", "clues"): 150,
    ("Guide", "flags"): 100,
    ("Guide", "cautions"): 50,
    ("Members", "all"): 40,
    ("Code", "layouts"): 40,
    ("Layout", "fields"): 12,
    ("Code", "fields"): 12,
    ("GuideFlag", "when"): 20,
}
MOST_OF_ANY = 100
"""Entries of a list that is not named here."""

_SCHEMAS: dict[str, Any] = {
    "ModelYear": schema.ModelYearSchema,
    "Part": schema.PartSchema,
    "Span": schema.SpanSchema,
    "Option": schema.OptionSchema,
    "Choice": schema.ChoiceSchema,
    "Size": schema.SizeSchema,
    "Measure": schema.MeasureSchema,
    "Field": schema.FieldSchema,
    "Layout": schema.LayoutSchema,
    "Code": schema.CodeSchema,
    "Number": schema.NumberSchema,
    "Clue": schema.ClueSchema,
    "Members": schema.SetSchema,
    "Condition": schema.WhenSchema,
    "GuideFlag": schema.FlagSchema,
    "Prices": prices.PricesSchema,
    "SetPrices": prices.SetPricesSchema,
    "Guide": schema.GuideSchema,
}


def described() -> Shape:
    """The description of a packed guide."""
    whole = _record(records.Guide)
    own = _row(_NAME, _NAME, _or_null(_NAME), _DRAWING)
    whole["fields"] += [["scene", _DRAWING], ["own", _list(own, MOST_ROWS)]]
    return whole


def _record(record: type, *, name: str = "") -> Shape:
    """A table with just the fields of a record, in their order."""
    own = [[each.name, _field(record, each.name)] for each in fields(record)]
    if name:
        own = [["name", {"is": "word", "of": [name]}], *own]
    return {"is": "record", "fields": own}


def _field(record: type, name: str) -> Shape:
    packed = _packed(record.__name__, name)
    if packed:
        return packed
    declared = _SCHEMAS[record.__name__]._declared_fields[name]
    most = MOST_LISTED.get((record.__name__, name), MOST_OF_ANY)
    return _or_none(_kind(declared, most), declared)


def _or_none(shape: Shape, declared: Any) -> Shape:
    """What the file may leave out is empty, or not there."""
    if declared.required:
        return shape
    if declared.load_default is None:
        return _or_null(shape)
    if declared.load_default == "":
        key = "least" if shape["is"] == "text" else "of"
        return shape | {key: 0 if key == "least" else ["", *shape["of"]]}
    return shape


def _kind(declared: Any, most: int) -> Shape:
    """The value that a field of a schema makes."""
    for kind, made in _MADE:
        if isinstance(declared, kind):
            return made(declared, most)
    raise TypeError(f"{declared!r} has no form in a packed guide")


def _packed(record: str, name: str) -> Shape | None:
    """A field that has another form, or another name, than in a guide's file."""
    if (record, name) in _OTHERWISE:
        return _OTHERWISE[record, name]
    if (record, name) in _RECORDS:
        inner, least = _RECORDS[record, name]
        most = MOST_LISTED.get((record, name), MOST_OF_ANY)
        return _list(_record(inner), most, least=least)
    if (record, name) in _MAYBE:
        return _or_null(_record(_MAYBE[record, name]))
    if (record, name) == ("Clue", "kind"):
        names = [kind.__name__.lower() for kind in _KINDS]
        of = [[n, _record(kind, name=n)] for n, kind in zip(names, _KINDS, strict=True)]
        return {"is": "kinds", "by": "name", "of": of}
    return None


def _text(most: int, *, least: int = 1) -> Shape:
    return {"is": "text", "least": least, "most": most}


def _number(least: float, most: float) -> Shape:
    return {"is": "number", "least": least, "most": most}


def _whole(least: int, most: int) -> Shape:
    return {"is": "whole", "least": least, "most": most}


def _word(declared: Any, _: int) -> Shape:
    return {"is": "word", "of": [*declared.words]}


def _or_null(shape: Shape) -> Shape:
    return {"is": "maybe", "of": shape}


def _pair(shape: Shape) -> Shape:
    """Two, of which the second is not smaller."""
    return _row(shape, shape) | {"rises": True}


def _row(*shapes: Shape) -> Shape:
    return {"is": "row", "of": [*shapes]}


def _list(shape: Shape, most: int, *, least: int = 0, once: bool = False) -> Shape:
    """A list; with `once` no two entries are alike, or rows begin alike."""
    return {"is": "list", "of": shape, "least": least, "most": most, "once": once}


_DRAWING: Shape = {"is": "drawing"}
_YEAR = _whole(FIRST_YEAR, LAST_YEAR)
_MONTH = _whole(12 * FIRST_YEAR, 12 * LAST_YEAR + 11)
_MONEY = _number(0, HUGE)
_SIZE = _number(-HUGE, HUGE)
_KINDS = (records.Choice, records.Measure, records.Code, records.Number)
_OFF = {"is": "record", "fields": [["amount", _MONEY], ["share", _number(0, 1)]]}
_NAME = _text(MOST_NAME)
_LAG = _number(0, schema.LONGEST_LAG)
_MODEL: Any = schema.ModelSchema._declared_fields
_NUMBERS = _whole(0, tables.MOST_NUMBER)
_MADE: tuple[tuple[Any, Callable[[Any, int], Shape]], ...] = (
    ((kinds.Share, kinds.Amount), lambda each, _: _number(each.least, each.most)),
    (kinds.Count, lambda each, _: _whole(each.least, each.most)),
    (kinds.Truth, lambda *_: {"is": "truth"}),
    (kinds.Word, _word),
    (kinds.Id, lambda *_: {"is": "id", "most": MOST_NAME}),
    (kinds.Day, lambda *_: {"is": "day"}),
    (kinds.Month, lambda *_: _MONTH),
    (kinds.Years, lambda *_: _pair(_YEAR)),
    (kinds.Text, lambda *_: _text(MOST_TEXT)),
    (tables.Drawn, lambda *_: _DRAWING),
    (
        tables.Texts,
        lambda each, most: _list(_NAME, most, least=int(each.required), once=True),
    ),
    (
        tables.Shares,
        lambda _, most: _list(_row(_NAME, _number(0, 1)), most, once=True),
    ),
    (tables.Called, lambda _, most: _list(_row(_NAME, _NAME), most, once=True)),
    (tables.Codes, lambda *_: _list(_row(_YEAR, _NAME), MOST_ROWS, once=True)),
    (
        tables.Firsts,
        lambda *_: _list(_row(_YEAR, _NUMBERS), MOST_ROWS, least=1, once=True),
    ),
    (prices.Currency, lambda *_: {"is": "currency"}),
    (
        prices.Worths,
        lambda *_: _list(_row(_YEAR, _MONEY), MOST_ROWS, least=1, once=True),
    ),
    (prices.TakenOff, lambda *_: _OFF),
    (prices.Listed, lambda _, most: _list(_row(_NAME, _OFF), most, once=True)),
)
"""What each kind of field makes: the first one that a field is."""


def _model(name: str) -> Shape:
    return _number(_MODEL[name].least, _MODEL[name].most)


_OTHERWISE: dict[tuple[str, str], Shape] = {
    ("Guide", "format"): _whole(records.FORMAT, records.FORMAT),
    ("Guide", "floor"): _model("floor"),
    ("Guide", "misread"): _model("misread"),
    ("Guide", "outside"): _model("outside"),
    ("Guide", "cautions"): _list(_text(MOST_TEXT), MOST_LISTED["Guide", "cautions"]),
    ("ModelYear", "year"): _YEAR,
    ("ModelYear", "opens"): _MONTH,
    ("ModelYear", "closes"): _MONTH,
    ("Part", "follows"): _or_null(_NAME),
    ("Part", "share"): _number(0, 1),
    ("Measure", "low"): _SIZE,
    ("Measure", "high"): _SIZE,
    ("Code", "lag"): _LAG,
    ("Number", "lag"): _LAG,
    ("Clue", "name"): _NAME,
    ("Clue", "misread"): _number(0, 1),
    ("Clue", "spot"): _NAME,
    ("PartPrice", "part"): _NAME,
    ("PartPrice", "off"): _OFF,
    ("PartPrice", "put_right"): _or_null(_MONEY),
}
_RECORDS: dict[tuple[str, str], tuple[type, int]] = {
    ("Guide", "years"): (records.ModelYear, 1),
    ("Guide", "parts"): (records.Part, 1),
    ("Guide", "clues"): (records.Clue, 1),
    ("Guide", "flags"): (records.GuideFlag, 0),
    ("GuideFlag", "when"): (records.Condition, 1),
    ("Choice", "options"): (records.Option, 2),
    ("Option", "seen"): (records.Span, 0),
    ("Measure", "sizes"): (records.Size, 1),
    ("Code", "fields"): (records.Field, 0),
    ("Code", "layouts"): (records.Layout, 0),
    ("Layout", "fields"): (records.Field, 1),
    ("Prices", "parts"): (records.PartPrice, 0),
}
_MAYBE: dict[tuple[str, str], type] = {
    ("Guide", "members"): records.Members,
    ("Guide", "prices"): records.Prices,
    ("Prices", "set"): records.SetPrices,
}
