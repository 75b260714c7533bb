"""Tables of a guide edited in forms: what is not changed stays, and what is changed
becomes what was meant.
"""

import re
import shutil
import tomllib

import pytest

from desks import Desk
from fieldid.paths import RULES
from make import plover


def tables(desk, guide, most=None):
    """The addresses of all tables of a guide, or of about so many of each list."""
    desk.open(f"/guides/{guide}/")
    found, todo = [], some(desk.links(), most)
    while todo:
        address = todo.pop(0)
        found.append(address)
        below = [a for a in desk.open(address).links() if f"{address}/" in a]
        todo += [a for a in some(below, most) if a not in found]
    return found


def some(links, most):
    """Those of the links that lead to tables; of each list `most`, the first and the
    last among them.
    """
    lists = {}
    for link in links:
        if "/table/" in link:
            lists.setdefault(link.rpartition("/")[0], []).append(link)
    return [
        link
        for each in lists.values()
        for i, link in enumerate(each)
        if most is None or i in (0, len(each) - 1) or i % (len(each) // most + 1) == 0
    ]


@pytest.mark.parametrize("name", [path.stem for path in RULES.glob("*.toml")])
def test_untouched_form_changes_no_byte(tmp_path, name):
    """Whatever a table holds, sending its form as it stands writes nothing anew."""
    for path in RULES.glob("*.toml"):
        shutil.copy(path, tmp_path)
    desk, before = Desk(tmp_path), (RULES / f"{name}.toml").read_text()
    found = tables(desk, name, most=2)

    assert len(found) > 9
    for address in found[:: len(found) // 12 + 1]:
        desk.open(address).send()
        assert desk.status == 200, (address, desk.said(".problems"))
    assert desk.text(name) == before


def test_untouched_form_changes_nothing_that_is_rare(desk):
    """The small guide uses every key."""
    found = tables(desk, "plover")
    assert len(found) == 35

    for address in found:
        desk.open(address).send()
        assert desk.status == 200, (address, desk.said(".problems"))
    assert desk.text("plover") == plover()


def test_changed_field_changes_its_value_alone(desk):
    desk.open("/guides/plover/table/clue/0/option/0")
    desk.send(label="green above ivory", seen__0__share="often", seen__1__to="1953-04")

    assert "Saved." in desk.said()
    assert desk.text("plover") == plover(
        ('"green over ivory"', '"green above ivory"'),
        ('"41/43"', '"often"'),
        ('except = ["W"] },\n  ]', 'except = ["W"], to = "1953-04" },\n  ]'),
    )


def test_words_of_the_trade_become_values(desk):
    desk.open("/guides/plover/table/part/1")
    desk.send(replaced="12,5 %", follows__part="collar", follows__share="Usually")
    # A circle: the collar goes with the shaft.
    assert "circle" in desk.errors()["at.follows.part"]

    desk.open("/guides/plover/table/part/1")
    desk.send(replaced="12,5 %", follows__part="head", follows__share="Usually")

    part = tomllib.loads(desk.text("plover"))["part"][1]
    assert part["replaced"] == 0.125
    assert part["follows"] == {"part": "head", "share": "usually"}
    desk.open("/guides/plover/table/part/1")
    desk.send(replaced="seldom", follows__part="", follows__share="")
    assert desk.text("plover") == plover()


def test_lines_are_added_and_emptied(desk):
    desk.open("/guides/plover/table/clue/0/option/1").send("more")
    desk.send(
        seen__1__years="1955", seen__2__years="1951 \u2013 1952", seen__2__share="1/40"
    )

    seen = tomllib.loads(desk.text("plover"))["clue"][0]["option"][1]["seen"]
    assert seen[1:] == [{"years": 1955}, {"years": "1951-1952", "share": "1/40"}]

    desk.open("/guides/plover/table/clue/0/option/1")
    desk.send(
        **{f"seen__0__{key}": "" for key in ("from", "to", "members")},
        seen__2__years="",
        seen__2__share="",
    )
    seen = tomllib.loads(desk.text("plover"))["clue"][0]["option"][1]["seen"]
    assert seen == [{"years": 1955}]

    desk.open("/guides/plover/table/clue/0/option/1").send(seen__0__years="")
    assert "seen" not in tomllib.loads(desk.text("plover"))["clue"][0]["option"][1]


def test_one_table_and_a_new_line_become_a_list(desk):
    desk.open("/guides/plover/table/flag/0")
    desk.send(
        when__0__is="none, navy-ivory",
        when__1__part="shaft",
        when__1__replaced_over="0.5",
    )

    assert tomllib.loads(desk.text("plover"))["flag"][0]["when"] == [
        {"clue": "rings", "is": ["none", "navy-ivory"]},
        {"part": "shaft", "replaced_over": 0.5},
    ]


def test_picture_is_read_as_its_shape_wants(desk):
    desk.open("/guides/plover/table/clue/0/option/1")
    desk.send("preview", picture__shape="collar")
    desk.send(picture__collar__rings="navy", picture__collar__profile="short")

    picture = tomllib.loads(desk.text("plover"))["clue"][0]["option"][1]["picture"]
    assert picture == {"shape": "collar", "rings": ["navy"], "profile": "short"}


def test_blanks_of_an_alphabet_are_dropped(desk):
    desk.open("/guides/plover/table/clue/2/field/1")
    desk.send(alphabet="9 8 7 6 5  4 3 2 1 0")

    assert "Saved." in desk.said(), desk.said(".problems")
    field = tomllib.loads(desk.text("plover"))["clue"][2]["field"][1]
    assert field["alphabet"] == "9876543210"


def test_place_left_open_is_the_whole_object(desk):
    """Where the drawing has no place of the part's short name."""
    desk.open("/guides/plover/add/part").send(name="ferrule")
    desk.open("/guides/plover/add/clue?kind=number")
    desk.send(ask="Which number?", part="ferrule", first="1951 = 1", last="9")

    assert "Saved." in desk.said(), desk.said(".problems")
    assert tomllib.loads(desk.text("plover"))["clue"][-1]["spot"] == "whole"
    place = len(tomllib.loads(desk.text("plover"))["clue"]) - 1
    desk.open(f"/guides/plover/table/clue/{place}").send(spot="")
    assert "Saved." in desk.said()


def test_clues_without_a_place_bear_another_drawing(desk):
    text = re.sub("^spot = .*\n", "", desk.text("plover"), flags=re.MULTILINE)
    desk.write("plover", text)
    desk.open("/guides/plover/table/guide").send(drawing="thing")

    assert "Saved." in desk.said(), desk.said(".problems")
    clues = tomllib.loads(desk.text("plover"))["clue"]
    assert {clue["spot"] for clue in clues} == {"whole"}


def test_addresses_that_lead_nowhere_are_told(desk):
    for where in (
        "clue/99",
        "clue",
        "clue/0/option",
        "x",
        "guide/1",
        "../../etc",
        "clue/0/0",
        "model/0",
    ):
        for page in ("table", "out", "add"):
            status = desk.open(f"/guides/plover/{page}/{where}").status
            assert status in (404, 308) or (
                page == "add" and where in ("clue", "clue/0/option")
            )
    assert desk.open("/guides/nothing/table/guide").status == 404


def test_guide_that_is_no_toml_leads_to_its_text(desk):
    desk.write("plover", "a = [")
    desk.open("/guides/plover/table/guide")

    assert desk.address.endswith("/guides/plover/raw")
    assert "No form can show this guide" in desk.said()


def test_labels_and_summary_lead_a_screen_reader(desk):
    """Each field has one label, and every word of help belongs to a field."""
    for where in ("clue/0/option/0", "clue/1", "flag/1", "guide"):
        desk.open(f"/guides/plover/table/{where}")
        ids = [each["id"] for each in desk.page.select("[id]")]
        assert len(ids) == len(set(ids))
        for input in desk.page.select("main input, main select, main textarea"):
            if input.get("type") == "hidden":
                continue
            assert len(desk.page.select(f"label[for='{input['id']}']")) == 1
            for told in (input.get("aria-describedby") or "").split():
                assert told in ids
        assert not re.search(r"<script(?![^>]*src)|style=|onclick", str(desk.page))
