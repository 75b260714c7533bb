import hashlib
import threading
from dataclasses import replace

import pytest
from werkzeug.test import Client

from bundles import guide
from fieldid.build.site import Bundle, bundle
from fieldid.errors import GuideError, Problem
from fieldid.workbench.phone import Phone


@pytest.fixture(autouse=True)
def _small(monkeypatch):
    """A bundle of three files: what a real one holds is not what is asked here."""
    monkeypatch.setattr("fieldid.workbench.phone.bundle", small)


def small(guides) -> Bundle:
    if not guides:
        return bundle(guides)
    titles = " and ".join(each.title for each in guides)
    build = hashlib.sha256(titles.encode()).hexdigest()[:12]
    page, path = f"<title>{titles}</title>", f"v/{build}/css/app.css"
    return Bundle(build, {"index.html": page.encode(), path: b"p{}", "sw.js": b"0;"})


def titled(title: str):
    return replace(guide(), title=title)


def served(phone: Phone) -> str:
    return phone.served.bundle.build


def answered(phone, path: str = "/") -> tuple[int, str]:
    with Client(phone).get(path) as answer:
        return answer.status_code, answer.get_data(as_text=True)


def rebuilt(phone: Phone) -> None:
    """Waits until what was begun is done."""
    assert phone.rebuild()
    finished(phone)


def finished(phone: Phone) -> None:
    for thread in threading.enumerate():
        if thread.name == "phone":
            thread.join(timeout=60)
    assert phone.state.name != "building"


def test_nothing_is_told_before_the_first_guide(tmp_path):
    phone = Phone(list, tmp_path)

    assert "There is no guide yet" in answered(phone)[1]
    assert answered(phone, "/sw.js")[0] == 404
    assert phone.served is None


def test_app_is_served_once_it_is_made(tmp_path):
    phone = Phone(lambda: [titled("One")], tmp_path / "work")
    phone.make()

    assert answered(phone) == (200, "<title>One</title>")
    assert answered(phone, f"/v/{served(phone)}/css/app.css") == (200, "p{}")
    assert [each.title for each in phone.served.guides] == ["One"]


def test_rebuilding_serves_the_new_and_keeps_the_old(tmp_path):
    """A page that is still open asks for files of the build that it came from."""
    guides = [titled("One")]
    phone = Phone(lambda: guides, tmp_path / "work")
    phone.make()
    before = served(phone)
    guides = [titled("Another")]
    rebuilt(phone)

    assert phone.state.name == "idle"
    assert served(phone) != before
    assert answered(phone) == (200, "<title>Another</title>")
    assert answered(phone, f"/v/{before}/css/app.css") == (200, "p{}")


def test_answer_on_its_way_is_not_broken(tmp_path):
    """It began with the bundle before, whose files are not touched."""
    guides = [titled("One")]
    phone = Phone(lambda: guides, tmp_path / "work")
    phone.make()
    began = phone._app
    guides = [titled("Quite another one with a longer title")]
    rebuilt(phone)

    assert answered(began) == (200, "<title>One</title>")


def test_at_most_two_bundles_are_kept(tmp_path):
    guides = [titled("One")]
    phone = Phone(lambda: guides, tmp_path)
    for number in range(4):
        guides = [titled(f"Title {number}")]
        phone.make()

    assert sorted(path.name for path in tmp_path.iterdir()) == ["3", "4"]


def test_failed_build_says_why_and_leaves_the_old(tmp_path):
    problem = Problem("x.toml", 3, "clue[0].id", "'pad' is used twice", "another id")
    mistakes = []

    def read():
        if mistakes:
            raise GuideError(mistakes)
        return [titled("One")]

    phone = Phone(read, tmp_path)
    phone.make()
    mistakes.append(problem)
    rebuilt(phone)

    assert (phone.state.name, phone.state.say) == ("failed", str(problem))
    assert answered(phone) == (200, "<title>One</title>")


def test_failed_build_can_be_made_good(tmp_path):
    guides = []
    phone = Phone(lambda: guides, tmp_path)
    rebuilt(phone)
    assert phone.state.say == "There is no guide to build from."

    guides = [titled("One")]
    rebuilt(phone)
    assert (phone.state.name, phone.state.say) == ("idle", "")


def test_cut_short_attempt_is_no_hindrance(tmp_path):
    (tmp_path / "1").mkdir()
    (tmp_path / "1" / "index.html").write_text("half")
    phone = Phone(lambda: [titled("One")], tmp_path)
    phone.make()

    assert answered(phone) == (200, "<title>One</title>")


def test_folder_that_cannot_be_copied_is_told(tmp_path, monkeypatch):
    phone = Phone(lambda: [titled("One")], tmp_path)
    phone.make()

    def full(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("shutil.copytree", full)
    rebuilt(phone)
    assert phone.state.say == ("The app could not be written: No space left on device.")


@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_mistake_of_ours_is_not_hidden(tmp_path):
    phone = Phone(lambda: 1 / 0, tmp_path)
    rebuilt(phone)

    assert phone.state.name == "failed"
    assert "by a mistake of fieldid" in phone.state.say


def test_one_build_goes_on_at_a_time(tmp_path):
    go = threading.Event()

    def read():
        go.wait(timeout=60)
        return [titled("One")]

    phone = Phone(read, tmp_path)
    assert [phone.rebuild(), phone.rebuild()] == [True, False]
    assert phone.state.name == "building"
    go.set()
    finished(phone)
    assert phone.served


def test_change_of_the_guides_is_seen_until_it_is_built(tmp_path):
    file = tmp_path / "one.toml"
    phone = Phone(lambda: [titled("One")], tmp_path / "work", files=lambda: [file])
    phone.make()
    assert not phone.changed

    file.write_text("new")
    assert phone.changed
    rebuilt(phone)
    assert not phone.changed


def test_failed_build_is_of_the_guides_as_they_were(tmp_path):
    file = tmp_path / "one.toml"
    phone = Phone(list, tmp_path / "work", files=lambda: [file])
    rebuilt(phone)
    assert (phone.state.name, phone.changed) == ("failed", False)

    file.write_text("new")
    assert phone.changed


def test_change_during_a_build_is_not_lost(tmp_path):
    file = tmp_path / "one.toml"

    def read():
        file.write_text("new")
        return [titled("One")]

    phone = Phone(read, tmp_path / "work", files=lambda: [file])
    phone.make()
    assert phone.changed


def test_copy_is_put_where_it_was_asked_for(tmp_path):
    phone = Phone(lambda: [titled("One")], tmp_path / "work", tmp_path / "out")
    phone.make()

    assert (tmp_path / "out" / "index.html").read_text() == "<title>One</title>"
