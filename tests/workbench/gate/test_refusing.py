"""A form whose token is not good: whatever it asks for, nothing of it is saved."""

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from desks import Desk
from fieldid.workbench.gate.keeping import can_refill
from make import plover
from workbenches import ROOT

EARLIER = "This form is from an earlier session, or the server has started anew since."
GUIDE = {
    "title": "Fen stilts",
    "kind": "golf irons",
    "first": "1951",
    "last": "1955",
    "about": "A line that is tried out.",
    "source": "My own bench.",
    "part_one": "head",
    "part_two": "grip",
    "ask": "How many rings?",
    "answer_one": "one",
    "years_one": "1951-1952",
    "answer_two": "two",
    "years_two": "1953-1955",
}
FORMS = {
    "/guides/plover/table/part/0": {"name": "club head"},
    "/guides/plover/add/caution": {"say": "Ask first."},
    "/guides/plover/raw": {"text": plover(('name = "head"', 'name = "x"'))},
    "/guides/new": GUIDE,
}
"""The forms that are filled in again, each with what could be saved."""
BUTTONS = [None, "save", "x", "", "Preview", "preview", "more", "anyway"]


def files(desk: Desk) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in sorted(desk.rules.glob("**/*.toml"))}


def named(desk: Desk, said: dict[str, str]) -> dict[str, str]:
    """By the names of the fields of the page that lies open."""
    return {f"at.{k}" if f"at.{k}" in desk.fields() else k: v for k, v in said.items()}


@pytest.mark.parametrize("do", BUTTONS)
@pytest.mark.parametrize("address", FORMS)
def test_refused_token_saves_nothing(desk, address, do):
    desk.open(address)
    before, said = files(desk), FORMS[address]
    asked = {} if do is None else {"do": do}
    sent = {**desk.fields(), **named(desk, said), **asked, "csrf_token": "junk"}
    desk.client.post(address, data=sent, base_url=ROOT)

    assert files(desk) == before
    # It was for the token alone.
    desk.send(**said)
    assert files(desk) != before


def test_every_form_filled_again_is_tried(desk):
    known = desk.app.url_map.bind("localhost")
    tried = {known.match(address, method="POST")[0] for address in FORMS}

    views = desk.app.view_functions.items()
    assert tried == {name for name, view in views if can_refill(view)}


@pytest.mark.parametrize("do", ["x", ""])
def test_button_that_is_not_known_saves(desk, do):
    desk.open("/guides/plover/table/part/0").send(do, name="club head")

    assert "Saved." in desk.said()
    assert desk.text("plover") == plover(('name = "head"', 'name = "club head"'))


def test_refused_token_is_no_proof_of_a_restart(desk):
    """It may as well be one of a session that was ended, or none."""
    desk.open("/guides/plover/table/part/0")
    desk.send(name="club head", csrf_token="junk")
    assert desk.said(".problems").startswith(f"Nothing was saved {EARLIER} ")

    answer = desk.client.post(desk.address, base_url=ROOT)
    assert answer.status_code == 400
    page = BeautifulSoup(answer.text, "html.parser")
    assert page.h1.text == "Nothing was saved"
    assert page.select_one("h1 + p").text.startswith(EARLIER)
