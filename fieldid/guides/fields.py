"""What one value of a guide or a find may be: a marshmallow field for each.

Each field says in `wants` what would be right, for a value that is wrong or missing.
"""

import re
from datetime import date
from typing import Any

from marshmallow import ValidationError, fields

from fieldid.errors import nearest
from fieldid.guides.months import month_number
from fieldid.guides.refusals import figure, quote, refused
from fieldid.guides.shares import WANTS, share

FIRST_YEAR, LAST_YEAR = 1000, 2999
HUGE = 1e9
"""No size of an object is larger, in any unit, and its square is still a number."""


class Wanted(fields.Field[Any]):
    """A field that tells a missing or wrong value what would be right."""

    wants = ""

    def make_error(self, key: str, **kwargs: object) -> ValidationError:
        """The refusal of a missing value; marshmallow asks for no other here."""
        return refused("missing", wants=self.wants)

    def not_that(self, value: object) -> ValidationError:
        """The refusal of a value of a wrong kind."""
        return refused("not-that", value=quote(value), wants=self.wants)


class Text(Wanted):
    """Text that is not blank."""

    wants = "text in quotes"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, str) or not value.strip():
            raise self.not_that(value)
        return value.strip()


class Name(Text):
    """What a thing is called in a sentence, which puts its own article before it."""

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        name = super()._deserialize(value)
        return name[4:].lstrip() if name[:4].lower() == "the " else name


class Id(Wanted):
    """A short name that other keys point at."""

    wants = "small letters, digits and single hyphens, as 'grip-cap'"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, str):
            raise self.not_that(value)
        if not _ID.fullmatch(value):
            # Kept beside the error, so that what points at it is not refused too.
            raise ValidationError(self.not_that(value).messages, valid_data=value)  # type: ignore[arg-type]  # marshmallow keeps any value here
        return value


class Truth(Wanted):
    """True or false."""

    wants = "true or false"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> bool:
        if not isinstance(value, bool):
            raise self.not_that(value)
        return value


class Word(Wanted):
    """One word of a few."""

    def __init__(self, *words: str, code: str = "not-that", **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.words = words
        self.code = code
        self.wants = "one of " + ", ".join(map(repr, words))

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, str):
            raise self.not_that(value)
        if value not in self.words:
            right = nearest(value, self.words)
            raise refused(self.code, value=quote(value), nearest=right, wants=right)
        return value


class Amount(Wanted):
    """A number within limits, both included."""

    def __init__(self, least: float = -HUGE, most: float = HUGE, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.least, self.most = least, most
        self.wants = "a number" + (f" from {figure(least)}" if least > -HUGE else "")
        self.wants += f" to {figure(most)}" if most < HUGE else ""

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.not_that(value)
        # "Not a number" compares false with everything, so this refuses it too.
        if not self.least <= value <= self.most:
            raise self.not_that(value)
        return float(value)


class Count(Wanted):
    """A whole number within limits, both included."""

    def __init__(self, least: int, most: int, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.least, self.most = least, most
        self.wants = f"a whole number from {least} to {most}"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> int:
        if isinstance(value, bool) or not isinstance(value, int):
            raise self.not_that(value)
        if not self.least <= value <= self.most:
            raise self.not_that(value)
        return value


class Format(Count):
    """The number of a file's format."""

    def __init__(self, known: int) -> None:
        super().__init__(known, known, required=True)
        self.wants = str(known)

    def not_that(self, value: object) -> ValidationError:
        """The refusal of any other format."""
        return refused("later-format", value=quote(value), known=self.most)


class Share(Wanted):
    """A share: a number, a count or a word."""

    wants = WANTS

    def __init__(self, least: float = 0.0, most: float = 1.0, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.least, self.most = least, most

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> float:
        given = share(value)
        if not self.least <= given <= self.most:
            raise refused(
                "share-limits",
                value=quote(value),
                least=figure(self.least),
                most=figure(self.most),
            )
        return given


class Year(Count):
    """A year."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(FIRST_YEAR, LAST_YEAR, **kwargs)
        self.wants = "a year, as 1952"


class Years(Wanted):
    """One year, or the first and the last."""

    wants = 'one year, as 1952, or the first and the last, as "1951-1954"'

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[int, int]:
        if isinstance(value, int) and FIRST_YEAR <= value <= LAST_YEAR:
            return value, value
        match = _YEARS.fullmatch(value) if isinstance(value, str) else None
        if not match:
            raise self.not_that(value)
        first, last = int(match[1]), int(match[2] or match[1])
        if last < first:
            raise refused("backwards", value=quote(value))
        return first, last


class Month(Wanted):
    """A month of a year, counted as the engine counts months."""

    wants = 'a year and a month, as "1952-06"'

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> int:
        t = month_number(value)
        if t is None:
            raise self.not_that(value)
        return t


class Day(Wanted):
    """A date, written with quotes or without."""

    wants = "a date, as 2026-03-31"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, date | str):
            raise self.not_that(value)
        try:
            # A date and an hour is a date to Python, but not when it is written.
            return date.fromisoformat(str(value)).isoformat()
        except ValueError as error:
            raise self.not_that(value) from error


_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_YEARS = re.compile(r"([12][0-9]{3})(?:-([12][0-9]{3}))?")
