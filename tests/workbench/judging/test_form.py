"""What an author types to try a guide on is told at its field, judged as elsewhere."""

import json

import pytest

from fieldid.commands.telling import story
from fieldid.engine import judge, prepare
from fieldid.guides import finds
from fieldid.guides.load import load
from fieldid.web.told import ALWAYS
from fieldid.workbench.judging.chosen import MOST

FINDS = "/guides/plover/finds"


@pytest.fixture
def page(desk):
    """The page with the form, which stands last on it."""
    return desk.open(FINDS)


def typed(desk, *, gone=(), do="typed", **said):
    """Sends what was typed; `gone` names parts."""
    place = desk.place_of("[name=clue-rings], [name=pasted]")
    for part in gone:
        assert desk.page.select(f"[name=gone-{part}]")
    desk.ticked = {f"gone-{part}": ["y"] for part in gone}
    given = {f"clue-{key}" if key in CLUES else key: each for key, each in said.items()}
    return desk.send(do, place, **given)


CLUES = ("rings", "pad", "stamp", "band", "serial", "patent", "mark")


def readings(desk):
    """The newest find as the workbench keeps it."""
    kept = desk.app.extensions["chosen"]["plover"][-1]
    return json.loads(kept.source)["items"][0]


def names(desk):
    return [each.text for each in desk.page.select(".tried > h2")]


def summary(desk):
    return {
        each["href"].removeprefix("#"): each.text
        for each in desk.page.select(".problems__link")
    }


def test_every_mistake_stands_at_its_field(page):
    typed(page, pad="4 cm", stamp="Q999", serial="12000", rings="none")

    assert page.status == 400
    assert page.errors().keys() == {"clue-pad", "clue-stamp", "clue-serial"}
    assert summary(page).keys() == page.errors().keys()
    assert page.page.select_one("[id=clue-pad]")["value"] == "4 cm"
    assert page.page.select_one("[id=clue-rings] [selected]")["value"] == "none"
    assert names(page) == []


@pytest.mark.parametrize("typed_size", ["5.4", "5,4", "5.4 mm", "5.4mm", " 5.4  MM."])
def test_own_unit_or_none_is_taken(page, typed_size):
    typed(page, pad=typed_size)

    assert readings(page)["readings"] == {"pad": 5.4}


def test_size_is_taken_with_its_error(page):
    typed(page, pad="5.4 ± 0.2 mm")

    assert readings(page)["readings"] == {"pad": {"value": 5.4, "error": 0.2}}


@pytest.mark.parametrize(
    ("size", "told"),
    [
        ("0.2 in", "0.2 in is not in mm. Work it out in mm"),
        ("5.4 cm", "5.4 cm is not in mm"),
        ("soon", "soon is no size; would be right: a number, as 7.5, in mm"),
        ("5.4.1", "5.4.1 is no size"),
        ("54", "54 is outside the range; would be right: 3 to 12 mm"),
    ],
)
def test_other_units_are_told(page, size, told):
    typed(page, pad=size)

    assert told in page.errors()["clue-pad"]
    assert names(page) == []


def test_part_is_gone_for_any_kind(page):
    """A box for each part, since what is gone has nothing to be measured either."""
    typed(page, gone=["collar", "head"], band="Qa")

    assert readings(page)["gone"] == ["head", "collar"]
    assert readings(page)["readings"] == {"band": "Qa"}
    assert "head, collar" in page.said(".facts__row")


def test_gone_part_has_nothing_to_read(page):
    typed(page, gone=["head"], pad="6", stamp="A017")

    assert page.errors().keys() == {"clue-pad", "clue-stamp"}
    assert "part is gone" in page.errors()["clue-pad"]
    assert "checked" in page.page.select_one("[name=gone-head]").attrs


def test_every_kind_can_be_left_untold(page):
    typed(page, rings="?", pad="?", stamp="?", serial="?")

    assert readings(page)["readings"] == dict.fromkeys(
        ("rings", "pad", "stamp", "serial")
    )
    assert "can’t tell" in page.said(".facts__say")


@pytest.mark.parametrize("do", ["typed", "paste"])
def test_nothing_is_not_judged(page, do):
    typed(page, do=do, name="Mine")

    assert page.status == 400
    (where,) = summary(page)
    assert page.page.select_one(f"[id='{where}']").name in ("select", "textarea")
    assert names(page) == []


def test_newest_find_stands_on_top(page):
    for rings in ("none", "green-ivory", "navy-ivory"):
        typed(page, rings=rings)

    assert names(page) == ["Find 3", "Find 2", "Find 1"]
    folded = ["open" not in each.attrs for each in page.page.select(".tried__whole")]
    assert folded == [False, True, True]
    assert "Find 3 is judged" in page.said(".notice")


def test_forgotten_find_is_the_one_named(page):
    for rings in ("none", "green-ivory", "navy-ivory"):
        typed(page, rings=rings)
    place = page.place_of("[value=forget-1]")
    page.send("forget-1", place)

    assert names(page) == ["Find 3", "Find 1"]
    typed(page, rings="none")
    assert names(page) == ["Find 4", "Find 3", "Find 1"]


def test_numbers_go_on_when_the_oldest_goes(page):
    for _ in range(MOST + 2):
        typed(page, rings="none")

    assert names(page) == [f"Find {n}" for n in range(MOST + 2, 2, -1)]


def test_verdict_tells_what_the_command_tells(page):
    """Red flags with their question, each part, each reading's weight, cautions."""
    typed(page, gone=["shaft"], rings="none", member="W", pad="8")
    guide = load(page.rules / "plover.toml")
    find = finds.load(page.app.extensions["chosen"]["plover"][-1].source, [guide])
    verdict = judge(prepare(guide), find)
    # A figure and its sign do not part on a page.
    said = page.said(".tried").replace("\N{NO-BREAK SPACE}", " ")

    told = [line.strip() for line in story(guide, verdict).splitlines()]
    assert "There are no rings." in told
    assert "There are no rings." in page.said(".tag__say")
    assert "Was the collar ever replaced?" in page.said(".tag__ask")
    assert [each.say for each in verdict.replaced] == [
        each.text.replace("\N{NO-BREAK SPACE}", " ")
        for each in page.page.select("section:has(> [id$=-parts]) dd")
    ]
    assert all(sentence in said for sentence in ALWAYS)
    for sentence in (
        ALWAYS[0],
        *guide.cautions,
        *(each.say for each in verdict.weights),
    ):
        assert sentence in told
        assert sentence in said


def test_ids_of_verdicts_stay_apart(page):
    for rings in ("none", "green-ivory"):
        typed(page, rings=rings)

    ids = [each["id"] for each in page.page.select("[id]")]
    assert len(ids) == len({*ids})
    pointed = [
        id
        for each in page.page.select("[aria-labelledby]")
        for id in each["aria-labelledby"].split()
    ]
    assert {*pointed} <= {*ids}


def test_pasted_mistake_stands_at_the_text(page):
    typed(page, do="paste", pasted='{"format": 1, "guide": "plover", "items": []}')

    assert page.errors().keys() == {"pasted"}


def test_enter_beside_a_pasted_text_judges_it(page):
    item = {"readings": {"rings": "none"}}
    text = json.dumps({"format": 1, "guide": "plover", "items": [item]})
    typed(page, do="typed", pasted=text, name="Pasted")

    assert names(page) == ["Pasted"]


def test_unknown_answer_is_told(page):
    typed(page, rings="pink")

    assert page.errors().keys() == {"clue-rings"}


def test_unknown_member_is_told(page):
    typed(page, rings="none", member="9")

    assert page.errors().keys() == {"member"}
