"""The open table of penguins as a guide: measures and choices, with gaps.

Species stand where model years do. What a guide says is counted in some rows and
tried on others, and scikit-learn's naive Bayes learns from the same rows.
"""

import csv
import io
import math
from collections.abc import Sequence
from statistics import fmean, pstdev

from sklearn.naive_bayes import CategoricalNB, GaussianNB

from fieldid.engine import Find, Guide, Item, Tables
from fieldid.engine.guide import Clue, Size
from fieldid.engine.one import weigh
from make import choice, guide, measure, model_year, option, part, span
from opendata import PENGUINS, text

FIRST = 1901
GAP = "NA"
MEASURES = ("bill_length_mm", "bill_depth_mm", "flipper_length_mm", "body_mass_g")
CHOICES = ("island", "sex")

Row = dict[str, str]

ROWS: tuple[Row, ...] = tuple(csv.DictReader(io.StringIO(text(PENGUINS))))
SPECIES = sorted({row["species"] for row in ROWS})
YEARS = {species: FIRST + i for i, species in enumerate(SPECIES)}
VALUES = {c: sorted({row[c] for row in ROWS} - {GAP}) for c in CHOICES}
# The table goes by species, so every third row leaves all of them in both parts.
HELD_OUT = ROWS[::3]
TRAINING = tuple(row for i, row in enumerate(ROWS) if i % 3)


def complete(rows: Sequence[Row]) -> tuple[Row, ...]:
    """The rows without a gap."""
    return tuple(row for row in rows if GAP not in row.values())


def learned(rows: Sequence[Row], *, misread: float = 0.02, **figures) -> Guide:
    """A guide of what the rows show; `figures` are those of the whole guide."""
    of = {species: _of(rows, species=species) for species in SPECIES}
    return guide(
        *(_measure(column, of, misread) for column in MEASURES),
        *(_choice(column, of, misread) for column in CHOICES),
        years=tuple(model_year(YEARS[s], volume=len(of[s])) for s in SPECIES),
        parts=(part(replaced=0.0),),
        **figures,
    )


def _measure(column: str, of: dict[str, tuple[Row, ...]], misread: float) -> Clue:
    sizes = []
    for species, rows in of.items():
        known = [float(row[column]) for row in rows if row[column] != GAP]
        years = (YEARS[species], YEARS[species])
        sizes.append(Size(years, fmean(known), pstdev(known)))
    every = [float(row[column]) for row in ROWS if row[column] != GAP]
    return measure(column, *sizes, range=(min(every), max(every)), misread=misread)


def _choice(column: str, of: dict[str, tuple[Row, ...]], misread: float) -> Clue:
    options = [
        option(value, *(_span(column, value, s, rows) for s, rows in of.items()))
        for value in VALUES[column]
    ]
    return choice(column, *options, misread=misread)


def _span(column: str, value: str, species: str, rows: Sequence[Row]):
    """How often the species shows it, where each value was seen once more than it was
    (Laplace), as scikit-learn counts.
    """
    known = [row[column] for row in rows if row[column] != GAP]
    share = (known.count(value) + 1) / (len(known) + len(VALUES[column]))
    return span((YEARS[species], YEARS[species]), share=share)


def item(row: Row, *, without: str = "") -> Item:
    """What was read off a penguin; a gap, and what is left out, cannot be told."""
    shown = {c: None if c == without or row[c] == GAP else row[c] for c in row}
    measured = [(c, shown[c] and float(shown[c])) for c in MEASURES]
    return Item((*measured, *((c, shown[c]) for c in CHOICES)))


def find(row: Row, *, without: str = "") -> Find:
    return Find("plain", (item(row, without=without),))


def answers(tables: Tables, rows: Sequence[Row]) -> list[dict[str, float]]:
    """What the engine makes of the rows: the probability of each species."""
    posteriors = [weigh(tables, item(row)) for row in rows]
    return [dict(zip(SPECIES, each.years, strict=True)) for each in posteriors]


def naive_bayes(training: Sequence[Row], rows: Sequence[Row]) -> list[dict[str, float]]:
    """What scikit-learn makes of complete rows: measures by one of its classes,
    choices by another, joined by Bayes's rule.
    """
    species = [row["species"] for row in training]
    sizes = GaussianNB(var_smoothing=0).fit([_sizes(r) for r in training], species)
    kinds = CategoricalNB(alpha=1).fit([_kinds(r) for r in training], species)
    both = sizes.predict_joint_log_proba([_sizes(r) for r in rows])
    both = both + kinds.predict_joint_log_proba([_kinds(r) for r in rows])
    # Both classes begin with how common a species is, which counts once.
    return [_shares(row - kinds.class_log_prior_) for row in both]


def _sizes(row: Row) -> list[float]:
    return [float(row[column]) for column in MEASURES]


def _kinds(row: Row) -> list[int]:
    return [VALUES[column].index(row[column]) for column in CHOICES]


def _shares(logs: Sequence[float]) -> dict[str, float]:
    weights = [math.exp(x - max(logs)) for x in logs]
    total = sum(weights)
    return {s: w / total for s, w in zip(SPECIES, weights, strict=True)}


def share_right(told: Sequence[dict[str, float]], rows: Sequence[Row]) -> float:
    """How many of the rows have the species that is told first."""
    leading = [max(each, key=lambda species: each[species]) for each in told]
    pairs = zip(leading, rows, strict=True)
    return fmean(species == row["species"] for species, row in pairs)


def _of(rows: Sequence[Row], *, species: str) -> tuple[Row, ...]:
    return tuple(row for row in rows if row["species"] == species)
