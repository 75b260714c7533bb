"""The posterior of one object, held against two references and its own laws."""

import math
import sys
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import make
import network
from fieldid.engine.find import Item
from fieldid.engine.one import read, weigh
from fieldid.engine.prepare import prepare
from kittiwake import BAND, GUIDE, RINGS, find, random_find
from oracle import LIKELIHOODS, cells, truth

TABLES = prepare(GUIDE)
SEEDS = range(60)
seeds = st.integers(0, 10**6)


def close(x):
    return pytest.approx(x, abs=1e-9, rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_posterior_equals_brute_force(seed):
    item = random_find(seed).items[0]

    got = weigh(TABLES, item)

    want = truth(GUIDE, dict(item.readings), item.gone, item.member)
    assert list(got.years) == close(list(want.years.values()))
    assert got.outside == close(want.outside)
    assert [sum(r) for r in got.replaced] == close(list(want.replaced.values()))
    assert got.log_evidence == close(want.log_evidence)


@pytest.mark.parametrize("seed", SEEDS)
def test_posterior_equals_inference_library(seed):
    """Source: pyAgrum's lazy propagation on the same network, exact inference."""
    item = random_find(seed).items[0]

    got = weigh(TABLES, item)

    cell, replaced, evidence = network.posterior(
        GUIDE, dict(item.readings), item.gone, item.member
    )
    assert list(got.cells) == close(cell)
    assert [sum(r) for r in got.replaced] == close(list(replaced.values()))
    assert got.log_evidence == close(math.log(evidence))


@given(seeds)
def test_probabilities_sum_to_one(seed):
    got = weigh(TABLES, random_find(seed).items[0])

    assert sum(got.years) + got.outside == close(1)
    for original, replaced in zip(got.original, got.replaced, strict=True):
        assert sum(original) + sum(replaced) == close(1)
        assert [a + b for a, b in zip(original, replaced, strict=True)] == close(
            list(got.cells)
        )


def test_part_without_readings_takes_what_the_others_say():
    """Two parts that follow none: of the second only its own rate is known."""
    parts = (make.part("head", 0.1), make.part("grip", 0.3))
    seen = make.option("early", make.span((1951, 1951))), make.option("late")
    told = make.guide(make.choice("c", *seen), parts=parts)

    got = weigh(prepare(told), Item((("c", "early"),)))

    assert list(got.replaced[1]) == close([0.3 * p for p in got.cells])
    assert list(got.original[1]) == close([0.7 * p for p in got.cells])
    assert got.years[0] > 0.6


@given(seeds, st.randoms())
def test_order_of_readings_is_irrelevant(seed, dice):
    item = random_find(seed).items[0]
    shuffled = list(item.readings)
    dice.shuffle(shuffled)

    assert weigh(TABLES, replace(item, readings=tuple(shuffled))) == weigh(TABLES, item)


@given(seeds, st.sampled_from([clue.id for clue in GUIDE.clues]))
def test_unread_clue_changes_nothing(seed, clue):
    item = random_find(seed).items[0]
    without = tuple(r for r in item.readings if r[0] != clue)

    told = weigh(TABLES, replace(item, readings=(*without, (clue, None))))

    assert told == weigh(TABLES, replace(item, readings=without))


def test_unreadable_code_changes_nothing():
    silent = weigh(TABLES, find({"stamp": "?????"}).items[0])

    assert list(silent.cells) == close(list(weigh(TABLES, Item()).cells))
    assert silent.log_evidence == close(0)


NEVER = prepare(
    replace(
        GUIDE,
        parts=tuple(
            replace(p, replaced=0.0, share=0.0) if p.id in ("head", "shaft") else p
            for p in GUIDE.parts
        ),
    )
)
ON_THEM = ("scoring", "numeral", "pad", "stamp", "length")


@given(seeds)
def test_never_replaced_part_equals_net_without_it(seed):
    """Its readings then speak as if there were no parts: a product over the cells."""
    item = random_find(seed).items[0]
    readings = tuple(r for r in item.readings if r[0] in ON_THEM)

    got = weigh(NEVER, replace(item, readings=readings, gone=()))

    plain = list(NEVER.prior)
    for k, reading in read(NEVER, replace(item, readings=readings, gone=())).items():
        assert NEVER.guide.clues[k].id in ON_THEM
        whole = [*reading.orig, reading.out]
        plain = [p * x for p, x in zip(plain, whole, strict=True)]
    assert list(got.cells) == close([p / sum(plain) for p in plain])
    assert sum(got.replaced[1]) == sum(got.replaced[3]) == 0


RENAMED = prepare(
    replace(GUIDE, clues=tuple(replace(c, id=f"x-{c.id}") for c in GUIDE.clues))
)


@given(seeds)
def test_renaming_ids_changes_only_ids(seed):
    item = random_find(seed).items[0]
    other = replace(item, readings=tuple((f"x-{c}", a) for c, a in item.readings))

    assert weigh(RENAMED, other) == weigh(TABLES, item)


def test_three_hundred_readings_do_not_underflow():
    """Readings that contradict one another under every hypothesis; the reference
    adds logarithms, which cannot underflow.
    """
    many = tuple(replace(RINGS, id=f"rings-{i}") for i in range(300))
    guide = replace(GUIDE, clues=many)
    answers = [("green", "navy", "red", "none")[i % 4] for i in range(300)]

    got = weigh(
        prepare(guide), find(zip([c.id for c in many], answers, strict=True)).items[0]
    )

    terms = _log_terms(answers)
    top = max(terms)
    want = top + math.log(sum(math.exp(term - top) for term in terms))
    assert got.log_evidence < -500 * math.log(2)
    assert got.log_evidence == pytest.approx(want, abs=1e-7)
    assert sum(got.years) + got.outside == close(1)


def _log_terms(answers):
    """Log of prior times likelihoods for each cell and state of the collar."""
    orig, rep, out = LIKELIHOODS[type(RINGS.kind)](GUIDE, RINGS, None)
    replaced = truth(GUIDE, {}).replaced["collar"]
    terms = [math.log(GUIDE.outside) + sum(math.log(out(a)) for a in answers)]
    for c in cells(GUIDE):
        prior = math.log((1 - GUIDE.outside) * c[2])
        orig_of = {a: math.log(orig(a, c)) for a in set(answers)}
        rep_of = {a: math.log(rep(a)) for a in set(answers)}
        terms += [
            prior + math.log(1 - replaced) + sum(orig_of[a] for a in answers),
            prior + math.log(replaced) + sum(rep_of[a] for a in answers),
        ]
    return terms


def test_contradictions_on_all_parts_do_not_underflow():
    """Each part alone is scaled up, and so is what the parts say together."""
    clues = tuple(
        replace(clue, id=f"{clue.id}-{part.id}-{i}", part=part.id)
        for part in GUIDE.parts
        for i in range(150)
        for clue in (RINGS, BAND)
    )
    readings = [
        (c.id, ("green", "red")[i // 2 % 2] if "rings" in c.id else "PS"[i // 2 % 2])
        for i, c in enumerate(clues)
    ]

    got = weigh(prepare(replace(GUIDE, clues=clues)), find(readings).items[0])

    assert got.log_evidence < math.log(sys.float_info.min)
    assert sum(got.cells) == close(1)
    assert all(sum(a) + sum(b) == close(1) for a, b in _states(got))


def test_evidence_is_the_same_on_one_part_or_many():
    """Where nothing is ever replaced; what is lifted while parts are joined counts."""
    parts = tuple(make.part(f"p{i}", replaced=0.0) for i in range(8))
    years = make.span((1951, 1951)), make.span((1952, 1952))
    options = [make.option(id, seen) for id, seen in zip("ab", years, strict=True)]
    readings = [(f"c{i}-{j}", "ab"[j % 2]) for i in range(8) for j in range(80)]

    def evidence(home):
        clues = [
            make.choice(id, *options, part=home(id), misread=0.02) for id, _ in readings
        ]
        return weigh(
            prepare(make.guide(*clues, parts=parts)), find(readings).items[0]
        ).log_evidence

    spread = evidence(lambda id: f"p{id[1]}")
    assert spread < -500 * math.log(2)
    assert spread == pytest.approx(evidence(lambda id: "p0"), abs=1e-7)


def _states(posterior):
    return zip(posterior.original, posterior.replaced, strict=True)
