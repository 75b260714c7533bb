"""The model as a network for pyAgrum, a general-purpose exact inference library.

One variable for the cell (outside is its last state), one for each part, one for
each reading. A set has besides, for each part, whether it was replaced on all, the
source of each clue on it, and for each item whether it is a stray and its own cell.
The tables of the readings come from the oracle, not the engine.
"""

from itertools import product

import numpy as np
import pyagrum as gum

from fieldid.engine.guide import Guide
from oracle import LIKELIHOODS, cells, sources


def posterior(guide: Guide, readings: dict, gone, member):
    """(probability of each cell and outside, of each part replaced, of the readings).

    The density of a measure can exceed one: it enters divided by `SCALE`.
    """
    net = gum.BayesNet()
    spots = cells(guide)
    prior = [(1 - guide.outside) * share for *_, share in spots] + [guide.outside]
    net.add(gum.LabelizedVariable("cell", "cell", len(prior)))
    net.cpt("cell").fillWith(prior)
    for part in guide.parts:
        net.add(gum.LabelizedVariable(part.id, part.name, 2))
    for part in guide.parts:
        part_node(net, part)
    evidence = dict.fromkeys(gone, 1)
    scale = 1.0
    for clue in guide.clues:
        a = readings.get(clue.id)
        if a is None or clue.part in gone:
            continue
        orig, rep, out = LIKELIHOODS[type(clue.kind)](guide, clue, member)
        table = np.array(
            [[orig(a, c), rep(a)] for c in spots] + [[out(a), out(a)]], dtype=float
        )
        top = 2 * table.max()
        scale *= top
        name = f"read-{clue.id}"
        net.add(gum.LabelizedVariable(name, clue.name, 2))
        net.addArc("cell", name)
        net.addArc(clue.part, name)
        for c, row in enumerate(table):
            for state in (0, 1):
                seen = row[state] / top
                net.cpt(name)[{"cell": c, clue.part: state}] = [1 - seen, seen]
        evidence[name] = 1
    engine = gum.LazyPropagation(net)
    engine.setEvidence(evidence)
    engine.makeInference()
    replaced = {
        part.id: 1.0 if part.id in gone else float(engine.posterior(part.id)[1])
        for part in guide.parts
    }
    cell = [float(p) for p in engine.posterior("cell").tolist()]
    return cell, replaced, float(engine.evidenceProbability()) * scale


def part_node(net, part) -> None:
    """Whether a part was replaced, which may follow from another's being so."""
    if part.follows is None:
        net.cpt(part.id).fillWith([1 - part.replaced, part.replaced])
        return
    net.addArc(part.follows, part.id)
    for state, rate in enumerate((part.replaced, max(part.share, part.replaced))):
        net.cpt(part.id)[{part.follows: state}] = [1 - rate, rate]


def set_posterior(guide: Guide, items):
    """(probability of each cell and outside, of each stray, of each part replaced on
    the whole set, of the readings) for items, each (readings, gone, member).
    """
    net = gum.BayesNet()
    spots = cells(guide)
    prior = [(1 - guide.outside) * share for *_, share in spots] + [guide.outside]
    net.add(gum.LabelizedVariable("cell", "cell", len(prior)))
    net.cpt("cell").fillWith(prior)
    # A part is replaced on the whole set with or without the part that it follows.
    for part in _roots_first(guide):
        rates = (part.whole_set, max(part.share, part.whole_set))
        follows = [f"all-{part.follows}"] if part.follows else []
        _switch(net, f"all-{part.id}", follows, lambda above=0, r=rates: r[above])
    for clue in guide.clues:
        _source(net, f"source-{clue.id}", [w for w, _ in sources(guide, clue)])
    scale, evidence = 1.0, {}
    for i, (readings, gone, member) in enumerate(items):
        _member(net, guide, i, member, prior)
        evidence |= {f"{i}-{part}": 1 for part in gone}
        for clue in guide.clues:
            a = readings.get(clue.id)
            if a is not None and clue.part not in gone:
                name, top = _reading(net, guide, clue, a, i, member)
                evidence[name] = 1
                scale *= top
    engine = gum.LazyPropagation(net)
    engine.setEvidence(evidence)
    engine.makeInference()
    return (
        [float(p) for p in engine.posterior("cell").tolist()],
        [float(engine.posterior(f"stray-{i}")[1]) for i in range(len(items))],
        [float(engine.posterior(f"all-{part.id}")[1]) for part in guide.parts],
        float(engine.evidenceProbability()) * scale,
    )


def _roots_first(guide: Guide) -> list:
    done: list = []
    while len(done) < len(guide.parts):
        ids = [part.id for part in done]
        done += [
            part
            for part in guide.parts
            if part.id not in ids and (part.follows is None or part.follows in ids)
        ]
    return done


def _switch(net, name: str, parents: list[str], rate) -> None:
    """A variable that is 1 with a probability that follows from its parents."""
    net.add(gum.LabelizedVariable(name, name, 2))
    for parent in parents:
        net.addArc(parent, name)
    for states in product((0, 1), repeat=len(parents)):
        p = rate(*states)
        net.cpt(name)[dict(zip(parents, states, strict=True))] = [1 - p, p]


def _source(net, name: str, weights) -> None:
    net.add(gum.LabelizedVariable(name, name, len(weights)))
    net.cpt(name).fillWith([float(w) for w in weights])


def _member(net, guide: Guide, i: int, member, prior) -> None:
    """An item: its own cell, which is the set's if it is no stray, and its parts."""
    s = dict(guide.members.stray_for).get(member, guide.members.stray)
    stray, own = f"stray-{i}", f"cell-{i}"
    _switch(net, stray, [], lambda: s)
    net.add(gum.LabelizedVariable(own, own, len(prior)))
    for parent in ("cell", stray):
        net.addArc(parent, own)
    for c in range(len(prior)):
        same = [float(x == c) for x in range(len(prior))]
        net.cpt(own)[{"cell": c, stray: 0}] = same
        net.cpt(own)[{"cell": c, stray: 1}] = prior
    for part in _roots_first(guide):
        first, second = part.replaced, max(part.share, part.replaced)
        parents = [f"all-{part.id}"]
        if part.follows:
            parents += [f"{i}-{part.follows}", f"all-{part.follows}"]

        def rate(on_all, above=0, above_on_all=0, first=first, second=second):
            if on_all:
                return 1.0
            return second if above and not above_on_all else first

        _switch(net, f"{i}-{part.id}", parents, rate)


def _reading(net, guide: Guide, clue, a, i: int, member) -> tuple[str, float]:
    """The reading's variable, and what its likelihoods were divided by."""
    orig, rep, out = LIKELIHOODS[type(clue.kind)](guide, clue, member)
    origins = [float(like(a)) for _, like in sources(guide, clue)]
    single = [[orig(a, c), rep(a)] for c in cells(guide)] + [[out(a), out(a)]]
    top = 2 * max(*origins, *(float(x) for row in single for x in row))
    name = f"{i}-read-{clue.id}"
    own, state = f"cell-{i}", f"{i}-{clue.part}"
    on_all, source = f"all-{clue.part}", f"source-{clue.id}"
    net.add(gum.LabelizedVariable(name, name, 2))
    for parent in (own, state, on_all, source):
        net.addArc(parent, name)
    for c, s, whole, o in product(
        range(len(single)), (0, 1), (0, 1), range(len(origins))
    ):
        seen = (origins[o] if whole else single[c][s]) / top
        net.cpt(name)[{own: c, state: s, on_all: whole, source: o}] = [1 - seen, seen]
    return name, top
