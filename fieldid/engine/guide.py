"""A guide as frozen records; no arithmetic, no files.

Months are counted `t = 12 * year + month - 1`, in pairs that include both ends.
Everything that has an order is a tuple in the guide's order.
"""

from dataclasses import dataclass

FORMAT = 1

Picture = tuple[str, tuple[tuple[str, object], ...]]
"""A shape and its parameters; what they mean is `fieldid.draw`'s business."""


@dataclass(frozen=True, slots=True)
class ModelYear:
    """A catalogue year, built in the months `opens` to `closes`."""

    year: int
    opens: int
    closes: int
    volume: float = 1.0
    note: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """A part that can be replaced, alone or when the part it follows is."""

    id: str
    name: str
    replaced: float
    follows: str | None = None
    share: float = 0.0
    whole_set: float = 0.0


@dataclass(frozen=True, slots=True)
class Span:
    """When an option was made: model years, build months, or both.

    With `members` it counts for those alone (never when the member is unknown);
    with `excluded` for all others. `fade` is how many months it lingers outside.
    """

    years: tuple[int, int] | None = None
    since: int | None = None
    until: int | None = None
    fade: int = 0
    share: float = 1.0
    members: tuple[str, ...] = ()
    excluded: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Option:
    """One answer of a choice. Without spans it never left the works."""

    id: str
    label: str
    like: tuple[str, ...] = ()
    seen: tuple[Span, ...] = ()
    picture: Picture | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Choice:
    """A clue with a few answers; `replacement` is what a replaced part shows."""

    options: tuple[Option, ...]
    replacement: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Size:
    """The size as made in the given model years."""

    years: tuple[int, int]
    mean: float
    sd: float
    members: tuple[str, ...] = ()
    excluded: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Measure:
    """A clue that is measured: a length, a mass, an angle, in `unit`.

    `helper` names a calculation that helps to reach the measure: swing-weight or none.
    """

    unit: str
    low: float
    high: float
    wear: float
    sizes: tuple[Size, ...]
    helper: str = ""


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a code: `means` is month, year, year-letter, model-year, week, day
    or plain.

    `codes` says what stands for a year (year-letter) or a model year (model-year),
    `weeks` how a week is counted: iso or sunday; for other meanings they are empty.
    """

    name: str
    means: str
    width: int
    alphabet: str
    odd: float = 0.0
    codes: tuple[tuple[int, str], ...] = ()
    weeks: str = ""


@dataclass(frozen=True, slots=True)
class Layout:
    """One way in which a code was laid out, in use in the given years, or always."""

    years: tuple[int, int] | None
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True)
class Code:
    """A clue that is spelled out: a stamped or printed string of fields.

    A code has `fields`, or several `layouts`. It `means` when the object was made, or
    a date that it was made not-before: marks stay in use for `lag` years on average.
    """

    fields: tuple[Field, ...]
    means: str = "made"
    lag: float = 0.0
    layouts: tuple[Layout, ...] = ()


@dataclass(frozen=True, slots=True)
class Number:
    """A clue that is counted: a serial, patent or registration number.

    `first` is the first number of each year, `last` the last of all; `means` and `lag`
    are as for a code.
    """

    means: str
    lag: float
    first: tuple[tuple[int, int], ...]
    last: int


@dataclass(frozen=True, slots=True)
class Clue:
    """One thing to look at, on one part; a `popular` one is what people often cite."""

    id: str
    part: str
    name: str
    kind: Choice | Measure | Code | Number
    ask: str
    where: str = ""
    why: str = ""
    photo: str = ""
    seconds: float = 10.0
    unreadable: float = 0.0
    seen_from: str = "hand"
    needs: str = ""
    misread: float = 0.02
    spot: str = ""
    picture: Picture | None = None
    source: str = ""
    popular: bool = False


@dataclass(frozen=True, slots=True)
class Members:
    """What a set consists of, was sold as, and how often one is a stray.

    `names` is what members are called, where that is not their id.
    """

    all: tuple[str, ...]
    usual: tuple[str, ...] = ()
    stray: float = 0.04
    stray_for: tuple[tuple[str, float], ...] = ()
    names: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Condition:
    """What a guide's flag waits for; each condition uses the fields it needs.

    `clue` with `among` (option ids, or codes with ? for any character), `over`
    or `under`; `part` with `replaced_over`; or `years`, which the leading model
    year must lie in.
    """

    clue: str | None = None
    among: tuple[str, ...] = ()
    over: float | None = None
    under: float | None = None
    part: str | None = None
    replaced_over: float | None = None
    years: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class GuideFlag:
    """A red flag of the guide's own, raised when all conditions hold."""

    when: tuple[Condition, ...]
    say: str
    ask: str = ""


@dataclass(frozen=True, slots=True)
class Off:
    """What is taken off a worth: an amount of money, a share of the worth, or both."""

    amount: float = 0.0
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class PartPrice:
    """What a part takes off when it is replaced, or what it costs to put right where
    that is less.
    """

    part: str
    off: Off
    put_right: float | None = None


@dataclass(frozen=True, slots=True)
class SetPrices:
    """What a whole set is worth, and what a missing member and a stray take off."""

    worth: tuple[tuple[int, float], ...]
    other: float = 0.0
    missing: Off = Off()
    stray: Off = Off()


@dataclass(frozen=True, slots=True)
class Prices:
    """What one object of each model year is worth with all its parts original; `other`
    is the worth of any other year and of what is outside.

    `condition` is what each grade of condition takes off. Prices of one's own have no
    date and no source.
    """

    currency: str
    date: str
    source: str
    worth: tuple[tuple[int, float], ...]
    other: float = 0.0
    condition: tuple[tuple[str, Off], ...] = ()
    parts: tuple[PartPrice, ...] = ()
    set: SetPrices | None = None


@dataclass(frozen=True, slots=True)
class Guide:
    """All that is known about one line of objects, or with `anything` about marks that
    any object may have. The `verdict` is a model year, or a range of them.
    """

    format: int
    id: str
    title: str
    maker: str
    kind: str
    fiction: bool
    about: str
    source: str
    updated: str
    drawing: str
    floor: float
    misread: float
    outside: float
    years: tuple[ModelYear, ...]
    parts: tuple[Part, ...]
    clues: tuple[Clue, ...]
    members: Members | None = None
    flags: tuple[GuideFlag, ...] = ()
    cautions: tuple[str, ...] = ()
    verdict: str = "year"
    anything: bool = False
    prices: Prices | None = None


def layouts(code: Code) -> tuple[Layout, ...]:
    """The ways in which a code was laid out: its plain fields are one."""
    return code.layouts or (Layout(None, code.fields),)
