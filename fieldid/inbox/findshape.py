"""What was read, as a find that was sent in has it: its shape alone is looked at, since
its guide may be another one here.
"""

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError

from fieldid.engine.guide import FORMAT
from fieldid.inbox.fields import (
    Id,
    Kept,
    Number,
    Rows,
    Short,
    Table,
    Told,
    Whole,
    apart,
)
from fieldid.inbox.values import number, shown

_IDS, _ITEMS = 500, 100


class FindFormat(Told):
    """The number of the format of what was read."""

    def make_error(self, key: str, **kwargs: object) -> ValidationError:
        """The refusal of what is missing or empty."""
        return self.of("no format")

    def of(self, said: str) -> ValidationError:
        """The sentence with what was said of the format."""
        return ValidationError(
            f"What was read is of {said}; this version reads {FORMAT}."
        )

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> int:
        found = number(value)
        if found != FORMAT:
            raise self.of("no format" if found is None else f"format {shown(found)}")
        return FORMAT


class Sizes(Kept):
    """A measure with its standard error."""

    value = Number("measure")
    error = Number("measure's error", 0)


class Reading(Told):
    """What was read of one clue; nothing for "can't tell"."""

    def __init__(self, what: str) -> None:
        super().__init__(what, optional=True)

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> Any:
        if isinstance(value, str):
            return Short(self.what).deserialize(value)
        if number(value) is not None:
            return number(value)
        if isinstance(value, bool | int | float):
            raise self.refused(shown(value), "a number is needed")
        return Table(self.what, Sizes()).deserialize(value)


class Readings(Told):
    """A table from clues to what was read of each."""

    wanted = "a table is needed"
    missing = dict

    def _deserialize(
        self, value: object, *args: object, **kwargs: object
    ) -> dict[str, Any]:
        if not isinstance(value, Mapping):
            raise self.refused(shown(value))
        if len(value) > _IDS:
            told = f"There are {len(value)} {self.what}; at most {_IDS} are taken."
            raise ValidationError(told)
        clue, reading = Id("clue"), Reading("reading")
        return {
            str(clue.deserialize(name)): reading.deserialize(read)
            for name, read in value.items()
        }


class Items(Kept):
    """One object."""

    member = Short("member", optional=True)
    readings = Readings("readings")
    gone = Rows("parts that are gone", Id("part"), _IDS, optional=True)


class Claims(Kept):
    """What the seller says."""

    model_year = Whole("model year claimed")
    cites = Rows("clues cited", Id("clue"), _IDS, optional=True)


class Finds(Kept):
    """What was read off one object, or off the members of a set."""

    format = FindFormat("format of what was read")
    guide = Id("guide of the readings")
    items = Rows("items", Table("item", Items()), _ITEMS)
    claim = Table("claim", Claims(), optional=True)


def check(find: Mapping[str, Any], guide: str) -> None:
    """One object, or several that can be told apart, under the entry's own guide."""
    if find["guide"] != guide:
        wanted = f"“{guide}” is needed"
        raise Id("guide of the readings").refused(shown(find["guide"]), wanted)
    items = find["items"]
    if not items:
        raise Rows("items", Told("item"), 0).refused(
            "an empty list", "one at least is needed"
        )
    if len(items) > 1:
        members = [item["member"] for item in items]
        if None in members:
            each = "each item of a set names its own"
            raise Short("member").refused(shown(None), each)
        apart(members, "member")


def written_find(find: Mapping[str, Any]) -> dict[str, Any]:
    """What was read as a file has it."""
    claim = find["claim"]
    return {
        "format": FORMAT,
        "guide": find["guide"],
        "items": [
            {
                "member": item["member"],
                "readings": item["readings"],
                "gone": list(item["gone"] or ()),
            }
            for item in find["items"]
        ],
        "claim": claim and {**claim, "cites": list(claim["cites"] or ())},
    }
