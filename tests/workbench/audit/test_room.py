"""The audit's page: begun, watched, stopped, and shown, one at a time."""

import html5lib
import pytest
from bs4 import BeautifulSoup

from fieldid.workbench.audit.auditor import BROKEN
from make import PLOVER, plover
from workbenches import author, bench

AUDIT = "/guides/plover/audit"


@pytest.fixture
def app(tmp_path):
    rules = tmp_path / "rules"
    rules.mkdir()
    (rules / "plover.toml").write_text(plover())
    (rules / "other.toml").write_text(plover().replace('id = "plover"', 'id = "other"'))
    made = bench(rules)
    made.logger.disabled = True
    yield made
    stop(made)


@pytest.fixture
def browser(app):
    return author(app)


def stop(app):
    """Nothing of a test goes on behind its back."""
    auditor = app.extensions["auditor"]
    for name in ("plover", "other"):
        auditor.stop(name)
    auditor.wait()


def page(answer) -> BeautifulSoup:
    html5lib.HTMLParser(strict=True).parse(answer.text)
    return BeautifulSoup(answer.text, "html5lib")


def done(app, browser, **fields) -> BeautifulSoup:
    """The page of an audit that was begun and has ended."""
    begun = browser.send(AUDIT, **{"specimens": "50", "seed": "3", **fields})
    assert begun.status_code == 303
    app.extensions["auditor"].wait()
    return page(browser.get(AUDIT))


def test_page_begins_with_a_form(browser):
    found = page(browser.get(AUDIT))

    assert found.h1.text.startswith("Audit of")
    assert found.select_one("#specimens option[selected]")["value"] == "1000"
    assert not found.select("table")


def test_audit_is_shown_with_plots_and_tables(app, browser):
    found = done(app, browser)

    assert "of 50 invented specimens" in found.select_one(".lead").text
    assert "50 specimens, seed 3." in found.main.text
    titles = [each.text for each in found.select("section h2")]
    assert titles == [
        "Verdicts",
        "How soon",
        "Can the figures be trusted?",
        "If the guide is wrong",
        "Which years are confused",
        "Clues",
        "Which shares matter",
    ]
    assert len(found.select("svg.chart")) == 3
    assert all(svg["aria-hidden"] == "true" for svg in found.select("main svg"))
    for section in found.select("section"):
        assert section.select("tbody tr"), section.h2.text
        assert section.table["aria-labelledby"] == section.h2["id"]


def test_figures_are_those_of_the_command(app, browser, capsys):
    from fieldid.cli import main

    found = done(app, browser)
    call = ["audit", str(PLOVER), "--specimens", "50", "--seed", "3"]
    assert main(call) == 0
    told = capsys.readouterr().out
    right = found.select_one("#verdicts").find_next("td").text.replace("\u00a0", " ")
    assert f"right                          {right}" in told


def test_audit_that_goes_on_is_watched(app, browser):
    browser.send(AUDIT, specimens="5000", seed="1")
    found = page(browser.get(AUDIT))

    assert found.progress["max"] == "100"
    assert found.select_one("noscript") is not None
    assert 'http-equiv="refresh"' in found.head.noscript.decode()
    assert found.progress["data-progress"] == f"/workbench{AUDIT}/progress"
    assert 0 <= browser.get(f"{AUDIT}/progress").json <= 100


def test_stopped_audit_shows_what_it_found(app, browser):
    browser.send(AUDIT, specimens="5000", seed="1")
    job = app.extensions["auditor"].job
    while not job.run.done:
        pass
    assert browser.send(f"{AUDIT}/stop").status_code == 303
    app.extensions["auditor"].wait()

    found = page(browser.get(AUDIT))
    assert "stopped before all was done" in found.main.text
    assert found.select("#verdicts")
    assert browser.get(f"{AUDIT}/progress").json is None


def test_only_one_audit_goes_on(app, browser):
    browser.send(AUDIT, specimens="5000", seed="1")
    browser.send("/guides/other/audit", specimens="50", seed="1")
    auditor = app.extensions["auditor"]

    assert auditor.job.name == "plover"
    assert "Another audit goes on" in browser.get("/guides/other/audit").text
    # Stopping one that does not go on stops no other.
    browser.send("/guides/other/audit/stop")
    assert not auditor.job.stop.is_set()


def test_guide_that_was_changed_since_is_told(app, browser, tmp_path):
    assert "changed since" not in done(app, browser).main.text
    (tmp_path / "rules" / "plover.toml").write_text(f"{plover()}\n# one more line\n")

    assert "changed since" in page(browser.get(AUDIT)).main.text


def test_guide_with_mistakes_is_not_tried(app, browser, tmp_path):
    (tmp_path / "rules" / "plover.toml").write_text("id = 3")
    found = page(browser.get(AUDIT))

    assert found.select("main li")
    assert not found.select("main form")
    assert browser.send(AUDIT, specimens="50", seed="1").status_code == 303
    assert app.extensions["auditor"].job is None


@pytest.mark.parametrize(
    "fields",
    [
        {"specimens": "7"},
        {"specimens": "10000000"},
        {"seed": ""},
        {"seed": "-1"},
        {"seed": "9" * 400},
        {"specimens": "50\u0000", "seed": "x"},
    ],
)
def test_wrong_wishes_are_told(app, browser, fields):
    answer = browser.send(AUDIT, **{"specimens": "50", "seed": "1", **fields})
    found = page(answer)

    assert answer.status_code == 400
    assert found.select(".problems a[href^='#']")
    assert app.extensions["auditor"].job is None


def test_form_without_a_token_begins_nothing(app, browser):
    assert browser.post(AUDIT, data={"specimens": "50"}).status_code == 400
    assert browser.post(f"{AUDIT}/stop").status_code == 400
    assert app.extensions["auditor"].job is None


def test_unknown_guide_is_not_found(browser):
    for path in ("", "/progress"):
        assert browser.get(f"/guides/nonsense/audit{path}").status_code == 404
    assert browser.send("/guides/nonsense/audit/stop").status_code == 404


@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_broken_audit_is_told(app, browser, monkeypatch):
    def broken(run):
        raise RuntimeError("a mistake of the code")

    monkeypatch.setattr("fieldid.workbench.audit.auditor.report", broken)
    found = done(app, browser)

    assert BROKEN in found.main.text
    assert found.select("main form")
    monkeypatch.undo()
    assert BROKEN not in done(app, browser).main.text
