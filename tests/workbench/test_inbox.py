"""The inbox: files dropped, finds decided on, and nothing of a stranger is run."""

import io
import json
import re
import shutil
import subprocess
import sys
import time

import html5lib
import pytest
from bs4 import BeautifulSoup
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import hostile
from fieldid.census import read
from fieldid.guides.load import load
from fieldid.inbox import looking, store
from fieldid.inbox.choice import chosen
from fieldid.inbox.store import beside
from make import PLOVER
from workbenches import author, bench

SCRIPT = "<script>alert(1)</script>"
READ = {"rings": "green-ivory", "pad": 6.1, "stamp": "A017"}
KILLS = 8
LATER = "2026-11-26T10:00:00Z"


@pytest.fixture
def rules(tmp_path):
    folder = tmp_path / "rules"
    folder.mkdir()
    shutil.copy(PLOVER, folder)
    return folder


@pytest.fixture
def app(rules):
    return bench(rules)


@pytest.fixture
def browser(app):
    return author(app)


@pytest.fixture
def inbox(app):
    return app.extensions["place"].inbox


@pytest.fixture
def census(rules):
    return read.beside(rules / PLOVER.name)


def plover(items=None, **changes):
    """A kept find under the small guide."""
    items = items or [{"member": "4", "readings": READ, "gone": []}]
    find = {"format": 1, "guide": "plover", "items": items}
    return hostile.entry(**{"find": find} | changes)


def drop(browser, *files):
    """The answer to files that were dropped, each a name and its bytes."""
    data = {
        "csrf_token": browser.token(),
        "files": [(io.BytesIO(content), name) for name, content in files],
    }
    answer = browser.post("/inbox", data=data, content_type="multipart/form-data")
    # A large form is kept in a file, which the test client leaves open.
    answer.request.environ["wsgi.input"].close()
    return answer


def page(answer):
    return BeautifulSoup(answer.text, "html.parser")


def became(answer):
    """What was said of each file."""
    return [
        " ".join(each.get_text(" ", strip=True).split())
        for each in page(answer).select(".became")
    ]


def problems(answer):
    return {a["href"]: a.text for a in page(answer).select(".problems a")}


def accept(browser, number=1, **changes):
    fields = {
        "accept-years": "1952",
        "accept-how": "receipt",
        "accept-note": "of May 1953",
        "accept-name": "Iron from the fair",
    } | {f"accept-{name}": value for name, value in changes.items()}
    return browser.post(
        f"/inbox/{number}/accept", data={"csrf_token": browser.token(), **fields}
    )


def refuse(browser, number=1, reason="too dark"):
    fields = {"csrf_token": browser.token(), "refuse-reason": reason}
    return browser.post(f"/inbox/{number}/refuse", data=fields)


def undo(browser, number=1):
    return browser.post(
        f"/inbox/decisions/{number}/undo", data={"csrf_token": browser.token()}
    )


def test_page_takes_several_files_at_once(browser):
    other = plover(id=hostile.fresh(1))

    answer = drop(
        browser,
        ("one.zip", hostile.pack(*hostile.good())),
        ("two.json", hostile.export(other)),
        ("none.json", b"[]"),
    )

    assert answer.status_code == 200
    assert became(answer) == [
        "one.zip 1 find is new.",
        "two.json 1 find is new.",
        "none.json This file holds no log that fieldid exported.",
    ]
    assert page(answer).select_one("#waiting").text == "To be looked at: 2"


def test_find_by_itself_is_looked_at_like_any_other(browser):
    (told,) = became(drop(browser, ("find.json", json.dumps(hostile.find()).encode())))
    assert told == "find.json 1 find is new."

    assert "On the phone" not in browser.get("/inbox").text
    text = browser.get("/inbox/1").text
    assert "plover, " in text
    assert "phone said" not in text
    assert "phone judged" not in text
    assert browser.get("/inbox/1").status_code == 200


def test_same_file_twice_is_told(browser):
    drop(browser, ("one.json", hostile.export(plover())))

    (told,) = became(drop(browser, ("one.json", hostile.export(plover()))))

    assert re.fullmatch(
        r"one.json This very file was taken in on .+\. It adds nothing\.", told
    )


