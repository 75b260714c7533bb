"""The list of guides, a new guide from a few answers, and finds to try it on."""

import shutil
import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from desks import Desk
from fieldid.guides.load import load
from fieldid.paths import RULES
from make import PLOVER, plover
from mistakes import TWENTY

ANSWERS = {
    "title": "Ember 'Curlew' irons",
    "maker": "Ember Forge",
    "kind": "golf irons",
    "drawing": "iron",
    "fiction": "invented",
    "first": "1951",
    "last": "1955",
    "about": "A short line of forged irons.",
    "source": "Made up for this test.",
    "part_one": "head",
    "part_two": "collar",
    "ask": "How is the toe shaped?",
    "answer_one": "round",
    "years_one": "1951-1952",
    "answer_two": "square",
    "years_two": "1953-1955",
}


@pytest.fixture
def desk(tmp_path):
    return Desk(tmp_path)


def test_empty_folder_says_how_to_begin(desk):
    assert "There is no guide here yet" in desk.open("/guides/").said()


def test_list_tells_problems_with_their_places(desk):
    desk.write("plover", plover(*TWENTY))
    desk.open("/guides/")

    assert "22 mistakes" in desk.said()
    assert "/guides/plover/table/guide" in desk.links()
    assert "And 17 more." in desk.said()
    assert len(desk.open("/guides/plover/").page.select(".told li")) == 22


def test_warnings_are_told(desk):
    one = plover().partition("[[clue]]")[0].replace('id = "plover"', 'id = "one"')
    clue = """
[[clue]]
id = "x"
part = "head"
kind = "choice"
ask = "Which?"
option = [{ id = "a", label = "a", seen = [{}] }, { id = "b", label = "b" }]
"""
    desk.write("one", one + clue)

    assert "the clue 'x' tells nothing" in desk.open("/guides/").said(".told").lower()


def test_file_that_is_no_text_stays_on_the_list(desk):
    (desk.rules / "bad.toml").write_bytes(b"\xff")

    assert "not UTF-8" in desk.open("/guides/").said()
    assert "not UTF-8" in desk.open("/guides/bad/raw").said()


def test_few_answers_make_a_whole_guide(desk):
    desk.open("/guides/new").send(**ANSWERS)

    assert desk.address == "/guides/ember-curlew-irons/"
    guide = load(desk.rules / "ember-curlew-irons.toml")
    assert [year.year for year in guide.years] == [1951, 1952, 1953, 1954, 1955]
    assert guide.fiction
    assert [part.id for part in guide.parts] == ["head", "collar"]


def test_second_guide_of_a_name_has_another_file(desk):
    desk.open("/guides/new").send(**ANSWERS)
    desk.open("/guides/new").send(**ANSWERS)

    assert desk.address == "/guides/ember-curlew-irons-2/"


@pytest.mark.parametrize(
    ("key", "answer", "told"),
    [
        ("title", " ", "Please fill this in."),
        ("first", "soon", "soon does not fit here"),
        ("last", "1950", "1951-1950 ends before it starts"),
        ("years_two", "1953-1959", "1959 is no model year"),
        ("answer_two", "", "Please fill this in."),
    ],
)
def test_wrong_answer_is_told_at_its_field(desk, key, answer, told):
    desk.open("/guides/new").send(**{**ANSWERS, key: answer})

    assert desk.status == 400
    assert told in desk.errors()[key]
    assert desk.page.select_one(f".problems a[href='#{key}']")
    assert list(desk.rules.glob("*.toml")) == []


def test_all_wrong_answers_are_told_at_once(desk):
    wrong = {"title": "", "last": "1950", "years_one": "soon", "answer_two": ""}
    desk.open("/guides/new").send(**{**ANSWERS, **wrong, "about": " "})

    assert desk.status == 400
    assert set(desk.errors()) == {*wrong, "about"}
    assert "1951-1950 ends before it starts" in desk.errors()["last"]
    assert "soon does not fit here" in desk.errors()["years_one"]
    links = [a["href"] for a in desk.page.select(".problems a")]
    assert len(links) == len(set(links)) == 5


@pytest.mark.parametrize("years", [{"first": ""}, {"last": "soon"}])
def test_missing_year_brings_no_other_mistakes(desk, years):
    desk.open("/guides/new").send(**{**ANSWERS, **years})

    assert set(desk.errors()) == set(years)


@settings(deadline=None, max_examples=15)
@given(
    said=st.dictionaries(
        st.sampled_from(sorted(ANSWERS)),
        st.text(st.characters(codec="utf-8"), max_size=30)
        | st.sampled_from(["1951", "1000", "2999", '"""', "\\", "x" * 3000]),
    )
)
def test_whatever_is_answered_gets_a_guide_or_a_word(tmp_path_factory, said):
    desk = Desk(tmp_path_factory.mktemp("new"))
    desk.open("/guides/new").send(**{**ANSWERS, **said})

    made = list(desk.rules.glob("*.toml"))
    assert len(made) == (desk.status == 200)
    for path in made:
        load(path)
    assert made or desk.errors() or desk.said(".problems")


