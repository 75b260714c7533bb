"""Every state of every screen, each with the way to it from the one before.

The app's states are one walk, from an empty phone to an update; `test_screens.py` sees
that no screen and no piece of the app is left out. A new screen is one line here.
"""

from collections.abc import Callable
from dataclasses import dataclass

from playwright.sync_api import Page

from access import ways
from access.hosting import Site

Way = Callable[[Page, Site], None]


@dataclass(frozen=True)
class State:
    """Something that the app can look like."""

    name: str
    screen: str
    """The screen that shows it, as the page calls it."""
    way: Way

    def __str__(self) -> str:
        return self.name


APP = (
    State("home, a first visit", "home", ways.first_visit),
    State("a choice", "look", ways.choice),
    State("a choice of what is drawn, with why it is asked", "look", ways.drawn_choice),
    State("the photos of a listing", "look", ways.photos),
    State("a code", "look", ways.code),
    State("a code that does not fit", "look", ways.wrong_code),
    State("a measure under a sentence over the page", "look", ways.measure),
    State("a measure that does not fit", "look", ways.wrong_measure),
    State("measuring in a photo", "sizing", ways.sizing),
    State("points on a photo", "sizing", ways.points_on_photo),
    State("a size off a photo", "sizing", ways.sized),
    State("a size that nothing asks for", "sizing", ways.no_sizing),
    State("all that shows from here was asked", "look", ways.asked_from_here),
    State("the whole object", "places", ways.places),
    State("a claim before anything was read", "claim", ways.claimed),
    State("a verdict with a claim", "verdict", ways.verdict),
    State("a verdict with replaced parts and red flags", "verdict", ways.flagged),
    State("a message to the seller", "seller", ways.seller),
    State("a short message", "seller", ways.short_message),
    State("an offer", "offer", ways.offer),
    State("an offer with a price that cannot be read", "offer", ways.wrong_price),
    State("prices", "offer", ways.prices),
    State("no wants", "wants", ways.no_wants),
    State("a want that does not fit", "wants", ways.wrong_want),
    State("wants", "wants", ways.wants),
    State("a verdict that is wanted", "verdict", ways.wanted),
    State("no finds", "finds", ways.no_finds),
    State("a kept find", "entry", ways.kept),
    State("a kept find with photos", "entry", ways.photographed),
    State("a photo, larger", "entry", ways.larger),
    State("a field that is refused", "entry", ways.refused_field),
    State("the finds", "finds", ways.finds),
    State("the file of all finds", "finds", ways.exported),
    State("a file that is no file of finds", "finds", ways.refused_file),
    State("what is in a file", "finds", ways.file_opened),
    State("a find that is not here", "entry", ways.no_entry),
    State("another find lies open", "entry", ways.lies_open),
    State("today's verdict beside the kept one", "entry", ways.judged_again),
    State("home with an open draft", "home", ways.draft),
    State("which one is it?", "set", ways.which_member),
    State("a set", "set", ways.members),
    State("a question to a whole set", "look", ways.asked_of_all),
    State("which of them differs?", "look", ways.which_differs),
    State("places of a set", "places", ways.places_of_set),
    State("a set with a stray", "verdict", ways.stray),
    State("a member's own verdict", "verdict", ways.own_verdict),
    State("what the set lacks is wanted", "verdict", ways.lacking),
    State("an offer for a set", "offer", ways.offer_for_set),
    State("marks on anything", "places", ways.marks),
    State("a range of years", "verdict", ways.bracketed),
    State("a swing weight", "look", ways.swing),
    State("practice", "practice", ways.practice),
    State("a round of practice", "practice", ways.practice_round),
    State("an answer that is missing", "practice", ways.unanswered),
    State("what a round told", "practice", ways.practised),
    State("how sure and how often right", "practice", ways.calibrated),
    State("the arithmetic, unchecked", "check", ways.unchecked),
    State("the arithmetic, checked", "check", ways.checked),
    State("guides from files", "guests", ways.guests),
    State("a file that is no guide", "guests", ways.refused_guide),
    State("a guide in a file", "guests", ways.offered_guide),
    State("a guide that was added", "guests", ways.added_guide),
    State("home with an added guide", "home", ways.guest_at_home),
    State("a number", "look", ways.number),
    State("a code in several layouts", "look", ways.layouts),
    State("a photo that never came", "home", ways.missed_photo),
    State("a full phone", "look", ways.full),
    State("an update", "home", ways.updated),
    State("home after the update", "home", ways.up_to_date),
)
"""In the order of the walk."""
