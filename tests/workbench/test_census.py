"""The page of a guide's census: what it shows, and what its button writes."""

import re
import shutil

import html5lib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldid.census.read import beside
from fieldid.guides.load import load
from fieldid.paths import RULES
from workbenches import author, bench

DOTTEREL = RULES / "wrackham-teale-dotterel.toml"
PAGE = f"/guides/{DOTTEREL.stem}/census/"
BARE = "specimen,model_year,how\n"


@pytest.fixture
def folder(tmp_path):
    for path in (DOTTEREL, beside(DOTTEREL), RULES / "oxmere-grebe.toml"):
        shutil.copy(path, tmp_path / path.name)
    return tmp_path


@pytest.fixture
def browser(folder):
    return author(bench(folder))


@pytest.fixture
def guide(folder):
    return folder / DOTTEREL.name


def tag(text):
    return re.search(r'name="tag" value="([0-9a-f]{64})"', text)[1]


def ticked(text):
    return re.findall(r'name="take" value="([^"]+)" checked', text)


def write(browser, *names, **more):
    """The answer to the form as the page was, with these counts ticked."""
    seen = more.get("tag") or tag(browser.get(PAGE).text)
    fields = {"csrf_token": browser.token(), "take": list(names), "tag": seen}
    return browser.post(PAGE, data=fields, follow_redirects=True)


def test_page_shows_counts_with_their_intervals(browser):
    text = browser.get(PAGE).text

    assert "44 specimens in wrackham-teale-dotterel.census.csv" in text
    assert "Face scoring: <b>long lines</b><br>1954-1965" in text
    # The figures keep their signs.
    told = "28 of 41: between 54 % and 81 %; the guide expects 34 %"
    assert told.replace(" %", "\u00a0%") in text
    assert "Everything in this guide and its specimens is invented." in text
    assert ticked(text)[0] == "face-scoring.lines.1"
    assert text.count('class="interval"') == text.count('name="take"')
    assert "Grip cap: <b>red with a star</b>, seen 4 times" in text
    html5lib.HTMLParser(strict=True).parse(text)


def test_agreeing_counts_are_not_ticked(browser):
    text = browser.get(PAGE).text
    all_of_them = re.findall(r'name="take" value="([^"]+)"', text)

    assert len(set(all_of_them)) == len(all_of_them) > len(ticked(text))


def test_options_of_a_clue_are_ticked_together(browser):
    """Their shares are weighed against each other, as the page says."""
    text = browser.get(PAGE).text
    clues = {name.partition(".")[0] for name in ticked(text)}
    all_of_them = re.findall(r'name="take" value="([^"]+)"', text)

    assert set(ticked(text)) == {
        name for name in all_of_them if name.partition(".")[0] in clues
    }
    agree = text.partition("Agree</caption>")[2]
    assert ticked(agree)


def test_few_specimens_are_said_to_say_little(browser, guide):
    few = "fewer than ten say little"
    assert few not in browser.get(PAGE).text

    rows = beside(guide).read_text("utf-8").splitlines(keepends=True)
    beside(guide).write_text("".join(rows[:10]), "utf-8")
    assert few in browser.get(PAGE).text
    beside(guide).write_text("".join(rows[:11]), "utf-8")
    assert few not in browser.get(PAGE).text


def undo(browser):
    fields = {"csrf_token": browser.token()}
    return browser.post(f"{PAGE}undo", data=fields, follow_redirects=True).text


def test_counts_that_were_written_can_be_undone(browser, guide):
    before = guide.read_bytes()
    assert "Undo it" not in browser.get(PAGE).text

    assert "Undo it" in write(browser, "face-scoring.lines.1").text
    assert guide.read_bytes() != before
    told = undo(browser)
    assert "as it was before the counts" in told
    assert "Undo it" not in told
    assert guide.read_bytes() == before
    assert "There is nothing to undo" in undo(browser)


