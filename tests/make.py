"""Builders of guides and finds with sane defaults; a test names what it is about."""

from dataclasses import replace
from pathlib import Path

from fieldid.engine.find import Claim, Find, Item
from fieldid.engine.guide import (
    Choice,
    Clue,
    Code,
    Field,
    Guide,
    Layout,
    Measure,
    ModelYear,
    Number,
    Option,
    Part,
    Size,
    Span,
)
from fieldid.guides.months import month_number
from fieldid.paths import RULES

PLOVER = Path(__file__).parent / "guides" / "plover.toml"
"""A small invented guide that uses every key of the format."""


def plover(*edits: tuple[str, str]) -> str:
    """The text of the small guide, with some texts that occur once replaced."""
    text = PLOVER.read_text()
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def lapwing() -> str:
    """The text of the guide on the page for authors, which has no set."""
    return (RULES / "README.md").read_text().split("```toml\n")[1].split("```")[0]


def month(text: str) -> int:
    """The build month counted as the engine counts it."""
    t = month_number(text)
    assert t is not None
    return t


def model_year(year: int, opens: str = "", closes: str = "", **rest) -> ModelYear:
    """A model year, built from January to December if nothing else is said."""
    return ModelYear(
        year, month(opens or f"{year}-01"), month(closes or f"{year}-12"), **rest
    )


def part(id: str = "head", replaced: float = 0.1, **rest) -> Part:
    """A part that follows none."""
    return Part(id, id, replaced, **rest)


def span(years: tuple[int, int] | None = None, **rest) -> Span:
    """A span; months in `since` and `until` are written as people write them."""
    for key in {"since", "until"} & rest.keys():
        rest[key] = month(rest[key])
    return Span(years, **rest)


def option(id: str, *seen: Span, like: tuple[str, ...] = ()) -> Option:
    """An option that is labelled with its id."""
    return Option(id, id, like, seen)


def choice(id: str, *options: Option, part: str = "head", **rest) -> Clue:
    """A choice between some options."""
    return _clue(id, part, Choice(options, rest.pop("replacement", ())), **rest)


def measure(id: str, *sizes: Size, part: str = "head", **rest) -> Clue:
    """A measure from 0 to 100 mm without wear."""
    low, high = rest.pop("range", (0.0, 100.0))
    return _clue(
        id, part, Measure("mm", low, high, rest.pop("wear", 0.0), sizes), **rest
    )


def code(id: str, *fields: Field, part: str = "head", **rest) -> Clue:
    """A code of some fields, or of some layouts."""
    kind = Code(fields, *_meaning(rest), rest.pop("layouts", ()))
    return _clue(id, part, kind, **rest)


def layout(*fields: Field, years: tuple[int, int] | None = None) -> Layout:
    """A layout of some fields, in use in some years or always."""
    return Layout(years, fields)


def number(
    id: str, first: dict[int, int], last: int, part: str = "head", **rest
) -> Clue:
    """A number that means the making, or with a lag a date before it."""
    kind = Number(*_meaning(rest), tuple(first.items()), last)
    return _clue(id, part, kind, **rest)


def _meaning(rest: dict) -> tuple[str, float]:
    lag = rest.pop("lag", 0.0)
    return "not-before" if lag else "made", lag


def _clue(id: str, part: str, kind: Choice | Measure | Code | Number, **rest) -> Clue:
    return Clue(id, part, id.replace("-", " "), kind, f"{id}?", spot=part, **rest)


def guide(*clues: Clue, **changes) -> Guide:
    """A guide of two model years and one part, the head."""
    plain = Guide(
        format=1,
        id="plain",
        title="Plain",
        maker="",
        kind="golf irons",
        fiction=True,
        about="Invented.",
        source="Invented.",
        updated="2026-02-01",
        drawing="iron",
        floor=0.01,
        misread=0.02,
        outside=0.02,
        years=(model_year(1951), model_year(1952)),
        parts=(part(),),
        clues=clues,
    )
    return replace(plain, **changes)


def find(readings=(), gone=(), *, member=None, claim=None, guide="plain") -> Find:
    """A find of one item; `readings` as a dict, `claim` as a year or a Claim."""
    item = Item(tuple(dict(readings).items()), tuple(gone), member)
    return Find(guide, (item,), Claim(claim) if isinstance(claim, int) else claim)