def test_author_writes_a_guide_and_judges_with_it(desk):
    """From nothing to a verdict, with what the pages ask for and no word of TOML."""
    desk.open("/guides/new").send(**ANSWERS)
    desk.open("/guides/ember-curlew-irons/table/part/1").send(replaced="seldom")
    desk.open("/guides/ember-curlew-irons/add/clue?kind=choice").send(
        ask="What colour are the collar rings?",
        part="collar",
        option__0__label="two green rings",
        option__0__seen__0__years="1951-1953",
        option__0__seen__0__share="nearly always",
        option__1__label="one navy ring",
        option__1__seen__0__years="1953-1955",
    )
    assert "Saved." in desk.said(), desk.said(".problems")
    desk.open("/guides/ember-curlew-irons/finds")
    asked = {each.text: each["for"] for each in desk.page.select("label[for]")}
    fields = {
        asked["How is the toe shaped?"]: "square",
        asked["What colour are the collar rings?"]: "two-green-rings",
    }
    desk.send("typed", **fields)

    assert desk.status == 200
    assert "1953" in desk.said(".tried .answer-year")
    assert "Find 1" in desk.said(".tried")


def test_pasted_find_is_judged_or_refused(desk):
    shutil.copy(PLOVER, desk.rules)
    desk.open("/guides/plover/finds")
    find = '{"format": 1, "guide": "plover", "items": [{"readings": {"pad": 6.0}}]}'
    desk.send("paste", pasted=find, name="Mine")
    assert "Mine" in desk.said(".tried")

    desk.send("paste", form=1, pasted=find.replace("6.0", "99"))
    assert desk.status == 400
    assert "99 is outside the range" in desk.said(".problems")
    desk.open("/guides/plover/finds").send("forget-0")
    assert not desk.page.select(".tried")


@settings(deadline=None, max_examples=15)
@given(lot=st.data())
def test_whatever_is_read_gets_an_answer(tmp_path_factory, lot):
    desk = Desk(tmp_path_factory.mktemp("finds"))
    desk.write("plover", plover())
    desk.open("/guides/plover/finds")
    said = lot.draw(
        st.dictionaries(
            st.sampled_from([name for name in desk.fields() if name != "csrf_token"]),
            st.text(st.characters(codec="utf-8"), max_size=20)
            | st.sampled_from(
                ["?gone", "?cannot", "none", "6,5", "1e999", "[]", "A017"]
            ),
        )
    )
    desk.send(
        lot.draw(st.sampled_from(["typed", "paste", "forget-9", "forget-", "x"])),
        **said,
    )

    assert desk.status in (200, 400)
    assert desk.page.select(".tried") or desk.said("main")


def test_large_guide_stays_usable(desk):
    """Thirty clues and twelve years are an index of links, each to a short page."""
    text = (RULES / "wrackham-teale-dotterel.toml").read_text()
    extra = "".join(
        f"""
[[clue]]
id = "more-{n}"
part = "head"
kind = "choice"
ask = "More {n}?"
option = [{{ id = "a", label = "a" }}, {{ id = "b", label = "b" }}]
"""
        for n in range(12)
    )
    at = text.index("\n[set]")
    desk.write("wrackham-teale-dotterel", text[:at] + extra + text[at:])
    desk.open("/guides/wrackham-teale-dotterel/")

    assert len(desk.page.select("#list-clue ~ .index li")) >= 30
    assert not desk.page.select(".told li") or "mistake" not in desk.said("#troubles")
    assert not desk.page.select("main textarea")
    assert tomllib.loads(desk.text("wrackham-teale-dotterel"))


def test_guide_leads_to_its_rooms_and_back(desk):
    desk.write("plover", plover())

    for place in ("audit", "census/", "finds", "raw"):
        address = f"/guides/plover/{place}"
        assert address in desk.open("/guides/plover/").links()
        assert "/guides/plover/" in desk.open(address).links(), place
        assert desk.said(".bench__way[aria-current]") == "Guides"


def test_mistakes_lead_back_from_each_room(desk):
    desk.write("plover", plover(*TWENTY))

    for place in ("audit", "census/"):
        assert "/guides/plover/" in desk.open(f"/guides/plover/{place}").links()
        assert "Line 10: drawing: 'irno' is no drawing" in desk.said()
        assert str(desk.rules) not in desk.said()


def test_one_of_a_kind_is_told_as_one(desk):
    one = dict.fromkeys(("first", "last", "years_one", "years_two"), "1951")
    desk.open("/guides/new").send(**{**ANSWERS, **one})

    assert "1 model year, 2 parts, 1 clue;" in desk.open("/guides/").said()


def test_two_parts_of_one_name_are_told_at_the_field(desk):
    desk.open("/guides/new").send(
        **{**ANSWERS, "part_two": ANSWERS["part_one"].upper()}
    )

    assert desk.errors() == {"part_two": "There is a part of this name already."}


def test_red_flags_are_listed_by_what_is_odd(desk):
    desk.write("plover", plover())
    desk.open("/guides/plover/")

    assert "There are no rings." in desk.said("[aria-labelledby=list-flag]")


def test_needed_drawing_cannot_be_left_open(desk):
    desk.write("plover", plover())
    desk.open("/guides/plover/table/guide")

    assert desk.page.select("[name='at.drawing']")
    assert not desk.page.select("[name='at.drawing'][value='']")
