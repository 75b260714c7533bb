"""The engine broken in one way at a time, and the tests that must notice it."""

import os
import sys
from importlib.abc import MetaPathFinder
from importlib.machinery import PathFinder, SourceFileLoader
from pathlib import Path
from typing import NamedTuple

import pytest

TESTS = Path(__file__).parent
ENDED = 100
"""No other end of a process has such a number."""
QUICK = ("-x", "-q", "--tb=no", "-p", "no:randomly", "-p", "no:cacheprovider")


class Mutant(NamedTuple):
    """A line of a module of the engine, what stands there instead, and who notices."""

    module: str
    right: str
    wrong: str
    test: str
    only: str = ""
    """The one test of the file that notices, where those before it take long."""


MUTANTS = (
    Mutant("cells", "/ (y.closes - y.opens + 1))", ")", "test_one"),
    Mutant(
        "cells",
        "stop + y.closes - y.opens + 1",
        "stop + y.closes - y.opens",
        "test_one",
    ),
    Mutant("one", "states = (_filled(ones, 0.0), states[1])", "pass", "test_one"),
    Mutant("one", "replaced[-1] = out", "pass", "test_one"),
    Mutant(
        "one",
        "(whole, whole) if parent",
        "(prior, prior) if parent",
        "test_one",
        "test_part_without_readings_takes_what_the_others_say",
    ),
    Mutant(
        "one",
        "_blend(below[p], 1 - second, second)",
        "_blend(below[p], 1 - first, first)",
        "test_one",
    ),
    Mutant(
        "one",
        "if parents[q] == parent and q != p and",
        "if parents[q] == parent and",
        "test_one",
    ),
    Mutant(
        "one",
        "if parent is None and p != but and",
        "if parent is None and",
        "test_one",
    ),
    Mutant(
        "one",
        "(sum(counts) + more + last) * LOG_HUGE",
        "(sum(counts) + more) * LOG_HUGE",
        "test_one",
        "test_evidence_is_the_same_on_one_part_or_many",
    ),
    Mutant("parts", "max(part.share, part.replaced)", "part.share", "test_parts"),
    Mutant(
        "parts",
        "rate = max(part.share, part.whole_set) if follows",
        "rate = part.share if follows",
        "test_parts",
    ),
    Mutant(
        "parts",
        "None if above is None or whole[p] or whole[above] else above",
        "None if above is None or whole[p] else above",
        "test_sets",
    ),
    Mutant(
        "choice",
        "1 - distance / (span.fade + 1)",
        "1 - distance / span.fade",
        "test_choice",
    ),
    Mutant(
        "choice", "if distance > span.fade:", "if distance >= span.fade:", "test_choice"
    ),
    Mutant(
        "choice", "a.id in o.like or o.id in a.like", "a.id in o.like", "test_choice"
    ),
    Mutant("choice", "+ 0.5 / len(options)", "+ 1 / len(options)", "test_choice"),
    Mutant("choice", "1 / len(kind.options),", "1.0,", "test_choice"),
    Mutant(
        "choice",
        "max((_covers(span, cell, member) for span in option.seen), default=0.0)",
        "sum(_covers(span, cell, member) for span in option.seen)",
        "test_choice",
    ),
    Mutant("measure", "z = (x - mean) / sd", "z = (mean - x) / sd", "test_measure"),
    Mutant("measure", "(1 - m) * density", "density", "test_measure"),
    Mutant(
        "measure", "math.sqrt(sd * sd + error * error)", "sd + error", "test_measure"
    ),
    Mutant("measure", "if u >= 0:", "if u >= -30:", "test_measure"),
    Mutant(
        "code",
        "(1 - field.odd) * exact / len(right) + field.odd * uniform",
        "(1 - field.odd) * exact / len(right)",
        "test_code",
    ),
    Mutant("code", "if a == UNREADABLE:", "if o == UNREADABLE:", "test_code"),
    Mutant("code", "start += field.width", "start += 1", "test_code"),
    Mutant("code", "pull[a] / sum(pull.values())", "pull[a] / len(pull)", "test_code"),
    Mutant("number", "q ** (year - given)", "q ** (given - year)", "test_number"),
    Mutant(
        "number",
        "stops = [*starts[1:], kind.last + 1]",
        "stops = [*starts[1:], kind.last]",
        "test_number",
    ),
    Mutant("likelihood", "0.5 * ", "", "test_measure"),
    Mutant(
        "special",
        "while not any(map(_is_in_sight, scaled))",
        "while False",
        "test_special",
    ),
    Mutant("special", "tail = u + k / 2 / tail", "tail = u + k / tail", "test_special"),
    Mutant(
        "special", "after = multiplied((factors[i], 0), after)", "pass", "test_sets"
    ),
    Mutant(
        "sets",
        "(1 - one.stray) * x + one.stray * one.means[w]",
        "x + one.stray * one.means[w]",
        "test_sets",
    ),
    Mutant(
        "sets",
        "count + lifted",
        "count",
        "test_sets",
        "test_readings_at_a_hundredth_do_not_underflow and shape3",
    ),
    Mutant(
        "sets",
        "product: Scaled = ([world.prior], 0)",
        "product: Scaled = ([1.0], 0)",
        "test_sets",
    ),
    Mutant("gain", "for w in positive) / total", "for w in positive)", "test_gain"),
    Mutant("gain", "each.bits * each.bits_per", "each.bits_per", "test_gain"),
    Mutant("gain", "readable * gain(", "gain(", "test_gain"),
    Mutant("claim", "/ (before / rest_before)", "", "test_claim"),
    Mutant("claim", "if fit >= HALF * best", "if fit >= best", "test_claim"),
    Mutant("words", "100 * round9(p) + 0.5", "100 * round9(p)", "test_words"),
)


class _Breaking(MetaPathFinder):
    """Finds the one module, with its line broken."""

    def __init__(self, mutant: Mutant) -> None:
        self.mutant = mutant

    def find_spec(self, name, path, target=None):
        if name != f"fieldid.engine.{self.mutant.module}":
            return None
        spec = PathFinder.find_spec(name, path, target)
        spec.loader = _Broken(name, spec.origin)
        spec.loader.mutant = self.mutant
        return spec


class _Broken(SourceFileLoader):
    mutant: Mutant

    def get_code(self, name):
        """Compiled from the text each time, since no file keeps it."""
        return self.source_to_code(self.get_data(self.path), self.path)

    def get_data(self, path):
        text = super().get_data(path).decode()
        assert text.count(self.mutant.right) == 1, self.mutant
        return text.replace(self.mutant.right, self.mutant.wrong).encode()


def notice(mutant: Mutant, said: Path) -> None:
    """Ends this process with what pytest says of the engine that is broken so, counted
    from `ENDED` on; nothing has imported it here yet.
    """
    loaded = [name for name in sys.modules if name.startswith("fieldid.engine")]
    assert not loaded, "what is imported already cannot be broken"
    sys.meta_path.insert(0, _Breaking(mutant))
    os.chdir(TESTS.parent)
    with said.open("w") as file:
        for stream in (1, 2):
            os.dup2(file.fileno(), stream)
    addopts = ("-o", "addopts=--import-mode=importlib")
    test = TESTS / "engine" / f"{mutant.test}.py"
    sys.exit(ENDED + pytest.main([*QUICK, *addopts, "-k", mutant.only, str(test)]))
