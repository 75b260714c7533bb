"""The guide's own flags: what each waits for exists and can come true."""

from collections.abc import Iterator
from typing import Any

from fieldid.guides.clues import Known, beyond
from fieldid.guides.codes import code_of, unfit
from fieldid.guides.names import names
from fieldid.guides.refusals import Finding, Path, quote, refusal
from fieldid.guides.times import check_years

_READINGS = (("among", "is"), ("over", "over"), ("under", "under"))
_OTHERS = ("clue", "part", "replaced_over")


def check_flag(
    flag: Any, path: Path, clues: list[Any], known: Known
) -> Iterator[Finding]:
    """All that a flag waits for."""
    for place, when in enumerate(flag.get("when", ())):
        at = (*path, "when", place)
        yield from _check_whole(when, at)
        yield from check_years(when.get("years"), (*at, "year_in"), known.times)
        if when.get("part"):
            yield from known.parts.unknown(when["part"], (*at, "part"))
        if when.get("clue"):
            yield from _check_reading(when, at, clues, known)


def _check_whole(when: Any, path: Path) -> Iterator[Finding]:
    """Keys that need each other stand together; a key that was refused counts."""
    stands = {
        key: when.get(attribute, "refused") not in (None, ())
        for attribute, key in (*_READINGS, *((key, key) for key in _OTHERS))
    }
    read = [key for _, key in _READINGS if stands[key]]
    if not any(stands.values()) and when.get("years", "refused") is None:
        yield path, refusal("when-empty")
    if stands["clue"] and not read:
        yield (*path, "clue"), refusal("when-alone", needs="is, over or under")
    if read and not stands["clue"]:
        yield (*path, read[0]), refusal("when-alone", needs="clue")
    if stands["part"] != stands["replaced_over"]:
        alone, needs = ("part", "replaced_over")[:: 1 if stands["part"] else -1]
        yield (*path, alone), refusal("when-alone", needs=needs)


def _check_reading(
    when: Any, path: Path, clues: list[Any], known: Known
) -> Iterator[Finding]:
    """The reading that is waited for is one that the clue can give."""
    clue = next((c for c in clues if c.get("id") == when["clue"]), None)
    if clue is None:
        ids = names("clue of this guide", clues)
        yield from ids.unknown(when["clue"], (*path, "clue"))
        return
    kind = clue.get("kind")
    for attribute, key in _READINGS:
        given = when.get(attribute)
        if kind is None or given in (None, ()):
            continue
        counts = kind in ("measure", "number")
        if (attribute == "among") == counts:
            wants = "over or under" if counts else "is"
            told = refusal(
                "when-kind", clue=quote(when["clue"]), kind=kind, wants=wants
            )
            yield (*path, key), told
        elif attribute == "among":
            yield from _check_among(given, (*path, key), clue, known)
        elif too_far := beyond(given, clue):
            yield (*path, key), too_far


def _check_among(
    given: tuple[str, ...], path: Path, clue: Any, known: Known
) -> Iterator[Finding]:
    options = names("option of this clue", clue.get("option", []))
    code = code_of(clue, known.times)
    for place, text in enumerate(given):
        if clue["kind"] == "choice":
            yield from options.unknown(text, (*path, place))
        elif code and (told := unfit(text, code)):
            yield (*path, place), told
