"""A form from before a restart: what was typed comes back by the words of the form."""

import json

import pytest
from bs4 import BeautifulSoup

from desks import Desk
from fieldid.workbench.gate.labelled import NAMELESS, asked, label_name
from make import plover
from workbenches import HASH, SAFE, bench, signed_in

CAUTION = "/guides/plover/table/caution/0"
INNER = ("at.", "tag", "was", "csrf", "label.", "clue-", "gone-")


def typed(page):
    """The words over each field that is shown again, with what stands in it."""
    found = BeautifulSoup(page, "html.parser").select(".typed .field")
    pairs = [(each.select_one("label"), each.select_one("textarea")) for each in found]
    return [(label.text, _plain(area.text)) for label, area in pairs]


def _plain(text: str) -> str:
    return text.removeprefix("\n").replace("\r\n", "\n")


def restart(desk: Desk) -> None:
    """The server starts anew: its secret, and so every token, is another one."""
    desk.app.config["SECRET_KEY"] = "another one"


def test_labels_of_the_form_come_back_in_order(desk):
    desk.open("/guides/plover/table/clue/1")
    restart(desk)
    desk.write("plover", f"# Theirs\n{plover()}")
    desk.send(ask="How thick is it?", why="Wear takes\r\nsome off.")
    found = typed(str(desk.page))

    assert desk.status == 400
    assert desk.said("h1") == "Nothing was saved"
    assert "/guides/plover/table/clue/1" in desk.links()
    assert found[0] == ("Question", "How thick is it?")
    assert ("Part", "head") in found
    assert ("Why", "Wear takes\nsome off.") in found
    assert ("Sizes as made 2: Model years", "1953-1955") in found
    assert ("Kind of clue", "a measure: a length, a weight") in found
    labels = [label for label, _ in found]
    assert labels.index("Question") < labels.index("Part") < labels.index("Why")
    assert not [each for each in labels if each.startswith(INNER) or each == "do"]


@pytest.mark.parametrize(
    ("address", "said"),
    [
        ("/guides/plover/table/part/0", {"name": "club head"}),
        ("/guides/plover/add/clue?kind=choice", {"ask": "How dark is it?"}),
        ("/guides/plover/raw", {"text": plover(('name = "head"', 'name = "x"'))}),
        ("/guides/new", {"title": "Heron reels"}),
    ],
)
def test_form_that_still_fits_is_filled_again(desk, address, said):
    desk.open(address)
    restart(desk)
    desk.send(**said)

    assert desk.status == 409
    assert "the server has started anew" in desk.said(".problems")
    ((key, value),) = said.items()
    fields = desk.fields()
    assert fields.get(f"at.{key}", fields.get(key)).replace("\r\n", "\n") == value
    assert desk.text("plover") == plover()
    # The token is a fresh one: what is sent now is looked at.
    desk.send()
    assert "the server has started anew" not in desk.said()


def test_preview_after_a_restart_saves_nothing(desk):
    desk.open("/guides/plover/table/part/0")
    restart(desk)

    assert desk.send("preview", name="club head").status == 200
    assert desk.text("plover") == plover()
    assert "Saved." in desk.send().said()


def test_choices_come_back_in_their_words(desk):
    desk.open("/guides/plover/finds")
    restart(desk)
    place = desk.place_of("[name=clue-rings]")
    desk.tick("gone-shaft", "y")
    desk.send("typed", place, **{"clue-rings": "green-ivory", "member": "W"})

    assert sorted(typed(str(desk.page))) == [
        ("Shaft: It is gone", "yes"),
        ("What colour are the collar rings?", "green over ivory"),
        ("Which of the set it is", "Wedge"),
    ]


def test_signed_out_author_sees_the_labels(tmp_path):
    """Also where nobody is inside any more, so that no page could be looked up."""
    desk = Desk(tmp_path)
    desk.write("plover", plover())
    client = signed_in(bench(tmp_path, password=HASH))
    page = BeautifulSoup(client.get(CAUTION).text, "html.parser")
    sent = {
        each["name"]: each.get("value", each.text)
        for each in page.select("form[data-unsaved] [name]:not(button)")
    }
    client.application.config["SECRET_KEY"] = "another one"
    sent["at.say"] = "Ask first."
    answer = client.post(CAUTION, data=sent, headers={"Referer": SAFE})

    assert answer.status_code == 401
    assert typed(answer.text) == [("Caution", "Ask first.")]


@pytest.mark.parametrize(
    "address",
    [
        "/guides/plover/table/guide",
        "/guides/plover/table/clue/0",
        "/guides/plover/table/clue/0/option/0",
        "/guides/plover/table/set",
        "/guides/plover/raw",
        "/guides/plover/finds",
        "/guides/new",
    ],
)
def test_every_field_takes_its_label_along(desk, address):
    desk.open(address)
    for form in desk.page.select("main form"):
        fields = form.select(
            "input:not([type=hidden]), textarea:not([readonly]), select"
        )
        for name in {each["name"] for each in fields} - {"take"}:
            (brought,) = form.select(f"input[name='{label_name(name)}']")
            assert json.loads(brought["value"])[0]


@pytest.mark.parametrize(
    "brought",
    ["", "[", "3", "[1, {}]", '["", {}]', '["x", []]', '{"x": {}}', "[" * 99_999],
)
def test_broken_label_does_no_harm(brought):
    sent = [("at.say", "Ask."), ("label.at.say", brought)]

    assert list(asked(sent)) == [(NAMELESS, "Ask.")]


def test_words_of_a_choice_must_be_words():
    label = json.dumps(["Why", {"1": "one", "2": 3}])
    sent = [("why", "1"), ("why", "2"), ("label.why", label)]

    assert list(asked(sent)) == [("Why", "one"), ("Why", "2")]
