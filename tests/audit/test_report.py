"""What is said of an audit: what is confused, never asked, and matters most."""

from dataclasses import replace

import pytest

from fieldid.audit.report import NONE_OF_THESE, report, spelled
from fieldid.audit.run import Run, usual
from fieldid.audit.text import text
from kittiwake import GUIDE
from make import choice, guide, model_year, option, part, span

YEARS = tuple(model_year(year) for year in (1951, 1952, 1953))
TELLS = choice(
    "face", option("dots", span((1951, 1952))), option("lines", span((1953, 1953)))
)
SLOW = choice(
    "side",
    option("flat", span((1951, 1952))),
    option("round", span((1953, 1953))),
    seconds=500,
)
NOTHING = choice("grip", option("black", span()), option("red", span()))
PLAIN = guide(TELLS, SLOW, NOTHING, years=YEARS, outside=0.0)


def ran(guide, specimens=60):
    run = Run(guide, specimens=specimens, seed=2)
    for _ in run.steps():
        pass
    return report(run)


@pytest.fixture(scope="module")
def found():
    return ran(PLAIN, 200)


def test_years_that_look_alike_are_confused(found):
    """1951 and 1952 show the same, so that one of them is always told as the other."""
    first = found.confused[0]

    assert {first.year, first.told} == {"1951", "1952"}
    assert first.times.share > 0.9
    assert found.names == ("1951", "1952", "1953", NONE_OF_THESE)


def test_rows_of_the_matrix_are_whole(found):
    assert [sum(row) for row in found.matrix] == pytest.approx([1, 1, 1, 0])
    assert found.matrix[2][2] > 0.7


def test_clue_that_tells_nothing_is_named(found):
    tells, slow, nothing = found.asked

    assert tells.times.share == 1
    assert tells.worth
    assert not nothing.worth
    assert nothing.times.count == 0
    assert slow.worth
    assert "never worth a look" in text(found)


def test_clue_that_others_always_beat_is_named():
    """The slow clue tells the same as another one that is always read before."""
    found = ran(
        guide(TELLS, SLOW, years=YEARS[1:], parts=(part(replaced=0.0),), outside=0.0)
    )

    assert found.asked[1].times.count == 0
    assert found.asked[1].worth
    assert "never looked at, others tell more for their time" in text(found)


def test_shares_that_matter_come_first(found):
    moves = [max(each.raised, each.lowered) for each in found.shaken]

    assert moves == sorted(moves, reverse=True)
    assert moves[0] > 0
    # Told as a person knows them, and by their ids to a program.
    named = replace(found.shaken[0], clue="c-1", name="first look", option="o-1")
    told = text(replace(found, shaken=(replace(named, label="many holes"),)))
    assert "\n  first look, many holes (" in told
    assert "-1" not in told
    # The grip was never read, so that its shares move nothing.
    assert {each.clue for each in found.shaken} <= {"face", "side"}


def test_verdicts_are_counted_by_their_seconds():
    run = Run(GUIDE, specimens=60, seed=2)
    for _ in run.steps():
        pass
    sure = [each.seconds for each in run.walks[0] if each.sure]
    found = report(run).within

    assert [seconds for seconds, _ in found] == [15, 30, 45, 60, 90, 120, 180, 300]
    for seconds, share in found:
        assert share == sum(each <= seconds for each in sure) / 60
    assert 0 < found[0][1] < found[-1][1]


def test_guide_that_brackets_has_a_width_and_no_matrix():
    ranges = replace(PLAIN, verdict="range")
    found = ran(ranges)

    assert found.width == 2
    assert (found.matrix, found.confused, found.within) == ((), (), ())
    assert "years in a range               2" in text(found)
    assert usual(ranges) < usual(PLAIN)


def test_other_worlds_are_told_beside_the_own():
    found = ran(GUIDE, 40)

    assert [each.name for each in found.elsewhere] == ["replaced", "misread"]
    for say in ("as the guide says", *(each.say for each in found.elsewhere)):
        assert say in text(found)


def test_text_says_that_it_was_stopped():
    assert "Stopped before all was done" in text(report(Run(PLAIN, specimens=5)))
    assert "Stopped" not in text(ran(PLAIN, 5))


def test_span_is_told_in_words():
    assert spelled(span()) == "always"
    assert spelled(span((1951, 1951), since="1951-03")) == "1951, from March 1951"
    assert spelled(span(members=("W",))) == "W alone"
    assert spelled(span(excluded=("P", "S"))) == "not P S"


def test_misreading_more_makes_verdicts_too_sure():
    """Judged by a guide that does not know of it: told 0.9, and true 0.7."""
    face = replace(TELLS, misread=0.1)
    sharp = guide(face, years=YEARS[1:], parts=(part(replaced=0.0),), outside=0.0)
    found = ran(sharp, 300)
    misread = found.elsewhere[1].figures

    assert found.own.told == pytest.approx(misread.told, abs=0.01)
    assert found.own.right.low < 0.9 < found.own.right.high
    assert misread.right.low < 0.7 < misread.right.high
    assert misread.rows[-1].far
    assert not found.own.rows[-1].far
