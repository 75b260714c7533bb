"""What a census leads to, against the arithmetic written out once more and a general
optimiser.
"""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy.optimize import minimize

from confirmed import MIXED, YEARS, census, rings, specimen
from fieldid.census.learn import learn
from fieldid.census.looks import judged, known
from fieldid.census.stretches import stretches
from fieldid.engine import prepare
from fieldid.engine.guide import Members
from fieldid.engine.one import weigh
from fieldid.errors import CensusError
from make import choice, guide, model_year, option, part, span

M, FLOOR, OUTSIDE = 0.02, 0.01, 0.02
REPLACED = {"head": 0.02, "collar": 0.3}
# Of rings: the shares of green, navy and none in 1951, 1952 and 1953; of the cap.
RINGS = [(0.6, 0, 0.1), (0.6, 0.3, 0.1), (0, 0.3, 0.1)]
CAP = [(0.9, 0), (0, 0.9)]
IDS = {"rings": ("green", "navy", "none"), "cap": ("plain", "star")}


def raised(weights):
    total = sum(weights) + FLOOR * len(weights)
    return [(w + FLOOR) / total for w in weights]


def misread(clue, a, o):
    """`M(a|o)` written out for these two clues: green and navy are alike."""
    if a == o:
        return 1 - M
    if clue == "cap":
        return M
    return M * (5 if "none" not in (a, o) else 1) / (1 + (5 if o != "none" else 1))


def rows_of(shares, clue):
    """The shares of each year: of rings three stretches, of the cap two."""
    if clue == "rings":
        return [shares[0], shares[1], shares[2]]
    return [shares[3], shares[4], shares[4]]


def guides():
    return [*map(raised, RINGS), *map(raised, CAP)]


def replaced_shows(clue):
    rows = rows_of(guides(), clue)
    n = len(rows[0])
    return [0.5 * sum(row[o] for row in rows) / 3 + 0.5 / n for o in range(n)]


def likelihood(each, shares):
    """`P(readings)` of a specimen, every year and state of the parts in turn."""
    given = dict(each.years)
    total = 0.0
    for y, year in enumerate(YEARS):
        prior = given.get(year, 0.0) if given else (1 - OUTSIDE) / 3
        total += prior * parts(
            each, lambda clue, y=y: rows_of(shares, clue)[y], REPLACED
        )
    if not given:
        out = 1.0
        for clue, a in each.item.readings:
            out /= len(IDS[clue]) if a is not None else 1
        total += OUTSIDE * out
    return total


def parts(each, row, rates):
    """Both states of both parts, each with what its clue says."""
    both = 1.0
    for name, clue in (("head", "cap"), ("collar", "rings")):
        a = dict(each.item.readings).get(clue)
        states = {0: 0.0 if name in each.item.gone else 1.0, 1: 1.0}
        if a is not None:
            seen = [misread(clue, a, o) for o in IDS[clue]]
            states[0] *= float(np.dot(row(clue), seen))
            states[1] *= float(np.dot(replaced_shows(clue), seen))
        both *= (1 - rates[name]) * states[0] + rates[name] * states[1]
    return both


def objective(shares):
    log = sum(math.log(likelihood(each, shares)) for each in MIXED.specimens)
    return log + sum(
        a * math.log(x)
        for own, row in zip(guides(), shares, strict=True)
        for a, x in zip(own, row, strict=True)
    )


def unpacked(free):
    """Rows of shares from numbers of any size."""
    rows, at = [], 0
    for width in (3, 3, 3, 2, 2):
        powers = np.exp(free[at : at + width] - np.max(free[at : at + width]))
        rows.append(powers / powers.sum())
        at += width
    return rows


def in_order(found, climbed):
    """The shares by clue and year, as this page counts them."""
    [at] = found.at
    firsts = [at[0][0], at[0][12], at[0][24], at[1][0], at[1][12]]
    return [climbed.shares[x] for x in firsts]


def test_objective_is_the_one_written_out():
    tables = prepare(rings())
    learned = learn(tables, MIXED)
    ends = guides(), in_order(learned.found, learned.climbed)

    assert learned.climbed.heights[0] == pytest.approx(objective(ends[0]), abs=1e-9)
    assert learned.climbed.heights[-1] == pytest.approx(objective(ends[1]), abs=1e-9)


def test_shares_are_those_of_a_general_optimiser():
    """From where the guide stands; there may be other tops elsewhere."""
    learned = learn(prepare(rings()), MIXED)
    start = np.concatenate([np.log(row) for row in guides()])
    best = minimize(lambda free: -objective(unpacked(free)), start, tol=1e-12)
    mine = np.concatenate(in_order(learned.found, learned.climbed))

    assert learned.climbed.settled
    assert learned.climbed.heights[-1] >= -best.fun - 1e-7
    assert mine == pytest.approx(np.concatenate(unpacked(best.x)), abs=2e-4)


def test_no_pass_falls():
    heights = learn(prepare(rings()), MIXED).climbed.heights

    assert all(after >= before - 1e-10 for before, after in pairwise(heights))
    assert heights[-1] > heights[0] + 1


