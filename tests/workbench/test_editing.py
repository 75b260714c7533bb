"""Tables of a guide edited in forms: what is not changed stays, each mistake is told at
its field, and nobody's change is lost.
"""

import re
import shutil
import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from desks import Desk
from fieldid.census.read import beside, load
from fieldid.errors import GuideError
from fieldid.guides.load import load as guide_at
from fieldid.guides.load import loads
from fieldid.paths import RULES
from fieldid.workbench.drafts import draft
from make import plover
from mistakes import TWENTY, cases, edited


@pytest.fixture
def desk(tmp_path):
    desk = Desk(tmp_path)
    desk.write("plover", plover())
    return desk


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
    desk.send(picture="shape = collar\nrings = navy\nprofile = short")

    picture = tomllib.loads(desk.text("plover"))["clue"][0]["option"][1]["picture"]
    assert picture == {"shape": "collar", "rings": ["navy"], "profile": "short"}


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
            assert all(
                href == "#main" or desk.page.find(id=href[1:]) for href in places
            )
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
        "picture": "shape = collar\nrings = green, ivory",
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


@pytest.mark.parametrize(
    ("said", "years"),
    [
        ({"year": "1950"}, [1950, 1951, 1952, "1953-1955"]),
        ({"years": "1940-1945"}, ["1940-1945", 1951, 1952, "1953-1955"]),
        ({"year": "1956"}, [1951, 1952, "1953-1955", 1956]),
    ],
)
def test_new_model_year_goes_to_its_place(desk, said, years):
    desk.open("/guides/plover/add/model_year").send(**said)

    assert "Saved." in desk.said(), desk.said(".problems")
    tables = tomllib.loads(desk.text("plover"))["model_year"]
    assert [each.get("year") or each["years"] for each in tables] == years
    # The page that follows is its own.
    key, year = next(iter(said.items()))
    assert desk.fields()[f"at.{key}"] == year


def test_changed_model_year_goes_to_its_place(desk):
    desk.open("/guides/plover/add/model_year").send(year="1956")
    desk.open("/guides/plover/table/model_year/3").send(year="1950")

    tables = tomllib.loads(desk.text("plover"))["model_year"]
    assert [each.get("year") for each in tables] == [1950, 1951, 1952, None]


@pytest.mark.parametrize("year", ["1951", "1952", "1953"])
def test_model_year_that_is_there_is_told(desk, year):
    desk.open("/guides/plover/add/model_year").send(year=year)

    assert desk.errors()["at.year"].startswith(f"{year} is there already")
    assert desk.text("plover") == plover()


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


def test_answers_are_named_by_their_words_too(desk):
    desk.open("/guides/plover/table/clue/0/option/1").send(label="navy, over ivory")
    desk.open("/guides/plover/table/clue/0/option/0")
    desk.send(like="Navy, over ivory, none")
    desk.open("/guides/plover/table/clue/0")
    desk.send(replacement="no rings = 0.8\nnavy, over ivory = 0.1")
    desk.open("/guides/plover/table/flag/0").send(when__0__is="No rings")

    data = tomllib.loads(desk.text("plover"))
    assert data["clue"][0]["option"][0]["like"] == ["navy-ivory", "none"]
    assert data["clue"][0]["replacement"] == {"none": 0.8, "navy-ivory": 0.1}
    assert data["flag"][0]["when"]["is"] == ["none"]


def test_words_of_two_answers_name_none_of_them(desk):
    desk.open("/guides/plover/table/clue/0/option/1").send(label="no rings")
    desk.open("/guides/plover/table/clue/0/option/0").send(like="no rings")

    assert "no rings is no answer of this clue" in desk.errors()["at.like"]


def test_what_is_saved_is_not_called_a_preview(desk):
    """A refused form shows the guide as it lies on disk, and says so."""
    desk.open("/guides/plover/table/part/0").send(name="")
    assert "As it is saved now" in desk.said("#previewed")
    desk.open("/guides/plover/table/part/0").send("preview", name="club head")
    assert "Preview, before saving" in desk.said("#previewed")


def test_new_short_name_is_taken_over_everywhere(desk):
    desk.open("/guides/plover/table/part/2").send(id="sleeve")
    desk.open("/guides/plover/table/clue/0/option/2").send(id="plain")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert "Saved." in desk.said()
    data = tomllib.loads(desk.text("plover"))
    assert data["clue"][0]["part"] == "sleeve"
    assert data["clue"][0]["spot"] == "collar"
    assert data["prices"]["off"] == {"shaft": "40 %", "sleeve": 15}
    assert data["clue"][0]["replacement"] == {"navy-ivory": 0.1, "plain": 0.8}
    assert data["flag"][0]["when"] == {"clue": "collar-rings", "is": ["plain"]}


CENSUS = """specimen,model_year,how,gone,rings
A,1952,receipt,collar,
B,1953,receipt,,none
"""


def test_new_short_name_is_taken_over_in_the_census(desk):
    census = beside(desk.rules / "plover.toml")
    census.write_text(CENSUS)
    desk.open("/guides/plover/table/part/2").send(id="sleeve")
    desk.open("/guides/plover/table/clue/0/option/2").send(id="plain")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert "“rings” is “collar-rings” in plover.census.csv too." in desk.said()
    assert census.read_text() == (
        CENSUS.replace("rings", "collar-rings")
        .replace("collar,\n", "sleeve,\n")
        .replace("none", "plain")
    )
    assert load(census, guide_at(desk.rules / "plover.toml")).specimens
    desk.open("/guides/plover/table/part/2").send(name="the sleeve")
    assert "census" not in desk.said(".notice")


