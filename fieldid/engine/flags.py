"""Red flags of one object, each with the question to put to the seller.

The sentences are neutral: a flag is something to ask about, never an accusation.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.claim import Weighed
from fieldid.engine.code import UNREADABLE
from fieldid.engine.find import ClaimVerdict, Flag, Item, Reading, measured
from fieldid.engine.guide import Condition
from fieldid.engine.one import Posterior
from fieldid.engine.parts import pair
from fieldid.engine.prepare import Tables
from fieldid.engine.range import Run, brackets, lead
from fieldid.engine.reasons import Conflict, said
from fieldid.engine.special import round9
from fieldid.engine.words import BARE, likely, percent

EVEN = 0.5
# From here on the readings speak against a claim with a word of weight.
AGAINST = 1 / BARE


MIXED = "It may be made up of two objects, repaired, issued again, or a copy."


@dataclass(frozen=True, slots=True)
class Raised:
    """A flag that does not say yet whose it is: the owner stands between the two
    pieces of `say` and of `ask`. `share` is how probable a replaced part is.
    """

    kind: str
    about: tuple[str, ...]
    say: tuple[str, str]
    ask: tuple[str, str]
    share: float = 1.0


def flags(
    tables: Tables,
    item: Item,
    posterior: Posterior,
    clashes: Sequence[Conflict],
    weighed: ClaimVerdict | None,
) -> tuple[Flag, ...]:
    """All red flags: none of these, the claim, disagreements, parts, the guide's."""
    best = lead(tables, posterior.years)
    return (
        *overall(posterior, weighed),
        *(
            Flag(each.kind, each.about, "".join(each.say), "".join(each.ask))
            for each in raised(tables, item, posterior, clashes, best)
        ),
    )


def overall(posterior: Weighed, weighed: ClaimVerdict | None) -> list[Flag]:
    """The red flags of the answer as a whole, of one object or of a set."""
    found = []
    if is_outside(posterior):
        found.append(_outside(posterior.outside))
    if weighed and weighed.bayes_factor < AGAINST:
        found.append(_claim(weighed))
    return found


def raised(
    tables: Tables,
    item: Item,
    posterior: Posterior,
    clashes: Sequence[Conflict],
    best: Run,
) -> list[Raised]:
    """The red flags of one object's own; `best` is the years that lead."""
    return [
        *_conflicts(tables, item, clashes),
        *_parts(tables, item, posterior),
        *(
            Raised("guide", _about(flag.when), ("", flag.say), ("", flag.ask))
            for flag in tables.guide.flags
            if all(_holds(tables, item, posterior, c, best) for c in flag.when)
        ),
    ]


def replaced(posterior: Posterior, p: int) -> float:
    """Probability that part `p` is replaced."""
    return sum(posterior.replaced[p])


def is_outside(posterior: Weighed) -> bool:
    """Whether the object is more likely none of these than one of them."""
    return round9(posterior.outside) > EVEN


def is_replaced(share: float) -> bool:
    """Whether a part with this probability is more likely replaced than original."""
    return round9(share) > EVEN


def untold(tables: Tables, item: Item, p: int) -> bool:
    """Whether all that is known of part `p` is that such parts are usually replaced."""
    read = [clue for clue, reading in item.readings if reading is not None]
    if any(tables.part_of[tables.places[clue]] == p for clue in read):
        return False
    original, *_ = pair(tables.forest, p, p)
    return is_replaced(1 - original)


def _outside(p: float) -> Flag:
    return Flag(
        "outside",
        (),
        f"It looks like none of these years: {likely(p)}, {percent(p)}. "
        "It may be another line, a year that the guide lacks, or a copy.",
        "What do you know about where it comes from?",
    )


def _claim(weighed: ClaimVerdict) -> Flag:
    year = weighed.model_year
    return Flag(
        "claim",
        (str(year),),
        weighed.say,
        f"How do you know that it is a {year}?",
    )


def _conflicts(tables: Tables, item: Item, clashes: Sequence[Conflict]) -> list[Raised]:
    """One flag for all disagreements that ask the same."""
    groups: dict[str, list[Conflict]] = {}
    for clash in clashes:
        groups.setdefault(_asked(tables, clash), []).append(clash)
    return [_conflict(tables, item, asked, group) for asked, group in groups.items()]


