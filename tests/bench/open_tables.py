"""The engine beside scikit-learn on two open tables: prints how it did.

Run by hand, after `sh tests/run` has fetched the tables:
`python tests/bench/open_tables.py`. It takes a few seconds.
"""

import sys
from pathlib import Path
from statistics import fmean

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

import penguins
import zoo
from fieldid.engine import prepare


def main() -> None:
    animals()
    species()


def animals() -> None:
    """Questions until an animal's type is told, beside the entropy of the type."""
    print(
        f"{len(zoo.ANIMALS)} animals, {len(zoo.TRAITS)} traits, "
        f"{len(zoo.COUNTS)} types\n\n"
        "| | questions on average | at most | told rightly |\n|---|---|---|---|\n"
        f"| entropy of the type, in bits | {zoo.type_bits():.2f} | | |"
    )
    for name, guide in (("shares", zoo.by_share()), ("animals", zoo.by_animal())):
        tables = prepare(guide)
        games = [zoo.play(tables, animal) for animal in zoo.ANIMALS]
        asked = [len(game.asked) for game in games]
        pairs = zip(games, zoo.ANIMALS, strict=True)
        right = fmean(game.told == animal["type"] for game, animal in pairs)
        print(
            f"| a guide that knows {name} | {fmean(asked):.2f} | {max(asked)} "
            f"| {right:.0%} |"
        )
    for one_by_one, name in ((False, "at most so many"), (True, "just so many")):
        depths = zoo.tree_questions(one_by_one=one_by_one)
        print(
            f"| scikit-learn's tree, {name} legs | {fmean(depths):.2f} "
            f"| {max(depths)} | |"
        )


def species() -> None:
    """Penguins told rightly of those that were held out."""
    whole = penguins.complete(penguins.HELD_OUT)
    training = penguins.complete(penguins.TRAINING)
    told = penguins.answers(prepare(penguins.learned(penguins.TRAINING)), whole)
    bayes = penguins.naive_bayes(training, whole)
    print(f"\n{len(whole)} penguins held out\n\n| | told rightly |\n|---|---|")
    print(f"| engine | {penguins.share_right(told, whole):.1%} |")
    print(f"| scikit-learn's naive Bayes | {penguins.share_right(bayes, whole):.1%} |")


if __name__ == "__main__":
    main()
