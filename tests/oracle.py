"""Brute force: the model page worked out term by term, sharing no code with the engine.

It enumerates every cell with every combination of part states; of a set also what was
replaced on all, from which source, and who is a stray. Only the records of a guide are
common ground; the wear density is scipy's exponentially modified normal, and what an
error does to it is integrated.
"""

import math
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from itertools import product

from numpy.polynomial.laguerre import laggauss
from scipy.integrate import quad
from scipy.stats import exponnorm, norm

from fieldid.engine.find import Measured
from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure, Number

ALIKE = "0OQDC 1IL7T 2Z 5S 6G 8B3 UVY MNWH 4A 9GQ EF PR KX".split()  # noqa: SIM905 as on the page


@dataclass(frozen=True)
class Truth:
    """What the brute force found; keys are years, months and part ids."""

    years: dict[int, float]
    outside: float
    built: dict[int, float]
    replaced: dict[str, float]
    log_evidence: float


def cells(guide: Guide) -> list[tuple[int, int, float]]:
    """(model year, build month, share of the inside) of every cell."""
    total = sum(y.volume for y in guide.years)
    return [
        (y.year, t, y.volume / total / len(range(y.opens, y.closes + 1)))
        for y in guide.years
        for t in range(y.opens, y.closes + 1)
    ]


def truth(guide: Guide, readings: dict, gone=(), member=None) -> Truth:
    """Posterior by enumeration of (cell, states of all parts)."""
    joint = {}
    read = _tabled(guide, readings, gone, member)
    for c in [*cells(guide), None]:
        for states in product((False, True), repeat=len(guide.parts)):
            replaced = dict(zip((p.id for p in guide.parts), states, strict=True))
            joint[c, states] = (
                (guide.outside if c is None else (1 - guide.outside) * c[2])
                * _parts(guide, replaced)
                * all(replaced[p] for p in gone)
                * math.prod(table[c, replaced[part]] for part, table in read)
            )
    total = sum(joint.values())
    place = {p.id: i for i, p in enumerate(guide.parts)}
    share = {key: w / total for key, w in joint.items()}
    return Truth(
        {
            y.year: _sum(share, lambda c, s, y=y: c and c[0] == y.year)
            for y in guide.years
        },
        _sum(share, lambda c, s: c is None),
        {
            t: _sum(share, lambda c, s, t=t: c and c[1] == t)
            for t in sorted({t for _, t, _ in cells(guide)})
        },
        {p: _sum(share, lambda c, s, i=i: s[i]) for p, i in place.items()},
        math.log(total),
    )


def _sum(share, wanted) -> float:
    return sum(w for (c, states), w in share.items() if wanted(c, states))


def _parts(guide: Guide, replaced: dict) -> float:
    weight = 1.0
    for part in guide.parts:
        rate = part.replaced
        if part.follows and replaced[part.follows]:
            rate = max(part.share, part.replaced)
        weight *= rate if replaced[part.id] else 1 - rate
    return weight


def _tabled(guide, readings, gone, member) -> list:
    """For each reading its part, and its likelihood by (cell, part replaced)."""
    tables = []
    for clue in guide.clues:
        a = readings.get(clue.id)
        if a is None or clue.part in gone:
            continue
        orig, rep, out = LIKELIHOODS[type(clue.kind)](guide, clue, member)
        table = {(None, state): out(a) for state in (False, True)}
        later = rep(a)
        for c in cells(guide):
            table[c, False] = orig(a, c)
            table[c, True] = later
        tables.append((clue.part, table))
    return tables


def _made(guide: Guide, o, c, who) -> float:
    best = 0.0
    for span in o.seen:
        if (span.members and who not in span.members) or who in span.excluded:
            continue
        if span.years and not span.years[0] <= c[0] <= span.years[1]:
            continue
        away = max(
            0,
            (span.since or -(10**9)) - c[1],
            c[1] - (span.until if span.until is not None else 10**9),
        )
        if away <= span.fade:
            best = max(best, span.share * (1 - away / (span.fade + 1)))
    return best + guide.floor


def _share(guide: Guide, clue: Clue, o, c, who) -> float:
    total = sum(_made(guide, x, c, who) for x in clue.kind.options)
    return _made(guide, o, c, who) / total


def _later(guide: Guide, clue: Clue, o) -> float:
    given = dict(clue.kind.replacement)
    if given:
        return (given.get(o.id, 0) + guide.floor) / sum(
            given.get(x.id, 0) + guide.floor for x in clue.kind.options
        )
    mixture = sum(c[2] * _share(guide, clue, o, c, None) for c in cells(guide))
    return 0.5 * mixture + 0.5 / len(clue.kind.options)