def _asked(tables: Tables, clash: Conflict) -> str:
    """The question that a disagreement raises, without its end."""
    if brackets(tables.guide):
        return "Is all of it of one age, or was something added or renewed later"
    clues = sorted((clash.first, clash.second), key=lambda k: tables.part_of[k])
    parts = dict.fromkeys(_part(tables, k) for k in clues)
    return f"Did anyone ever work on the {' or the '.join(parts)}"


def _conflict(
    tables: Tables, item: Item, asked: str, clashes: Sequence[Conflict]
) -> Raised:
    places = list(dict.fromkeys(k for c in clashes for k in (c.first, c.second)))
    pairs = _pairs(tables, item, clashes)
    many = len(clashes) > 1
    if brackets(tables.guide):
        who = "Marks" if many else "Two marks"
        say = (who, f" do not go together: {pairs}. {MIXED}")
    else:
        say = ("Readings" if many else "Two readings", f" disagree: {pairs}.")
    about = tuple(tables.guide.clues[k].id for k in places)
    return Raised("disagree", about, say, (asked, "?"))


def _pairs(tables: Tables, item: Item, clashes: Sequence[Conflict]) -> str:
    """The readings that disagree; one that disagrees with several is told once."""
    pairs = [(clash.first, clash.second) for clash in clashes]
    one = next((k for k in pairs[0] if all(k in pair for pair in pairs)), None)
    if len(pairs) > 1 and one is not None:
        others = [second if first == one else first for first, second in pairs]
        against = "; ".join(said(tables, item, k) for k in others)
        return f"{said(tables, item, one)}, against {against}"
    return "; ".join(", ".join(said(tables, item, k) for k in p) for p in pairs)


def _part(tables: Tables, k: int) -> str:
    return tables.guide.parts[tables.part_of[k]].name


def _parts(tables: Tables, item: Item, posterior: Posterior) -> list[Raised]:
    found = []
    for p, part in enumerate(tables.guide.parts):
        share = replaced(posterior, p)
        if part.id in item.gone:
            if p not in tables.part_of:
                # It never spoke for a year.
                continue
            why = _goes_with(tables, p)
            found.append(
                Raised(
                    "gone",
                    (part.id,),
                    (
                        f"With the {part.name}",
                        f" gone, nothing there can speak for a year any more{why}.",
                    ),
                    (f"Do you still have the {part.name}", "?"),
                )
            )
        elif is_replaced(share) and not untold(tables, item, p):
            found.append(
                Raised(
                    "replaced",
                    (part.id,),
                    (
                        f"Someone probably replaced the {part.name}",
                        f": {likely(share)}, {percent(share)}.",
                    ),
                    (f"Did anyone ever replace the {part.name}", ", and when?"),
                    share,
                )
            )
    return found


def _goes_with(tables: Tables, p: int) -> str:
    """What else was often renewed where part `p` is gone; empty if nothing."""
    parent = tables.forest.parent[p]
    if parent is None or tables.guide.parts[p].share < EVEN:
        return ""
    name = tables.guide.parts[parent].name
    return f"; who lost this often renewed the {name} too"


def _about(when: Sequence[Condition]) -> tuple[str, ...]:
    named = [c.clue or c.part for c in when]
    return tuple(name for name in named if name)


def _holds(
    tables: Tables, item: Item, posterior: Posterior, c: Condition, best: Run
) -> bool:
    """Whether one condition of a guide's flag holds."""
    if c.clue is not None:
        return _reads(dict(item.readings).get(c.clue), c)
    if c.part is not None and c.replaced_over is not None:
        p = [part.id for part in tables.guide.parts].index(c.part)
        if c.part in item.gone:
            return True
        over = round9(replaced(posterior, p)) > c.replaced_over
        return over and not untold(tables, item, p)
    if c.years is not None:
        first, last = (tables.guide.years[y].year for y in best)
        return c.years[0] <= first and last <= c.years[1]
    return False


def _reads(reading: Reading, c: Condition) -> bool:
    if reading is None:
        return False
    if isinstance(reading, str):
        return any(_matches(reading, pattern) for pattern in c.among)
    size = measured(reading).value
    return (c.over is None or size > c.over) and (c.under is None or size < c.under)


def _matches(reading: str, pattern: str) -> bool:
    """Whether a reading is the pattern, where ? stands for any readable character.

    >>> _matches("X718", "X???"), _matches("?718", "X???")
    (True, False)
    """
    return len(reading) == len(pattern) and all(
        a == b or (b == UNREADABLE and a != UNREADABLE)
        for a, b in zip(reading, pattern, strict=True)
    )
