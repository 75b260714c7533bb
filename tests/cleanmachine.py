"""A machine as somebody has it who has just fetched the project: its files as they are
kept, no environment yet, and a terminal in which commands are typed one by one.
"""

import fnmatch
import os
import re
import shutil
import signal
import socket
import subprocess
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[1]
LONGEST = 900
"""Seconds that a command may take; what hangs is a failure too."""
PORT = 8000
OTHER = 8001
"""What the pages name for when another program has the port."""


class Machine:
    """A fresh copy of the project, and a terminal in its folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._before = ""
        shutil.copytree(ROOT, folder, ignore=_unkept)

    def run(self, command: str) -> str:
        """What a command prints; it must end well."""
        self._remember(command)
        done = subprocess.run(
            self._typed(command),
            cwd=self.folder,
            env=_bare(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            timeout=LONGEST,
        )
        assert done.returncode == 0, f"{command}\nended so:\n{done.stdout[-3000:]}"
        return done.stdout

    @contextmanager
    def serving(self, command: str) -> Iterator[tuple[str, int]]:
        """A command that serves: what it says, and its port; Ctrl-C ends it."""
        port = free_port()
        more = "" if port == PORT else f" --port {port}"
        process = subprocess.Popen(
            self._typed(command + more),
            cwd=self.folder,
            env=_bare(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            # A terminal sends Ctrl-C to all processes of a command.
            start_new_session=True,
        )
        with process:
            try:
                yield _until_it_serves(process), port
                os.killpg(process.pid, signal.SIGINT)
                assert process.communicate(timeout=30)[0].endswith("Stopped.\n")
            finally:
                if process.poll() is None:
                    os.killpg(process.pid, signal.SIGKILL)
        assert free(port), f"{command}: something still answers at {port}"

    def write(self, name: str, text: str) -> None:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)

    def _remember(self, command: str) -> None:
        """A terminal goes on as it was set: what is sourced holds for all after it."""
        if command.startswith(". "):
            self._before += f"{command} && "

    def _typed(self, command: str) -> list[str]:
        return ["sh", "-c", self._before + command]


def free_port() -> int:
    """The port that the pages name, or where that is taken the other one."""
    for port in (PORT, OTHER):
        if free(port):
            return port
    raise AssertionError(
        f"Other programs have the ports {PORT} and {OTHER}; stop one of them."
    )


def free(port: int) -> bool:
    with closing(socket.socket()) as probe:
        return probe.connect_ex(("127.0.0.1", port)) != 0


def _until_it_serves(process: subprocess.Popen[str]) -> str:
    said = ""
    for line in process.stdout:
        said += line
        if line.startswith("Stop with"):
            return said
    raise AssertionError(f"It does not serve:\n{said[-3000:]}")


def _unkept(folder: str, names: list[str]) -> set[str]:
    """What is no part of the project: what `.gitignore` names, and git's own."""
    patterns = ["/.git", *(ROOT / ".gitignore").read_text().split()]
    at_the_top = Path(folder) == ROOT
    return {
        name
        for pattern in patterns
        if at_the_top or not pattern.startswith("/")
        for name in fnmatch.filter(names, pattern.strip("/").rpartition("/")[2])
    }


def _bare() -> dict[str, str]:
    """This terminal's settings without those of the environment that tests run in."""
    own = re.compile(r"PYTHON|PYTEST|VIRTUAL_ENV|COV|FIELDID")
    kept = {name: value for name, value in os.environ.items() if not own.match(name)}
    outside = [
        place
        for place in kept["PATH"].split(os.pathsep)
        if not Path(place).is_relative_to(ROOT)
    ]
    return kept | {"PATH": os.pathsep.join(outside), "PYTHONUNBUFFERED": "1"}
