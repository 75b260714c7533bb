"""A guide as text: checked, saved with a warning, never over somebody's change."""

from hypothesis import given, settings
from hypothesis import strategies as st

from desks import Desk
from make import plover
from mistakes import TWENTY

RAW = "/guides/plover/raw"


def test_untouched_text_changes_no_byte(desk):
    for text in (plover(), plover().rstrip("\n"), plover() + "\n\n", "\n\n" + plover()):
        desk.write("plover", text)
        assert "Saved." in desk.open(RAW).send().said()
        assert desk.text("plover") == text


def test_text_is_saved(desk):
    text = plover(('name = "shaft"', 'name = "the shaft" # ours'))
    desk.open(RAW).send(text=text.replace("\n", "\r\n"))

    assert desk.text("plover") == text


def test_each_mistake_stands_with_its_line(desk):
    text = plover(*TWENTY)
    desk.open(RAW).send(text=text)

    assert desk.status == 400
    told = desk.page.select(".problems .told > li")
    assert len(told) == len(TWENTY)
    for each in told:
        line = int(each["id"].removeprefix("line-"))
        assert each.select_one("pre").text == text.split("\n")[line - 1].strip()
    assert desk.text("plover") == plover()


def test_mistakes_are_kept_only_when_asked(desk):
    for text in (plover(*TWENTY), "a = [", "", "\x00"):
        desk.open(RAW).send(text=text)
        assert desk.text("plover") != text
        assert "Saved with its mistakes" in desk.send("anyway").said()
        assert desk.text("plover") == text
        desk.write("plover", plover())


def test_check_saves_nothing(desk):
    desk.open(RAW).send("preview", text="a = [")

    assert desk.status == 200
    assert "is not TOML" in desk.said(".told")
    assert desk.text("plover") == plover()


def test_change_on_disk_is_told_and_kept(desk):
    desk.open(RAW)
    other = plover(('name = "shaft"', 'name = "the shaft"'))
    desk.write("plover", other)
    mine = plover(('name = "head"', 'name = "club head"'))
    desk.send("anyway", text=mine)

    assert desk.status == 409
    assert desk.text("plover") == other
    assert desk.page.find(id="theirs").text.strip("\n") == other.strip("\n")
    assert desk.fields()["text"].replace("\r\n", "\n") == mine
    assert 'name = "the shaft"' in desk.said(".differing")


def test_text_that_is_larger_than_a_guide_is_told(desk):
    desk.open(RAW).send(text="#" * 2_000_001)

    assert desk.status in (400, 413)
    assert desk.text("plover") == plover()


@settings(deadline=None, max_examples=20)
@given(
    text=st.text(st.characters(codec="utf-8"), max_size=60),
    at=st.integers(0, len(plover())),
    do=st.sampled_from(["save", "preview", "x"]),
)
def test_whatever_is_written_gets_an_answer(tmp_path_factory, text, at, do):
    desk = Desk(tmp_path_factory.mktemp("raw"))
    desk.write("plover", plover())
    desk.open(RAW).send(do, text=plover()[:at] + text + plover()[at:])

    assert desk.status in (200, 400)
    assert desk.status == 400 or desk.page.find(id="text")
