"""Mistakes in forms: each is told at its field, and none is saved unseen."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from desks import Desk
from fieldid.errors import GuideError
from fieldid.guides.load import loads
from fieldid.workbench.text.drafts import draft
from make import plover
from mistakes import TWENTY, cases, edited


def test_key_that_stands_twice_in_a_field_is_told(desk):
    desk.open("/guides/plover/table/clue/4").send(first="1951 = 1\n1951 = 5")

    assert desk.status == 400
    assert "1951 stands twice here" in desk.errors()["at.first"]


@pytest.mark.parametrize("block", cases("refusals.txt"))
def test_every_mistake_of_a_file_is_told_at_a_field(tmp_path, block):
    """From the guide's page each mistake leads to a page that tells it, at a field
    wherever there is one.
    """
    desk, (text, lines) = Desk(tmp_path), edited(block)
    desk.write("plover", text)

    desk.open("/guides/plover/")
    troubles = draft(text, desk.rules / "plover.toml").troubles
    for link, trouble in zip(desk.page.select(".told li"), troubles, strict=True):
        told = " ".join(link.get_text(" ").split())
        assert " ".join(trouble.say.split()) in told
        at = link.select_one("a")["href"].removeprefix("/workbench")
        desk.open(at)
        here = trouble.plain if "/table/" in at else trouble.say
        assert " ".join(here.split()) in desk.said(".problems"), (at, told)
        if "/table/" in at:
            places = [a["href"] for a in desk.page.select(".problems a")]
            assert all(desk.page.find(id=href[1:]) for href in places)
    assert len(lines) == len(desk.open("/guides/plover/").page.select(".told li"))


# What a form says in place of each of the twenty mistakes.
MENDED = {
    "guide": {
        "odd": '"titel"',
        "title": "Ember 'Plover' irons",
        "fiction": "true",
        "drawing": "iron",
    },
    "model": {"outside": "0.03"},
    "model_year/0": {"volume": "1.5"},
    "part/1": {"replaced": "seldom"},
    "part/2": {"follows.part": "shaft"},
    "clue/0": {"odd": '"secs"', "replacement": "none = 0.8\nnavy-ivory = 0.1"},
    "clue/0/option/0": {
        "id": "green-ivory",
        "picture.collar.rings": "green, ivory",
        "seen.1.share": "rarely",
    },
    "clue/0/option/1": {"seen.0.from": "1952-05"},
    "clue/1": {"wear": "0.15", "size.1.years": "1953-1955"},
    "clue/2": {"odd": '"part_of"', "spot": "hosel"},
    "clue/2/field/0": {"alphabet": "ABCDEFGHJKLMX"},
    "clue/2/field/2": {"codes": "1951 = 17\n1952 = 18\n1953 = 21"},
    "clue/3/field/1": {"kind": "plain"},
    "set": {"usual": "3, 4, 5"},
    "flag/0": {"when.0.is": "none"},
    "caution/0": {"say": "Have the joint checked before hitting a ball."},
}


def test_twenty_mistakes_are_mended_form_by_form(desk):
    """Each stands at its field until it is mended there; at the end none is left."""
    desk.write("plover", plover(*TWENTY))
    left = len(TWENTY)
    for where, said in MENDED.items():
        desk.open(f"/guides/plover/table/{where}")
        told = desk.errors()
        odd = [
            name
            for name in told
            if "not known here" in desk.said(f"[id='{name}-hint']")
        ]
        fixed = {f"at.{key}": value for key, value in said.items() if key != "odd"}
        assert told, where
        desk.send(
            **{name.replace(".", "__"): "" for name in odd},
            **{key.replace(".", "__"): value for key, value in fixed.items()},
        )
        assert "Saved." in desk.said(), (where, desk.said(".problems"))
        desk.open("/guides/plover/")
        left -= len(told)
        assert len(desk.page.select(".told li")) == left
    loads(desk.text("plover").encode(), file="plover.toml", stem="plover")


def test_mistake_in_a_form_is_not_saved(desk):
    desk.open("/guides/plover/table/model_year/0").send(year="951")

    assert desk.status == 400
    assert "951 does not fit here" in desk.errors()["at.year"]
    assert desk.fields()["at.year"] == "951"
    assert desk.text("plover") == plover()


def test_change_that_breaks_another_table_is_not_saved(desk):
    """The year is named by spans: the summary leads to their pages."""
    desk.open("/guides/plover/table/model_year/2").send(years="1953-1954")

    assert desk.status == 400
    assert "1955 is no model year" in desk.said(".problems")
    assert "/workbench/guides/plover/table/clue/1" in [
        a["href"] for a in desk.page.select(".problems a")
    ]
    assert desk.text("plover") == plover()


def test_what_is_saved_is_not_called_a_preview(desk):
    """A refused form shows the guide as it lies on disk, and says so."""
    desk.open("/guides/plover/table/part/0").send(name="")
    assert "As it is saved now" in desk.said("#previewed")
    desk.open("/guides/plover/table/part/0").send("preview", name="club head")
    assert "Preview, before saving" in desk.said("#previewed")


VALUES = st.one_of(
    st.text(st.characters(codec="utf-8"), max_size=30),
    st.sampled_from(
        [
            "",
            "1952",
            "1951-1955",
            "usually",
            "41/43",
            "nan",
            "1e400",
            "true",
            "[1",
            "a = b\na = c",
            "shape = collar",
            "9" * 40,
            "\x00",
            "\u017f",
            "1951-09 to 1950-01",
        ]
    ),
)


@settings(deadline=None, max_examples=15)
@given(lot=st.data())
def test_whatever_is_sent_gets_an_answer(tmp_path_factory, lot):
    """No form answers with an error of the server, and what is saved is a guide."""
    desk = Desk(tmp_path_factory.mktemp("fuzz"))
    desk.write("plover", plover())
    where = lot.draw(
        st.sampled_from(
            [
                *(f"table/{where}" for where in MENDED),
                *(
                    "add/part",
                    "add/flag",
                    "add/clue?kind=choice",
                    "add/clue?kind=code",
                    "add/clue?kind=measure",
                    "add/clue?kind=number",
                    "add/model_year",
                    "add/clue/0/option",
                    "add/clue/6/layout",
                    "table/prices",
                    "table/prices/set",
                    "table/clue/6/layout/0",
                ),
            ]
        )
    )
    desk.open(f"/guides/plover/{where}")
    names = [name for name in desk.fields() if name != "csrf_token"]
    said = lot.draw(
        st.dictionaries(
            st.sampled_from(
                [*names, "at.seen.7.years", "at.when.x.clue", "at.size.99999.sd"]
            ),
            VALUES,
            max_size=5,
        )
    )
    do = lot.draw(st.sampled_from(["save", "save", "preview", "more", "x"]))
    desk.client.post(
        desk.address.removeprefix("/workbench"),
        data={**desk.fields(), **said, "do": do},
        base_url="http://localhost/workbench",
    )
    try:
        loads(desk.text("plover").encode(), file="plover.toml", stem="plover")
    except GuideError as error:
        raise AssertionError(f"{where} {said}") from error
