"""Across the guide: what no single key can tell is wrong.

The checks see the tables as far as they could be read. What is missing from them
was refused already, and none of them refuses it, or what follows from it, again.
"""

from collections.abc import Iterator
from typing import Any

from fieldid import draw
from fieldid.errors import nearest
from fieldid.guides.clues import Known, check_clue
from fieldid.guides.flags import check_flag
from fieldid.guides.names import Names, names, twice
from fieldid.guides.refusals import Finding, quote, refusal
from fieldid.guides.times import check_model_years, check_year, times

MOST_PARTS_IN_A_CHAIN = 6


def check(data: dict[str, Any]) -> Iterator[Finding]:
    """All that is wrong across the tables of a guide."""
    known = _known(data)
    clues = data.get("clue", [])
    yield from _check_drawing(data)
    yield from check_model_years(data.get("model_year", []))
    yield from twice(data.get("part", []), ("part",))
    yield from _check_follows(data.get("part", []), known.parts)
    yield from twice(clues, ("clue",))
    for place, clue in enumerate(clues):
        yield from check_clue(clue, ("clue", place), known)
    yield from _check_set(data.get("set") or {}, known.members)
    if data.get("verdict") == "range" and data.get("set"):
        yield ("set",), refusal("range-set")
    for place, flag in enumerate(data.get("flag", ())):
        yield from check_flag(flag, ("flag", place), clues, known)
    yield from _check_prices(data.get("prices") or {}, known)


def _known(data: dict[str, Any]) -> Known:
    members = (data.get("set") or {}).get("all", ())
    drawing = data.get("drawing", "")
    return Known(
        parts=names("part of this guide", data.get("part", [])),
        members=Names("member of the set", members),
        # A [set] that was refused is still there to name members of.
        has_set=data.get("set", {}) is not None,
        times=times(data.get("model_year", [])),
        drawing=drawing,
        spots=draw.SCENES.get(drawing, ()),
    )


def _check_drawing(data: dict[str, Any]) -> Iterator[Finding]:
    drawing = data.get("drawing")
    if drawing is not None and drawing not in draw.SCENES:
        right = nearest(drawing, draw.SCENES)
        told = refusal("unknown-drawing", value=quote(drawing), nearest=right)
        yield ("drawing",), told


def _check_follows(parts: list[Any], ids: Names) -> Iterator[Finding]:
    """Who follows whom: known parts, in no circle, in no long chain."""
    above: dict[str, str] = {}
    told: list[str] = []
    for part in parts:
        if "id" in part and part.get("follows"):
            above.setdefault(part["id"], part["follows"].get("part", ""))
    for place, part in enumerate(parts):
        path = ("part", place, "follows", "part")
        follows = (part.get("follows") or {}).get("part")
        if follows is None:
            continue
        yield from ids.unknown(follows, path)
        chain = _chain(part.get("id", ""), above)
        if chain[-1] in chain[:-1]:
            if chain[0] == chain[-1] and chain[0] not in told:
                told += chain
                yield path, refusal("circle", chain=", ".join(chain))
        elif len(chain) > MOST_PARTS_IN_A_CHAIN:
            count, most = len(chain), MOST_PARTS_IN_A_CHAIN
            yield path, refusal("chain", count=count, most=most)


def _chain(start: str, above: dict[str, str]) -> list[str]:
    """A part, what it follows and so on, up to a root or back to one before."""
    chain = [start]
    while chain[-1] in above and chain[-1] not in chain[:-1]:
        chain.append(above[chain[-1]])
    return chain


def _check_set(table: dict[str, Any], members: Names) -> Iterator[Finding]:
    for place, member in enumerate(table.get("usual", ())):
        yield from members.unknown(member, ("set", "usual", place))
    for key in ("stray_for", "names"):
        for member, _ in table.get(key, ()):
            yield from members.unknown(member, ("set", key, member))


def _check_prices(table: dict[str, Any], known: Known) -> Iterator[Finding]:
    """What has a price is there: model years, parts and a set."""
    many = table.get("set") or {}
    for under, at in ((table, ("prices",)), (many, ("prices", "set"))):
        for year, _ in under.get("worth", ()):
            yield from check_year(year, (*at, "worth", str(year)), known.times)
    for key in ("off", "put_right"):
        for part, _ in table.get(key, ()):
            yield from known.parts.unknown(part, ("prices", key, part))
    yield from _check_put_right(table, known.parts)
    if many and not known.has_set:
        yield ("prices", "set"), refusal("prices-set")


def _check_put_right(table: dict[str, Any], parts: Names) -> Iterator[Finding]:
    """What is put right takes something off, unless what that is was refused."""
    off = [part for part, _ in table.get("off", ())]
    for part, _ in table.get("put_right", ()) if "off" in table else ():
        if part in parts.known and part not in off:
            told = refusal("put-right-alone", part=quote(part))
            yield ("prices", "put_right", part), told
