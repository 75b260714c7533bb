"""`fieldid audit` as it is called, watched at a terminal, and stopped."""

import json
import os
import pty
import signal
import subprocess
import sys
from contextlib import contextmanager
from io import StringIO

import pytest

from fieldid.cli import main
from fieldid.commands.audit import Bar, drawn
from make import PLOVER

GUIDE = str(PLOVER)


def test_audit_tells_all_of_it(capsys):
    assert main(["audit", GUIDE, "--specimens", "12"]) == 0
    told = capsys.readouterr()
    for heading in ("VERDICTS", "CALIBRATION", "CONFUSED", "CLUES", "SHARES"):
        assert heading in told.out
    assert "12 specimens by lot, seed 1" in told.out
    assert told.err == ""


def test_json_is_the_same_with_two_processes(capsys):
    call = ["audit", GUIDE, "--specimens", "12", "--seed", "7", "--json"]

    assert main(call) == 0
    alone = capsys.readouterr().out
    assert main([*call, "--processes", "2"]) == 0
    assert capsys.readouterr().out == alone
    found = json.loads(alone)
    assert found["own"]["specimens"] == 12
    assert found["seed"] == 7
    assert found["whole"] is True


@pytest.mark.parametrize("wrong", ["0", "-3", "many"])
def test_too_few_specimens_are_refused(wrong, capsys):
    with pytest.raises(SystemExit, match="2"):
        main(["audit", GUIDE, "--specimens", wrong])
    assert "--specimens" in capsys.readouterr().err


def test_unknown_guide_is_told(capsys):
    assert main(["audit", "nonsense"]) == 2
    assert "there is no guide 'nonsense'" in capsys.readouterr().err


def test_bar_is_drawn_on_a_terminal_alone():
    plain = StringIO()
    Bar(plain, 10).show(5)

    assert plain.getvalue() == ""


def test_bar_fills_up():
    assert drawn(0 + 10, 10, 3.0).startswith("[" + "#" * 30 + "] 100 %, about 0 s")
    assert drawn(1, 100, 1.0).startswith("[" + "." * 30 + "]   1 %, about 99 s")


@contextmanager
def at_a_terminal(*more: str):
    """The command with a terminal for its bar, and the terminal's other end."""
    master, slave = pty.openpty()
    call = [sys.executable, "-m", "fieldid", "audit", GUIDE, *more]
    run = subprocess.Popen(call, stdout=subprocess.PIPE, stderr=slave, text=True)
    os.close(slave)
    try:
        yield run, master
    finally:
        run.kill()
        run.communicate()
        os.close(master)


def screen(master: int, until: str = "") -> str:
    """What the terminal was sent, up to some words or to its end."""
    seen = ""
    while not until or until not in seen:
        try:
            seen += os.read(master, 4096).decode()
        except OSError:  # all who wrote to it have gone
            return seen
    return seen


@pytest.mark.parametrize("processes", ["1", "2"])
def test_audit_is_stopped_from_the_keyboard(processes):
    """What was found so far is printed, and the shell is told."""
    with at_a_terminal("--specimens", "100000", "--processes", processes) as at:
        run, master = at
        screen(master, " s left")
        run.send_signal(signal.SIGINT)
        shown = screen(master)
        out, _ = run.communicate(timeout=60)

    assert run.returncode == 130
    assert "Stopped before all was done" in out
    assert "VERDICTS on" in out
    assert "stopped after" in shown
    assert "Traceback" not in shown


def test_terminal_shows_a_bar_and_leaves_none():
    with at_a_terminal("--specimens", "6") as (run, master):
        shown = screen(master)
        out, _ = run.communicate(timeout=60)

    assert run.returncode == 0
    assert "#] 100 %, about 0 s left" in shown
    assert shown.endswith("\r\x1b[K")
    assert "#" not in out
