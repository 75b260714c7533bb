"""What holds several values: pairs, lists, tables of shares, tables with a schema."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from marshmallow import RAISE, Schema, ValidationError

from fieldid import draw
from fieldid.engine.guide import Picture
from fieldid.errors import nearest
from fieldid.guides.fields import Count, Share, Text, Wanted, Year
from fieldid.guides.refusals import Refusal, quote, refusal, refused

MOST_NUMBER = 10**12
"""No series of numbers is longer, and phones count so far without a mistake."""


class TableSchema(Schema):
    """A schema that names the nearest known key beside each unknown one."""

    class Meta:
        """Unknown keys are refused."""

        unknown = RAISE

    def handle_error(
        self, error: ValidationError, data: Any, *, many: bool, **kwargs: Any
    ) -> None:
        """Fill in what marshmallow cannot say about keys that it does not know."""
        messages: Any = error.messages
        known = [field.data_key or name for name, field in self.fields.items()]
        # marshmallow goes through unknown keys in no order; the file has one.
        for key in [key for key in data if key not in known and key in messages]:
            right = nearest(key, known)
            del messages[key]
            messages[key] = [refusal("unknown-key", nearest=right)]
            # `idd` is one mistake, not an unknown key and a missing `id` too.
            meant = right.strip("'")
            if _is_missing(messages.get(meant)):
                del messages[meant]


class Pair(Wanted):
    """Two values that pass the same field, the smaller one first."""

    def __init__(self, each: Wanted, *, apart: bool = False, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.each, self.apart = each, apart
        self.wants = f"a list of two, each {each.wants}"

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[Any, Any]:
        if not isinstance(value, list) or len(value) != 2:
            raise self.not_that(value)
        first, last = each_of(dict(enumerate(value)), self.each)
        if last < first:
            raise refused("backwards", value=quote(f"{value[0]} to {value[1]}"))
        if self.apart and last == first:
            raise refused("no-room", value=quote(value[0]))
        return first, last


class Texts(Wanted):
    """A list of texts, each once."""

    wants = 'a list of texts, as ["3", "4"]'

    def __init__(self, *, least: int = 1, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.least = least

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[str, ...]:
        if not isinstance(value, list) or len(value) < self.least:
            raise self.not_that(value)
        texts = each_of(dict(enumerate(value)), Text())
        again = [i for i, text in enumerate(texts) if text in texts[:i]]
        if again:
            raise ValidationError(
                {i: [refusal("listed-twice", value=quote(texts[i]))] for i in again}
            )
        return texts


class Shares(Wanted):
    """A table of shares."""

    wants = 'a table of shares, as { none = 0.8, other = "seldom" }'

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[str, float], ...]:
        if not isinstance(value, Mapping):
            raise self.not_that(value)
        return tuple(zip(value, each_of(value, Share()), strict=True))


class Called(Wanted):
    """A table of what members are called in a sentence."""

    wants = 'a table of names, as { 2 = "2 iron", W = "wedge" }'

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[str, str], ...]:
        if not isinstance(value, Mapping):
            raise self.not_that(value)
        return tuple(zip(value, each_of(value, Text()), strict=True))


class Readings(Wanted):
    """A table of readings; whether they fit their clues is for the guide to say."""

    wants = 'a table of readings, as {"rings": "green"}'

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[str, object], ...]:
        if not isinstance(value, Mapping):
            raise self.not_that(value)
        return tuple(value.items())


class Codes(Wanted):
    """A table from years to what stands for them."""

    wants = 'a table of years, as { 1951 = "A", 1952 = "B" }'

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[int, str], ...]:
        if not isinstance(value, Mapping) or not value:
            raise self.not_that(value)
        return tuple(zip(as_years(value), each_of(value, Text()), strict=True))


class Firsts(Wanted):
    """A table from years to their first numbers, in the order of the years."""

    wants = "a table of years, as { 1951 = 1, 1952 = 4201 }"

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[int, int], ...]:
        if not isinstance(value, Mapping) or not value:
            raise self.not_that(value)
        numbers = each_of(value, Count(0, MOST_NUMBER))
        return tuple(sorted(zip(as_years(value), numbers, strict=True)))


class Drawn(Wanted):
    """A picture: a shape and its parameters."""

    wants = 'a table, as { shape = "collar", rings = ["green"] }'

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Picture:
        if not isinstance(value, Mapping) or not isinstance(value.get("shape"), str):
            raise self.not_that(value)
        given = {name: held for name, held in value.items() if name != "shape"}
        parameters = zip(given, each_of(given, Parameter()), strict=True)
        picture = (value["shape"], tuple(parameters))
        told: list[Any] = [_picture(phrase) for phrase in draw.problems(picture)]
        if told:
            raise ValidationError(told)
        return picture


class Parameter(Wanted):
    """What a picture's parameter may be at all; the shape knows more."""

    wants = "text, a number, or a list of these"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> object:
        if isinstance(value, list):
            return tuple(self._deserialize(each) for each in value)
        # A message could not print a number of thousands of digits.
        is_number = isinstance(value, int | float) and abs(value) < 1e9
        if not is_number and not isinstance(value, str):
            raise self.not_that(value)
        return value


