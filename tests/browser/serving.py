"""The product as a user starts it: `fieldid serve` in a process of its own."""

import re
import socket
import subprocess
import sys
from collections.abc import Sequence
from contextlib import closing
from pathlib import Path

from fieldid.paths import RULES

TRIED = "wrackham-teale-dotterel"
"""The guide that most journeys are about; it stands first on Home."""


class Server:
    """A running `fieldid serve`, with `url` and a `stop` that really stops it.

    It serves the guides that come along, the most tried one first, or those named.
    """

    def __init__(self, out: Path, port: int = 0, guides: Sequence[str] = ()) -> None:
        others = sorted(path.stem for path in RULES.glob("*.toml"))
        shelf = guides or dict.fromkeys([TRIED, *others])
        command = [sys.executable, "-m", "fieldid", "serve", *shelf]
        command += ["--port", str(port)]
        self.process = subprocess.Popen(
            [*command, "--out", str(out)],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        self.url = self._address()
        self.port = int(self.url.split(":")[2].split("/")[0])

    def _address(self) -> str:
        said = ""
        for line in self.process.stdout:
            said += line
            found = re.search(r"http://[\d.]+:\d+/", line)
            if found:
                return found[0]
        self.process.communicate()
        raise AssertionError(f"the server said no address:\n{said}")

    def stop(self) -> None:
        """Stops the process and makes sure that nobody answers at its port."""
        if self.process.poll() is None:
            self.process.terminate()
        self.process.communicate(timeout=20)
        with closing(socket.socket()) as probe:
            assert probe.connect_ex(("127.0.0.1", self.port)) != 0
