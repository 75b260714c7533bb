"""A find (what was read off an object) and a verdict (what follows); no arithmetic."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measured:
    """A measure that is only known with a standard error, as one taken from a photo."""

    value: float
    error: float


Reading = str | float | Measured | None
"""An option's id or a code; a measure; None for "can't tell"."""


def measured(reading: Reading) -> Measured:
    """A reading of a measure with its standard error, 0 where it has none."""
    if isinstance(reading, Measured):
        return reading
    return Measured(float(reading or 0.0), 0.0)


@dataclass(frozen=True, slots=True)
class Item:
    """One object: its readings in any order, and the parts that are gone."""

    readings: tuple[tuple[str, Reading], ...] = ()
    gone: tuple[str, ...] = ()
    member: str | None = None


@dataclass(frozen=True, slots=True)
class Claim:
    """What the seller says, and the clues that are cited for it."""

    model_year: int
    cites: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Find:
    """What was read off one object, or off the members of a set, under one guide."""

    guide: str
    items: tuple[Item, ...]
    claim: Claim | None = None


@dataclass(frozen=True, slots=True)
class PartState:
    """How probable it is that the part is replaced, and the finding in words."""

    part: str
    probability: float
    say: str


@dataclass(frozen=True, slots=True)
class Weight:
    """What one reading adds for or against the leading model year."""

    clue: str
    factor: float
    say: str


@dataclass(frozen=True, slots=True)
class Flag:
    """A red flag; `kind` is replaced, gone, disagree, outside, claim, guide, or of a
    set stray, whole-set or missing. `members` are those of the set that it is about.
    """

    kind: str
    about: tuple[str, ...]
    say: str
    ask: str
    members: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Cited:
    """What one cited clue is worth for the claim, taken alone.

    If it was not read: what the reading would be worth that the claimed year most
    likely shows.
    """

    clue: str
    read: bool
    factor: float
    say: str


@dataclass(frozen=True, slots=True)
class ClaimVerdict:
    """The claim weighed: odds for it after the readings over odds before."""

    model_year: int
    bayes_factor: float
    words: str
    say: str
    cited: tuple[Cited, ...]


@dataclass(frozen=True, slots=True)
class Next:
    """A clue to look at, what it is expected to tell, and why; `what` names it with
    the member of the set that it is on.
    """

    member: str | None
    clue: str
    what: str
    bits: float
    bits_per_second: float
    say: str


@dataclass(frozen=True, slots=True)
class MemberVerdict:
    """One member of a set: judged alone, up to `say`, and then within the set.

    `stray_say` is empty unless the member is more likely a stray than not. `factor`
    is what the member adds for the set's leading year.
    """

    member: str
    model_years: tuple[tuple[int, float], ...]
    outside: float
    replaced: tuple[PartState, ...]
    leading: int | None
    say: str
    stray: float
    stray_say: str
    factor: float
    factor_say: str


@dataclass(frozen=True, slots=True)
class Range:
    """The answer of a guide that brackets: from `since` to `until`, both included.

    `start_say` and `stop_say` name the readings that set the ends; they are empty where
    the guide's own years end.
    """

    since: int
    until: int
    probability: float
    say: str
    start_say: str
    stop_say: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer, in numbers and in the words that the screens show.

    `replaced` and `weights` belong to one object, all from `whole_set` to `set_say` to
    a set; `missing` and `surplus` are measured against what a set was sold as. A guide
    that brackets has a `range`, and says nothing of a runner-up or of months.
    """

    guide: str
    model_years: tuple[tuple[int, float], ...]
    outside: float
    built: tuple[tuple[int, float], ...]
    replaced: tuple[PartState, ...]
    log_evidence: float
    leading: int | None
    say: str
    runner_up: str
    built_say: str
    weights: tuple[Weight, ...]
    claim: ClaimVerdict | None
    flags: tuple[Flag, ...]
    next: tuple[Next, ...]
    exhausted: str
    whole_set: tuple[PartState, ...] = ()
    members: tuple[MemberVerdict, ...] = ()
    missing: tuple[str, ...] = ()
    surplus: tuple[str, ...] = ()
    set_say: str = ""
    range: Range | None = None
