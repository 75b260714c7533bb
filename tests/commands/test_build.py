import os
import subprocess
import sys
from pathlib import Path

import pytest

from bundles import RULES
from fieldid.cli import main

PROJECT = Path(__file__).parents[2]
GUIDE = str(RULES / "lone-dunlin.toml")


def test_build_says_what_a_phone_must_fetch(tmp_path, capsys):
    code = main(["build", "--out", str(tmp_path / "out"), GUIDE])

    waiting, first, *budget, then = capsys.readouterr().out.splitlines()
    assert code == 0
    assert waiting.startswith("Building")
    assert first.startswith(f"{tmp_path / 'out'}: build ")
    assert len(budget) == 7
    assert "HTTPS" in then


def test_build_without_a_folder_is_a_wrong_call(capsys):
    with pytest.raises(SystemExit) as left:
        main(["build"])

    assert left.value.code == 2
    assert "--out" in capsys.readouterr().err


def test_guide_with_mistakes_writes_nothing(tmp_path, capsys):
    guide = tmp_path / "bad.toml"
    guide.write_text('format = 1\nid = "bad"\nshape = 1\n')
    code = main(["build", "--out", str(tmp_path / "out"), str(guide)])

    assert code == 1
    assert not (tmp_path / "out").exists()
    assert len(capsys.readouterr().err.splitlines()) > 1


def test_folder_of_somebody_else_is_refused(tmp_path, capsys):
    (tmp_path / "thesis.txt").write_text("mine")
    code = main(["build", "--out", str(tmp_path), GUIDE])

    error = capsys.readouterr().err
    assert code == 1
    assert "holds files that fieldid did not write" in error
    assert error.count("\n") == 1


def test_reader_who_leaves_is_no_mistake():
    """As when the output goes to `head`."""
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "fieldid", "check", GUIDE],
        cwd=PROJECT,
        stdout=writer,
        stderr=subprocess.PIPE,
        text=True,
    )
    os.close(writer)

    assert done.stderr == ""
    assert done.returncode == 0
