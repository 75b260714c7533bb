"""`fieldid check`: good guides, warnings, and every mistake at once."""

import shutil

import pytest

from fieldid.cli import main
from fieldid.paths import RULES

DOTTEREL = RULES / "wrackham-teale-dotterel.toml"
IDLE = """
[[clue]]
id = "idle"
part = "head"
kind = "choice"
ask = "Which?"
  [[clue.option]]
  id = "one"
  label = "one"
  [[clue.option]]
  id = "other"
  label = "other"
"""


def test_shipped_guides_are_good(capsys):
    assert main(["check"]) == 0

    out, err = capsys.readouterr()
    assert f"{DOTTEREL}: good: 12 model years, 4 parts, 19 clues" in out
    assert "warning" not in out
    assert err == ""


def test_guide_is_named_by_its_id(capsys):
    assert main(["check", DOTTEREL.stem]) == 0

    assert "good" in capsys.readouterr().out


def test_folder_stands_for_its_guides(tmp_path, capsys):
    shutil.copy(DOTTEREL, tmp_path)
    (tmp_path / "bad.toml").write_text("format = 9\n")

    assert main(["check", str(tmp_path)]) == 1

    out, err = capsys.readouterr()
    assert f"{tmp_path / DOTTEREL.name}: good" in out
    assert "bad.toml:1: format" in err


def test_folder_does_not_hide_an_id(tmp_path, capsys, monkeypatch):
    (tmp_path / DOTTEREL.stem).mkdir()
    monkeypatch.chdir(tmp_path)

    assert main(["check", DOTTEREL.stem]) == 0

    assert "good" in capsys.readouterr().out


def test_folder_without_guides_is_told(tmp_path, capsys):
    assert main(["check", str(tmp_path)]) == 2

    assert f"there is no guide in {tmp_path}" in capsys.readouterr().err


def test_problems_of_all_files_come_together(tmp_path, capsys):
    for name in ("one", "two"):
        (tmp_path / f"{name}.toml").write_text("format = 9\n")

    code = main(["check", *(str(tmp_path / f"{n}.toml") for n in ("one", "two"))])

    out, err = capsys.readouterr()
    assert (code, out) == (1, "")
    assert "one.toml:1: format" in err
    assert "two.toml:1: format" in err


def test_warnings_do_not_fail(tmp_path, capsys):
    """Two options, no span: a guide that can tell no year from another."""
    copy = tmp_path / DOTTEREL.name
    text = DOTTEREL.read_text("utf-8")
    copy.write_text(text[: text.index("[[clue]]")] + IDLE, "utf-8")

    assert main(["check", str(copy)]) == 0

    out, _ = capsys.readouterr()
    assert "warning: the clue 'idle' tells nothing about the year" in out
    assert "warning: 1954-1965 cannot be told apart by any clue" in out


def test_missing_file_is_one_line(tmp_path, capsys):
    assert main(["check", str(tmp_path / "nowhere.toml")]) == 1

    assert capsys.readouterr().err.count("\n") == 1


@pytest.mark.parametrize("name", ["nowhere", "wrackham"])
def test_unknown_id_is_a_wrong_call(name, capsys):
    assert main(["check", name]) == 2

    assert repr(name) in capsys.readouterr().err


def test_copy_under_another_name_is_refused(tmp_path, capsys):
    copy = tmp_path / "other.toml"
    shutil.copy(DOTTEREL, copy)

    assert main(["check", str(copy)]) == 1

    assert "other" in capsys.readouterr().err
