"""The finds on which an author watches what an edit does; forgotten when the server
ends.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from flask import Blueprint, current_app
from flask.blueprints import BlueprintSetupState

from fieldid.engine import judge
from fieldid.engine.find import Find, Verdict
from fieldid.engine.guide import Guide
from fieldid.errors import FindError
from fieldid.guides import finds
from fieldid.web.prepared import tables_of

MOST = 6
"""So many are judged twice at every look."""
LEAST = 0.005
"""A year that is less probable before and after is not told."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """A find with what its author calls it, as JSON."""

    name: str
    source: bytes


@dataclass(frozen=True, slots=True)
class Compared:
    """A find before and after an edit: the sentences, and each model year's
    probabilities where there are any.
    """

    name: str
    before: str
    after: str
    years: tuple[tuple[str, float | None, float | None], ...]


def keep_chosen(blueprint: Blueprint) -> None:
    """Lets the application of a blueprint remember chosen finds."""

    def set_up(state: BlueprintSetupState) -> None:
        state.app.extensions["chosen"] = {}

    blueprint.record(set_up)


def chosen(guide: str) -> tuple[Chosen, ...]:
    """The finds that were chosen for a guide."""
    found: tuple[Chosen, ...] = current_app.extensions["chosen"].get(guide, ())
    return found


def choose(guide: str, name: str, source: bytes) -> None:
    """One find more for a guide; the oldest goes when there are too many."""
    others = [each for each in chosen(guide) if each.name != name]
    current_app.extensions["chosen"][guide] = (*others, Chosen(name, source))[-MOST:]


def forget(guide: str, place: int) -> None:
    """One find less."""
    known = chosen(guide)
    kept = tuple(each for i, each in enumerate(known) if i != place)
    current_app.extensions["chosen"][guide] = kept


def compare(
    known: Sequence[Chosen], before: Guide | None, after: Guide
) -> tuple[Compared, ...]:
    """What an edit does to each find."""
    return tuple(_compare(each, before, after) for each in known)


def _compare(each: Chosen, before: Guide | None, after: Guide) -> Compared:
    then, now = _judged(each, before), _judged(each, after)
    years = tuple(
        (name, p, q)
        for name, p, q in _years(then, now)
        if max(p or 0.0, q or 0.0) >= LEAST
    )
    return Compared(each.name, _say(then), _say(now), years)


def _judged(each: Chosen, guide: Guide | None) -> Verdict | str:
    """The verdict, or why there is none."""
    if guide is None:
        return "The guide on disk has mistakes."
    try:
        find = finds.load(each.source, [guide], name="the find")
        return judge(tables_of(guide), find)
    except FindError as error:
        return f"Not judged: {error}."


def _say(found: Verdict | str) -> str:
    return found if isinstance(found, str) else found.say


def _years(
    then: Verdict | str, now: Verdict | str
) -> list[tuple[str, float | None, float | None]]:
    p, q = _probabilities(then), _probabilities(now)
    return [(year, p.get(year), q.get(year)) for year in {**p, **q}]


def _probabilities(found: Verdict | str) -> dict[str, float]:
    if isinstance(found, str):
        return {}
    years = {str(year): p for year, p in found.model_years}
    return {**years, "none of these": found.outside}


def several(source: bytes, guide: Guide) -> list[Find]:
    """The finds in a text; the first that cannot be judged is a FindError."""
    found = []
    for each in finds.load_all(source, [guide], name="the text"):
        if isinstance(each, FindError):
            raise each
        found.append(each)
    return found
