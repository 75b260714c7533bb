"""Each way in which the engine was broken is noticed by the tests."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from mutants import MUTANTS, WHICH

TESTS = Path(__file__).parent.parent
FAILED = 1
"""What pytest says when tests failed; anything else would be no answer."""


def test_mutants_are_thirty_or_more():
    assert len(set(MUTANTS)) == len(MUTANTS) >= 30


@pytest.mark.parametrize(
    "place", range(len(MUTANTS)), ids=lambda i: f"{MUTANTS[i].module}-{i}"
)
def test_tests_notice_a_broken_engine(place):
    mutant = MUTANTS[place]
    quick = ("-x", "-q", "--tb=no", "-p", "no:randomly", "-p", "no:cacheprovider")
    done = subprocess.run(
        [
            *(sys.executable, "-m", "pytest", "-p", "mutants", *quick),
            *("-o", "addopts=--import-mode=importlib"),
            TESTS / "engine" / f"{mutant.test}.py",
        ],
        cwd=TESTS.parent,
        env=os.environ | {"PYTHONPATH": str(TESTS), WHICH: str(place)},
        capture_output=True,
        text=True,
    )

    assert done.returncode == FAILED, done.stdout + done.stderr
