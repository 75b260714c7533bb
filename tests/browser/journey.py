"""One journey without signal, from the first visit to the second build, as a list of
steps. Every engine walks the same one; `drivers.py` is how.
"""

import re
from dataclasses import dataclass, field
from pathlib import Path

from drivers import Phone
from faults import DRAFT, Site, build_of, files_in, published_anew, readings
from serving import TRIED
from steps import READY

CARD = f"[data-guide-card={TRIED}]"
QUESTION = "[data-screen=look] [data-heading]"
STATUS = "[data-status]"
VERDICT = "[data-screen=verdict]"
TITLE = "Iron from the barn"
CLAIMED = "1961"
NEXT_BUILD = "0123456789ab"
STAYS = "in use from the next start"
BUILD = "() => document.querySelector('script[src]').getAttribute('src')"


@dataclass(slots=True)
class Trip:
    """A phone on its way, the host it came from, and what has been seen so far."""

    phone: Phone
    site: Site
    asked: list[str] = field(default_factory=list)
    lead: str = ""


def walk(phone: Phone, folder: Path) -> None:
    """The whole journey with the app that was built into the folder."""
    site = Site(files_in(folder))
    try:
        trip = Trip(phone, site)
        for step in STEPS:
            step(trip)
    finally:
        site.stop()


def install(trip: Trip) -> None:
    """The first visit, until every file is kept and checked."""
    open_kept(trip.phone, trip.site.url)


def lose_the_signal(trip: Trip) -> None:
    trip.site.stop()


def close_and_open(trip: Trip) -> None:
    trip.phone.restart(trip.site.url)
    ready(trip.phone)


def answer_three_questions(trip: Trip) -> None:
    start(trip.phone)
    trip.asked = [answer(trip.phone) for _ in range(3)]
    trip.lead = trip.phone.text(STATUS)
    assert len({*trip.asked}) == 3


def answer_and_take_back(trip: Trip) -> None:
    answer(trip.phone)
    trip.phone.tap("[data-act=undo]")
    trip.phone.until(lambda: trip.phone.texts(STATUS) == [trip.lead])
    trip.phone.until(lambda: readings(trip.phone.ask(DRAFT)) == 3)


def go_on_where_it_was(trip: Trip) -> None:
    """After the browser was closed in the middle of a question."""
    fourth = trip.phone.text(QUESTION)
    close_and_open(trip)
    trip.phone.tap(f"{CARD} [data-act=go-on]")
    trip.phone.until(lambda: trip.phone.texts(QUESTION) == [fourth])
    assert trip.phone.texts(STATUS) == [trip.lead]
    assert fourth not in trip.asked


def reach_the_verdict(trip: Trip) -> None:
    for _ in range(3):
        answer(trip.phone)
    trip.phone.go("#verdict")
    headline = trip.phone.text(f"{VERDICT} h1")
    assert re.search(r"19[56]\d", headline)
    assert re.search(r"\d\s%", headline)
    assert "Invented for demonstration" in trip.phone.text(VERDICT)


def weigh_a_claim(trip: Trip) -> None:
    trip.phone.choose("[data-change=claim]", CLAIMED)
    assert CLAIMED in trip.phone.text(".claim__say")


def keep_the_find(trip: Trip) -> None:
    trip.phone.tap("[data-act=keep]")
    trip.phone.type("[data-own=title]", TITLE)
    said = ".entry__said p"
    trip.phone.until(lambda: trip.phone.texts(said) == ["The title is saved."])


def find_it_again(trip: Trip) -> None:
    """After a reload, and after another start; still without any signal."""
    trip.phone.reload()
    is_kept(trip)
    close_and_open(trip)
    is_kept(trip)


def take_the_next_build(trip: Trip) -> None:
    """There is a signal again, and a newer version: it is offered, taken, and whole."""
    before = build_of(trip.site.files)
    trip.site.files = published_anew(trip.site.files, NEXT_BUILD)
    trip.site.start_again()
    trip.phone.go("#home")
    trip.phone.reload()
    trip.phone.text("[data-act=update]")
    assert before in trip.phone.ask(BUILD)
    trip.phone.tap("[data-act=update]")
    if trip.phone.until(lambda: is_next(trip) or may_stay(trip)) == STAYS:
        close_and_open(trip)
        assert is_next(trip)
    trip.phone.go("#home")
    ready(trip.phone)


def is_next(trip: Trip) -> bool:
    return NEXT_BUILD in trip.phone.ask(BUILD)


def may_stay(trip: Trip) -> str:
    """What a page says that could not keep its readings, if the browser may be why."""
    if trip.phone.is_sure_to_save:
        return ""
    said = "".join(trip.phone.texts("[data-ready]"))
    return STAYS if STAYS in said else ""


def find_it_in_the_next_build(trip: Trip) -> None:
    """Without signal once more."""
    trip.site.stop()
    close_and_open(trip)
    assert NEXT_BUILD in trip.phone.ask(BUILD)
    is_kept(trip)


STEPS = (
    install,
    lose_the_signal,
    close_and_open,
    answer_three_questions,
    answer_and_take_back,
    go_on_where_it_was,
    reach_the_verdict,
    weigh_a_claim,
    keep_the_find,
    find_it_again,
    take_the_next_build,
    find_it_in_the_next_build,
)


def open_kept(phone: Phone, url: str) -> None:
    phone.open(url)
    ready(phone)


def ready(phone: Phone) -> None:
    """Home has said all, so that nothing moves any more that is tapped."""
    phone.until(lambda: any(map(READY.search, phone.texts("[data-ready]"))))


def start(phone: Phone) -> None:
    phone.tap(f"{CARD} [data-act=start]")
    phone.text(QUESTION)


def answer(phone: Phone) -> str:
    """Gives the first answer there is, or "can't tell" where something has to be typed;
    the question.
    """
    asked = phone.text(QUESTION)
    typed = phone.texts(".keypad, #size")
    phone.tap("label.answer", "Can’t tell" if typed else "")
    phone.until(lambda: phone.texts(QUESTION) not in ([], [asked]))
    return asked


def is_kept(trip: Trip) -> None:
    trip.phone.go("#finds")
    trip.phone.until(lambda: trip.phone.texts(".kept__title") == [TITLE])