class Table(Wanted):
    """One table, with a schema of its own."""

    def __init__(self, schema: Schema, *, written: str, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.schema = schema
        self.wants = f"a table, as {written}"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Any:
        if not isinstance(value, Mapping):
            raise self.not_that(value)
        return self.schema.load(value)


class Tables(Wanted):
    """A list of tables; `pick` finds the schema for each.

    What could be read of a table that is refused is kept in its place, so that the
    checks across the guide still see it.
    """

    def __init__(
        self,
        pick: Callable[[Mapping[str, Any]], Schema],
        *,
        written: str,
        least: int = 1,
        **kwargs: Any,
    ) -> None:
        super().__init__(**kwargs)
        self.pick = pick
        self.least = least
        self.wants = f"{_NUMBERS[least]}, each as {written}"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> list[Any]:
        if not isinstance(value, list):
            raise self.not_that(value)
        if len(value) < self.least:
            raise refused("too-few", count=len(value), wants=self.wants)
        loaded: list[Any] = []
        errors: dict[int, Any] = {}
        for i, table in enumerate(value):
            try:
                loaded.append(self._one(table))
            except ValidationError as error:
                loaded.append(error.valid_data or {})
                errors[i] = error.messages
        if errors:
            raise ValidationError(errors, valid_data=loaded)
        return loaded

    def _one(self, table: object) -> Any:
        if not isinstance(table, Mapping):
            raise refused("not-that", value=quote(table), wants="a table")
        return self.pick(table).load(table)


def each_of(values: Mapping[Any, object], field: Wanted) -> tuple[Any, ...]:
    """All values through one field; the refusals of all that do not pass."""
    read = []
    errors = {}
    for key, value in values.items():
        try:
            read.append(field.deserialize(value))
        except ValidationError as error:
            errors[key] = error.messages
    if errors:
        raise ValidationError(errors)
    return tuple(read)


def as_years(value: Mapping[str, object]) -> tuple[Any, ...]:
    """The keys of a table as years: TOML's keys are text, in quotes or bare."""
    years = {key: int(key) if _DIGITS.fullmatch(key) else key for key in value}
    return each_of(years, Year())


def _is_missing(messages: Any) -> bool:
    return isinstance(messages, list) and messages[0].code == "missing"


def _picture(phrase: str) -> Refusal:
    """A drawing's complaint, which says what is wrong and what to use."""
    why, _, use = phrase.rpartition("; use ")
    return refusal("picture", why=why[:200], use=use[:200])


_DIGITS = re.compile(r"[0-9]{4}")
_NUMBERS: dict[int, str] = {0: "a list of tables", 1: "one or more", 2: "two or more"}
