import re
import signal
import socket
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path
from urllib.request import urlopen

import pytest

from bundles import RULES
from fieldid.cli import main

PROJECT = Path(__file__).parents[2]
GUIDE = str(RULES / "lone-dunlin.toml")


@contextmanager
def serving(*options: str):
    """A server of its own process at a free port, and what it says until it serves."""
    process = subprocess.Popen(
        [sys.executable, "-m", "fieldid", "serve", "--port", "0", *options, GUIDE],
        cwd=PROJECT,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    with process:
        said = []
        for line in process.stdout:
            said.append(line)
            if line.startswith("Stop with"):
                break
        try:
            yield process, "".join(said)
        finally:
            process.kill()


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_server_starts_and_stops_cleanly(number):
    with serving() as (process, said):
        address = re.search(r"Serving at (http://127\.0\.0\.1:\d+/)", said)[1]
        with urlopen(address, timeout=5) as answer:
            assert b"lone-dunlin" in answer.read()
        process.send_signal(number)

        rest, _ = process.communicate(timeout=30)
        assert (process.returncode, rest) == (0, "Stopped.\n")


def test_own_machine_hears_nothing_of_https():
    with serving() as (_, said):
        assert "HTTPS" not in said


def test_other_machines_are_told_what_fails():
    with serving("--host", "0.0.0.0") as (_, said):
        assert "every address of this machine" in said
        assert "never ready for no signal" in said
        assert "web host with HTTPS" in said


def test_files_are_kept_where_asked(tmp_path):
    with serving("--out", str(tmp_path / "kept")):
        assert (tmp_path / "kept" / "sw.js").is_file()


def test_port_in_use_is_one_sentence(capsys):
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        code = main(["serve", "--port", str(port), GUIDE])

    error = capsys.readouterr().err
    assert code == 1
    assert error.startswith(f"Port {port} of 127.0.0.1 is in use by another program")
    assert error.count("\n") == 1


def test_strange_address_is_one_sentence(capsys):
    code = main(["serve", "--host", "no.such.host.invalid", GUIDE])

    error = capsys.readouterr().err
    assert code == 1
    assert "'no.such.host.invalid' is not an address of this machine" in error
    assert error.count("\n") == 1


@pytest.mark.parametrize("port", ["70000", "-1", "http"])
def test_what_is_no_port_is_a_wrong_call(capsys, port):
    with pytest.raises(SystemExit) as left:
        main(["serve", "--port", port])

    assert left.value.code == 2
    assert "Traceback" not in capsys.readouterr().err
