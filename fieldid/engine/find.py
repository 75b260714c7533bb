"""A find (what was read off an object) and a verdict (what follows); no arithmetic."""

from dataclasses import dataclass

Reading = str | float | None
"""An option's id or a code; a measure; None for "can't tell"."""


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
    """What was read off one object (or, one day, a set) under one guide."""

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
    """A red flag; `kind` is replaced, gone, disagree, outside, claim or guide."""

    kind: str
    about: tuple[str, ...]
    say: str
    ask: str


@dataclass(frozen=True, slots=True)
class Cited:
    """What one cited clue's reading is worth for the claim, taken alone."""

    clue: str
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
    """A clue worth looking at, what it is expected to tell, and why."""

    clue: str
    bits: float
    bits_per_second: float
    say: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer, in numbers and in the words that the screens show."""

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
