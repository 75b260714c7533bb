"""Each way in which the engine was broken is noticed by the tests."""

import multiprocessing

import pytest

from mutants import MUTANTS, notice

FAILED = 1
"""What pytest says when tests failed; anything else would be no answer."""


LIBRARIES = ["pytest", "hypothesis.strategies", "scipy.stats", "scipy.integrate"]
"""What the tests import and what is none of ours: once for all of them."""


@pytest.fixture(scope="module")
def process():
    """Makes a process of which the engine is not imported, but the libraries are."""
    forking = multiprocessing.get_context("forkserver")
    forking.set_forkserver_preload(["pyagrum", *LIBRARIES])
    return forking.Process


def test_mutants_are_thirty_or_more():
    assert len(set(MUTANTS)) == len(MUTANTS) >= 30


@pytest.mark.parametrize(
    "place", range(len(MUTANTS)), ids=lambda i: f"{MUTANTS[i].module}-{i}"
)
def test_tests_notice_a_broken_engine(place, process, tmp_path):
    said = tmp_path / "said"
    noticing = process(target=notice, args=(place, said))
    noticing.start()
    noticing.join()

    assert noticing.exitcode == FAILED, said.read_text()
