"""The sheet for a pocket: what is reckoned of its heights."""

import pytest

from fieldid.web.sheet import COLUMN, HEIGHT, SIZES, Sheet, hold

ASK = "Which label is on the shaft?"


@pytest.mark.parametrize("size", SIZES)
def test_answers_stand_two_beside_each_other(size):
    sheet = Sheet(size)
    [one, two, three] = [sheet.step(ASK, [("a", True)] * n) for n in (1, 2, 3)]

    assert one == two
    assert three - two == pytest.approx(two - sheet.asked(ASK))


def test_long_words_need_more_lines():
    sheet = Sheet(8.5)

    assert sheet.lines("a" * 200, COLUMN) > sheet.lines("a" * 20, COLUMN) == 1
    assert sheet.step(ASK, [("a" * 60, True)]) > sheet.step(ASK, [("a", True)])
    assert sheet.marks(ASK, ["a" * 60]) > sheet.marks(ASK, ["a"])


def test_drawing_leaves_less_room_for_words():
    sheet = Sheet(8.5)
    drawn, plain = (sheet.step(ASK, [("a" * 25, each)]) for each in (True, False))

    assert drawn > plain


def test_head_and_foot_take_from_the_column():
    sheet = Sheet(8.5)
    bare = sheet.column("", ("",))

    assert sheet.column("a" * 500, ("",)) < bare < HEIGHT
    assert sheet.column("", ("a" * 500,)) < bare


def test_step_that_would_break_goes_over():
    assert hold(10, [4, 4, 4, 4])
    assert not hold(10, [4, 4, 4, 4, 4])
    assert not hold(10, [11])
