"""Brute force: the model page worked out term by term, sharing no code with the engine.

It enumerates every cell with every combination of part states. Only the records
of a guide are common ground; erfc comes from the standard library and the wear
density from numerical thinking of its own (scipy's exponentially modified normal).
"""

import math
from dataclasses import dataclass
from itertools import product

from scipy.stats import exponnorm, norm

from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure

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


def _choice(guide: Guide, clue: Clue, member):  # noqa: C901 one page of the model
    options = clue.kind.options
    n = len(options)

    def made(o, c, who):
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

    def share(o, c, who):
        return made(o, c, who) / sum(made(x, c, who) for x in options)

    def later(o):
        given = dict(clue.kind.replacement)
        if given:
            return (given.get(o.id, 0) + guide.floor) / sum(
                given.get(x.id, 0) + guide.floor for x in options
            )
        return 0.5 * sum(c[2] * share(o, c, None) for c in cells(guide)) + 0.5 / n

    def misread(a, o):
        if n == 1:
            return 1.0
        if a == o.id:
            return 1 - clue.misread
        pull = {
            x.id: 5.0 if x.id in o.like or o.id in x.like else 1.0
            for x in options
            if x.id != o.id
        }
        return clue.misread * pull[a] / sum(pull.values())

    return (
        lambda a, c: sum(share(o, c, member) * misread(a, o) for o in options),
        lambda a: sum(later(o) * misread(a, o) for o in options),
        lambda a: 1 / n,
    )


def _measure(guide: Guide, clue: Clue, member):
    kind = clue.kind
    width = kind.high - kind.low

    def made(x, c, who):
        for s in kind.sizes:
            if (s.members and who not in s.members) or who in s.excluded:
                continue
            if s.years[0] <= c[0] <= s.years[1]:
                if not kind.wear:
                    return norm.pdf(x, s.mean, s.sd)
                return exponnorm.pdf(-x, kind.wear / s.sd, -s.mean, s.sd)
        return 1 / width

    def orig(x, c, who=member):
        return (1 - clue.misread) * made(x, c, who) + clue.misread / width

    return (
        orig,
        lambda x: (
            0.5 * sum(c[2] * orig(x, c, None) for c in cells(guide)) + 0.5 / width
        ),
        lambda x: 1 / width,
    )


def _code(guide: Guide, clue: Clue, member):  # noqa: C901 one page of the model
    fields = clue.kind.fields

    def wanted(field, c):
        if field.means == "month":
            return field.alphabet[c[1] % 12]
        if field.means == "year":
            return str(c[1] // 12)[-field.width :]
        if field.means == "year-letter":
            return dict(field.codes).get(c[1] // 12)
        if field.means == "model-year":
            return dict(field.codes).get(c[0])
        return None

    def pull(a, o):
        return 5.0 if any(a in g and o in g for g in ALIKE) else 1.0

    def character(field, a, o):
        if a == o:
            return 1 - clue.misread
        return (
            clue.misread
            * pull(a, o)
            / sum(pull(b, o) for b in field.alphabet if b != o)
        )

    def uniform(field, text):
        return (1 / len(field.alphabet)) ** sum(a != "?" for a in text)

    def pieces(text):
        at = 0
        for field in fields:
            yield field, text[at : at + field.width]
            at += field.width

    def orig(text, c):
        weight = 1.0
        for field, piece in pieces(text):
            right = wanted(field, c)
            if right is None:
                weight *= uniform(field, piece)
                continue
            exact = math.prod(
                character(field, a, o)
                for a, o in zip(piece, right, strict=True)
                if a != "?"
            )
            weight *= (1 - field.odd) * exact + field.odd * uniform(field, piece)
        return weight

    def out(text):
        return math.prod(uniform(field, piece) for field, piece in pieces(text))

    return (
        orig,
        lambda a: 0.5 * sum(c[2] * orig(a, c) for c in cells(guide)) + 0.5 * out(a),
        out,
    )


LIKELIHOODS = {Choice: _choice, Measure: _measure, Code: _code}
