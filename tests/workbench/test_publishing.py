import io
import re
import threading
from zipfile import ZipFile

import pytest
from bs4 import BeautifulSoup

from bundles import RULES, built, guide
from fieldid.errors import BuildError
from fieldid.guides.load import load
from fieldid.workbench.phone import Phone, Served, State
from make import plover
from workbenches import HASH, author, bench, signed_in

HOSTED = "https://host.example/clubs/"


class Stand:
    """A phone app that is what a test says, and counts how often it is built."""

    def __init__(self, served=None, state=None, answer=True) -> None:
        self.served = served
        self.state = state or State("idle")
        self.answer = answer
        self.built = 0
        self.changed = False

    def rebuild(self) -> bool:
        self.built += 1
        return self.answer


@pytest.fixture
def at(tmp_path):
    """A browser at a workbench of a guide, with this phone app."""

    def at(app):
        (tmp_path / "plover.toml").write_text(plover())
        made = bench(tmp_path)
        made.extensions["phone"] = app
        return author(made)

    return at


@pytest.fixture
def whole():
    return Stand(Served((guide(),), built()))


def text(answer) -> str:
    return re.sub(r"\s+", " ", BeautifulSoup(answer.text, "html.parser").main.text)


def test_page_tells_what_is_served(at, whole):
    answer = at(whole).get("/publish/")

    assert answer.status_code == 200
    assert f"Build {built().build}, of 1 guide: {guide().title}." in text(answer)
    assert "The largest guide: " in text(answer)
    assert "refresh" not in answer.text


def test_page_without_an_app_offers_to_build_it(at):
    answer = at(Stand()).get("/publish/")

    assert "There is none yet" in text(answer)
    assert "fieldid-app.zip" not in answer.text
    assert BeautifulSoup(answer.text, "html.parser").find("button", string="Build it")


def test_button_builds_once(at, whole):
    browser = at(whole)
    answer = browser.send("/publish/build")

    assert (answer.status_code, answer.location) == (303, "/workbench/publish/")
    assert whole.built == 1


def test_build_that_goes_on_is_told(at):
    app = Stand(answer=False)
    browser = at(app)
    browser.send("/publish/build")

    assert "The app is being built already." in text(browser.get("/publish/"))


def test_form_without_its_token_builds_nothing(at, whole):
    assert at(whole).post("/publish/build").status_code == 400
    assert whole.built == 0


def test_page_looks_again_while_it_is_built(at, whole):
    whole.state = State("building")
    page = BeautifulSoup(at(whole).get("/publish/").text, "html.parser")

    assert page.find("meta", {"http-equiv": "refresh"})["content"] == "3"
    assert not page.find("button", string=re.compile("^Build"))
    assert "Until then the one above is served" in page.main.text


def test_page_tells_why_it_failed(at, whole):
    """Each line of the reason, as text."""
    whole.state = State("failed", "a.toml:3: <b> is wrong\nb.toml:4: too")
    page = BeautifulSoup(at(whole).get("/publish/").text, "html.parser")

    lines = [line.text for line in page.select(".notice li")]
    assert lines == ["a.toml:3: <b> is wrong", "b.toml:4: too"]
    assert "served as before" in page.main.text


def test_build_older_than_the_guides_is_told(at, whole):
    browser, old = at(whole), "Guides were changed since this build: build again."
    assert old not in text(browser.get("/publish/"))

    whole.changed = True
    assert old in text(browser.get("/publish/"))


def test_failure_from_before_a_change_is_not_told(at):
    app = Stand(state=State("failed", "rules holds no whole guide."))
    app.changed = True
    told = text(at(app).get("/publish/"))

    assert "no whole guide" not in told
    assert "could not be built" not in told
    assert "Guides were changed since it was last tried: build it now." in told


def test_guides_left_out_of_a_build_are_told(at, whole):
    whole.state = State("idle", "Left out:\na.toml:3: wrong")
    told = text(at(whole).get("/publish/"))

    assert "Left out:" in told
    assert "a.toml:3: wrong" in told
    assert "could not be built" not in told


def test_address_without_https_gets_our_sentence(at, whole):
    answer = at(whole).get("/publish/", query_string={"address": "host.example/app/"})
    page = BeautifulSoup(answer.text, "html.parser")

    assert "begin with https:// and name a host" in page.find(id="address-error").text
    # Else the browser's own sentence would come before ours.
    assert page.find(id="address")["type"] == "text"
    assert "novalidate" in page.find(id="address").find_parent("form").attrs


def test_app_is_taken_away_as_it_is_served(at, whole):
    answer = at(whole).get("/publish/fieldid-app.zip")

    assert answer.headers["Content-Disposition"] == (
        'attachment; filename="fieldid-app.zip"'
    )
    assert answer.mimetype == "application/zip"
    with ZipFile(io.BytesIO(answer.data)) as archive:
        assert archive.read("sw.js") == built().files["sw.js"]


def test_one_file_is_of_the_guides_that_are_served(at, whole):
    answer = at(whole).get("/publish/fieldid.html")

    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert 'data-packed="tarn-corncrake"' in answer.text


def test_what_takes_it_down_is_taken_away(at, whole):
    with ZipFile(
        io.BytesIO(at(whole).get("/publish/fieldid-taken-down.zip").data)
    ) as archive:
        assert b"no longer here" in archive.read("index.html")
        assert b'data-guides="tarn-corncrake"' in archive.read("index.html")


