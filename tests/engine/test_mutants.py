"""Each way in which the engine was broken is noticed by the tests."""

import multiprocessing

import pytest

from mutants import ENDED, MUTANTS, notice

PASSED, FAILED = ENDED, ENDED + 1
"""What pytest says when tests passed or failed; anything else would be no answer."""
LIBRARIES = ("pytest", "pyagrum", "scipy.stats", "scipy.integrate")
"""What the engine's tests import that takes its time."""


@pytest.fixture(scope="module")
def noticed(tmp_path_factory):
    """What the tests end with and say of a mutant, in a process that has imported the
    libraries, but not the engine.
    """
    forking = multiprocessing.get_context("forkserver")
    forking.set_forkserver_preload([*LIBRARIES])

    def noticed(mutant):
        said = tmp_path_factory.mktemp("mutant") / "said"
        process = forking.Process(target=notice, args=(mutant, said))
        process.start()
        process.join()
        return process.exitcode, said.read_text()

    return noticed


def test_mutants_are_thirty_or_more():
    assert len(set(MUTANTS)) == len(MUTANTS) >= 30


@pytest.mark.parametrize(
    "place", range(len(MUTANTS)), ids=lambda i: f"{MUTANTS[i].module}-{i}"
)
def test_tests_notice_a_broken_engine(place, noticed):
    ended, said = noticed(MUTANTS[place])

    assert ended == FAILED, said


def test_tests_pass_a_whole_engine(noticed):
    """The control: imported in the same way, with nothing broken."""
    words = MUTANTS[-1]
    ended, said = noticed(words._replace(wrong=words.right))

    assert ended == PASSED, said
