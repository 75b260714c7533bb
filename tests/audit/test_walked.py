"""One specimen's walk: where it ends, and what is told there."""

import pytest

from fieldid.audit.walked import SURE, answer, walked
from fieldid.audit.worlds import nth
from fieldid.engine import prepare
from fieldid.engine.gain import WORTHWHILE, prospects
from fieldid.engine.one import weigh
from fieldid.engine.specimen import Specimen
from kittiwake import GUIDE
from make import choice, guide, model_year, option, span

TABLES = prepare(GUIDE)
YEARS = (model_year(1951), model_year(1952), model_year(1953))
FACE = choice(
    "face",
    option("dots", span((1951, 1951))),
    option("lines", span((1952, 1952))),
    option("bars", span((1953, 1953))),
)
SIDE = choice("side", option("flat"), option("round"))
PLAIN = prepare(guide(FACE, SIDE, years=YEARS, outside=0.0))


def shown(tables, cell: int, **readings) -> Specimen:
    return Specimen(cell, (False,), None, tuple(readings.items()))


@pytest.mark.parametrize("i", range(25))
def test_walk_ends_when_sure_or_nothing_is_worth_it(i):
    found = walked(TABLES, nth(TABLES, 3, i), {})
    posterior = weigh(TABLES, found.item)
    left = prospects(
        TABLES, found.item, posterior, claimed=None, away=False, without=()
    )

    assert found.sure == (found.p >= SURE)
    assert found.sure or all(each.bits < WORTHWHILE for each in left)
    if found.item.readings:
        before = weigh(
            TABLES, type(found.item)(found.item.readings[:-1], (), found.item.member)
        )
        assert max(*before.years, before.outside) < SURE


def test_seconds_are_those_of_the_clues_asked():
    found = walked(TABLES, nth(TABLES, 3, 1), {})
    seconds = {clue.id: clue.seconds for clue in GUIDE.clues}

    assert found.seconds == sum(seconds[clue] for clue, _ in found.item.readings) > 0


def test_clue_that_tells_nothing_is_never_asked():
    found = walked(PLAIN, shown(PLAIN, 0, face=None, side="flat"), {})

    assert [clue for clue, _ in found.item.readings] == ["face"]
    assert found.bits[0] > WORTHWHILE > found.bits[1]
    assert not found.sure


def test_what_was_known_before_changes_nothing():
    known = {}
    found = [nth(TABLES, 3, i) for i in range(30)]

    shared = [walked(TABLES, each, known) for each in found]
    assert shared == [walked(TABLES, each, {}) for each in found]
    assert known


def test_brier_score_is_that_of_all_years():
    """Nothing told three years apart: 1/3 each, so (2/3)² + 2 (1/3)²."""
    found = walked(PLAIN, shown(PLAIN, 0, face=None, side=None), {})

    assert found.brier == pytest.approx(6 / 9)
    assert found.p == pytest.approx(1 / 3)


def test_stranger_is_right_as_none_of_these():
    found = walked(PLAIN, shown(PLAIN, len(PLAIN.cells), face="dots", side="flat"), {})

    assert found.year == 3
    assert not found.right
    assert answer(PLAIN, [0.1, 0.1, 0.1, 0.7]) == ((3, 3), 0.7)


def test_guide_that_brackets_tells_a_range():
    ranges = prepare(guide(FACE, SIDE, years=YEARS, outside=0.0, verdict="range"))

    told, p = answer(ranges, [0.5, 0.04, 0.4, 0.06])
    assert told == (0, 2)
    assert p == pytest.approx(0.94)
    assert answer(ranges, [0.2, 0.1, 0.1, 0.6]) == ((3, 3), 0.6)


def test_sure_range_does_not_end_the_walk():
    """All years are sure at the beginning, and nothing was looked at."""
    ranges = prepare(guide(FACE, SIDE, years=YEARS, outside=0.0, verdict="range"))

    found = walked(ranges, shown(ranges, 0, face="dots", side="flat"), {})
    assert found.told == (0, 0)
    assert len(found.item.readings) == 1
