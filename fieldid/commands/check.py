"""`fieldid check`: every problem of every guide, a line each, and the warnings."""

from collections.abc import Sequence
from pathlib import Path

from fieldid.commands.shelf import paths_of
from fieldid.engine.guide import Guide
from fieldid.errors import GuideError, Problem
from fieldid.guides.load import load
from fieldid.guides.warnings import warnings


def check(names: Sequence[str]) -> None:
    """Prints what each guide holds, or raises all problems of all of them."""
    problems: list[Problem] = []
    for path in paths_of(names):
        try:
            _report(path, load(path))
        except GuideError as error:
            problems += error.problems
    if problems:
        raise GuideError(problems)


def _report(path: Path, guide: Guide) -> None:
    counts = (
        f"{len(guide.years)} model years, {len(guide.parts)} parts, "
        f"{len(guide.clues)} clues"
    )
    print(f"{path}: good: {counts}")
    for warning in warnings(guide):
        print(f"{path}: warning: {warning}")
