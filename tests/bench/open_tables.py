"""Two open tables: the engine beside scikit-learn on real animals and penguins.

Questions are asked until an animal's type is told, beside the entropy of the type;
the penguins were held out. `sh tests/run` fetches the tables.
"""

from statistics import fmean

import penguins
import zoo
from fieldid.engine import prepare
from report import Record


def measure(*, quick: bool) -> list[Record]:
    return [*animals(), *species()]


def animals() -> list[Record]:
    """Questions until an animal's type is told."""
    many = f"{len(zoo.ANIMALS)} animals"
    records = [Record(f"{many}: entropy of the type", zoo.type_bits(), "bits")]
    for name, guide in (("shares", zoo.by_share()), ("animals", zoo.by_animal())):
        tables = prepare(guide)
        games = [zoo.play(tables, animal) for animal in zoo.ANIMALS]
        asked = [len(game.asked) for game in games]
        pairs = zip(games, zoo.ANIMALS, strict=True)
        right = fmean(game.told == animal["type"] for game, animal in pairs)
        knows = f"{many}, a guide that knows {name}"
        records += [
            Record(knows, fmean(asked), "questions", note=f"at most {max(asked)}"),
            Record(knows, 100 * right, "% right"),
        ]
    for one_by_one, name in ((False, "at most so many"), (True, "just so many")):
        depths = zoo.tree_questions(one_by_one=one_by_one)
        records.append(
            Record(
                f"{many}, scikit-learn’s tree, {name} legs",
                fmean(depths),
                "questions",
                note=f"at most {max(depths)}",
            )
        )
    return records


def species() -> list[Record]:
    """Penguins told rightly of those that were held out."""
    whole = penguins.complete(penguins.HELD_OUT)
    training = penguins.complete(penguins.TRAINING)
    told = penguins.answers(prepare(penguins.learned(penguins.TRAINING)), whole)
    bayes = penguins.naive_bayes(training, whole)
    name = f"{len(whole)} penguins held out"
    return [
        Record(f"{name}: engine", 100 * penguins.share_right(told, whole), "% right"),
        Record(
            f"{name}: scikit-learn’s naive Bayes",
            100 * penguins.share_right(bayes, whole),
            "% right",
        ),
    ]
