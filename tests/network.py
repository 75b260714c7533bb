"""The model as a network for pyAgrum, a general-purpose exact inference library.

One variable for the cell (outside is its last state), one for each part, one for
each reading. The tables of the readings come from the oracle, not the engine.
"""

import numpy as np
import pyagrum as gum

from fieldid.engine.guide import Guide
from oracle import LIKELIHOODS, cells


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
        _part(net, part)
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


def _part(net, part) -> None:
    if part.follows is None:
        net.cpt(part.id).fillWith([1 - part.replaced, part.replaced])
        return
    net.addArc(part.follows, part.id)
    for state, rate in enumerate((part.replaced, max(part.share, part.replaced))):
        net.cpt(part.id)[{part.follows: state}] = [1 - rate, rate]
