"""Proposals into a guide's text: counts in the place of shares, with their source.

All else in the text stays as it was, comments included.
"""

import re
import tomllib
from collections.abc import Sequence
from datetime import date
from typing import Any

from fieldid.census.propose import Proposal
from fieldid.engine.guide import Choice, Guide
from fieldid.engine.words import capital
from fieldid.errors import UsageError, nearest
from fieldid.guides.document import Document, saved
from fieldid.guides.edit import put
from fieldid.guides.load import loads

SOURCE = re.compile(r"[Cc]ensus of \d+ specimens?, \d{4}-\d{2}")


def chosen(found: Sequence[Proposal], names: Sequence[str]) -> tuple[Proposal, ...]:
    """The proposals that are named: one as CLUE.OPTION.PLACE, all of an option as
    CLUE.OPTION, all of a clue as CLUE.
    """
    known = [
        *dict.fromkeys(each.clue for each in found),
        *dict.fromkeys(f"{each.clue}.{each.option}" for each in found),
        *(each.name for each in found),
    ]
    for name in names:
        if name not in known:
            raise UsageError(
                f"nothing is proposed for {name!r}: {nearest(name, known)}"
            )
    return tuple(
        each
        for each in found
        if any(f"{each.name}.".startswith(f"{name}.") for name in names)
    )


def accepted(
    text: str, guide: Guide, taken: Sequence[Proposal], *, specimens: int, on: date
) -> str:
    """The text of the guide with these counts, and the date of the knowledge."""
    table = tomllib.loads(text)
    source = f"census of {specimens} specimen{'s' * (specimens != 1)}, {on:%Y-%m}"
    for each in taken:
        path = _place(table, guide, each)
        text = put(text, (*path, "seen", each.span, "share"), each.count)
        before = _at(tomllib.loads(text), path).get("source", "")
        text = put(text, (*path, "source"), _sourced(before, source))
    if taken and str(table["updated"]) < on.isoformat():
        dated = on.isoformat() if isinstance(table["updated"], str) else on
        text = put(text, ("updated",), dated)
    return text


def accept(
    document: Document,
    guide: Guide,
    taken: Sequence[Proposal],
    *,
    specimens: int,
    on: date,
) -> Guide:
    """Writes the counts into the guide's file, and gives the guide as it then is.

    A guide with problems is never written, nor one that was changed meanwhile.
    """
    text = accepted(document.text, guide, taken, specimens=specimens, on=on)
    path = document.path
    made = loads(text.encode(), file=str(path), stem=path.stem, folder=path.parent)
    saved(document, text)
    return made


def overruled(guide: Guide, taken: Sequence[Proposal]) -> tuple[Proposal, ...]:
    """Those that no longer count in the guide, since another span of the same option
    covers all of theirs with a larger share.
    """
    return tuple(each for each in taken if _is_overruled(guide, each))


def _is_overruled(guide: Guide, each: Proposal) -> bool:
    kind = next(clue.kind for clue in guide.clues if clue.id == each.clue)
    assert isinstance(kind, Choice)
    option = next(option for option in kind.options if option.id == each.option)
    own = option.seen[each.span]
    # One that is alike in all but its share, or says nothing of when, covers it.
    return any(
        other.share > own.share
        and _within(own.years, other.years)
        and (other.since is None or (own.since or 0) >= other.since)
        and (other.until is None or (own.until or 10**6) <= other.until)
        and other.members in ((), own.members)
        and other.excluded in ((), own.excluded)
        for s, other in enumerate(option.seen)
        if s != each.span
    )


def _within(own: tuple[int, int] | None, other: tuple[int, int] | None) -> bool:
    if other is None:
        return True
    return own is not None and other[0] <= own[0] and own[1] <= other[1]


def _place(
    table: dict[str, Any], guide: Guide, each: Proposal
) -> tuple[str, int, str, int]:
    """Where the option stands in the text: its clues come first in the guide."""
    k = next(k for k, clue in enumerate(guide.clues) if clue.id == each.clue)
    if k >= len(table["clue"]):
        raise UsageError(
            f"{each.clue!r} is taken over from another guide; accept it there, with a "
            "census of that guide"
        )
    options = table["clue"][k]["option"]
    o = next(o for o, option in enumerate(options) if option["id"] == each.option)
    return "clue", k, "option", o


def _at(table: Any, path: Sequence[str | int]) -> Any:
    for key in path:
        table = table[key]
    return table


def _sourced(before: str, source: str) -> str:
    """The option's source with the census, which takes the place of an earlier one."""
    if found := SOURCE.search(before):
        return before.replace(found[0], found[0][0] + source[1:])
    if before.strip().endswith("."):
        return f"{before.strip()} {capital(source)}."
    return f"{before.strip()}; {source}" if before.strip() else source
