"""The items of a find against its guide: members, readings, parts that are gone."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from fieldid.engine.guide import Guide, Part
from fieldid.errors import nearest
from fieldid.guides.names import Names
from fieldid.guides.readings import misfit
from fieldid.guides.refusals import Finding, Path, quote, refusal


def check_items(items: Sequence[Any], guide: Guide) -> Iterator[Finding]:
    """What does not fit the guide in one object, or in the members of a set."""
    if not items:
        yield ("items",), refusal("no-item")
    if len(items) > 1:
        yield from _check_set([item["member"] for item in items], guide)
    for i, item in enumerate(items):
        path = ("items", i)
        if item["member"] is not None:
            yield from _check_member(item["member"], (*path, "member"), guide)
        yield from _check_readings(item, (*path, "readings"), guide)
        yield from _check_gone(item, (*path, "gone"), guide, in_set=len(items) > 1)


def _check_set(members: Sequence[str | None], guide: Guide) -> Iterator[Finding]:
    """Several items: each is another member of the guide's set."""
    if guide.members is None:
        yield ("items",), refusal("many-items", count=len(members))
        return
    known = guide.members.all
    if len(members) > len(known):
        yield ("items",), refusal("more-items", count=len(members), most=len(known))
        return
    free = nearest("", (member for member in known if member not in members))
    for i, member in enumerate(members):
        at = ("items", i, "member")
        if member is None:
            yield at, refusal("no-member", nearest=free)
        elif member in members[:i]:
            words = {"value": quote(member), "before": members.index(member) + 1}
            yield at, refusal("member-twice", nearest=free, **words)


def _check_member(member: str, path: Path, guide: Guide) -> Iterator[Finding]:
    if guide.members is None:
        yield path, refusal("no-set")
    else:
        yield from Names("member of the set", guide.members.all).unknown(member, path)


def _check_readings(item: Any, path: Path, guide: Guide) -> Iterator[Finding]:
    clues = {clue.id: clue for clue in guide.clues}
    for name, value in item["readings"]:
        at = (*path, name)
        if name not in clues:
            yield from Names("clue of this guide", tuple(clues)).unknown(name, at)
        elif told := misfit(value, clues[name]):
            yield at, told
        elif value is not None and (part := clues[name].part) in item["gone"]:
            told = refusal("gone-and-read", value=quote(name), part=quote(part))
            yield at, told


def _check_gone(
    item: Any, path: Path, guide: Guide, *, in_set: bool
) -> Iterator[Finding]:
    parts = {part.id: part for part in guide.parts}
    for i, name in enumerate(item["gone"]):
        at = (*path, i)
        if name not in parts:
            yield from Names("part of this guide", tuple(parts)).unknown(name, at)
        elif not can_be_gone(parts[name], parts, in_set=in_set):
            yield at, refusal("never-gone", value=quote(name))


def can_be_gone(part: Part, parts: Mapping[str, Part], *, in_set: bool) -> bool:
    """Whether the guide leaves it possible that the part was replaced: nothing else
    could explain that it is gone.
    """
    if part.replaced > 0 or (in_set and part.whole_set > 0):
        return True
    return (
        part.follows is not None
        and part.share > 0
        and can_be_gone(parts[part.follows], parts, in_set=in_set)
    )