def test_undo_leaves_a_later_change_alone(browser, guide):
    write(browser, "face-scoring.lines.1")
    guide.write_text(guide.read_text("utf-8") + "# mine\n", "utf-8")
    after = guide.read_bytes()

    assert "Undo it" not in browser.get(PAGE).text
    assert "was changed since" in undo(browser)
    assert guide.read_bytes() == after


def test_button_writes_the_ticked_counts(browser, guide):
    text = write(browser, "face-scoring.lines.1", "grip-cap.red-lantern.1").text

    assert "2 counts were written." in text
    written = guide.read_text("utf-8")
    assert 'seen = [{ years = "1954-1965", share = "28/41" }]' in written
    assert written.count('source = "census of 44 specimens,') == 2
    assert load(guide).clues


def test_change_on_disk_is_told_and_kept(browser, guide):
    seen = tag(browser.get(PAGE).text)
    guide.write_text(guide.read_text("utf-8") + "# mine\n", "utf-8")
    before = guide.read_bytes()
    text = write(browser, "face-scoring.lines.1", tag=seen).text

    assert "was changed on disk since this page was opened" in text
    assert guide.read_bytes() == before


@pytest.mark.parametrize(
    ("names", "told"),
    [((), "No count was ticked."), (("face-scoring.zigzag",), "nothing is proposed")],
)
def test_nothing_is_written_where_nothing_fits(browser, guide, names, told):
    before = guide.read_bytes()

    assert told in write(browser, *names).text
    assert guide.read_bytes() == before


def test_guide_without_a_census_says_how_to_begin(browser):
    text = browser.get("/guides/oxmere-grebe/census/").text

    assert "oxmere-grebe.census.csv" in text
    assert "specimen,model_year,how,member,gone," in text


def test_problems_of_the_census_are_listed(browser, guide):
    beside(guide).write_text(f"{BARE}A1,1999,<b>hearsay</b>\n", "utf-8")
    text = browser.get(PAGE).text

    assert "Line 2: model_year: &#39;1999&#39; does not say a model year" in text
    assert "&lt;b&gt;hearsay" in text
    assert "<b>hearsay" not in text
    assert "Nothing was written." in write(browser, "x", tag="0" * 64).text


def test_problems_of_the_guide_come_first(browser, guide):
    guide.write_text("format = 9\n", "utf-8")

    assert "The guide has mistakes; mend them first." in browser.get(PAGE).text


def test_large_census_is_for_the_command(browser, guide, monkeypatch):
    monkeypatch.setattr("fieldid.workbench.census.MOST", 1)
    beside(guide).write_text(f"{BARE}A1,1955,family\nA2,1956,family\n", "utf-8")

    assert f"fieldid census {DOTTEREL.stem}" in browser.get(PAGE).text
    assert "too large for a page" in write(browser, "x", tag=hash_of(guide)).text


def hash_of(path):
    from hashlib import sha256

    return sha256(path.read_bytes()).hexdigest()


@pytest.mark.parametrize("name", ["nowhere", "..", "%2e%2e%2fother"])
def test_other_guide_is_not_there(browser, name):
    assert browser.get(f"/guides/{name}/census/").status_code == 404


def test_form_without_its_token_is_refused(browser, guide):
    before = guide.read_bytes()
    answer = browser.post(PAGE, data={"take": "face-scoring.lines.1"})

    assert answer.status_code == 400
    assert guide.read_bytes() == before


@settings(deadline=None, max_examples=40)
@given(take=st.lists(st.text(max_size=30), max_size=4), seen=st.text(max_size=70))
def test_any_form_is_answered_and_writes_nothing(fuzzed, take, seen):
    made, path = fuzzed
    before = path.read_bytes()
    fields = {"csrf_token": made.token(), "take": take, "tag": seen}

    assert made.post(PAGE, data=fields).status_code == 303
    assert path.read_bytes() == before


@pytest.fixture(scope="module")
def fuzzed(tmp_path_factory):
    folder = tmp_path_factory.mktemp("rules")
    for path in (DOTTEREL, beside(DOTTEREL)):
        shutil.copy(path, folder / path.name)
    return author(bench(folder)), folder / DOTTEREL.name
