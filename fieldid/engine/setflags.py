"""Red flags of a set: its own, and those of its members drawn together.

The sentences are neutral, as those of `flags`.
"""

from collections.abc import Sequence

from fieldid.engine.find import ClaimVerdict, Flag
from fieldid.engine.flags import Raised, is_replaced, overall, raised
from fieldid.engine.members import missing, often_apart, several, sold_as, whose
from fieldid.engine.one import Posterior, ranked
from fieldid.engine.reasons import Conflict
from fieldid.engine.saying import Case, looked_on
from fieldid.engine.sets import SetPosterior
from fieldid.engine.special import round9
from fieldid.engine.strays import is_stray, stray_say
from fieldid.engine.words import called, likely, percent

Apart = tuple[Posterior, list[Conflict]]
"""What an item says alone, and which of its readings disagree."""
Owned = list[tuple[str, Raised]]
"""One flag as it was raised on each of some members."""


def set_flags(
    told: Case,
    whole: SetPosterior,
    apart: Sequence[Apart],
    weighed: ClaimVerdict | None,
) -> tuple[Flag, ...]:
    """All red flags of a set: the answer's, strays, what its members raise, what
    happened to the whole set, and who is missing.
    """
    own = _drawn_together(told, whole, apart)
    return (
        *overall(whole, weighed),
        *_strays(told, whole),
        *(flag for flag in own if flag.kind == "disagree"),
        *_whole_set(told, whole),
        *(flag for flag in own if flag.kind in ("gone", "replaced")),
        *_missing(told),
        *(flag for flag in own if flag.kind == "guide"),
    )


def at_once(told: Case, whole: SetPosterior) -> list[bool]:
    """Of each part whether it is said to have been replaced on the whole set; who has
    looked at one member alone is told nothing of the others.
    """
    return [
        is_replaced(share) and looked_on(told.tables, told.items, p) > 1
        for p, share in enumerate(whole.whole_set)
    ]


def _strays(told: Case, whole: SetPosterior) -> list[Flag]:
    """Strays, without those that were often bought apart: they are no alarm."""
    guide = told.tables.guide
    found = []
    for i, item in enumerate(told.items):
        member = str(item.member)
        if is_stray(told, whole, i) and not often_apart(guide, member):
            say = stray_say(told, whole, i)
            ask = f"Has the {called(guide, member)} always been with this set?"
            found.append(Flag("stray", (), say, ask, (member,)))
    return found


def _whole_set(told: Case, whole: SetPosterior) -> list[Flag]:
    members = tuple(str(item.member) for item in told.items)
    found = []
    said = at_once(told, whole)
    for p, part in enumerate(told.tables.guide.parts):
        share = whole.whole_set[p]
        if said[p]:
            sure = f"{likely(share)}, {percent(share)}"
            say = f"Someone probably replaced the {part.name} on the whole set at once"
            ask = f"Did anyone replace the {part.name} on the whole set, and when?"
            found.append(Flag("whole-set", (part.id,), f"{say}: {sure}.", ask, members))
    return found


def _missing(told: Case) -> list[Flag]:
    """One flag for all that are missing, without those that were often bought apart."""
    guide = told.tables.guide
    lacking = missing(guide, told.items)
    absent = tuple(m for m in lacking if not often_apart(guide, m))
    if not absent:
        return []
    names = several(guide, absent)
    verb = "is" if len(absent) == 1 else "are"
    say = f"A set was sold as {sold_as(guide)}, and {names} {verb} not among these."
    return [Flag("missing", (), say, f"Do you still have {names}?", absent)]


def _drawn_together(
    told: Case, whole: SetPosterior, apart: Sequence[Apart]
) -> list[Flag]:
    """The flags of all members, equal ones as one that names them all."""
    groups: dict[object, Owned] = {}
    for i, item in enumerate(told.items):
        for each in _of_member(told, whole, i, apart[i]):
            # A part may be replaced more probably on one member than on the next.
            same = "" if each.kind == "replaced" else "".join(each.say)
            key = (each.kind, each.about, same)
            groups.setdefault(key, []).append((str(item.member), each))
    return [_drawn(told, owned) for owned in groups.values()]


def _of_member(told: Case, whole: SetPosterior, i: int, apart: Apart) -> list[Raised]:
    """A member's flags, without what is explained by a replacement on the whole set,
    and with its worst disagreement alone.
    """
    posterior, clashes = apart
    tables = told.tables
    said = at_once(told, whole)
    unexplained = [
        clash
        for clash in clashes
        if not said[tables.part_of[clash.first]]
        and not said[tables.part_of[clash.second]]
    ]
    explained = [part.id for p, part in enumerate(tables.guide.parts) if said[p]]
    y = ranked(posterior.years)[0] if is_stray(told, whole, i) else told.first
    return [
        each
        for each in raised(tables, told.items[i], posterior, unexplained[:1], (y, y))
        if each.kind != "replaced" or each.about[0] not in explained
    ]


def _drawn(told: Case, owned: Owned) -> Flag:
    """One flag of the members that raised it."""
    members = tuple(member for member, _ in owned)
    owner = whose(told.tables.guide, told.items, members)
    flags = [each for _, each in owned]
    # Of parts that are replaced more or less probably, what holds for all of them.
    least = min(flags, key=lambda each: round9(each.share))
    before, after = least.say
    asked, ending = least.ask
    if least.kind == "guide":
        asks = f"{ending} ({owner})" if ending else ""
        return Flag("guide", least.about, f"On {owner}: {after}", asks, members)
    if any(each.say != least.say for each in flags):
        after = f"{after.removesuffix('.')}, or more."
    return Flag(
        least.kind,
        least.about,
        f"{before} of {owner}{after}",
        f"{asked} of {owner}{ending}",
        members,
    )
