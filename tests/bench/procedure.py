"""Until one answer has 95 %: our way beside other ways, on the same simulated objects.

The specimens are drawn from the guide's own model. Fixed order, random order and the
tree's order believe what our engine believes, so only the order differs; naive Bayes
and the tree by itself have beliefs of their own.
"""

import random
from collections.abc import Sequence
from statistics import fmean

from fieldid.engine import prepare
from fieldid.guides.load import load
from fieldid.paths import RULES
from methods import (
    SURE,
    Alone,
    Walk,
    along,
    best,
    by_lot,
    printed,
    trained,
    without_parts,
)
from report import Record
from scores import accuracy, brier, calibration_error, log_loss
from specimens import specimen

GUIDE = "wrackham-teale-dotterel"
TRAINING, TRIED, LOT = 2, 10**6, 3
"""Seeds: of the tree's examples, of the first specimen tried, of the random order."""
EXAMPLES, SPECIMENS = 20_000, 1_000


def measure(*, quick: bool) -> list[Record]:
    specimens = SPECIMENS // 10 if quick else SPECIMENS
    tables = prepare(load(RULES / f"{GUIDE}.toml"))
    dice = random.Random(TRAINING)
    examples = [specimen(tables.guide, dice) for _ in range(EXAMPLES)]
    tried = [specimen(tables.guide, random.Random(TRIED + i)) for i in range(specimens)]
    tree = trained(tables.guide, examples)
    ways = {
        "ours": best(tables),
        "fixed order": printed(tables),
        "random order": by_lot(tables, random.Random(LOT)),
        "decision tree’s order": along(tables, tree),
        "decision tree alone": Alone(tables, tree),
        "naive Bayes without parts": without_parts(tables),
    }
    walks = {name: [way.walk(each) for each in tried] for name, way in ways.items()}
    note = f"{specimens} objects, seeds from {TRIED}"
    return [
        *(each for name, found in walks.items() for each in figures(name, found, note)),
        *(
            Record(f"seconds: ours / {name}", ratio(walks["ours"], found), "times")
            for name, found in walks.items()
            if name != "ours"
        ),
    ]


def figures(name: str, walks: Sequence[Walk], note: str) -> list[Record]:
    """What it cost, and how good the beliefs were in the end."""
    told = [(walk.answers, walk.truth) for walk in walks]
    return [
        Record(f"{name}: questions", fmean(w.readings for w in walks), "", note=note),
        Record(f"{name}: seconds", fmean(w.seconds for w in walks), "s"),
        Record(
            f"{name}: told with {SURE:.0%}",
            100 * fmean(max(w.answers) >= SURE for w in walks),
            "%",
        ),
        Record(f"{name}: accuracy", 100 * accuracy(told), "%"),
        Record(f"{name}: log loss", log_loss(told), "nats"),
        Record(f"{name}: Brier score", brier(told), "0 to 2"),
        Record(f"{name}: calibration error", 100 * calibration_error(told), "points"),
    ]


def ratio(ours: Sequence[Walk], others: Sequence[Walk]) -> float:
    """Our seconds as a share of the others'."""
    return sum(walk.seconds for walk in ours) / sum(walk.seconds for walk in others)
