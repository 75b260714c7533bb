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
    assert len(budget) == 8
    assert "HTTPS" in then


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ([], "build needs --out DIR, or --one-file FILE"),
        (["--address", "https://a.example/"], "build needs --out DIR"),
        (["--one-file", "{}/a.html", "--take-down"], "go with --out DIR"),
        (["--one-file", "{}/a.html", "--address", "https://a.example/"], "go with"),
        (["--out", "{}/a", "--take-down", "--one-file", "{}/b"], "leave out the rest"),
        (["--out", "{}/a", "--take-down", "--address", "https://b/"], "leave out"),
        (["--out", "{}/a", "--address", "http://a.example/"], "use https instead"),
    ],
)
def test_wrong_call_is_told_and_writes_nothing(tmp_path, capsys, words, why):
    code = main(["build", *(word.format(tmp_path) for word in words), GUIDE])

    assert code == 2
    assert why in capsys.readouterr().err
    assert not [*tmp_path.iterdir()]


def test_one_file_is_written_alone(tmp_path, capsys):
    file = tmp_path / "app.html"
    code = main(["build", "--one-file", str(file), GUIDE])

    assert code == 0
    assert [*tmp_path.iterdir()] == [file]
    assert 'data-packed="lone-dunlin"' in file.read_text()
    assert "keeps nothing" in capsys.readouterr().out


def test_file_in_no_folder_is_told(tmp_path, capsys):
    file = tmp_path / "nowhere" / "app.html"
    code = main(["build", "--one-file", str(file), GUIDE])

    assert code == 1
    assert f"{file} could not be written: No such file" in capsys.readouterr().err


def test_code_of_the_address_lies_beside_the_folder(tmp_path, capsys):
    """Not in it: the folder is for the host, and the sheet for a printer."""
    address = "https://a.example/"
    out = tmp_path / "site"
    code = main(["build", "--out", str(out), "--address", address, GUIDE])

    assert code == 0
    assert {path.name for path in tmp_path.iterdir()} == {"site", "site-address.html"}
    assert address in (tmp_path / "site-address.html").read_text()
    assert "print it" in capsys.readouterr().out


def test_take_down_writes_over_the_app(tmp_path, capsys):
    out = tmp_path / "site"
    main(["build", "--out", str(out), GUIDE])
    code = main(["build", "--out", str(out), "--take-down", GUIDE])

    assert code == 0
    assert "no longer here" in (out / "index.html").read_text()
    assert "const FILES = [];" in (out / "sw.js").read_text()
    assert "in place of the app" in capsys.readouterr().out


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
