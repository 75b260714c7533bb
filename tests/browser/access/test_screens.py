"""Every state of every screen: for any eyes, any hands, any size of screen and text."""

import re

import pytest

from access.pages import PAGES
from access.states import APP


@pytest.mark.parametrize("state", APP, ids=str)
def test_state_has_no_barrier(state, walked):
    """axe-core with target sizes in light; colours in dark and with more contrast; what
    is chosen in forced colours; sizes at twice the text and at 320 pixels; the Tab key.
    """
    assert walked.found[str(state)] == []


@pytest.mark.parametrize("shown", PAGES, ids=str)
def test_page_has_no_barrier(shown, beside):
    assert beside.found[str(shown)] == []


@pytest.mark.parametrize("state", APP, ids=str)
def test_state_is_on_its_screen(state, walked):
    assert walked.shown[str(state)] == [state.screen]


def test_every_screen_has_a_state(bundle, standing):
    """A new screen needs a line in `access/states.py`."""
    screens = re.findall(r"data-screen=\"?(\w+)", (bundle / "index.html").read_text())

    assert {*screens} == {state.screen for state in APP}
    assert len(screens) > 10


def test_every_piece_was_drawn(bundle, standing, walked):
    """A new piece of a screen needs a state that shows it."""
    pieces = re.findall(r"data-piece=\"?([\w-]+)", (bundle / "index.html").read_text())

    assert sorted({*pieces} - walked.pieces) == []
    assert len(pieces) > 50


def test_names_of_states_are_told_apart():
    names = [str(each) for each in (*APP, *PAGES)]

    assert len({*names}) == len(names)