def test_census_that_keeps_an_old_name_is_told(desk):
    census = beside(desk.rules / "plover.toml")
    census.write_bytes(b"specimen,rings\xff")
    desk.open("/guides/plover/table/clue/0").send(id="collar-rings")

    assert 'id = "collar-rings"' in desk.text("plover")
    assert "The census still says “rings”" in desk.said(".notice")


def test_change_on_disk_is_told_and_kept(desk):
    desk.open("/guides/plover/table/part/0")
    other = plover(
        ('name = "shaft"', 'name = "the shaft"'),
        ("replaced = 0.02", "replaced = 0.03 # new"),
    )
    desk.write("plover", other)
    desk.send(name="club head")

    assert desk.status == 409
    assert "was changed on disk" in desk.said(".problems")
    assert 'name = "head"' in desk.said(".differing")
    assert 'name = "club head"' in desk.said(".differing")
    assert desk.text("plover") == other
    # What the other one changed stays, and what was filled in here comes to it.
    desk.send()
    assert desk.text("plover") == other.replace(
        'name = "head"\nreplaced', 'name = "club head"\nreplaced'
    )


def test_table_that_was_moved_is_not_taken_for_another(desk):
    desk.open("/guides/plover/table/part/0")
    moved = plover().replace(
        '[[part]]\nid = "head"\nname = "head"\nreplaced = 0.02\n\n', ""
    )
    desk.write("plover", moved)
    desk.send(name="club head")

    assert desk.status == 409
    assert "something else stands in this place now" in desk.said(".problems")
    assert desk.fields()["at.name"] == "club head"
    assert desk.text("plover") == moved


def test_file_that_is_gone_is_told(desk):
    desk.open("/guides/plover/table/part/0")
    (desk.rules / "plover.toml").unlink()

    assert desk.send(name="club head").status == 404
    assert list(desk.rules.glob("*.toml")) == []


def test_full_disk_is_told(desk, monkeypatch):
    def full(handle):
        raise OSError(28, "No space left on device")

    desk.open("/guides/plover/table/part/0")
    monkeypatch.setattr("os.fsync", full)

    assert "No space left" in desk.send(name="club head").said(".problems")
    assert desk.text("plover") == plover()


def test_tables_are_added_moved_and_taken_out(desk):
    desk.open("/guides/plover/add/caution").send(say="Wash your hands.")
    assert "Saved." in desk.said()
    assert desk.text("plover").endswith('stray = "60 %"\n')

    page = desk.open("/guides/plover/table/caution/1")
    moving = page.fields(1)
    page.client.post(
        "/guides/plover/move/caution/1",
        data={**moving, "step": "up"},
        base_url="http://localhost/workbench",
    )
    says = [each["say"] for each in tomllib.loads(desk.text("plover"))["caution"]]
    assert says == ["Wash your hands.", "Have the joint checked before hitting a ball."]

    assert "Taken out." in desk.open("/guides/plover/out/caution/0").send().said()
    assert desk.text("plover") == plover()


def test_part_that_is_needed_is_not_taken_out(desk):
    desk.open("/guides/plover/out/part/0").send()

    assert "Nothing was done, since it would not fit" in desk.said()
    assert desk.text("plover") == plover()


@pytest.mark.parametrize("kind", ["choice", "measure", "code", "number"])
def test_new_clue_of_each_kind_is_whole_at_once(desk, kind):
    said = {
        "choice": {
            "option__0__label": "yes",
            "option__1__label": "No!",
            "option__0__seen__0__years": "1951",
        },
        "measure": {
            "unit": "mm",
            "range": "1 to 9,5",
            "size__0__years": "1951-1955",
            "size__0__mean": "4",
            "size__0__sd": "0,5",
        },
        "code": {
            "field__0__name": "year",
            "field__0__kind": "year",
            "field__0__width": "1",
            "field__0__alphabet": "0123456789",
        },
        "number": {"first": "1951 = 1\n1952 = 1 000", "last": "5000"},
    }[kind]
    desk.open("/guides/plover/add/clue")
    desk.open(next(a for a in desk.links() if a.endswith(f"kind={kind}")))
    desk.send(ask="What is on the toe of it?", part="head", spot="toe", **said)

    assert "Saved." in desk.said(), desk.said(".problems")
    clue = tomllib.loads(desk.text("plover"))["clue"][-1]
    assert clue["kind"] == kind
    assert clue["id"] == "toe"
    if kind == "choice":
        assert clue["option"] == [
            {"id": "yes", "label": "yes", "seen": [{"years": 1951}]},
            {"id": "no", "label": "No!"},
        ]


def test_layout_and_prices_of_sets_can_be_added(desk):
    text = desk.text("plover")
    desk.write("plover", text[: text.index("[prices.set]")])
    desk.open("/guides/plover/table/prices/set").send(
        worth="1951 = 200", missing="15 %"
    )
    assert tomllib.loads(desk.text("plover"))["prices"]["set"] == {
        "worth": {"1951": 200},
        "missing": "15 %",
    }

    desk.open("/guides/plover/add/clue/6/layout")
    desk.send(
        years="1930-1935",
        field__0__name="n",
        field__0__kind="plain",
        field__0__width="3",
        field__0__alphabet="01",
    )
    assert len(tomllib.loads(desk.text("plover"))["clue"][6]["layout"]) == 3


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


@settings(deadline=None, max_examples=40)
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
