"""Members of a set in words, and what a set was sold as."""

from collections.abc import Sequence

from fieldid.engine.find import Item
from fieldid.engine.guide import Guide
from fieldid.engine.words import called, listed

RUN = 3
"""So many members in a row are told by the first and the last."""
ENDINGS = ("s", "x", "z", "ch", "sh")


def several(guide: Guide, members: Sequence[str]) -> str:
    """Members as a phrase, those called alike drawn together: "the 5 and 6 irons"."""
    groups: dict[str, list[str]] = {}
    for member in members:
        own, _, kind = called(guide, member).rpartition(" ")
        groups.setdefault(kind if own else "", []).append(own or kind)
    return listed([_group(kind, own) for kind, own in groups.items()])


def whose(guide: Guide, items: Sequence[Item], members: Sequence[str]) -> str:
    """Members as a phrase, or that they are all of the items."""
    if len(members) == len(items) and len(items) > 1:
        return "the whole set"
    return several(guide, members)


def often_apart(guide: Guide, member: str) -> bool:
    """Whether the member is a stray more often than others: it was bought apart."""
    if guide.members is None:
        return False
    return dict(guide.members.stray_for).get(member, 0.0) > guide.members.stray


def missing(guide: Guide, items: Sequence[Item]) -> tuple[str, ...]:
    """The members that a set was sold with and the items lack, in guide order."""
    present = [item.member for item in items]
    return tuple(m for m in _usual(guide) if m not in present)


def surplus(guide: Guide, items: Sequence[Item]) -> tuple[str, ...]:
    """The members among the items that a set was not sold with, in guide order."""
    if guide.members is None or not guide.members.usual:
        return ()
    present = [item.member for item in items]
    usual = guide.members.usual
    return tuple(m for m in guide.members.all if m in present and m not in usual)


def sold_as(guide: Guide) -> str:
    """What a set was sold as, as "3 to 9"; empty if the guide does not say."""
    usual = _usual(guide)
    if guide.members is None or not usual:
        return ""
    start = guide.members.all.index(usual[0])
    if len(usual) >= RUN and usual == guide.members.all[start : start + len(usual)]:
        return f"{usual[0]} to {usual[-1]}"
    return listed(usual)


def set_say(guide: Guide, items: Sequence[Item]) -> str:
    """The items against what a set was sold as; empty if the guide does not say."""
    sold, absent, beside = sold_as(guide), missing(guide, items), surplus(guide, items)
    if not sold:
        return ""
    say = f"Sold as {sold}: complete"
    if absent:
        verb = "is" if len(absent) == 1 else "are"
        say = f"Sold as {sold}: {several(guide, absent)} {verb} missing"
    if beside:
        say += f"; {several(guide, beside)} came beside"
    return f"{say}."


def _usual(guide: Guide) -> tuple[str, ...]:
    """What a set was sold as, in the order of all members."""
    if guide.members is None:
        return ()
    return tuple(m for m in guide.members.all if m in guide.members.usual)


def _group(kind: str, own: Sequence[str]) -> str:
    """Members of one kind, as "the 5 iron" or "the 5 and 6 irons"."""
    if not kind:
        return f"the {listed(own)}"
    if len(own) == 1:
        return f"the {own[0]} {kind}"
    return f"the {listed(own)} {kind}{'es' if kind.endswith(ENDINGS) else 's'}"