def test_large_file_goes_through_the_form(browser):
    """Beyond half a megabyte it lies in a file while it is read."""
    photos = [hostile.note(id=hostile.fresh(i), bytes=600_000) for i in range(2)]
    jpeg = hostile.jpeg()
    large = jpeg[:-2] + b"\1" * (600_000 - len(jpeg)) + jpeg[-2:]
    files = [(f"photos/{note['id']}.jpg", large) for note in photos]
    finds = hostile.export(plover(photos=photos))

    answer = drop(browser, ("big.zip", hostile.pack(*files, ("finds.json", finds))))

    assert became(answer) == ["big.zip 1 find is new."]
    assert browser.get("/photos/2").data == large


def test_nothing_chosen_is_a_problem(browser):
    answer = browser.post("/inbox", data={"csrf_token": browser.token()})

    assert answer.status_code == 400
    assert list(problems(answer)) == ["#files"]


def test_find_is_shown_with_its_verdict_and_photos(browser):
    finds = hostile.export(plover(photos=[hostile.note(clue="rings")]))
    files = (hostile.PHOTO, hostile.jpeg()), ("finds.json", finds)
    drop(browser, ("one.zip", hostile.pack(*files)))

    found = page(browser.get("/inbox/1"))

    assert found.h1.text == "Iron from the fair"
    assert "1951" in found.select_one("h2.answer-year").text
    assert "green over ivory" in found.select_one("#read").parent.text
    assert found.img["src"].endswith("/photos/1")
    assert found.img["alt"] == "Photo 1 of rings"
    assert "1952: likely, 71 %" in found.select_one("#sent").parent.text


def test_photo_is_one_fixed_type_and_sandboxed(browser):
    drop(browser, ("one.zip", hostile.pack(*hostile.good())))

    answer = browser.get("/photos/1")

    assert answer.data == hostile.jpeg()
    assert answer.headers["Content-Type"] == "image/jpeg"
    assert answer.headers["Content-Security-Policy"] == "default-src 'none'; sandbox"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize("number", ["0", "7", "9" * 12, "9" * 30, "-1", "1.5", "x"])
def test_numbers_that_are_none_find_nothing(browser, number):
    for path in (f"/photos/{number}", f"/inbox/{number}"):
        assert browser.get(path).status_code == 404


def test_difference_of_the_guide_is_told(browser):
    drop(browser, ("one.json", hostile.export(plover())))

    assert "another version of this guide" in browser.get("/inbox/1").text


def test_find_of_no_guide_can_only_be_refused(browser):
    find = hostile.find(guide="curlew")
    drop(browser, ("one.json", hostile.export(plover(find=find, guide="curlew"))))

    answer = browser.get("/inbox/1")
    assert "There is no guide “curlew” here." in answer.text
    assert not page(answer).select("#accept")
    assert accept(browser).status_code == 409
    assert refuse(browser).status_code == 303


def test_find_of_a_broken_guide_waits(browser, rules):
    drop(browser, ("one.json", hostile.export(plover())))
    (rules / PLOVER.name).write_text("format = 7")

    assert "to be mended first" in browser.get("/inbox/1").text


def test_find_that_does_not_fit_says_why(browser):
    items = [{"readings": {"rings": "plaid"}}]
    drop(browser, ("one.json", hostile.export(plover(items))))

    assert "plaid" in page(browser.get("/inbox/1")).select(".notice")[-1].text


def test_accepted_find_is_a_row_of_the_census(browser, rules, census):
    drop(browser, ("one.json", hostile.export(plover())))

    assert accept(browser).status_code == 303

    guide = load(rules / PLOVER.name)
    (specimen,) = read.load(census, guide).specimens
    assert specimen.name == "Iron from the fair"
    assert specimen.years == ((1952, 1.0),)
    assert (specimen.how, specimen.note) == ("receipt", "of May 1953")
    assert dict(specimen.item.readings) == READ
    assert specimen.item.member == "4"
    assert page(browser.get("/inbox")).select_one("#waiting").text.endswith("0")


