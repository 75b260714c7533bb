"""The tables of a guide, key by key; the names on the left are the records' own.

What two keys mean together is for `check` and the modules under it.
"""

from collections.abc import Mapping
from typing import Any

from marshmallow import EXCLUDE, ValidationError

from fieldid.engine.guide import FORMAT
from fieldid.guides.fields import (
    Amount,
    Count,
    Day,
    Format,
    Id,
    Month,
    Name,
    Share,
    Text,
    Truth,
    Word,
    Year,
    Years,
)
from fieldid.guides.prices import PricesSchema
from fieldid.guides.refusals import Finding, findings
from fieldid.guides.tables import (
    MOST_NUMBER,
    Called,
    Codes,
    Drawn,
    Firsts,
    Pair,
    Shares,
    Table,
    Tables,
    TableSchema,
    Texts,
)

LEAST = 1e-6
"""The least size, wear or volume: finer than any rule, coarse enough to divide by."""

HELPERS = ("swing-weight",)
"""Calculations that the phone has to help with a measure."""

LONGEST_LAG = 1000
"""No mark stays in use for longer, in years."""

MEANINGS = ("made", "not-before")
"""What a code or a number tells: the making, or a date before it."""

COMMON = 0.05
"""How often a part is taken to be replaced when the guide does not say."""


def examine(table: Mapping[str, Any]) -> tuple[dict[str, Any], list[Finding]]:
    """What could be read of a guide's table, and all that was refused."""
    try:
        return GuideSchema().load(table), []
    except ValidationError as error:
        data: Any = error.valid_data
        return data, list(findings(error.messages))


class ModelSchema(TableSchema):
    """[model]"""

    # Shares of nothing would divide by nothing.
    floor = Share(LEAST, 1 - LEAST, load_default=0.01)
    misread = Share(load_default=0.02)
    outside = Share(LEAST, 1 - LEAST, load_default=0.02)


class ModelYearSchema(TableSchema):
    """[[model_year]]"""

    year = Year(load_default=None)
    years = Years(load_default=None)
    built = Pair(Month(), load_default=None)
    volume = Amount(LEAST, 1e6, load_default=1.0)
    note = Text(load_default="")


class FollowsSchema(TableSchema):
    """What a part follows."""

    part = Text(required=True)
    share = Share(required=True)


class PartSchema(TableSchema):
    """[[part]]"""

    id = Id(required=True)
    name = Name(required=True)
    replaced = Share(load_default=COMMON)
    follows = Table(
        FollowsSchema(),
        written='follows = { part = "shaft", share = 0.85 }',
        load_default=None,
    )
    whole_set = Share(load_default=0.0)


class SpanSchema(TableSchema):
    """One span of an option's `seen`."""

    years = Years(load_default=None)
    since = Month(data_key="from", load_default=None)
    until = Month(data_key="to", load_default=None)
    fade = Count(0, 120, load_default=0)
    share = Share(load_default=1.0)
    members = Texts(load_default=())
    excluded = Texts(data_key="except", load_default=())


class OptionSchema(TableSchema):
    """[[clue.option]]"""

    id = Id(required=True)
    label = Text(required=True)
    like = Texts(load_default=())
    seen = Tables(
        lambda table: SpanSchema(),
        written='{ years = "1951-1952" } in seen',
        least=0,
        load_default=(),
    )
    picture = Drawn(load_default=None)
    source = Text(load_default="")


class SizeSchema(TableSchema):
    """One size of a measure."""

    years = Years(required=True)
    mean = Amount(required=True)
    sd = Amount(LEAST, required=True)
    members = Texts(load_default=())
    excluded = Texts(data_key="except", load_default=())


class FieldSchema(TableSchema):
    """[[clue.field]]"""

    name = Text(required=True)
    means = Word(
        *("month", "year", "year-letter", "model-year", "week", "day", "plain"),
        code="unread-kind",
        data_key="kind",
        required=True,
    )
    width = Count(1, 12, required=True)
    alphabet = Text(required=True)
    odd = Share(load_default=0.0)
    codes = Codes(load_default=())
    weeks = Word("iso", "sunday", load_default="")


class LayoutSchema(TableSchema):
    """[[clue.layout]]"""

    years = Years(load_default=None)
    field = Tables(
        lambda table: FieldSchema(), written="[[clue.layout.field]]", required=True
    )


class ClueSchema(TableSchema):
    """The keys of [[clue]] that all kinds share."""

    class Meta(TableSchema.Meta):
        """Of a kind that is not known, other keys cannot be judged."""

        unknown = EXCLUDE

    id = Id(required=True)
    part = Text(required=True)
    name = Name(load_default=None)
    kind = Word(
        "choice", "measure", "code", "number", code="unread-kind", required=True
    )
    ask = Text(required=True)
    where = Text(load_default="")
    why = Text(load_default="")
    photo = Text(load_default="")
    seconds = Amount(0.1, 86_400, load_default=10.0)
    unreadable = Share(load_default=0.0)
    seen_from = Word("hand", "away", load_default="hand")
    needs = Text(load_default="")
    misread = Share(load_default=None)
    spot = Text(load_default=None)
    picture = Drawn(load_default=None)
    source = Text(load_default="")
    popular = Truth(load_default=False)