def _misread(clue: Clue, a, o) -> float:
    if len(clue.kind.options) == 1:
        return 1.0
    if a == o.id:
        return 1 - clue.misread
    pull = {
        x.id: 5.0 if x.id in o.like or o.id in x.like else 1.0
        for x in clue.kind.options
        if x.id != o.id
    }
    return clue.misread * pull[a] / sum(pull.values())


def _choice(guide: Guide, clue: Clue, member):
    options = clue.kind.options
    return (
        lambda a, c: sum(
            _share(guide, clue, o, c, member) * _misread(clue, a, o) for o in options
        ),
        lambda a: sum(_later(guide, clue, o) * _misread(clue, a, o) for o in options),
        lambda a: 1 / len(options),
    )


@cache
def _wide(kind: Measure, x) -> float:
    """Any size is as likely; a pair stands for any reading between the two."""
    if isinstance(x, Measured):
        return _seen(lambda size: 1 / (kind.high - kind.low), x, kind.low, kind.high)
    return (x[1] - x[0] if isinstance(x, tuple) else 1) / (kind.high - kind.low)


def _seen(made, x: Measured, low=-math.inf, high=math.inf, peak=()) -> float:
    """The sizes that there are, each as it is seen with the error, added up."""
    around = 10 * x.error
    start, stop = max(low, x.value - around), min(high, x.value + around)
    return quad(
        lambda size: made(size) * norm.pdf(x.value, size, x.error),
        *(start, stop),
        points=[point for point in (x.value, *peak) if start < point < stop],
        epsabs=0,
        epsrel=1e-11,
        limit=500,
    )[0]


@cache
def _spread(kind: Measure, size, x) -> float:
    """Of a size as made, less what wear takes away."""
    pdf, cdf = _law(kind.wear, size)
    if isinstance(x, Measured):
        peak = [size.mean + times * size.sd for times in (-8, 0, 8)]
        return _seen(pdf, x, peak=peak)
    if not isinstance(x, tuple):
        return pdf(x)
    low = -math.inf if x[0] == kind.low else x[0]
    high = math.inf if x[1] == kind.high else x[1]
    return cdf(high) - cdf(low)


def _law(wear: float, size):
    """Density and distribution of a normal size minus an exponential."""
    if wear < 0.01 * size.sd:
        # Too little for scipy's density, which loses nine digits: the wear summed up.
        worn, weights = laggauss(30)

        def over(law):
            return lambda x: float(weights @ law(x + wear * worn, size.mean, size.sd))

        return over(norm.pdf), over(norm.cdf)
    law = exponnorm(wear / size.sd, -size.mean, size.sd)
    return lambda x: law.pdf(-x), lambda x: law.sf(-x)


def _measure(guide: Guide, clue: Clue, member):
    kind = clue.kind

    def made(x, c, who):
        for s in kind.sizes:
            if (s.members and who not in s.members) or who in s.excluded:
                continue
            if s.years[0] <= c[0] <= s.years[1]:
                return _spread(kind, s, x)
        return _wide(kind, x)

    def orig(x, c, who=member):
        return (1 - clue.misread) * made(x, c, who) + clue.misread * _wide(kind, x)

    return (
        orig,
        lambda x: (
            0.5 * sum(c[2] * orig(x, c, None) for c in cells(guide))
            + 0.5 * _wide(kind, x)
        ),
        lambda x: _wide(kind, x),
    )


def _wanted(field, day: date, year: int, model: int | None) -> str | None:
    """What a field should read on a day; `year` is that of its week, if the code has
    one. There was no model year for what is older than the object.
    """
    if field.means == "month":
        return field.alphabet[day.month - 1]
    if field.means == "year":
        return str(year)[-field.width :]
    if field.means == "year-letter":
        return dict(field.codes).get(year)
    if field.means == "model-year":
        return dict(field.codes).get(model)
    if field.means == "day":
        return f"{day.day:02}"
    if field.means == "week":
        return f"{_week(day, field.weeks)[1]:02}"
    return None


def _week(day: date, weeks: str) -> tuple[int, int]:
    """The week that a day lies in, with its year."""
    if weeks == "iso":
        return day.isocalendar()[:2]
    while day.strftime("%w") != "0":
        day -= timedelta(1)
    return day.year, (day.timetuple().tm_yday + 6) // 7


