"""A guide as one network for pyAgrum that serves many finds, and its queries.

A find only sets evidence: every table stands ready before any time is taken, even
those of sizes and codes, of which each reading that will be asked for is a state.
"""

from collections.abc import Sequence

import numpy as np
import pyagrum as gum

from fieldid.engine import Item
from fieldid.engine.guide import Clue, Guide
from network import part_node
from oracle import LIKELIHOODS, cells

ENGINES = (gum.LazyPropagation, gum.ShaferShenoyInference)
"""Its exact engines by junction trees, kept between queries."""


class Library:
    """The network of a guide, for the readings of some items."""

    def __init__(self, guide: Guide, items: Sequence[Item]) -> None:
        # On networks as small as these its threads cost more than they give.
        gum.setNumberOfThreads(1)
        self.net = gum.BayesNet()
        self.targets = ["cell", *(part.id for part in guide.parts)]
        self.states: dict[str, dict] = {}
        spots = cells(guide)
        prior = [(1 - guide.outside) * spread for *_, spread in spots]
        self.net.add(gum.LabelizedVariable("cell", "cell", len(spots) + 1))
        self.net.cpt("cell").fillWith([*prior, guide.outside])
        for part in guide.parts:
            self.net.add(gum.LabelizedVariable(part.id, part.name, 2))
        for part in guide.parts:
            part_node(self.net, part)
        for clue in guide.clues:
            self._reading(guide, clue, spots, _asked(clue, items))

    def engine(self, kind):
        """An engine that answers for cells and parts."""
        made = kind(self.net)
        for target in self.targets:
            made.addTarget(target)
        return made

    def evidence(self, item: Item) -> dict[str, int]:
        """An item's readings as states."""
        told = [(clue, a) for clue, a in item.readings if a is not None]
        return {f"read-{clue}": self.states[clue][a] for clue, a in told}

    def ask(self, engine, evidence: dict[str, int]) -> list[list[float]]:
        """Probability of each cell and outside, then of each part's two states."""
        engine.setEvidence(evidence)
        engine.makeInference()
        return [engine.posterior(target).tolist() for target in self.targets]

    def _reading(self, guide: Guide, clue: Clue, spots, asked: list) -> None:
        if not asked:
            return
        orig, rep, out = LIKELIHOODS[type(clue.kind)](guide, clue, None)
        later = [rep(a) for a in asked]
        table = np.array(
            [[[orig(a, c) for a in asked], later] for c in spots]
            + [[[out(a) for a in asked]] * 2],
            dtype=float,
        )
        # Densities may exceed 1; only ratios count. The rest is any other reading.
        table /= 1.000001 * table.sum(axis=2).max()
        table = np.append(table, 1 - table.sum(axis=2, keepdims=True), axis=2)
        name = f"read-{clue.id}"
        self.net.add(gum.LabelizedVariable(name, clue.name, len(asked) + 1))
        self.net.addArc("cell", name)
        self.net.addArc(clue.part, name)
        axes = ["cell", clue.part, name]
        found = self.net.cpt(name)
        turned = table.transpose([axes.index(axis) for axis in reversed(found.names)])
        found[{}] = np.ascontiguousarray(turned)
        self.states[clue.id] = {a: state for state, a in enumerate(asked)}


def _asked(clue: Clue, items: Sequence[Item]) -> list:
    """Every reading of a clue that will be asked for, once."""
    read = [dict(item.readings).get(clue.id) for item in items]
    return sorted({a for a in read if a is not None}, key=str)
