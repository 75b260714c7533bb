"""Finds of the inbox accepted into the census or refused, and decisions undone."""

import subprocess
import sys
import time

import pytest

import hostile
from fieldid.census import read
from fieldid.guides.load import load
from fieldid.inbox import looking, store
from make import PLOVER
from postbox import (
    READ,
    SCRIPT,
    accept,
    chosen_numbers,
    drop,
    page,
    plover,
    problems,
    refuse,
    undo,
)

KILLS = 8
LATER = "2026-11-26T10:00:00Z"


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


DECIDER = """
import itertools, sys
from pathlib import Path
from fieldid.census.specimens import Specimen
from fieldid.guides.load import load
from fieldid.inbox.choice import chosen
from fieldid.inbox.deciding import accept, undo
from fieldid.workbench.inbox.entering import enter, leave, rows_of
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
