"""What came out of an audit, in a sentence or two to begin its page with."""

from fieldid.audit.figures import Figures
from fieldid.audit.report import NONE_OF_THESE, Audit
from fieldid.workbench.words import numeral, so_many

HARD = 0.1
"""From so many of a year's specimens on, told as another, the two are hard to part."""
FEW = 3
"""Fewer than this may be chance."""
NUMBERS = {"1": "One", "2": "Two", "3": "Three", "4": "Four", "5": "Five"}
MOST = 3
"""So many pairs are named; the chart shows the rest."""


def summary(audit: Audit) -> str:
    """The sentences; empty if not one specimen was tried."""
    if audit.own is None:
        return ""
    return f"{_told(audit, audit.own)} {_pairs_say(audit)}".strip()


def _told(audit: Audit, own: Figures) -> str:
    told = "the range held the year" if audit.brackets else "named the right year"
    verdict = "" if audit.brackets else "the verdict "
    return (
        f"For {numeral(own.right.count)} of "
        f"{so_many(own.specimens, 'invented specimen')} {verdict}{told}; "
        "half of the verdicts took "
        f"{so_many(round(own.seconds.half), 'second')} or less."
    )


def _pairs_say(audit: Audit) -> str:
    """Which years are hard to keep apart; a guide that brackets does not try to."""
    if audit.brackets:
        return ""
    pairs = hard_pairs(audit)
    if not pairs:
        return "No two years are hard to keep apart."
    named = ", ".join(f"{one} and {other}" for one, other in pairs[:MOST])
    many = _spelled(so_many(len(pairs), "pair is", "pairs are"))
    more = f" and {len(pairs) - MOST} more" if len(pairs) > MOST else ""
    return (
        f"{many} hard to keep apart, with a tenth or more of one told as the "
        f"other: {named}{more}."
    )


def _spelled(many: str) -> str:
    """A small number as a sentence begins with it.

    >>> _spelled("2 pairs"), _spelled("12 pairs")
    ('Two pairs', '12 pairs')
    """
    number, rest = many.split(" ", 1)
    return f"{NUMBERS.get(number, number)} {rest}"


def hard_pairs(audit: Audit) -> list[tuple[str, str]]:
    """The pairs of years, the most confused first."""
    found = [
        (min(each.year, each.told), max(each.year, each.told))
        for each in audit.confused
        if each.told != NONE_OF_THESE
        and each.times.share >= HARD
        and each.times.count >= FEW
    ]
    return list(dict.fromkeys(found))
