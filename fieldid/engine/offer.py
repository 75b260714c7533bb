"""What to offer for a find: its worth, a walk-away price, and whether to look again.

Model page: "The offer". The door to `worth`, `value`, `trial` and `deal`.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldid.engine.advice import what
from fieldid.engine.claim import Weighed, weigh_all
from fieldid.engine.deal import (
    Deal,
    Terms,
    advice,
    advice_say,
    amount,
    note,
    range_say,
    walk_away,
)
from fieldid.engine.find import Find, Item
from fieldid.engine.guide import Guide, Prices
from fieldid.engine.judge import counted
from fieldid.engine.prepare import Tables
from fieldid.engine.special import round9
from fieldid.engine.trial import Bargain, Trial, perfect, trials
from fieldid.engine.value import Amounts, Scene, amounts, quantile, scenes
from fieldid.engine.words import figure
from fieldid.engine.worth import Sheet, hundredths, sheet

# Where the range of the worth begins and ends: the 10th and the 90th percentile.
LOW = 0.1
HIGH = 0.9
# Nobody stoops for less than this share of the price asked, where no hour has a price.
STOOP = 0.01
UNPRICED = "Say first what each model year is worth to you."
UNASKED = "Say what is asked, to see whether another look is worth its time."


@dataclass(frozen=True, slots=True)
class Look:
    """A clue that can still be looked at, what one reading of it is worth to the
    decision, in all and a minute, what the time for it costs, and whether it pays.
    """

    member: str | None
    clue: str
    what: str
    worth: float
    per_minute: float
    time: float
    pays: bool
    say: str


@dataclass(frozen=True, slots=True)
class Offer:
    """The answer, in money and in words. `advice` is buy, offer or walk, and empty
    without prices. `perfect` is what it would be worth to know everything about the
    find, None while no price is asked; `looks` begin with what is worth most a minute.
    """

    currency: str
    expected: float
    low: float
    high: float
    range_say: str
    walk: float
    advice: str
    say: str
    perfect: float | None
    perfect_say: str
    looks: tuple[Look, ...]
    looks_say: str
    note: str


def offer(
    tables: Tables,
    find: Find,
    *,
    prices: Prices,
    deal: Deal,
    away: bool = False,
    without: Sequence[str] = (),
    photos: bool = False,
) -> Offer:
    """What to offer for the find's one object, or for its set.

    `away`, `without` and `photos` limit what to look at next, as for `judge`.
    """
    items = tuple(counted(tables, item) for item in find.items)
    posterior = weigh_all(tables, items)
    listed = sheet(tables.guide, items, prices=prices, condition=deal.condition)
    left = scenes(tables, items, posterior)
    known = amounts(tables, listed, left)
    terms = _terms(prices, deal, known)
    limits = (away, tuple(without), photos)
    looks = _looks(tables, items, posterior, terms, listed, left, limits)
    knowing = None if deal.asked is None else perfect(known, _bargain(terms)) / 100
    priced = any(listed.whole)
    return Offer(
        prices.currency,
        terms.expected,
        terms.low,
        terms.high,
        range_say(terms) if priced else "",
        terms.walk,
        advice(terms) if priced else "",
        advice_say(terms) if priced else UNPRICED,
        knowing,
        _perfect_say(terms, knowing),
        looks,
        _looks_say(terms, looks),
        note(tables.guide, prices),
    )


def starting(guide: Guide) -> Prices:
    """The guide's own prices to start from; without them nothing has a price yet."""
    return guide.prices or Prices("", "", "", ())


def _terms(prices: Prices, deal: Deal, known: Amounts) -> Terms:
    """What is known of the worth, less what the find will cost besides."""
    expected = sum(x * p for x, p in known) / 100 - deal.costs
    keep = 1 - deal.margin / 100
    return Terms(
        deal,
        prices.currency,
        expected,
        quantile(known, LOW) / 100 - deal.costs,
        quantile(known, HIGH) / 100 - deal.costs,
        keep,
        walk_away(keep, expected),
    )


def _bargain(terms: Terms) -> Bargain:
    """The deal in hundredths. What the find will cost besides comes off its worth, so
    that `keep` of it is as good as paid.
    """
    price = (terms.deal.asked or 0.0) + terms.keep * terms.deal.costs
    return Bargain(terms.keep, 100 * price)


def _looks(
    tables: Tables,
    items: Sequence[Item],
    posterior: Weighed,
    terms: Terms,
    listed: Sheet,
    left: Sequence[Scene],
    limits: tuple[bool, tuple[str, ...], bool],
) -> tuple[Look, ...]:
    """What can still be looked at once a price is asked, best first."""
    if terms.deal.asked is None:
        return ()
    away, without, photos = limits
    found = trials(
        tables,
        items,
        posterior,
        sheet=listed,
        scenes=left,
        bargain=_bargain(terms),
        away=away,
        without=without,
        photos=photos,
    )
    looks = [_look(tables, items, terms, trial) for trial in found]
    return tuple(sorted(looks, key=lambda look: -round9(look.per_minute)))


def _look(tables: Tables, items: Sequence[Item], terms: Terms, trial: Trial) -> Look:
    clue = tables.guide.clues[trial.k]
    named = what(tables, items, (trial.k, trial.item))
    worth, time = trial.worth / 100, terms.deal.hour * clue.seconds / 3600
    return Look(
        items[trial.item].member,
        clue.id,
        named,
        worth,
        60 * worth / clue.seconds,
        time,
        _pays(terms, worth, time),
        _look_say(terms, named, worth, time, figure(clue.seconds)),
    )


def _perfect_say(terms: Terms, knowing: float | None) -> str:
    """What no look, and nothing else that could be learned, is worth more than."""
    if knowing is None:
        return ""
    if hundredths(knowing) == 0:
        return "If you knew everything about it, you would hardly decide otherwise."
    most = amount(terms, knowing)
    return f"To know everything about it would be worth {most} to this decision."


def _look_say(terms: Terms, named: str, worth: float, time: float, seconds: str) -> str:
    """What a look is worth, held against its time if an hour has a price."""
    if hundredths(worth) == 0:
        return f"Whatever {named} shows, you would hardly decide otherwise."
    say = f"Reading {named} is worth {amount(terms, worth)} to this decision"
    if terms.deal.hour == 0:
        return f"{say} and takes {seconds} seconds."
    pays = "worth" if _pays(terms, worth, time) else "not worth"
    cost = amount(terms, time)
    return f"{say}: {pays} its {seconds} seconds, which cost you {cost}."


def _looks_say(terms: Terms, looks: Sequence[Look]) -> str:
    """Whether to look again before deciding, and where."""
    if terms.deal.asked is None:
        return UNASKED
    if not looks:
        return "There is nothing more to look at: decide now."
    for look in looks:
        if look.pays:
            return f"Look at {look.what} before you decide."
    if all(hundredths(look.worth) == 0 for look in looks):
        return "What is left to look at would hardly change what you decide."
    if terms.deal.hour == 0:
        return "What is left to look at is worth little to this decision: decide now."
    return "Nothing left to look at is worth its time: decide now."


def _pays(terms: Terms, worth: float, time: float) -> bool:
    """Whether a look is worth more than its time, or without a price of time, than
    somebody would stoop for; less than a hundredth is nothing.
    """
    deal = terms.deal
    least = time if deal.hour > 0 else STOOP * (deal.asked or 0.0)
    return hundredths(worth) > 0 and round9(worth) > round9(least)
