"""Choice clues: drawn answers, each made in certain years and months.

Model page: "choice".
"""

from dataclasses import dataclass

from fieldid.engine.cells import Cell
from fieldid.engine.guide import Choice, Clue, Guide, Option, Span
from fieldid.engine.likelihood import Likelihood, applies
from fieldid.engine.special import Vector, dot

LOOK_ALIKE = 5.0


@dataclass(frozen=True, slots=True)
class ChoiceTable:
    """The likelihood of every option, in guide order; and the sources of a replaced
    part, which are the options with the weights `R`.
    """

    ids: tuple[str, ...]
    likelihoods: tuple[Likelihood, ...]
    sources: Vector


def choice_table(
    guide: Guide, clue: Clue, kind: Choice, cells: tuple[Cell, ...], member: str | None
) -> ChoiceTable:
    """Likelihoods of the options for a set member (None: not known)."""
    common = [_shares(guide, kind, cell, None) for cell in cells]
    shares = common
    if member is not None:
        shares = [_shares(guide, kind, cell, member) for cell in cells]
    later = _replacement(guide, kind, cells, common)
    seen = _misreading(kind.options, clue.misread)
    by_option = [[row[a] for row in seen] for a in range(len(kind.options))]
    return ChoiceTable(
        tuple(option.id for option in kind.options),
        tuple(
            Likelihood(
                tuple(dot(row, by_source) for row in shares),
                dot(later, by_source),
                1 / len(kind.options),
                by_source,
            )
            for by_source in by_option
        ),
        later,
    )


def choice_likelihood(table: ChoiceTable, a: str) -> Likelihood:
    """Likelihood of reading the option with id `a`."""
    return table.likelihoods[table.ids.index(a)]


def weight(option: Option, cell: Cell, member: str | None) -> float:
    """`w`: the largest share of the option's spans that cover the cell."""
    return max((_covers(span, cell, member) for span in option.seen), default=0.0)


def _covers(span: Span, cell: Cell, member: str | None) -> float:
    if not applies(span.members, span.excluded, member):
        return 0.0
    if span.years and not span.years[0] <= cell.year <= span.years[1]:
        return 0.0
    before = 0 if span.since is None else span.since - cell.t
    after = 0 if span.until is None else cell.t - span.until
    distance = max(before, after, 0)
    if distance > span.fade:
        return 0.0
    return span.share * (1 - distance / (span.fade + 1))


def _shares(guide: Guide, kind: Choice, cell: Cell, member: str | None) -> Vector:
    """`A(o|c)` of every option; uniform where the guide is silent."""
    raised = [weight(o, cell, member) + guide.floor for o in kind.options]
    total = sum(raised)
    return [w / total for w in raised]


def _replacement(
    guide: Guide, kind: Choice, cells: tuple[Cell, ...], common: list[Vector]
) -> Vector:
    """`R(o)`: what a replaced part shows."""
    options = kind.options
    if kind.replacement:
        given = dict(kind.replacement)
        raised = [given.get(o.id, 0.0) + guide.floor for o in options]
        total = sum(raised)
        return [w / total for w in raised]
    return [
        0.5 * sum(c.spread * row[o] for c, row in zip(cells, common, strict=True))
        + 0.5 / len(options)
        for o in range(len(options))
    ]


def _misreading(options: tuple[Option, ...], m: float) -> list[list[float]]:
    """`M(a|o)` as rows by the true option `o`."""
    if len(options) == 1:
        return [[1.0]]
    rows = []
    for o in options:
        pull = [
            0.0 if a is o else LOOK_ALIKE if a.id in o.like or o.id in a.like else 1.0
            for a in options
        ]
        total = sum(pull)
        rows.append(
            [
                1 - m if a is o else m * x / total
                for a, x in zip(options, pull, strict=True)
            ]
        )
    return rows
