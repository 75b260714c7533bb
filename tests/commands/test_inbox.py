"""`fieldid inbox`: files and folders, what is said of each, and the exit code."""

import pytest

import hostile
from fieldid.cli import main
from fieldid.inbox.looking import shelf
from fieldid.inbox.store import beside


@pytest.fixture
def rules(tmp_path):
    folder = tmp_path / "rules"
    folder.mkdir()
    return folder


def test_folder_is_taken_in_file_by_file(rules, tmp_path, capsys):
    folder = tmp_path / "sync"
    folder.mkdir()
    (folder / "one.ZIP").write_bytes(hostile.pack(*hostile.good()))
    (folder / "two.json").write_bytes(
        hostile.export(hostile.entry(id=hostile.fresh(1)), None)
    )
    (folder / "notes.txt").write_text("not looked at")

    assert main(["inbox", str(folder), "--rules", str(rules)]) == 0

    assert capsys.readouterr().out.splitlines() == [
        f"{folder / 'one.ZIP'}: 1 new",
        f"{folder / 'two.json'}: 1 new",
        f"{folder / 'two.json'}: 1 not taken",
        f"{folder / 'two.json'}: find 2: The find cannot be empty: a table is needed.",
        f"The inbox is {beside(rules)}.",
    ]
    assert shelf(beside(rules)).waits == 2


def test_file_taken_before_is_told(rules, tmp_path, capsys):
    path = tmp_path / "one.json"
    path.write_bytes(hostile.export(hostile.entry()))

    for _ in range(2):
        assert main(["inbox", str(path), "--rules", str(rules)]) == 0

    assert capsys.readouterr().out.splitlines()[-2] == (
        f"{path}: taken in before; nothing is new"
    )


def test_bad_file_costs_the_others_nothing(rules, tmp_path, capsys):
    bad, good = tmp_path / "bad.json", tmp_path / "good.json"
    bad.write_text("[]")
    good.write_bytes(hostile.export(hostile.entry()))

    missing = tmp_path / "missing.zip"
    code = main(["inbox", str(missing), str(bad), str(good), "--rules", str(rules)])

    said = capsys.readouterr()
    assert code == 1
    assert said.out == f"{good}: 1 new\nThe inbox is {beside(rules)}.\n"
    assert said.err.splitlines() == [
        f"{missing}: It cannot be read: No such file or directory.",
        f"{bad}: This file holds no log that fieldid exported.",
    ]
