"""What another look is worth: a textbook's example, a library, and brute force."""

import random
from itertools import pairwise, product

import pyagrum as gum
import pytest

import offer_oracle
import oracle
from bags import small_guide, small_set
from fieldid.engine import Find, prepare
from fieldid.engine.deal import Deal
from fieldid.engine.guide import Choice, Code, Measure, Off, PartPrice, Prices
from fieldid.engine.offer import offer
from make import choice, find, guide, model_year, option, part, span
from offers import prices_by_lot

# The oil wildcatter's problem: H. Raiffa, Decision Analysis (1968). These figures are
# as decision software gives them that names it (Hugin's and SAS's manuals): drilling
# costs 70, a well yields 0, 120 or 270. Structure, by state of the well:
WELLS = {"dry": 0.5, "wet": 0.3, "soaking": 0.2}
YIELDS = {"dry": 0.0, "wet": 120.0, "soaking": 270.0}
STRUCTURES = {
    "dry": {"closed": 0.1, "open": 0.3, "none": 0.6},
    "wet": {"closed": 0.3, "open": 0.4, "none": 0.3},
    "soaking": {"closed": 0.5, "open": 0.4, "none": 0.1},
}
COST = 70.0


def well():
    """The problem as a guide: three model years, one clue that is never misread."""
    years = dict(zip(WELLS, (1951, 1952, 1953), strict=True))
    seismic = choice(
        "structure",
        *(
            option(
                shown,
                *(
                    span((year, year), share=STRUCTURES[well][shown])
                    for well, year in years.items()
                ),
            )
            for shown in ("closed", "open", "none")
        ),
        misread=0.0,
    )
    prices = Prices("USD", "", "", tuple((years[w], YIELDS[w]) for w in WELLS))
    return prices, guide(
        seismic,
        floor=0.0,
        outside=0.0,
        years=tuple(model_year(y, volume=WELLS[w]) for w, y in years.items()),
        parts=(part(replaced=0.0),),
    )


def answer(under, known, prices, deal):
    return offer(prepare(under), known, prices=prices, deal=deal)


def test_knowing_all_equals_textbook():
    """Drilling leaves 20 on average, and 55 if the well were known beforehand."""
    prices, under = well()
    found = answer(under, find(), prices, Deal(asked=COST))

    assert found.expected - COST == pytest.approx(20.0)
    assert found.perfect == pytest.approx(35.0)


def test_one_reading_equals_textbook():
    """After the soundings it leaves 32.5: they are worth 12.5, and cost 10 there."""
    prices, under = well()
    [look] = answer(under, find(), prices, Deal(asked=COST)).looks

    assert look.worth == pytest.approx(12.5)


def test_one_reading_equals_influence_diagram():
    prices, under = well()
    [look] = answer(under, find(), prices, Deal(asked=COST)).looks

    assert look.worth == pytest.approx(best_drilling(True) - best_drilling(False))


def best_drilling(tested: bool) -> float:
    """What the best decision leaves, by pyAgrum."""
    net = gum.InfluenceDiagram()
    net.addChanceNode(gum.LabelizedVariable("oil", "oil", list(WELLS)))
    shown = list(STRUCTURES["dry"])
    net.addChanceNode(gum.LabelizedVariable("seismic", "seismic", shown))
    net.addDecisionNode(gum.LabelizedVariable("drill", "drill", ["yes", "no"]))
    net.addUtilityNode(gum.LabelizedVariable("left", "left", 1))
    arcs = [("oil", "seismic"), ("oil", "left"), ("drill", "left")]
    for tail, head in [*arcs, ("seismic", "drill")] if tested else arcs:
        net.addArc(tail, head)
    net.cpt("oil").fillWith(list(WELLS.values()))
    for i, state in enumerate(WELLS):
        net.cpt("seismic")[{"oil": i}] = list(STRUCTURES[state].values())
        net.utility("left")[{"oil": i, "drill": 0}] = [YIELDS[state] - COST]
        net.utility("left")[{"oil": i, "drill": 1}] = [0]
    inference = gum.ShaferShenoyLIMIDInference(net)
    inference.makeInference()
    return inference.MEU()["mean"]


def small(seed: int, size: int):
    """A small guide by lot with prices, and a find of some items."""
    under = small_guide(seed)
    items = small_set(under, 700 + seed)[:size]
    return under, items, prices_by_lot(under, random.Random(seed))


def sums(under, items, prices, extra=None):
    """What the brute force says of the items, if one more reading is known."""
    told = [(dict(item.readings), item.gone, item.member) for item in items]
    if extra:
        i, clue, a = extra
        told[i][0][clue] = a
    if len(told) == 1:
        return offer_oracle.one(under, told[0], prices)
    return offer_oracle.several(under, told, prices)


