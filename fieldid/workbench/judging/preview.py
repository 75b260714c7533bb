"""What an edit would do, before it is saved: the question, when each answer was made,
and the verdicts on the chosen finds.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain

from markupsafe import Markup

from fieldid import draw
from fieldid.draw import charts
from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure, Number, layouts
from fieldid.guides.refusals import Path
from fieldid.learn.seen import seen
from fieldid.web.prepared import tables_of
from fieldid.web.shares import runs
from fieldid.workbench.fields.entries import WEIGHTS
from fieldid.workbench.judging.chosen import Chosen, Compared, compare
from fieldid.workbench.judging.yearly import Yearly, yearly
from fieldid.workbench.text.drafts import Draft
from fieldid.workbench.words import numeral, so_many

LONG = 1.2
"""Wider than this against its height, a picture lies across its row there."""
NEARLY_ALL = 0.995
"""More than this is told as all."""
MANY = 7
"""From so many answers on they stand in two columns there."""
FEW_DIGITS = 9999
"""Up to this a number is read at one glance."""


@dataclass(frozen=True, slots=True)
class Question:
    """A clue as the phone asks it."""

    clue: Clue
    part: str
    can_be_gone: bool
    scene: Markup
    answers: tuple[tuple[str, Markup | None], ...]
    shape: str
    """The class names by which the phone arranges the answers."""
    typed: str
    """What is typed, where there is nothing to choose from."""


@dataclass(frozen=True, slots=True)
class Chart:
    """When each answer was made, as a band of years and in words; `lines` are drawn
    once for all bands.
    """

    first: int
    last: int
    lines: Markup
    rows: tuple[tuple[str, Markup, str], ...]
    is_shared: bool
    """Whether a year is shared between answers, so that weights need a word."""


@dataclass(frozen=True, slots=True)
class Preview:
    """All that is shown; a draft with mistakes has none of it."""

    draft: Draft
    question: Question | None
    chart: Chart | None
    yearly: Yearly | None
    compared: tuple[Compared, ...]
    weights: str = WEIGHTS


def preview(
    before: Draft, after: Draft, path: Path, known: Sequence[Chosen]
) -> Preview:
    """What the draft `after` makes of the clue at a path, if one is, and of finds."""
    guide = after.guide
    if guide is None:
        return Preview(after, None, None, None, ())
    clue = _clue(guide, path)
    return Preview(
        after,
        question(guide, clue) if clue else None,
        chart(guide, clue) if clue else None,
        yearly(guide, clue) if clue else None,
        compare(known, before.guide, guide),
    )


def question(guide: Guide, clue: Clue) -> Question:
    """The clue as it stands on the phone's screen."""
    part = next(part for part in guide.parts if part.id == clue.part)
    options = clue.kind.options if isinstance(clue.kind, Choice) else ()
    pictures = [draw.node(o.picture) if o.picture else None for o in options]
    answers = tuple(
        (option.label, Markup(draw.svg(picture)) if picture else None)
        for option, picture in zip(options, pictures, strict=True)
    )
    return Question(
        clue,
        part.name,
        part.replaced > 0,
        Markup(draw.svg(draw.scene(guide.drawing, lit=[clue.spot]))),
        answers,
        _shape([picture for picture in pictures if picture], len(answers)),
        _typed(clue),
    )


def chart(guide: Guide, clue: Clue) -> Chart | None:
    """When each answer of a choice was made; nothing of another clue."""
    tables = tables_of(guide)
    found = seen(tables, clue)
    if not found:
        return None
    years = [year.year for year in guide.years]
    rows = tuple(
        (
            each.option.label,
            Markup(draw.svg(charts.band(each.shares))),
            ", ".join(runs(years, each.shares)) or "never left the works",
        )
        for each in found
    )
    is_shared = any(0 < share < NEARLY_ALL for each in found for share in each.shares)
    lines = Markup(draw.svg(charts.lines(years)))
    return Chart(years[0], years[-1], lines, rows, is_shared)


def _clue(guide: Guide, path: Path) -> Clue | None:
    """The clue that a path leads into; those of other guides stand behind its own."""
    if path[:1] != ("clue",):
        return None
    place = path[1]
    assert isinstance(place, int)
    # Before a new one is looked at, the guide does not have it.
    return guide.clues[place] if place < len(guide.clues) else None


def _typed(clue: Clue) -> str:
    match clue.kind:
        case Measure(unit, low, high):
            return f"A number from {numeral(low)} to {numeral(high)}, in {unit}"
        case Code():
            found = {sum(f.width for f in each.fields) for each in layouts(clue.kind)}
            *others, longest = sorted(found)
            lengths = [*map(str, others), so_many(longest, "character")]
            return f"A code of {' or '.join(lengths)}"
        case Number(first=first, last=last):
            return f"From {_grouped(first[0][1])} to {_grouped(last)}."
    return ""


def _grouped(number: int) -> str:
    """The digits in groups of three, where they are many: as the phone writes them.

    >>> _grouped(9000), _grouped(12500) == "12\u202f500"
    ('9000', True)
    """
    return str(number) if number <= FEW_DIGITS else f"{number:,}".replace(",", "\u202f")


def _shape(pictures: Sequence[draw.Node], count: int) -> str:
    names = ["question__answers"]
    if count >= MANY:
        names.append("question__answers--many")
    if any(_is_long(picture) for picture in pictures):
        names.append("question__answers--long")
    if not pictures:
        names.append("question__answers--words")
    return " ".join(names)


def _is_long(node: draw.Node) -> bool:
    attributes = dict(chain.from_iterable([node[1]]))
    *_, width, height = map(float, str(attributes["viewBox"]).split())
    return width / height > LONG