def _days(t: int) -> list[date]:
    first = date(t // 12, t % 12 + 1, 1)
    return [
        day for i in range(31) if (day := first + timedelta(i)).month == first.month
    ]


def _code(guide: Guide, clue: Clue, member):  # noqa: C901 one page of the model
    kind, m = clue.kind, clue.misread
    known = [(x.years, x.fields) for x in kind.layouts] or [(None, kind.fields)]
    seen: dict = {}

    def pull(a, o):
        return 5.0 if any(a in g and o in g for g in ALIKE) else 1.0

    @cache
    def character(alphabet, a, o):
        if a == o:
            return 1 - m
        return m * pull(a, o) / sum(pull(b, o) for b in alphabet if b != o)

    def uniform(fields, text):
        share = 1.0
        for field, piece in pieces(fields, text):
            share *= (1 / len(field.alphabet)) ** sum(a != "?" for a in piece)
        return share

    def pieces(fields, text):
        at = 0
        for field in fields:
            yield field, text[at : at + field.width]
            at += field.width

    def fit(fields, text):
        places = "".join(field.name[0] * field.width for field in fields)
        return len(text) == len(places) and all(
            a in field.alphabet + "?"
            for field, piece in pieces(fields, text)
            for a in piece
        )

    def on_day(fields, text, day, model):
        weeks = [field.weeks for field in fields if field.means == "week"]
        year = _week(day, weeks[0])[0] if weeks else day.year
        weight = 1.0
        for field, piece in pieces(fields, text):
            right = _wanted(field, day, year, model)
            drawn = (1 / len(field.alphabet)) ** sum(a != "?" for a in piece)
            if right is None:
                weight *= drawn
                continue
            exact = math.prod(
                character(field.alphabet, a, o)
                for a, o in zip(piece, right, strict=True)
                if a != "?"
            )
            weight *= (1 - field.odd) * exact + field.odd * drawn
        return weight

    def in_use(t):
        return [years is None or years[0] <= t // 12 <= years[1] for years, _ in known]

    def at(text, t, model):
        """`E(a | date)`."""
        if (text, t, model) not in seen:
            uses = in_use(t)
            pulls = (
                [1.0 if use else m for use in uses] if any(uses) else [1.0] * len(uses)
            )
            total = 0.0
            for (_, fields), use, x in zip(known, uses, pulls, strict=True):
                if not fit(fields, text):
                    continue
                days = _days(t)
                mean = sum(on_day(fields, text, d, model) for d in days) / len(days)
                total += x / sum(pulls) * (mean if use else uniform(fields, text))
            seen[text, t, model] = total
        return seen[text, t, model]

    def orig(text, c):
        if kind.means == "made":
            return at(text, c[1], c[0])
        built = [t // 12 for _, t, _ in cells(guide)]
        spans = [years or (min(built), max(built)) for years, _ in known]
        first = 12 * min(span[0] for span in spans)
        stop = 12 * max(span[1] for span in spans) + 12
        q = math.exp(-1 / (12 * kind.lag))
        given = sum(
            (1 - q) * q ** (c[1] - t) * at(text, t, None)
            for t in range(first, min(stop, c[1] + 1))
            if any(in_use(t))
        )
        return (1 - m) * given + m * out(text)

    def out(text):
        shares = [uniform(f, text) for _, f in known if fit(f, text)]
        return sum(shares) / len(known)

    return (
        orig,
        lambda a: 0.5 * sum(c[2] * orig(a, c) for c in cells(guide)) + 0.5 * out(a),
        out,
    )


def _number(guide: Guide, clue: Clue, member):
    kind, m = clue.kind, clue.misread
    everything = kind.last - kind.first[0][1] + 1

    def year_of(n):
        return max(year for year, first in kind.first if first <= n)

    def count(year):
        later = [n for y, n in kind.first if y > year]
        return (min(later) if later else kind.last + 1) - dict(kind.first)[year]

    def g(n, c):
        late = c[1] // 12 - year_of(n)
        if kind.means == "made":
            return 1 / count(year_of(n)) if late == 0 else 0.0
        if late < 0:
            return 0.0
        q = math.exp(-1 / kind.lag)
        return (1 - q) * q**late / count(year_of(n))

    def orig(n, c):
        return (1 - m) * g(n, c) + m / everything

    return (
        orig,
        lambda n: 0.5 * sum(c[2] * orig(n, c) for c in cells(guide)) + 0.5 / everything,
        lambda n: 1 / everything,
    )


LIKELIHOODS = {Choice: _choice, Measure: _measure, Code: _code, Number: _number}


@dataclass(frozen=True)
class SetTruth:
    """What the brute force found of a set; `stray` is by item, the rest as above."""

    years: dict[int, float]
    outside: float
    stray: list[float]
    whole_set: dict[str, float]
    log_evidence: float


def sources(guide: Guide, clue: Clue) -> list:
    """(weight, how likely a reading is) of all that a replaced part can come from."""
    if isinstance(clue.kind, Choice):
        return [
            (_later(guide, clue, o), lambda a, o=o: _misread(clue, a, o))
            for o in clue.kind.options
        ]
    orig, _, out = LIKELIHOODS[type(clue.kind)](guide, clue, None)
    known = [(0.5 * c[2], lambda a, c=c: orig(a, c)) for c in cells(guide)]
    return [*known, (0.5, out)]


def set_truth(guide: Guide, items) -> SetTruth:
    """Posterior of items, each (readings, gone, member), by enumeration of (cell,
    parts replaced on the whole set, strays).
    """
    spots = [*cells(guide), None]
    prior = {
        c: guide.outside if c is None else (1 - guide.outside) * c[2] for c in spots
    }
    joint = {}
    for world in product((False, True), repeat=len(guide.parts)):
        whole = dict(zip((p.id for p in guide.parts), world, strict=True))
        given = _worlds(guide, whole) * _from_sources(guide, whole, items)
        if given == 0:
            continue
        by_cell = [_one(guide, whole, item, spots) for item in items]
        as_stray = [sum(prior[c] * f[c] for c in spots) for f in by_cell]
        for c in spots:
            for strays in product((False, True), repeat=len(items)):
                weight = prior[c] * given
                for i, item in enumerate(items):
                    s = _stray(guide, item[2])
                    weight *= s * as_stray[i] if strays[i] else (1 - s) * by_cell[i][c]
                joint[c, world, strays] = weight
    total = sum(joint.values())
    share = {key: w / total for key, w in joint.items()}

    def chance(wanted):
        return sum(w for key, w in share.items() if wanted(*key))

    return SetTruth(
        {
            y.year: chance(lambda c, w, s, y=y: c and c[0] == y.year)
            for y in guide.years
        },
        chance(lambda c, w, s: c is None),
        [chance(lambda c, w, s, i=i: s[i]) for i in range(len(items))],
        {p.id: chance(lambda c, w, s, i=i: w[i]) for i, p in enumerate(guide.parts)},
        math.log(total),
    )


def _stray(guide: Guide, member: str) -> float:
    return dict(guide.members.stray_for).get(member, guide.members.stray)


def _worlds(guide: Guide, whole: dict) -> float:
    weight = 1.0
    for part in guide.parts:
        rate = part.whole_set
        if part.follows and whole[part.follows]:
            rate = max(part.share, part.whole_set)
        weight *= rate if whole[part.id] else 1 - rate
    return weight


def _from_sources(guide: Guide, whole: dict, items) -> float:
    """Every clue on such parts from every source, read off every item."""
    weight = 1.0
    for clue in guide.clues:
        if whole[clue.part]:
            read = [readings.get(clue.id) for readings, _, _ in items]
            weight *= sum(
                w * math.prod(like(a) for a in read if a is not None)
                for w, like in sources(guide, clue)
            )
    return weight


def _one(guide: Guide, whole: dict, item, spots) -> dict:
    """One item's likelihood by cell, over the states of its other parts."""
    readings, gone, member = item
    free = {c.id: a for c in guide.clues if (a := readings.get(c.id)) is not None}
    free = {c.id: free[c.id] for c in guide.clues if c.id in free and not whole[c.part]}
    read = _tabled(guide, free, gone, member)
    found = dict.fromkeys(spots, 0.0)
    for replaced, weight in states(guide, whole, gone):
        for c in spots:
            found[c] += weight * math.prod(t[c, replaced[p]] for p, t in read)
    return found


def states(guide, whole, gone):
    """Which parts of one item are replaced, in every way that can be, and how likely
    that is while those of `whole` were replaced on all items at once.
    """
    for states in product((False, True), repeat=len(guide.parts)):
        replaced = dict(zip((p.id for p in guide.parts), states, strict=True))
        weight = 1.0
        for part in guide.parts:
            if whole[part.id]:
                weight *= replaced[part.id]
                continue
            rate = part.replaced
            if part.follows and replaced[part.follows] and not whole[part.follows]:
                rate = max(part.share, part.replaced)
            weight *= rate if replaced[part.id] else 1 - rate
        weight *= all(replaced[p] for p in gone)
        if weight:
            yield replaced, weight


def clean(guide: Guide, clue: Clue) -> list[str]:
    """The readings without a mistake of a code whose fields all tell a date; a cell
    that some field is silent on has none.
    """
    found = []
    for c in cells(guide):
        day = date(c[1] // 12, c[1] % 12 + 1, 1)
        fields = [_wanted(f, day, day.year, c[0]) for f in clue.kind.fields]
        if None not in fields and "".join(fields) not in found:
            found.append("".join(fields))
    return found
