"""An audit in plain text, a fact a line."""

from collections.abc import Callable, Iterator, Sequence

from fieldid.audit.figures import Figures, Row, Share, Spread
from fieldid.audit.report import Asked, Audit, Shaken
from fieldid.audit.worlds import OWN
from fieldid.engine.gain import WORTHWHILE

WORLD_COLUMNS: tuple[tuple[str, Callable[[Figures], str]], ...] = (
    ("right", lambda found: hundredths(found.right.share)),
    ("thought right", lambda found: hundredths(found.told)),
    ("calibration error", lambda found: hundredths(found.error)),
    ("told with 95 %", lambda found: hundredths(found.sure.share)),
    ("right where told so", lambda found: hundredths(found.right_if_sure.share)),
    ("seconds for half", lambda found: f"{found.seconds.half:g}"),
    ("for nine in ten", lambda found: f"{found.seconds.nine_tenths:g}"),
)
"""What is said of each world."""


def text(audit: Audit) -> str:
    """All that was found, under a heading each."""
    return "\n".join(_lines(audit))


def _lines(audit: Audit) -> Iterator[str]:
    yield f"{audit.title}: {audit.specimens} specimens by lot, seed {audit.seed}"
    if not audit.whole:
        yield "Stopped before all was done: these are the figures so far."
    if audit.own is None:
        return
    yield from _own(audit, audit.own)
    yield from _calibration(audit.own)
    yield from _elsewhere(audit, audit.own)
    yield from _confused(audit)
    yield from _clues(audit)
    yield from _shaken(audit)


def _own(audit: Audit, own: Figures) -> Iterator[str]:
    yield ""
    yield f"VERDICTS on {own.specimens} specimens"
    if audit.width is not None:
        yield f"  the range told holds the year  {ranged(own.right)}"
        yield f"  years in a range               {audit.width:g} in the middle"
    else:
        yield f"  right                          {ranged(own.right)}"
        yield f"  told with 95 % or more         {ranged(own.sure)}"
        yield f"  right where told so            {ranged(own.right_if_sure)}"
    yield f"  thought right on average       {hundredths(own.told)}"
    yield f"  seconds                        {spread(own.seconds)}"
    yield f"  clues looked at                {spread(own.readings)}"


def _calibration(own: Figures) -> Iterator[str]:
    yield ""
    yield "CALIBRATION: what was told, and how often it was true"
    for row in own.rows:
        yield (
            f"  {between(row):12} {row.true.of:6}  told {hundredths(row.told):>7}  "
            f"true {ranged(row.true)}{'  further off than by chance' * row.far}"
        )
    yield f"  Brier score {own.brier:.3f} (0 is best)"
    yield f"  {error_say(own)}"


def _elsewhere(audit: Audit, own: Figures) -> Iterator[str]:
    if not audit.elsewhere:
        return
    yield ""
    yield "IF THE WORLD IS NOT AS THE GUIDE SAYS, and the guide stays as it is"
    rows = [
        ("", *(head for head, _ in WORLD_COLUMNS)),
        *(
            (say, *(tell(found) for _, tell in WORLD_COLUMNS))
            for say, found in worlds(audit, own)
        ),
    ]
    yield from _aligned(rows)


def _confused(audit: Audit) -> Iterator[str]:
    if audit.brackets:
        return
    yield ""
    yield "CONFUSED"
    for each in audit.confused:
        count, of = each.times.count, each.times.of
        yield f"  {each.year} told as {each.told}: {count} of {of}"
    if not audit.confused:
        yield "  nothing"


def _clues(audit: Audit) -> Iterator[str]:
    yield ""
    yield "CLUES: in how many walks each was looked at"
    yield from _aligned(
        [
            (each.name, hundredths(each.times.share), asked_say(each))
            for each in by_times(audit)
        ]
    )


def _shaken(audit: Audit) -> Iterator[str]:
    if not audit.judged:
        return
    yield ""
    yield (
        "SHARES THAT MOVE VERDICTS MOST: the odds of each four times as large and as "
        f"small, over {audit.judged} verdicts"
    )
    for each in audit.shaken:
        yield f"  {each.name}, {each.label} ({each.span}): {shaken_say(each)}"


def _aligned(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Rows as columns, as wide as their longest cell."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        cells = (cell.ljust(wide) for cell, wide in zip(row, widths, strict=True))
        yield f"  {'  '.join(cells)}".rstrip()


def worlds(audit: Audit, own: Figures) -> list[tuple[str, Figures]]:
    """The world as the guide says, and the others, in words."""
    others = ((each.say, each.figures) for each in audit.elsewhere)
    return [(OWN.say, own), *others]


def by_times(audit: Audit) -> list[Asked]:
    """The clues, the one that is looked at most often first."""
    return sorted(audit.asked, key=lambda each: -each.times.count)


def hundredths(share: float) -> str:
    """A share in per cent with one decimal.

    >>> hundredths(0.0615)
    '6.2 %'
    """
    return f"{100 * share:.1f} %"


def ranged(found: Share) -> str:
    """A share with its interval."""
    if found.of == 0:
        return "none"
    return (
        f"{hundredths(found.share)} ({100 * found.low:.1f} to {100 * found.high:.1f})"
    )


def spread(found: Spread) -> str:
    """What half and nine in ten need."""
    return f"{found.half:g} or fewer for half, {found.nine_tenths:g} for nine in ten"


def between(row: Row) -> str:
    """The probabilities of a row."""
    return f"{100 * row.low:.0f} to {100 * row.high:.0f} %"


def error_say(found: Figures) -> str:
    """The expected calibration error beside what chance makes of it."""
    return (
        f"Expected calibration error {hundredths(found.error)}; chance alone makes "
        f"about {hundredths(found.error_by_chance)} of so many specimens."
    )


def asked_say(each: Asked) -> str:
    """Whether a clue is worth a look at all, and if not, why."""
    if not each.worth:
        return f"never worth a look: always promised under {WORTHWHILE:g} bits"
    most = f"promised at most {each.bits:.2f} bits"
    if each.times.count == 0:
        return f"never looked at, others tell more for their time: {most}"
    return most


def shaken_say(each: Shaken) -> str:
    """What moving a share does."""
    return (
        f"now {each.share:.2g}; up {100 * each.raised:.2f} points, down "
        f"{100 * each.lowered:.2f}, at most {each.others} told otherwise"
    )
