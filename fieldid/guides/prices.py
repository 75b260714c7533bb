"""[prices]: a dated price table, key by key, and the record that it becomes."""

import re
from collections.abc import Mapping
from typing import Any

from fieldid.engine.guide import Off, PartPrice, Prices, SetPrices
from fieldid.guides.fields import HUGE, Amount, Day, Text, Wanted
from fieldid.guides.tables import Table, TableSchema, as_years, each_of

_NOTHING = Off()


class Currency(Wanted):
    """The code of a currency."""

    wants = 'the three letters of a currency, as "EUR"'

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> str:
        if not isinstance(value, str) or not _CURRENCY.fullmatch(value):
            raise self.not_that(value)
        return value


class Money(Amount):
    """An amount of money."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(0, HUGE, **kwargs)
        self.wants = "an amount of money, 0 or more"


class TakenOff(Wanted):
    """What is taken off a worth: an amount, or a share of it in per cent."""

    wants = 'an amount of money, as 30, or a share of the worth, as "30 %"'

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Off:
        if isinstance(value, str):
            match = _PERCENT.fullmatch(value)
            if not match or float(match[1]) > 100:
                raise self.not_that(value)
            return Off(share=float(match[1]) / 100)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.not_that(value)
        if not 0 <= value <= HUGE:
            raise self.not_that(value)
        return Off(float(value))


class Worths(Wanted):
    """A table from model years to what one is worth."""

    wants = "a table of model years, as { 1951 = 40, 1952 = 120 }"

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[int, float], ...]:
        if not isinstance(value, Mapping) or not value:
            raise self.not_that(value)
        return tuple(zip(as_years(value), each_of(value, Money()), strict=True))


class Listed(Wanted):
    """A table from names to prices."""

    def __init__(self, price: Wanted, *, written: str, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.price = price
        self.wants = f"a table, as {{ {written} }}"

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> tuple[tuple[str, Any], ...]:
        if not isinstance(value, Mapping):
            raise self.not_that(value)
        return tuple(zip(value, each_of(value, self.price), strict=True))


class SetPricesSchema(TableSchema):
    """[prices.set]"""

    worth = Worths(required=True)
    other = Money(load_default=0.0)
    missing = TakenOff(load_default=_NOTHING)
    stray = TakenOff(load_default=_NOTHING)


class PricesSchema(TableSchema):
    """[prices]"""

    currency = Currency(required=True)
    date = Day(required=True)
    source = Text(required=True)
    worth = Worths(required=True)
    other = Money(load_default=0.0)
    condition = Listed(TakenOff(), written='worn = "20 %"', load_default=())
    off = Listed(TakenOff(), written='shaft = "40 %", grip = 5', load_default=())
    put_right = Listed(Money(), written="grip = 12", load_default=())
    set = Table(SetPricesSchema(), written="[prices.set]", load_default=None)


def prices(table: Mapping[str, Any]) -> Prices:
    """The prices of a checked table."""
    said = {key: table[key] for key in Prices.__slots__ if key in table}
    put_right = dict(table["put_right"])
    parts = tuple(PartPrice(p, off, put_right.get(p)) for p, off in table["off"])
    many = SetPrices(**table["set"]) if table["set"] else None
    return Prices(**{**said, "parts": parts, "set": many})


_CURRENCY = re.compile(r"[A-Z]{3}")
_PERCENT = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,4})?) ?%")
