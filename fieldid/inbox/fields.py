"""What one value of a find that was sent in may be: a marshmallow field for each, with
the phone's limits and sentences.
"""

import math
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from marshmallow import EXCLUDE, Schema, ValidationError, fields

from fieldid.inbox.values import moment, number, shown, whole_letters, written

MOST_TEXT, MOST_SHORT = 2000, 200
DEAREST = 1e12

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_UUID = re.compile(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_TIME = re.compile(_DAY.pattern + r"T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,3})?Z")
_CURRENCY = re.compile(r"[A-Z]{3}")


class Kept(Schema):
    """A table of which known keys alone are read."""

    class Meta:
        """Whatever else stands there is passed over."""

        unknown = EXCLUDE


class Told(fields.Field[Any]):
    """A field that says what is wrong in a sentence; `what` is its subject.

    An optional one may be missing or empty, and is None then.
    """

    wanted = ""
    missing: Any = None
    """What is read where nothing stands; with None something must stand."""

    def __init__(self, what: str, *, optional: bool = False) -> None:
        if optional:
            super().__init__(load_default=None, allow_none=True)
        elif self.missing is None:
            super().__init__(required=True)
        else:
            super().__init__(load_default=self.missing)
        self.what = what

    def make_error(self, key: str, **kwargs: object) -> ValidationError:
        """The refusal of what is missing or empty; marshmallow asks for no other."""
        return self.refused({"required": "missing"}.get(key, "empty"))

    def refused(self, shown: str, wanted: str = "") -> ValidationError:
        """The sentence, with what was there and what is needed."""
        told = f"The {self.what} cannot be {shown}: {wanted or self.wanted}."
        return ValidationError(told)


class Text(Told):
    """A text of at most so many characters; none is the empty one."""

    wanted = "a text is needed"
    missing: str | None = ""
    most = MOST_TEXT

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, str):
            raise self.refused(shown(value))
        if len(value) > self.most:
            raise ValidationError(
                f"The {self.what} has {len(value)} characters; "
                f"at most {self.most} are taken."
            )
        return self.read(whole_letters(value), value)

    def read(self, text: str, value: str) -> str:
        """The text as it is kept."""
        return text


class Short(Text):
    """A short text."""

    most = MOST_SHORT


class Patterned(Short):
    """A short text of a fixed look."""

    pattern = _ID
    missing = None

    def read(self, text: str, value: str) -> str:
        """The text, if it looks so."""
        if not self.pattern.fullmatch(text):
            raise self.refused(shown(value))
        return text


class Id(Patterned):
    """A name that keys point at."""

    wanted = "small letters, digits and single hyphens are needed"


class Uuid(Patterned):
    """The id of a find or a photo."""

    wanted = "a UUID is needed"
    pattern = _UUID

    def read(self, text: str, value: str) -> str:
        """In small letters."""
        return super().read(text.lower(), value)


class Day(Short):
    """A day of the calendar, or none."""

    wanted = 'a day is needed, as "2026-11-25"'

    def read(self, text: str, value: str) -> str:
        """The day, if there was one."""
        if text and not (_DAY.fullmatch(text) and moment(f"{text}T00:00:00Z")):
            raise self.refused(shown(value))
        return text


class Time(Patterned):
    """A moment, in the one form that sorts as text."""

    wanted = 'a time is needed, as "2026-11-25T10:00:00Z"'
    pattern = _TIME

    def read(self, text: str, value: str) -> str:
        """To the millisecond."""
        found = moment(super().read(text, value))
        if found is None:
            raise self.refused(shown(value))
        return written(found)


class Currency(Short):
    """Three capital letters, or none."""

    wanted = 'three capital letters are needed, as "EUR"'

    def read(self, text: str, value: str) -> str:
        """The letters, if they are some."""
        if text and not _CURRENCY.fullmatch(text):
            raise self.refused(shown(value))
        return text


class Number(Told):
    """A number within limits, both included; never one that is none."""

    wanted = "a number is needed"

    def __init__(
        self,
        what: str,
        least: float = -math.inf,
        most: float = math.inf,
        *,
        optional: bool = False,
    ) -> None:
        super().__init__(what, optional=optional)
        self.least, self.most = least, most

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Any:
        found = number(value)
        if found is None:
            raise self.refused(shown(value))
        if not self.least <= found <= self.most:
            bounds = f"from {self.least:.15g}"
            if self.most < math.inf:
                bounds += f" to {self.most:.15g}"
            raise self.refused(shown(value), f"a number {bounds} is needed")
        return found


class Whole(Number):
    """A whole number within limits."""

    def __init__(
        self,
        what: str,
        least: float = -DEAREST,
        most: float = DEAREST,
        *,
        optional: bool = False,
    ) -> None:
        super().__init__(what, least, most, optional=optional)

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> int:
        found = super()._deserialize(value)
        if found != int(found):
            raise self.refused(shown(value), "a whole number is needed")
        return int(found)


class Table(Told):
    """A table with a schema of its own."""

    wanted = "a table is needed"

    def __init__(self, what: str, schema: Schema, *, optional: bool = False) -> None:
        super().__init__(what, optional=optional)
        self.schema = schema

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Any:
        if not isinstance(value, Mapping):
            raise self.refused(shown(value))
        return self.schema.load(value)


class Rows(Told):
    """A list of at most so many, each through one field; `key` tells them apart."""

    wanted = "a list is needed"

    def __init__(
        self,
        what: str,
        one: Told,
        most: int,
        *,
        optional: bool = False,
        key: Callable[[Any], object] | None = None,
    ) -> None:
        super().__init__(what, optional=optional)
        self.one, self.most, self.key = one, most, key

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[Any, ...]:
        if not isinstance(value, list):
            raise self.refused(shown(value))
        if len(value) > self.most:
            told = f"There are {len(value)} {self.what}; at most {self.most} are taken."
            raise ValidationError(told)
        found = tuple(self.one.deserialize(each) for each in value)
        if self.key:
            apart([self.key(each) for each in found], self.one.what)
        return found


def apart(keys: Sequence[object], what: str) -> None:
    """Refuses what is there twice."""
    for i, key in enumerate(keys):
        if key in keys[:i]:
            raise ValidationError(
                f"The {what} cannot be {shown(key)}: it is there twice."
            )
