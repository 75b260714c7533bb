"""An audit step by step: the same figures in one process or two, stopped or not."""

from dataclasses import replace

import pytest

from fieldid.audit.report import report
from fieldid.audit.run import BIT, Run
from fieldid.audit.shares import FACTORS, Moved, Shaken, handles
from fieldid.audit.walked import walked
from fieldid.audit.worlds import WORLDS, nth
from fieldid.engine import prepare
from kittiwake import GUIDE

SPECIMENS = 23
"""Not a multiple of what is done in one step."""


def ran(**wishes) -> Run:
    run = Run(GUIDE, **{"specimens": SPECIMENS, "seed": 4, **wishes})
    for _ in run.steps():
        pass
    return run


@pytest.fixture(scope="module")
def whole():
    return ran()


def test_all_of_it_is_done(whole):
    assert whole.whole
    assert whole.done == whole.total == 4 * SPECIMENS
    assert [len(walks) for walks in whole.walks] == [SPECIMENS] * 3


def test_specimens_are_those_of_each_world(whole):
    """Each by its place, and all judged by the guide as it is."""
    for world, walks in zip(WORLDS, whole.walks, strict=True):
        tables = prepare(world.guide(GUIDE))
        drawn = [nth(tables, 4, i) for i in range(SPECIMENS)]
        assert walks == [walked(whole.tables, each, {}) for each in drawn]


def test_steps_say_how_much_is_done():
    run = Run(GUIDE, specimens=SPECIMENS, seed=4)
    done = list(run.steps())

    assert done == sorted(set(done))
    assert done[0] == BIT
    assert done[-1] == run.total


def test_two_processes_give_the_same_figures(whole):
    assert report(ran(processes=2)) == report(whole)


def test_same_seed_gives_the_same_figures(whole):
    assert report(ran()) == report(whole)
    assert replace(report(ran(seed=5)), seed=4) != report(whole)


def test_more_specimens_begin_with_the_same(whole):
    assert ran(specimens=30).walks[0][:SPECIMENS] == whole.walks[0]


@pytest.mark.parametrize("processes", [1, 2])
def test_stopped_audit_keeps_what_was_done(whole, processes):
    run = Run(GUIDE, specimens=SPECIMENS, seed=4, processes=processes)
    steps = run.steps()
    done = [next(steps) for _ in range(2)]
    steps.close()

    assert done == [BIT, 2 * BIT]
    assert not run.whole
    assert run.walks[0] == whole.walks[0][: 2 * BIT]
    found = report(run)
    assert found.own.specimens == 2 * BIT
    assert (found.elsewhere, found.shaken) == ((), ())


def test_nothing_done_is_told_as_nothing():
    found = report(Run(GUIDE, specimens=SPECIMENS))

    assert found.own is None
    assert not found.whole


def test_moves_are_added_up_over_verdicts(whole):
    shaken = Shaken(whole.tables)
    for key in ((handle, f) for handle in handles(whole.tables) for f in FACTORS):
        moved = [dict(shaken.moves(each)).get(key, Moved()) for each in whole.walks[0]]
        assert whole.moves[key].change == pytest.approx(sum(m.change for m in moved))
        assert whole.moves[key].others == sum(m.others for m in moved)
