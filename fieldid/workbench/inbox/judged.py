"""A find of the inbox under the guide as it is here today."""

from dataclasses import dataclass
from pathlib import Path

from fieldid.engine import judge, prepare
from fieldid.engine.find import Find, Verdict
from fieldid.engine.guide import Guide
from fieldid.engine.words import day
from fieldid.errors import FindError, GuideError
from fieldid.guides import finds
from fieldid.guides.load import load
from fieldid.inbox.entry import Entry
from fieldid.inbox.stamp import stamp
from fieldid.workbench.place import place
from fieldid.workbench.words import so_many


@dataclass(frozen=True, slots=True)
class Judged:
    """A find under the guide as it is today; `why` says why it cannot be judged, and
    `differs` how the phone's guide was another one.
    """

    path: Path | None
    guide: Guide | None
    find: Find | None = None
    verdict: Verdict | None = None
    why: str = ""
    differs: str = ""


def judged_of(entry: Entry) -> Judged:
    """The find under the guide of that id, looked up among those that are here."""
    path = place().guides().get(entry.guide)
    if path is None:
        return Judged(None, None, why=f"There is no guide “{entry.guide}” here.")
    try:
        guide = load(path)
    except GuideError as error:
        problems = so_many(len(error.problems), "problem")
        return Judged(path, None, why=f"Its guide has {problems} to be mended first.")
    differs = _difference(entry, guide)
    try:
        find = finds.load(entry.find, [guide], name="what was read")
    except FindError as error:
        why = f"It does not fit the guide as it is here: {error}."
        return Judged(path, guide, why=why, differs=differs)
    return Judged(path, guide, find, judge(prepare(guide), find), differs=differs)


def _difference(entry: Entry, guide: Guide) -> str:
    if not entry.say or entry.stamp == stamp(guide):
        return ""
    if entry.updated == guide.updated or not entry.updated:
        return "The phone judged by another version of this guide."
    return (
        f"The phone judged by the guide of {day(entry.updated)}; "
        f"here it is that of {day(guide.updated)}."
    )