@pytest.mark.parametrize("file", ["fieldid-app.zip", "fieldid.html"])
def test_nothing_is_taken_away_where_nothing_is(at, file):
    answer = at(Stand()).get(f"/publish/{file}")

    assert answer.status_code == 404
    assert "There is no app yet" in text(answer)


def test_code_is_shown_with_its_address(at, whole):
    page = BeautifulSoup(
        at(whole).get("/publish/", query_string={"address": f" {HOSTED} "}).text,
        "html.parser",
    )

    assert page.main.svg["aria-label"] == "QR code of the address"
    assert page.find("p", string=HOSTED)
    sheet = page.find("a", string="A sheet with it, to print")["href"]
    assert sheet == f"/workbench/publish/fieldid-address.html?address={HOSTED}"


def test_sheet_is_saved_not_shown(at, whole):
    answer = at(whole).get(
        "/publish/fieldid-address.html", query_string={"address": HOSTED}
    )

    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert HOSTED in answer.text


@pytest.mark.parametrize(
    "address", ["http://host.example/", 'https://a"><script>b()</script>.example/ x']
)
def test_wrong_address_is_told_beside_its_field(at, whole, address):
    page = BeautifulSoup(
        at(whole).get("/publish/", query_string={"address": address}).text,
        "html.parser",
    )

    field = page.find(id="address")
    told = field["aria-describedby"].split()
    assert field["value"] == address
    assert page.find(id=told[1]).text
    assert page.find(role="alert").find("a")["href"] == "#address"
    assert not page.main.find_all(["svg", "script"])


def test_sheet_of_a_wrong_address_is_refused(at, whole):
    for address in ("", "http://host.example/"):
        answer = at(whole).get(
            "/publish/fieldid-address.html", query_string={"address": address}
        )
        assert answer.status_code == 400
        assert "no address for phones" in text(answer)


def test_page_on_hosting_tells_all_three(at, whole):
    answer = at(whole).get("/publish/hosting")

    titles = [title.text for title in BeautifulSoup(answer.text, "html.parser")("h2")]
    assert titles == ["Put it on a host", "Bring phones up to date", "Take it down"]


@pytest.mark.parametrize(
    "path",
    ["", "hosting", "fieldid-app.zip", "fieldid.html", "fieldid-taken-down.zip"],
)
def test_stranger_sees_nothing_of_it(tmp_path, whole, path):
    app = bench(tmp_path, password=HASH)
    app.extensions["phone"] = whole

    stranger = author(app, root="https://bench.example/workbench")
    assert stranger.get(f"/publish/{path}").status_code == 303
    assert signed_in(app).get(f"/publish/{path}").status_code == 200


def test_built_app_is_the_one_that_is_told(tmp_path, at):
    """With the real phone app: built in the background, told, and taken away."""
    rules = tmp_path / "rules"
    rules.mkdir()
    (rules / "lone-dunlin.toml").write_text((RULES / "lone-dunlin.toml").read_text())
    app = Phone(
        lambda: [load(path) for path in rules.glob("*.toml")], tmp_path / "work"
    )
    browser = at(app)
    assert "There is none yet" in text(browser.get("/publish/"))

    browser.send("/publish/build")
    [worker] = [each for each in threading.enumerate() if each.name == "phone"]
    worker.join(60)

    build = app.served.bundle.build
    assert f"Build {build}, of 1 guide" in text(browser.get("/publish/"))
    with ZipFile(io.BytesIO(browser.get("/publish/fieldid-app.zip").data)) as archive:
        assert build in archive.read("sw.js").decode()


def test_failed_build_leaves_the_one_before(tmp_path, at):
    def read():
        raise BuildError("There is no guide to build from.")

    app = Phone(read, tmp_path / "work")
    app.served = Served((guide(),), built())
    browser = at(app)
    browser.send("/publish/build")
    for each in threading.enumerate():
        if each.name == "phone":
            each.join(60)

    told = text(browser.get("/publish/"))
    assert "There is no guide to build from." in told
    assert built().build in told


def test_guides_that_are_all_left_out_are_told(at, tmp_path):
    """Whatever the server said when it was started."""
    browser = at(Stand(state=State("failed", f"There is no guide in {tmp_path}.")))
    (tmp_path / "left-out").mkdir()
    (tmp_path / "plover.toml").rename(tmp_path / "left-out" / "plover.toml")
    answer = browser.get("/publish/")

    assert "All guides are left out of the app: take one in." in text(answer)
    assert "There is no guide" not in text(answer)
    page = BeautifulSoup(answer.text, "html.parser")
    assert page.find("a", string="take one in")["href"] == "/workbench/guides/"


def test_nothing_to_build_offers_no_button(at, whole, tmp_path):
    """Whether all guides are left out, or there are none."""
    browser = at(whole)
    (tmp_path / "left-out").mkdir()
    there = (tmp_path / "plover.toml").rename(tmp_path / "left-out" / "plover.toml")
    page = BeautifulSoup(browser.get("/publish/").text, "html.parser")
    assert "the one above is served as before" in page.main.text
    assert not page.select("form[action$=build]")

    there.unlink()
    page = BeautifulSoup(browser.get("/publish/").text, "html.parser")
    assert "There is no guide to build from" in page.main.text
    assert page.find("a", string="Begin one")["href"] == "/workbench/guides/new"
    assert not page.select("form[action$=build]")