class ChoiceSchema(ClueSchema):
    """[[clue]] of kind "choice"."""

    class Meta(TableSchema.Meta):
        """All keys are known again."""

    option = Tables(
        lambda table: OptionSchema(),
        written="[[clue.option]]",
        least=2,
        required=True,
    )
    replacement = Shares(load_default=())


class MeasureSchema(ClueSchema):
    """[[clue]] of kind "measure"."""

    class Meta(TableSchema.Meta):
        """All keys are known again."""

    unit = Text(required=True)
    range = Pair(Amount(), apart=True, required=True)
    wear = Amount(0, load_default=0.0)
    size = Tables(
        lambda table: SizeSchema(),
        written='{ years = "1951-1952", mean = 6.0, sd = 0.25 } in size',
        required=True,
    )
    helper = Word(*HELPERS, load_default="")


class CodeSchema(ClueSchema):
    """[[clue]] of kind "code"."""

    class Meta(TableSchema.Meta):
        """All keys are known again."""

    means = Word(*MEANINGS, load_default="made")
    lag = Amount(LEAST, LONGEST_LAG, load_default=None)
    field = Tables(
        lambda table: FieldSchema(), written="[[clue.field]]", load_default=()
    )
    layout = Tables(
        lambda table: LayoutSchema(), written="[[clue.layout]]", load_default=()
    )


class NumberSchema(ClueSchema):
    """[[clue]] of kind "number"."""

    class Meta(TableSchema.Meta):
        """All keys are known again."""

    means = Word(*MEANINGS, load_default="made")
    lag = Amount(LEAST, LONGEST_LAG, load_default=None)
    first = Firsts(required=True)
    last = Count(0, MOST_NUMBER, required=True)


CLUES = {
    "choice": ChoiceSchema,
    "measure": MeasureSchema,
    "code": CodeSchema,
    "number": NumberSchema,
}


def clue_schema(table: Mapping[str, Any]) -> ClueSchema:
    """The schema for a clue of this kind."""
    kind = table.get("kind")
    return CLUES.get(kind, ClueSchema)() if isinstance(kind, str) else ClueSchema()


class SetSchema(TableSchema):
    """[set]"""

    all = Texts(data_key="members", required=True)
    usual = Texts(load_default=())
    stray = Share(load_default=0.04)
    stray_for = Shares(load_default=())
    names = Called(load_default=())


class WhenSchema(TableSchema):
    """What a flag waits for."""

    clue = Text(load_default=None)
    among = Texts(data_key="is", load_default=())
    over = Amount(load_default=None)
    under = Amount(load_default=None)
    part = Text(load_default=None)
    replaced_over = Share(load_default=None)
    years = Years(data_key="year_in", load_default=None)


class OneOrMore(Tables):
    """A list of tables, or the one table alone."""

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> list[Any]:
        if isinstance(value, Mapping):
            value = [value]
        return super()._deserialize(value, *args, **kwargs)


class FlagSchema(TableSchema):
    """[[flag]]"""

    when = OneOrMore(
        lambda table: WhenSchema(),
        written='when = { clue = "grip-cap", is = ["plain"] }',
        required=True,
    )
    say = Text(required=True)
    ask = Text(load_default="")


class CautionSchema(TableSchema):
    """[[caution]]"""

    say = Text(required=True)


class GuideSchema(TableSchema):
    """A whole guide."""

    format = Format(FORMAT)
    id = Id(required=True)
    title = Text(required=True)
    maker = Text(load_default="")
    kind = Text(required=True)
    fiction = Truth(load_default=False)
    about = Text(required=True)
    source = Text(required=True)
    updated = Day(required=True)
    drawing = Text(required=True)
    verdict = Word("year", "range", load_default="year")
    anything = Truth(load_default=False)
    include = Texts(load_default=())
    model = Table(
        ModelSchema(), written="[model]", load_default=lambda: ModelSchema().load({})
    )
    model_year = Tables(
        lambda table: ModelYearSchema(), written="[[model_year]]", required=True
    )
    part = Tables(lambda table: PartSchema(), written="[[part]]", required=True)
    clue = Tables(clue_schema, written="[[clue]]", required=True)
    set = Table(SetSchema(), written="[set]", load_default=None)
    flag = Tables(
        lambda table: FlagSchema(), written="[[flag]]", least=0, load_default=()
    )
    caution = Tables(
        lambda table: CautionSchema(), written="[[caution]]", least=0, load_default=()
    )
    prices = Table(PricesSchema(), written="[prices]", load_default=None)
