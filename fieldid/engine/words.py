"""Numbers to words and whole percents, lists to phrases, and what a member is called.

A number is rounded to nine places before a bound is held against it: on the bound
the last bit, which differs between languages, must not choose the word.

Probabilities: the calibrated terms of the IPCC's guidance note for authors
(Mastrandrea and others, 2010, table 1 and its note). Factors: Kass and Raftery,
"Bayes factors", Journal of the American Statistical Association 90 (1995), 777.
"""

import math
from collections.abc import Sequence

from fieldid.engine.guide import Guide
from fieldid.engine.special import round9

# The narrowest published term that holds, looked up from above.
AT_LEAST = (
    (0.99, "virtually certain"),
    (0.95, "extremely likely"),
    (0.90, "very likely"),
    (0.66, "likely"),
)
AT_MOST = (
    (0.01, "exceptionally unlikely"),
    (0.05, "extremely unlikely"),
    (0.10, "very unlikely"),
)
BARE = 3.0
BARELY = "barely worth a mention"
FACTORS = ((150.0, "very strong"), (20.0, "strong"), (BARE, "positive"))
# Below this a factor is not worth a word at all (our own choice).
NOTHING = 1.25
WHOLE = 100
"""From so much up money is written in whole units."""
MINUS = "\N{MINUS SIGN}"
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def hundredth(p: float) -> float:
    """A probability as it is told, in whole per cents.

    >>> hundredth(0.5049), hundredth(0.655)
    (0.5, 0.66)
    """
    return math.floor(100 * round9(p) + 0.5) / 100


def within_a_point(p: float, q: float) -> bool:
    """Whether two probabilities are at most one per cent point apart as they are told.

    >>> within_a_point(0.494, 0.486), within_a_point(0.50, 0.48)
    (True, False)
    """
    return abs(round(100 * hundredth(p)) - round(100 * hundredth(q))) <= 1


def likely(p: float) -> str:
    """The word for a probability, by the figure that stands beside it.

    >>> likely(0.71), likely(0.5049), likely(0.02)
    ('likely', 'about as likely as not', 'extremely unlikely')
    """
    p = hundredth(p)
    for bound, word in AT_LEAST:
        if p >= bound:
            return word
    if p > 0.5:
        return "more likely than not"
    for bound, word in AT_MOST:
        if p <= bound:
            return word
    return "about as likely as not" if p >= 0.33 else "unlikely"


def percent(p: float) -> str:
    """A probability as a whole percent that never claims certainty.

    >>> percent(0.714), percent(0.999), percent(0.001)
    ('71 %', 'over 99 %', 'under 1 %')
    """
    whole = round(100 * hundredth(p))
    if whole >= 100:
        return "over 99 %"
    return "under 1 %" if whole < 1 else f"{whole} %"


def strength(factor: float) -> str:
    """The word for a Bayes factor, for or against alike.

    >>> strength(2.0), strength(0.2), strength(30.0)
    ('barely worth a mention', 'positive', 'strong')
    """
    size = _size(factor)
    for bound, word in FACTORS:
        if size > bound:
            return word
    return BARELY


def evidence(factor: float, year: int | str) -> str:
    """What a factor is for or against a model year, or several in words.

    >>> evidence(30.0, 1957), evidence(0.5, 1957)
    ('strong evidence for 1957', 'evidence against 1957 barely worth a mention')
    """
    side = f"{'for' if factor > 1 else 'against'} {year}"
    word = strength(factor)
    return f"{word} evidence {side}" if word != BARELY else f"evidence {side} {word}"


def tells_nothing(factor: float) -> bool:
    """Whether a factor is too near to one to be worth a word."""
    return _size(factor) < NOTHING


def times(factor: float) -> str:
    """How many times, in figures that a person can say.

    >>> times(4.2), times(0.25), times(1e6)
    ('4 times', '4 times', 'over 1000 times')
    """
    size = _size(factor)
    if size > 1000:
        return "over 1000 times"
    if size < 3:
        return f"{figure(math.floor(10 * size + 0.5) / 10)} times"
    return f"{math.floor(size + 0.5)} times"


def figure(x: float) -> str:
    """A number with at most two decimals, none of them idle.

    >>> figure(6.0), figure(6.25), figure(0.1), figure(-1.5)
    ('6', '6.25', '0.1', '-1.5')
    """
    hundredths = math.floor(100 * abs(x) + 0.5)
    sign = "-" if x < 0 < hundredths else ""
    whole, rest = divmod(hundredths, 100)
    return f"{sign}{whole}.{rest:02d}".rstrip("0").rstrip(".")


def money(x: float, currency: str) -> str:
    """An amount in whole units from a hundred up, in hundredths below.

    >>> money(1234.5, "EUR"), money(45.5, "EUR"), money(99.999, "")
    ('1235 EUR', '45.50 EUR', '100')
    >>> money(-3, "EUR") == f"{MINUS}3.00 EUR"
    True
    """
    hundredths = math.floor(100 * round9(abs(x)) + 0.5)
    sign = MINUS if x < 0 < hundredths else ""
    whole, rest = divmod(hundredths, 100)
    if whole >= WHOLE:
        amount = f"{math.floor(round9(abs(x)) + 0.5)}"
    else:
        amount = f"{whole}.{rest:02d}"
    return f"{sign}{amount} {currency}".rstrip()


def month(t: int) -> str:
    """A build month in words.

    >>> month(12 * 1957 + 2)
    'March 1957'
    """
    return f"{MONTHS[t % 12]} {t // 12}"


def day(iso: str) -> str:
    """A day as people write it.

    >>> day("2025-06-01")
    '1 June 2025'
    """
    year, month, date = map(int, iso.split("-"))
    return f"{date} {MONTHS[month - 1]} {year}"


def years(numbers: Sequence[int]) -> str:
    """Rising years with runs drawn together.

    >>> years([1954, 1956, 1957, 1958])
    '1954 and 1956-1958'
    """
    runs: list[list[int]] = []
    for year in numbers:
        if runs and year == runs[-1][-1] + 1:
            runs[-1].append(year)
        else:
            runs.append([year])
    return listed(
        [f"{run[0]}-{run[-1]}" if len(run) > 1 else str(run[0]) for run in runs]
    )


def listed(things: Sequence[str]) -> str:
    """Things with commas and an "and".

    >>> listed(["head", "collar", "grip"])
    'head, collar and grip'
    """
    if len(things) < 2:
        return "".join(things)
    return f"{', '.join(things[:-1])} and {things[-1]}"


def called(guide: Guide, member: str) -> str:
    """What a member of a set is called in a sentence: its name, or its id."""
    return dict(guide.members.names if guide.members else ()).get(member, member)


def capital(sentence: str) -> str:
    """The sentence with a capital first letter, the rest left alone."""
    return sentence[:1].upper() + sentence[1:]


def _size(factor: float) -> float:
    """How far a factor is from one, for or against alike."""
    return round9(max(factor, 1 / factor))
