"""A deal, and what to say about it: buy, offer up to a price, or walk away.

Model page: "The offer". The sentences never say more than follows from the person's own
prices.
"""

import math
from dataclasses import dataclass

from fieldid.engine.guide import Guide, Prices
from fieldid.engine.special import round9
from fieldid.engine.words import WHOLE, day, figure, money


@dataclass(frozen=True, slots=True)
class Deal:
    """What the person says of this find: the price `asked` (None: not yet known), how
    many per cent of the worth are to be left over, the grade of condition, what else it
    will cost, and what an hour is worth (0: not said).
    """

    asked: float | None = None
    margin: float = 0.0
    condition: str = ""
    costs: float = 0.0
    hour: float = 0.0


@dataclass(frozen=True, slots=True)
class Terms:
    """A deal with what the find is expected to be worth, at least and at most four
    times in five, what share of that may be paid, and the walk-away price.
    """

    deal: Deal
    currency: str
    expected: float
    low: float
    high: float
    keep: float
    walk: float


def walk_away(keep: float, expected: float) -> float:
    """The most to pay, as it is written and no finer.

    >>> walk_away(0.5, 247.4), walk_away(1.0, 45.678), walk_away(1.0, -3.0)
    (124.0, 45.68, 0.0)
    """
    most = round9(max(keep * expected, 0.0))
    written = math.floor(100 * most + 0.5) / 100
    return written if written < WHOLE else float(math.floor(most + 0.5))


def advice(terms: Terms) -> str:
    """Buy where no more is asked than the walk-away price; walk where nothing could be
    paid, or where more is asked than it hardly ever is worth; else offer.
    """
    asked = terms.deal.asked
    if terms.walk <= 0:
        return "walk"
    if asked is None:
        return "offer"
    if round9(asked) <= terms.walk:
        return "buy"
    return "walk" if round9(asked) > round9(terms.keep * terms.high) else "offer"


def advice_say(terms: Terms) -> str:
    """The advice with its reason; what it is worth, `range_say` tells."""
    margin = f"the {figure(terms.deal.margin)} % that you want"
    wants = terms.deal.margin > 0
    if terms.walk <= 0:
        if wants and round9(terms.expected) > 0:
            return f"Walk away: no price leaves you {margin}."
        return "Walk away: after all costs it is worth nothing to you."
    walk = amount(terms, terms.walk)
    if terms.deal.asked is None:
        why = f"less than {margin}" if wants else "to lose by it"
        return f"Offer up to {walk}: if you pay more, expect {why}."
    asked = f"the {amount(terms, terms.deal.asked)} asked"
    short = (
        f"would not leave you {margin}" if wants else "is more than it is worth to you"
    )
    match advice(terms):
        case "buy":
            fits = (
                f"leaves you {margin}"
                if wants
                else "is no more than it is worth to you"
            )
            return f"Buy: {asked} {fits}."
        case "walk":
            return f"Walk away: {asked} {short}, even where it turns out well."
    return f"Offer up to {walk}: {asked} {short}."


def range_say(terms: Terms) -> str:
    """What it is worth, and how sure that is."""
    worths = (terms.expected, terms.low, terms.high)
    mean, low, high = (amount(terms, x) for x in worths)
    if low == high == mean:
        return f"It is worth {mean} to you."
    if low == high:
        return f"On average it is worth {mean} to you, and mostly {low}."
    return (
        f"On average it is worth {mean} to you, "
        f"and four times in five between {low} and {high}."
    )


def note(guide: Guide, prices: Prices) -> str:
    """Whose prices these are, and what the answer is not."""
    if not prices.source:
        return "This is arithmetic on your own prices, not an appraisal."
    kind = "invented prices" if guide.fiction else "prices"
    return (
        f"This is arithmetic on this guide's {kind} of {day(prices.date)}, "
        "which you can change to your own, not an appraisal."
    )


def amount(terms: Terms, x: float) -> str:
    """An amount of money in the deal's currency."""
    return money(x, terms.currency)
