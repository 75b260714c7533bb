"""Guides left out of the app, deleted, and put back: nothing is lost on the way."""

import html5lib
import pytest

import hostile
from desks import Desk
from fieldid.census.read import beside
from fieldid.commands.shelf import load_all
from fieldid.paths import RULES
from make import plover
from postbox import drop
from postbox import plover as kept_plover
from workbenches import ROOT

GUIDE = "/guides/plover/"
CENSUS = "specimen,model_year,how,rings\nA,1952,receipt,none\n"


@pytest.fixture
def files(desk):
    """All files of the folder, by their place in it, with what is in them."""

    def found():
        return {
            path.relative_to(desk.rules).as_posix(): path.read_text()
            for path in desk.rules.rglob("*")
            if path.is_file()
        }

    beside(desk.rules / "plover.toml").write_text(CENSUS)
    return found


def act(desk, words, address=GUIDE):
    """Presses the button with these words on a page."""
    desk.open(address)
    buttons = [
        [each.get_text().split(":")[0] for each in form.select("button")]
        for form in desk.page.select("main form")
    ]
    return desk.send(form=next(i for i, each in enumerate(buttons) if words in each))


def test_guide_left_out_is_edited_and_not_built(desk, files):
    desk.write("other", plover().replace('id = "plover"', 'id = "other"'))
    act(desk, "Leave it out of the app")

    assert "It is left out." in desk.said(".notice")
    assert [path.stem for path in desk.rules.glob("*.toml")] == ["other"]
    assert files()["left-out/plover.toml"] == plover()
    assert files()["left-out/plover.census.csv"] == CENSUS
    assert "Left out of the app." in desk.open("/guides/").said()
    desk.open("/guides/plover/table/part/0").send(name="club head")
    assert 'name = "club head"' in files()["left-out/plover.toml"]
    assert "1 specimen in plover.census.csv" in desk.open(f"{GUIDE}census/").said()

    act(desk, "Take it into the app")
    assert set(files()) == {"other.toml", "plover.toml", "plover.census.csv"}
    assert "left out" not in desk.open(GUIDE).said(".notice")


def test_deleting_asks_first_and_says_what_goes(desk, files):
    before = files()
    desk.open(GUIDE)
    assert "/guides/plover/delete" in desk.links()
    desk.open("/guides/plover/delete")

    assert "Its census, plover.census.csv, goes with it" in desk.said()
    assert "Finds in the inbox stay." in desk.said()
    assert files() == before
    desk.send()
    assert "is deleted; it can be put back" in desk.said(".notice")
    assert files() == {f"deleted/1/{name}": text for name, text in before.items()}
    assert desk.open(GUIDE).status == 404


def test_deleted_guide_is_put_back_to_where_it_lay(desk, files):
    before = files()
    desk.open("/guides/plover/delete").send()
    act(desk, "Put it back", "/guides/")
    assert files() == before
    assert desk.address == GUIDE

    act(desk, "Leave it out of the app")
    before = files()
    desk.open("/guides/plover/delete").send()
    act(desk, "Put it back", "/guides/")
    assert files() == before
    assert not list((desk.rules / "deleted").iterdir())


def test_two_deleted_guides_of_a_name_are_both_kept(desk, files):
    for name in ("head", "club head"):
        desk.write("plover", plover(('name = "head"', f'name = "{name}"')))
        desk.open("/guides/plover/delete").send()
    assert 'name = "head"' in files()["deleted/1/plover.toml"]
    assert 'name = "club head"' in files()["deleted/2/plover.toml"]

    act(desk, "Put it back", "/guides/")
    assert 'name = "club head"' in files()["plover.toml"]
    before = files()
    act(desk, "Put it back", "/guides/")
    assert "There is a guide plover here already." in desk.said(".notice")
    assert files() == before


@pytest.mark.parametrize("page", [GUIDE, "/guides/plover/delete"])
def test_guide_that_was_changed_meanwhile_stays(desk, files, page):
    desk.open(page)
    changed = plover(('name = "head"', 'name = "the head"'))
    desk.write("plover", changed)
    desk.send()

    assert "Nothing was done. plover.toml was changed on disk" in desk.said(".notice")
    assert files()["plover.toml"] == changed


def test_guide_whose_clues_others_need_stays(tmp_path):
    desk = Desk(tmp_path)
    for name in ("dated-marks", "golf-club-era"):
        desk.write(name, (RULES / f"{name}.toml").read_text())

    desk.open("/guides/dated-marks/delete")
    assert "taken over by golf-club-era" in desk.said(".notice")
    assert not desk.page.select("main form")
    desk.open("/guides/dated-marks/")
    desk.form(desk.place_of("[name=tag]"))["action"] = "/guides/dated-marks/delete"
    desk.send(form=desk.place_of("[name=tag]"))
    assert "taken over by golf-club-era" in desk.said(".notice")
    act(desk, "Leave it out of the app", "/guides/dated-marks/")
    assert "taken over by golf-club-era" in desk.said(".notice")
    act(desk, "Leave it out of the app", "/guides/golf-club-era/")
    assert "has to stay beside them" in desk.said(".notice")
    assert len(list(tmp_path.glob("*.toml"))) == 2
    assert len(load_all([str(path) for path in tmp_path.glob("*.toml")])) == 2


def test_census_in_the_way_is_not_written_over(desk, files):
    (desk.rules / "left-out").mkdir()
    (desk.rules / "left-out" / "plover.census.csv").write_text("theirs")
    act(desk, "Leave it out of the app")

    assert "plover.census.csv is there already" in desk.said(".notice")
    assert files()["plover.toml"] == plover()
    assert files()["left-out/plover.census.csv"] == "theirs"


def test_finds_wait_for_their_guide(browser, rules):
    """Left out it still judges them; deleted they wait until it is put back."""
    drop(browser, ("one.json", hostile.export(kept_plover())))
    tag = _tag(browser)

    browser.send("/guides/plover/leave-out", tag=tag)
    assert "There is no guide" not in browser.get("/inbox/1").text
    browser.send("/guides/plover/delete", tag=tag)
    assert "There is no guide “plover” here." in browser.get("/inbox/1").text
    browser.send("/guides/deleted/1/back")
    assert "There is no guide" not in browser.get("/inbox/1").text
    assert (rules / "left-out" / "plover.toml").exists()


def _tag(browser):
    return browser.get(GUIDE).text.split('name="tag" value="')[1].split('"')[0]


def test_what_is_sent_without_a_token_does_nothing(browser, rules):
    tag = _tag(browser)
    for where in ("plover/leave-out", "plover/take-in", "plover/delete"):
        sent = browser.post(f"/guides/{where}", data={"tag": tag})
        assert sent.status_code == 400
    assert browser.post("/guides/deleted/1/back").status_code == 400
    assert browser.send("/guides/deleted/1/back").status_code == 404
    assert [path.name for path in rules.iterdir()] == ["plover.toml"]


def test_pages_are_valid_html(desk, files):
    act(desk, "Leave it out of the app")
    desk.write("other", plover().replace('id = "plover"', 'id = "other"'))
    desk.open("/guides/other/delete").send()
    for address in ("/guides/", GUIDE, "/guides/plover/delete"):
        answer = desk.client.get(address, base_url=ROOT)
        html5lib.HTMLParser(strict=True).parse(answer.text)