def test_what_the_census_needs_is_asked_for(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))

    answer = accept(browser, years="", how="", name="")

    assert answer.status_code == 400
    assert list(problems(answer)) == ["#accept-name", "#accept-years", "#accept-how"]
    assert not census.exists()


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("years", "1999"),
        ("years", "1951 0.9; 1952 0.9"),
        ("how", "hearsay"),
        ("note", "x" * 201),
        ("name", "x" * 201),
    ],
)
def test_what_the_census_refuses_is_told_at_its_field(browser, census, field, value):
    drop(browser, ("one.json", hostile.export(plover())))

    answer = accept(browser, **{field: value})

    assert answer.status_code == 400
    assert list(problems(answer)) == [f"#accept-{field}"]
    assert not census.exists()


def test_name_of_another_specimen_is_refused(browser, inbox, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    drop(browser, ("two.json", hostile.export(plover(id=hostile.fresh(1)))))
    before = census.read_text()

    answer = accept(browser, 2, years="1951")

    assert answer.status_code == 409
    assert "says something else" in problems(answer)["#accept-name"]
    assert census.read_text() == before
    assert chosen_numbers(inbox, census) == [2, 1]


def chosen_numbers(inbox, census):
    guide = load(census.with_name(PLOVER.name))
    return [each.number for each in chosen(inbox, guide)]


def test_set_becomes_a_row_for_each_member(browser, rules, census):
    items = [
        {"member": "4", "readings": READ},
        {"member": "5", "readings": {"rings": "green-ivory"}},
        {"member": "W", "readings": {}},
    ]
    drop(browser, ("set.json", hostile.export(plover(items))))
    boxes = page(browser.get("/inbox/1")).select("input[name=accept-members]")
    assert [box["value"] for box in boxes if box.has_attr("checked")] == ["4", "5", "W"]

    assert accept(browser, members=["4", "5"]).status_code == 303

    specimens = read.load(census, load(rules / PLOVER.name)).specimens
    assert [each.name for each in specimens] == [
        "Iron from the fair, 4",
        "Iron from the fair, 5",
    ]


def test_set_without_any_member_is_not_accepted(browser, census):
    items = [{"member": m, "readings": {}} for m in ("4", "5")]
    drop(browser, ("set.json", hostile.export(plover(items))))

    answer = accept(browser)

    assert list(problems(answer)) == ["#accept-members"]
    assert not census.exists()


def test_refused_find_keeps_its_reason(browser, inbox, census):
    drop(browser, ("one.json", hostile.export(plover())))

    refuse(browser, reason=f"too dark {SCRIPT}")

    assert not census.exists()
    assert f"too dark {SCRIPT}" in page(browser.get("/inbox/1")).text
    assert page(browser.get("/inbox")).find("details")
    assert chosen_numbers(inbox, census) == []


def test_refusal_needs_a_reason(browser):
    drop(browser, ("one.json", hostile.export(plover())))

    assert list(problems(refuse(browser, reason=" "))) == ["#refuse-reason"]


def test_undo_takes_the_row_out_of_the_census(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)

    assert undo(browser).status_code == 303

    assert len(census.read_text().splitlines()) == 1
    assert page(browser.get("/inbox")).select_one("#waiting").text.endswith("1")
    assert "undone on" in browser.get("/inbox/1").text


def test_undone_find_can_be_accepted_again(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    undo(browser)

    assert accept(browser, years="1951").status_code == 303
    assert census.read_text().count("Iron from the fair") == 1


def test_row_changed_by_hand_is_not_taken_out(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    census.write_text(census.read_text().replace("May", "June"))

    answer = undo(browser)

    assert answer.status_code == 409
    assert "was changed since it was written" in answer.text
    assert "June" in census.read_text()
    assert page(browser.get("/inbox")).select_one("#waiting").text.endswith("0")


def test_row_taken_out_by_hand_is_gone_already(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    census.unlink()

    assert undo(browser).status_code == 303


def test_decision_is_undone_once(browser):
    drop(browser, ("one.json", hostile.export(plover())))
    refuse(browser)
    undo(browser)

    assert undo(browser).status_code == 409


def test_decided_find_is_not_decided_again(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    refuse(browser)

    answer = accept(browser)

    assert answer.status_code == 409
    assert "undo that first" in answer.text
    assert not census.exists()


def test_decision_cut_short_is_completed(browser, inbox, census):
    """The census has the row, and the inbox was killed before it knew."""
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    with store.writing(inbox) as file:
        file.execute("DELETE FROM decision")
    before = census.read_text()

    assert accept(browser).status_code == 303

    assert census.read_text() == before


def test_census_that_cannot_be_written_leaves_the_find_waiting(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    census.mkdir()

    answer = accept(browser)

    assert answer.status_code == 409
    assert problems(answer)
    assert page(browser.get("/inbox")).select_one("#waiting").text.endswith("1")


def test_one_object_counts_once(browser, census):
    drop(browser, ("one.json", hostile.export(plover())))
    accept(browser)
    drop(browser, ("two.json", hostile.export(plover(changed=LATER))))

    answer = accept(browser, 2, name="another")

    assert "one object counts once" in problems(answer)["#accept-name"]
    assert "Another edition" in answer.text
    assert census.read_text().count("\n") == 2


def test_locked_inbox_is_a_plain_page(browser, inbox, monkeypatch):
    drop(browser, ("one.json", hostile.export(plover())))
    monkeypatch.setattr(store, "PATIENCE", 0.05)

    with store.writing(inbox):
        (told,) = became(drop(browser, ("two.json", hostile.export())))
        answer = refuse(browser)

    assert "in use elsewhere" in told
    assert list(problems(answer)) == ["#refuse-reason"]


def test_damaged_inbox_is_a_plain_page(browser, inbox):
    drop(browser, ("one.json", hostile.export(plover())))
    inbox.write_bytes(b"no database " * 500)

    answer = browser.get("/inbox")

    assert answer.status_code == 503
    assert "not a database" in answer.text


def test_nothing_that_a_file_says_is_markup(browser):
    words = {name: f"{name} {SCRIPT}" for name in ("title", "note", "place")}
    verdict = hostile.verdict(say=SCRIPT)
    bad = hostile.entry(id=hostile.fresh(2), title=SCRIPT, date="x")
    hostile_entry = plover(verdict=verdict, **words)

    answers = [
        drop(browser, (f"{SCRIPT}.json", hostile.export(hostile_entry, bad))),
        browser.get("/inbox"),
        browser.get("/inbox/1"),
    ]

    for answer in answers:
        assert SCRIPT not in answer.text
        assert SCRIPT in page(answer).text


def test_pages_are_valid_html(browser):
    items = [{"member": m, "readings": READ} for m in ("4", "5")]
    entries = [plover(items), plover(id=hostile.fresh(1)), hostile.entry(format=2)]
    answers = [
        drop(browser, ("one.json", hostile.export(*entries))),
        browser.get("/inbox/1"),
        accept(browser, years="x"),
        refuse(browser, 2, ""),
        refuse(browser, 2),
        browser.get("/inbox/2"),
        browser.get("/inbox"),
    ]

    for answer in answers:
        if answer.status_code != 303:
            html5lib.HTMLParser(strict=True).parse(answer.text)
            ids = re.findall(r' id="([^"]+)"', answer.text)
            assert len(ids) == len(set(ids))


def test_every_file_that_lies_is_told_on_the_page(browser):
    cases = [each for group in hostile.GROUPS for each in group()]
    small = [
        (name, data)
        for name, _, data, _ in cases
        if len(data) < 100_000 and name != "find-alone.json"
    ]

    answer = drop(browser, *small)

    assert answer.status_code == 200
    assert len(became(answer)) == len(small) > 100
    assert page(answer).select_one("#waiting").text == "To be looked at: 0"


def test_every_form_holds_its_token(browser):
    drop(browser, ("one.json", hostile.export(plover(), plover(id=hostile.fresh(1)))))
    refuse(browser, 2)

    for path, count in (("/inbox", 2), ("/inbox/1", 3), ("/inbox/2", 1)):
        forms = page(browser.get(path)).select("main form")
        assert len(forms) == count
        assert all(form.select_one("input[name=csrf_token]") for form in forms)


def test_refused_finds_are_listed_with_their_reasons(browser):
    newer = hostile.entry(id=hostile.fresh(2), format=2)

    (told,) = became(drop(browser, ("one.json", hostile.export(plover(), newer))))

    assert told == (
        "one.json 1 find is new. 1 find was not taken: No. 2, Iron from the fair : "
        "This find was written by a newer version of the app "
        "(format 2; this one reads 1)."
    )


def test_forms_without_their_token_do_nothing(browser, inbox):
    for path in ("/inbox", "/inbox/1/accept", "/inbox/1/refuse"):
        assert browser.post(path, data={"x": "y"}).status_code == 400
    assert browser.post("/inbox/decisions/1/undo").status_code == 400
    assert not inbox.exists()


def test_inbox_lies_beside_the_guides(tmp_path):
    """So that whoever hands the folder on does not hand on people's finds."""
    assert beside(tmp_path / "rules") == tmp_path / "rules-inbox.sqlite"


DECIDER = """
import itertools, sys
from pathlib import Path
from fieldid.census.specimens import Specimen
from fieldid.guides.load import load
from fieldid.inbox.choice import chosen
from fieldid.inbox.deciding import accept, undo
from fieldid.workbench.entering import enter, leave, rows_of
inbox, path = map(Path, sys.argv[1:])
guide = load(path)
(found,) = chosen(inbox, guide)
specimen = Specimen("one", ((1952, 1.0),), "receipt", "", found.find.items[0])
rows = rows_of(guide, [specimen])
for number in itertools.count(int(sys.stdin.readline())):
    write = lambda: enter(path, guide, [specimen])
    accept(inbox, 1, rows=rows, now="2026", write=write)
    print(number, flush=True)
    unwrite = lambda made: leave(path, guide, made.rows)
    undo(inbox, number, now="2026", unwrite=unwrite)
"""


def test_killed_while_deciding_can_be_done_once_more(browser, inbox, rules, census):
    """Whatever was cut short, the same decision completes it, and counts once."""
    drop(browser, ("one.json", hostile.export(plover())))
    path = rules / PLOVER.name
    for kill in range(KILLS):
        with store.reading(inbox) as file:
            (last,) = file.execute(
                "SELECT coalesce(max(number), 0) FROM decision"
            ).fetchone()
        process = subprocess.Popen(
            [sys.executable, "-c", DECIDER, str(inbox), str(path)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
        )
        process.stdin.write(f"{last + 1}\n".encode())
        process.stdin.flush()
        process.stdout.readline()
        time.sleep(0.003 * kill)
        process.kill()
        process.communicate()

        kept = looking.kept(inbox, 1)
        if kept.decision:
            assert undo(browser, kept.decision.number).status_code == 303
        assert accept(browser, name="one", note="").status_code == 303
        assert [each.name for each in read.load(census, load(path)).specimens] == [
            "one"
        ]
        assert undo(browser, looking.kept(inbox, 1).decision.number).status_code == 303
        assert read.load(census, load(path)).specimens == ()


@given(
    st.dictionaries(
        st.sampled_from(["years", "how", "note", "name", "members"]),
        st.text(max_size=40) | st.sampled_from(["1952", "receipt", "=1+1", "?"]),
    )
)
@settings(
    max_examples=40,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_any_text_in_the_form_is_told_or_read_back(browser, inbox, rules, fields):
    """What is written can be read: no specimen breaks the census."""
    census = read.beside(rules / PLOVER.name)
    census.unlink(missing_ok=True)
    inbox.unlink(missing_ok=True)
    drop(browser, ("one.json", hostile.export(plover())))

    answer = accept(browser, **fields)

    assert answer.status_code in (303, 400, 409)
    if answer.status_code == 303:
        (specimen,) = read.load(census, load(rules / PLOVER.name)).specimens
        assert not specimen.name.startswith("'=")
        assert not any(
            cell.startswith(("=", "+", "-", "@"))
            for cell in census.read_text().replace('"', "").split(",")
        )
    else:
        assert problems(answer)
        assert not census.exists()