def test_specimens_own_tables_say_what_the_guides_do():
    """Of an unknown year nothing is left out; of a known one only what cannot be."""
    tables = prepare(rings())
    found = stretches(tables)
    for each in MIXED.specimens:
        own = judged(known(tables, found, each), found.guide)
        if not each.years:
            whole = weigh(tables, each.item)

            assert own.log_evidence == pytest.approx(whole.log_evidence, abs=1e-12)
            assert own.original[1] == pytest.approx(whole.original[1], abs=1e-12)
            assert own.outside == pytest.approx(whole.outside, abs=1e-12)


def test_certain_specimens_are_counted_as_they_are():
    """Parts that are never replaced and readings that are never wrong."""
    plain = rings(parts=(part("head", 0.0), part("collar", 0.0)))
    sure = [choice_without_mistakes(clue) for clue in plain.clues]
    tables = prepare(guide(*sure, years=plain.years, parts=plain.parts))
    seen = [*(specimen(1952, rings="navy") for _ in range(7))]
    seen += [specimen(1952, rings="none") for _ in range(3)]
    learned = learn(tables, census(*seen))
    x = learned.found.at[0][0][12]
    own = learned.found.guide[x]

    assert learned.climbed.passes == 2
    assert learned.climbed.shares[x] == pytest.approx(
        ((0 + own[0]) / 11, (7 + own[1]) / 11, (3 + own[2]) / 11)
    )


def choice_without_mistakes(clue):
    return choice(clue.id, *clue.kind.options, part=clue.part, misread=0.0)


def test_replaced_part_does_not_count():
    """What only replaced collars show says next to nothing of the works."""
    tables = prepare(
        guide(
            choice(
                "rings",
                option("green", span((1951, 1951), share=0.9)),
                option("grey"),
                replacement=(("grey", 1.0),),
            ),
            parts=(part("head", 0.5),),
            years=(model_year(1951), model_year(1952)),
        )
    )
    seen = [specimen(1951, rings="green"), specimen(1951, rings="grey")]
    learned = learn(tables, census(*seen))
    looked = [0.0, 0.0]
    for each in learned.counted:
        looked[each.i] += each.looked

    assert looked[0] > 0.95
    assert looked[1] < 0.1


def test_part_that_is_gone_is_not_looked_at():
    learned = learn(
        prepare(rings()), census(specimen(1953, gone=("collar",), cap="star"))
    )

    assert {each.k for each in learned.counted} == {1}


def test_unknown_year_counts_by_its_probability():
    """The cap says 1951; so most of the specimen counts there."""
    learned = learn(prepare(rings()), census(specimen(rings="green", cap="plain")))
    by_year = dict.fromkeys(YEARS, 0.0)
    for each in learned.counted:
        if each.k == 1:
            by_year[YEARS[each.cell // 12]] += each.looked

    assert by_year[1951] > 0.8
    assert sum(by_year.values()) < 1


def test_member_has_stretches_of_its_own():
    split = choice(
        "cap",
        option("plain", span(share=0.5, members=("W",))),
        option("star", span(share=0.9, excluded=("W",)), span(share=0.2)),
    )
    found = stretches(prepare(guide(split, members=Members(("3", "4", "W")))))
    unknown, three, four, wedge = (at[0][0] for at in found.at)

    assert unknown == three == four != wedge
    assert found.rulings[wedge] == (0, 1)
    assert found.rulings[three] == (None, 0)


def test_clue_has_stretches_of_its_own():
    """Two clues that are alike word for word are still two."""
    alike = [choice(id, option("a", span()), option("b")) for id in ("one", "other")]
    found = stretches(prepare(guide(*alike)))
    [(one, other)] = found.at

    assert one[0] != other[0]
    assert len(found.guide) == 2


def test_specimen_that_cannot_be_is_refused():
    """Its head is gone, and by the guide no head is ever replaced."""
    never = rings(parts=(part("head", 0.0), part("collar", 0.3)))
    bad = specimen(1951, gone=("head",), name="D7", line=3)
    with pytest.raises(CensusError, match=r"plain\.census\.csv:3: D7: these readings"):
        learn(prepare(never), census(specimen(1951, cap="plain"), bad))


def test_empty_census_changes_nothing():
    learned = learn(prepare(rings()), census())

    for row, own in zip(learned.climbed.shares, learned.found.guide, strict=True):
        assert row == pytest.approx(own)
    assert learned.counted == ()


def test_same_census_gives_the_same_bytes():
    first, second = (learn(prepare(rings()), MIXED) for _ in range(2))

    assert first == second


def test_item_of_any_order_says_the_same():
    forwards = specimen(1952, rings="navy", cap="star", name="a")
    backwards = specimen(1952, cap="star", rings="navy", name="a")
    shares = [
        learn(prepare(rings()), census(each)).climbed.shares
        for each in (forwards, backwards)
    ]

    assert shares[0] == shares[1]