def tried_out(under, items, prices, look, readings, bargain) -> float:
    """What a reading of the clue is worth, every one of them tried out."""
    clue = next(each for each in under.clues if each.id == look.clue)
    i = [item.member for item in items].index(look.member)
    before = sums(under, items, prices)
    after = 0.0
    for a in readings:
        knowing = sums(under, items, prices, (i, clue.id, a))
        after += knowing.evidence / before.evidence * knowing.better(*bargain)
    return (1 - clue.unreadable) * (after - before.better(*bargain)) / 100


def asking(under, items, prices, margin=0.0):
    """The answer to a price that makes the decision hard, and the bargain it is."""
    keep = 1 - margin / 100
    asked = round(keep * sums(under, items, prices).mean / 100, 2)
    deal = Deal(asked=asked, margin=margin)
    found = answer(under, Find(under.id, items), prices, deal)
    return found, (keep, 100 * asked)


@pytest.mark.parametrize("size", [1, 2, 3])
@pytest.mark.parametrize("seed", range(6))
def test_readings_of_choices_equal_brute_force(seed, size):
    under, items, prices = small(seed, size)
    found, bargain = asking(under, items, prices, margin=10.0)
    kinds = {clue.id: clue.kind for clue in under.clues}
    for look in found.looks:
        if isinstance(kinds[look.clue], Choice):
            shown = [each.id for each in kinds[look.clue].options]
            wanted = tried_out(under, items, prices, look, shown, bargain)
            assert look.worth == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize("seed", range(12))
def test_code_equals_its_clean_readings_and_any_other(seed):
    """What is not read clean is one outcome more, and not left out."""
    under, items, prices = small(seed, 1)
    found, (keep, price) = asking(under, items, prices)
    codes = {clue.id: clue for clue in under.clues if isinstance(clue.kind, Code)}
    before = sums(under, items, prices)
    for look in found.looks:
        if look.clue in codes:
            chance, worth, after = 1.0, before.mean, 0.0
            for a in oracle.clean(under, codes[look.clue]):
                knowing = sums(under, items, prices, (0, look.clue, a))
                p = knowing.evidence / before.evidence
                chance, worth = chance - p, worth - p * knowing.mean
                after += p * knowing.better(keep, price)
            after += max(keep * worth - price * chance, 0.0)
            wanted = (after - before.better(keep, price)) / 100
            assert look.worth == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize("size", [1, 2])
@pytest.mark.parametrize("seed", range(4))
def test_codes_and_measures_are_never_overstated(seed, size):
    """A code is read as its clean readings or any other, a measure to a tenth part:
    whoever reads it whole cannot learn less.
    """
    under, items, prices = small(seed, size)
    found, bargain = asking(under, items, prices)
    for look in found.looks:
        clue = next(each for each in under.clues if each.id == look.clue)
        if isinstance(clue.kind, Code):
            alphabets = [field.alphabet for field in clue.kind.fields]
            shown = ["".join(text) for text in product(*alphabets)]
        elif isinstance(clue.kind, Measure):
            step = (clue.kind.high - clue.kind.low) / 120
            edges = [clue.kind.low + i * step for i in range(121)]
            edges[-1] = clue.kind.high
            shown = list(pairwise(edges))
        else:
            continue
        most = tried_out(under, items, prices, look, shown, bargain)
        assert 0 <= look.worth <= most + 1e-9


@pytest.mark.parametrize("seed", range(8))
def test_no_reading_is_worth_more_than_knowing_all(seed):
    under, items, prices = small(seed, 1 + seed % 3)
    found, _ = asking(under, items, prices)

    assert all(look.worth <= found.perfect + 1e-9 for look in found.looks)


def test_looks_are_told_apart_by_more_than_years():
    """A clue that no year depends on still tells a replaced part, which costs."""
    band = choice(
        "band",
        option("black", span()),
        option("red"),
        part="grip",
        replacement=(("red", 1.0),),
    )
    under = guide(band, parts=(part("grip", 0.4),))
    flat = ((1951, 100.0), (1952, 100.0))
    parts = (PartPrice("grip", Off(50.0)),)
    bare, costly = (
        answer(under, find(), Prices("EUR", "", "", flat, 100.0, (), parts), deal)
        for parts, deal in (((), Deal(asked=90.0)), (parts, Deal(asked=80.0)))
    )

    assert bare.looks[0].worth == pytest.approx(0.0, abs=1e-9)
    assert costly.looks[0].worth > 5
