"""An audit as its page shows it: sentences, tables, and charts beside them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from fieldid.audit.figures import Figures
from fieldid.audit.report import Audit
from fieldid.audit.text import (
    WORLD_COLUMNS,
    asked_say,
    between,
    by_times,
    error_say,
    hundredths,
    ranged,
    shaken_say,
    spread,
    worlds,
)
from fieldid.draw import charts, svg
from fieldid.draw.calibration import calibration
from fieldid.draw.nodes import Node
from fieldid.engine.words import capital

LEAST = 0.005
"""Fewer of a year's specimens than this are not named in the year's row."""


@dataclass(frozen=True, slots=True)
class Line:
    """A row of a table: its name, and cells, the last of which may have a bar."""

    name: str
    cells: tuple[str, ...]
    bar: Markup | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """A heading, a sentence on what it shows, a chart, and the figures in rows."""

    id: str
    title: str
    say: str
    chart: Markup | None
    heads: tuple[str, ...]
    lines: tuple[Line, ...]


def shown(audit: Audit) -> tuple[Table, ...]:
    """The tables of the page; none if not one specimen was tried."""
    if audit.own is None:
        return ()
    return tuple(_tables(audit, audit.own))


def _tables(audit: Audit, own: Figures) -> Iterator[Table]:
    yield _verdicts(audit, own)
    if audit.within:
        yield _soon(audit)
    yield _calibration(own)
    if audit.elsewhere:
        yield _elsewhere(audit, own)
    if audit.matrix:
        yield _confused(audit)
    yield _clues(audit)
    if audit.judged:
        yield _shares(audit)


def _verdicts(audit: Audit, own: Figures) -> Table:
    lines = [
        ("Right", ranged(own.right)),
        ("Thought right on average", hundredths(own.told)),
        ("Seconds", spread(own.seconds)),
        ("Clues looked at", spread(own.readings)),
    ]
    if audit.width is not None:
        lines[0] = ("The range holds the year", ranged(own.right))
        lines.insert(1, ("Years in a range", f"{audit.width:g} in the middle"))
    else:
        lines.insert(1, ("Told with 95 % or more", ranged(own.sure)))
        lines.insert(2, ("Right where told so", ranged(own.right_if_sure)))
    say = (
        f"{own.specimens:,} specimens drawn from the guide, each looked at clue by "
        "clue, always at the one that tells most for its time, until the verdict has "
        "95 % or nothing is worth a look. In brackets: where a share lies 95 times in "
        "100."
    )
    return _plain("verdicts", "Verdicts", say, ("What", "Figure"), lines)


def _soon(audit: Audit) -> Table:
    lines = [(f"{seconds} seconds", hundredths(p)) for seconds, p in audit.within]
    curve = charts.curve([(str(seconds), p) for seconds, p in audit.within])
    say = "How many of a hundred are told with 95 % after so many seconds."
    heads = ("After", "Told")
    return _plain("soon", "How soon", say, heads, lines, drawn=curve)


def _calibration(own: Figures) -> Table:
    points = [
        (row.told, row.true.share, row.true.low, row.true.high) for row in own.rows
    ]
    lines = [
        (
            between(row),
            f"{row.true.of}",
            hundredths(row.told),
            ranged(row.true) + (": further off than by chance" if row.far else ""),
        )
        for row in own.rows
    ]
    say = (
        "Verdicts by the probability that was told, and how many of them were true. "
        "On the slanting line both are the same; upright lines are where the share "
        f"lies 95 times in 100. {error_say(own)} The misses, squared, are "
        f"{own.brier:.3f} on average (the Brier score), of which 0 is best."
    )
    heads = ("Told", "Verdicts", "On average", "True")
    return _plain(
        "calibration",
        "Can the figures be trusted?",
        say,
        heads,
        lines,
        drawn=calibration(points),
    )


def _elsewhere(audit: Audit, own: Figures) -> Table:
    lines = [
        (capital(say), *(tell(found) for _, tell in WORLD_COLUMNS))
        for say, found in worlds(audit, own)
    ]
    heads = ("The world", *(capital(head) for head, _ in WORLD_COLUMNS))
    say = "Specimens of a world that is different, judged by the guide as it is."
    return _plain("elsewhere", "If the guide is wrong", say, heads, lines)


def _confused(audit: Audit) -> Table:
    """Years alone on the chart; what a row lacks was told as none of these."""
    years = audit.names[:-1]
    rows = [row[:-1] for row in audit.matrix[:-1]]
    lines = [
        (name, _told_as(audit.names, row))
        for name, row in zip(audit.names, audit.matrix, strict=True)
    ]
    say = (
        "A row a year: what its specimens were told as. The larger the square, the "
        "more of them; what a row lacks was told as none of these."
    )
    heads = ("Is of", "Told as")
    return _plain(
        "confused",
        "Which years are confused",
        say,
        heads,
        lines,
        drawn=charts.matrix(years, rows),
    )


def _told_as(names: Sequence[str], row: Sequence[float]) -> str:
    told = sorted(
        ((-p, name) for name, p in zip(names, row, strict=True) if p >= LEAST)
    )
    return ", ".join(f"{name} {hundredths(-p)}" for p, name in told) or "none drawn"


def _clues(audit: Audit) -> Table:
    lines = tuple(
        Line(
            capital(each.name),
            (asked_say(each), hundredths(each.times.share)),
            _drawn(charts.bar(each.times.share)),
        )
        for each in by_times(audit)
    )
    say = (
        "In how many of a hundred walks each clue was looked at. What a clue tells is "
        "counted in halvings: one halves the years that are left (a bit)."
    )
    heads = ("Clue", "Worth", "Looked at")
    return Table("clues", "Clues", say, None, heads, lines)


def _shares(audit: Audit) -> Table:
    most = max((max(each.raised, each.lowered) for each in audit.shaken), default=1.0)
    lines = tuple(
        Line(
            f"{capital(each.name)}, {each.label}: {each.span}",
            (shaken_say(each),),
            _drawn(charts.bar(max(each.raised, each.lowered) / most)),
        )
        for each in audit.shaken
    )
    say = (
        "The odds of one share at a time made four times as large and as small, and "
        f"{audit.judged} verdicts judged again with the same readings: by how many "
        "points the probability of what was told changes on average. What moves most "
        "is worth counting first."
    )
    heads = ("Share", "Moves")
    return Table("shares", "Which shares matter", say, None, heads, lines)


def _plain(
    id: str,
    title: str,
    say: str,
    heads: tuple[str, ...],
    rows: Sequence[tuple[str, ...]],
    drawn: Node | None = None,
) -> Table:
    lines = tuple(Line(row[0], row[1:]) for row in rows)
    return Table(id, title, say, _drawn(drawn) if drawn else None, heads, lines)


def _drawn(node: Node) -> Markup:
    return Markup(svg(node))
