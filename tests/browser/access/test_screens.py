"""Every state of every screen: for any eyes, any hands, any size of screen and text; by
the rules of HTML as it lies in the browser, and with nothing refused by the policy.

One walk through all of them is behind these tests, so they lie in one file.
"""

import re

import pytest

from access.pages import PAGES
from access.states import APP
from access.validity import wrong_pages

JOURNEY = (
    "home, a first visit",
    "a code",
    "a size off a photo",
    "an offer",
    "a kept find with photos",
    "the file of all finds",
    "what is in a file",
    "what a round told",
    "a guide that was added",
    "home after the update",
)
"""What the walk passes, in this order."""

# It waits, hidden, for the photo that somebody chooses.
NO_PHOTO = re.compile(r'<img class="stage__photo"(?![^>]* src=)[^>]*>')


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


def test_every_screen_has_a_state(bundle):
    """A new screen needs a line in `access/states.py`."""
    screens = re.findall(r"data-screen=\"?(\w+)", (bundle / "index.html").read_text())

    assert {*screens} == {state.screen for state in APP}
    assert len(screens) > 10


def test_every_piece_was_drawn(bundle, walked):
    """A new piece of a screen needs a state that shows it."""
    pieces = re.findall(r"data-piece=\"?([\w-]+)", (bundle / "index.html").read_text())

    assert sorted({*pieces} - walked.pieces) == []
    assert len(pieces) > 50


def test_names_of_states_are_told_apart():
    names = [str(each) for each in (*APP, *PAGES)]

    assert len({*names}) == len(names)


def test_nothing_is_refused_on_the_way(walked):
    """From the first visit to an update: no refusal, no error on the console."""
    assert walked.said == []


def test_nothing_is_refused_beside_the_app(beside):
    # An answer that refuses a form is told on the console, too.
    assert [each for each in beside.said if "400 (BAD REQUEST)" not in each] == []


def test_walk_is_a_whole_journey():
    names = iter([str(state) for state in APP])

    assert all(name in names for name in JOURNEY)


@pytest.fixture(scope="module")
def pages(walked, beside, bundle, tmp_path_factory):
    """The pages of the build, and what scripts and servers made of them."""
    folder = tmp_path_factory.mktemp("live")
    live = [*walked.pages.values(), *beside.pages.values()]
    for place, text in enumerate(live):
        (folder / f"{place}.html").write_text(NO_PHOTO.sub("", text))
    return [*bundle.glob("*.html"), *sorted(folder.glob("*.html"))]


def test_pages_are_valid(pages):
    assert len(pages) > 60
    assert wrong_pages(pages) == []
