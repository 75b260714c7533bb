"""The app as it is served: by `fieldid serve`, or by any host of static files."""

import re
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path

from faults import build_of
from fieldid.commands.listening import Server as WebServer
from fieldid.commands.listening import listening
from fieldid.engine.guide import Guide
from fieldid.guides.load import load
from fieldid.paths import RULES
from fieldid.web.app import create_app
from fieldid.web.headers import sealed

TRIED = "wrackham-teale-dotterel"
"""The guide that most journeys are about; it stands first on Home."""


def names() -> list[str]:
    """The guides that come along, the most tried one first."""
    return [
        *dict.fromkeys([TRIED, *sorted(path.stem for path in RULES.glob("*.toml"))])
    ]


def shelf() -> list[Guide]:
    """The same, loaded."""
    return [load(RULES / f"{name}.toml") for name in names()]


@dataclass(frozen=True)
class Standing:
    """Where a built folder is served."""

    url: str


@contextmanager
def served(folder: Path) -> Iterator[Standing]:
    """A built folder, while it is served as `fieldid serve` does once it has built."""
    build = build_of({"index.html": (folder / "index.html").read_bytes()})
    app = create_app(guides=shelf(), build=build, bundle=folder)
    with listening("127.0.0.1", 0) as listener:
        server = WebServer(listener, sealed(app), None)
        server.prepare()
        thread = threading.Thread(target=server.serve)
        thread.start()
        try:
            yield Standing(f"http://127.0.0.1:{listener.getsockname()[1]}/")
        finally:
            server.stop()
            thread.join()


class Process:
    """A process that serves and says its address, with `url` and a `stop` that really
    stops it.
    """

    def __init__(self, *command: str) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-u", "-m", *command],
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
                # What it goes on to say nobody reads, and it must not wait for that.
                self.ear = threading.Thread(target=self.process.stdout.read)
                self.ear.start()
                return found[0]
        self.process.communicate()
        raise AssertionError(f"the server said no address:\n{said}")

    def stop(self) -> None:
        """Stops the process and makes sure that nobody answers at its port."""
        if self.process.poll() is None:
            self.process.terminate()
        self.process.wait(timeout=20)
        self.ear.join()
        self.process.stdout.close()
        with closing(socket.socket()) as probe:
            assert probe.connect_ex(("127.0.0.1", self.port)) != 0


class Server(Process):
    """A running `fieldid serve` that builds into a folder.

    It serves the guides that come along, the most tried one first, or those named.
    """

    def __init__(self, out: Path, port: int = 0, guides: Sequence[str] = ()) -> None:
        command = ["fieldid", "serve", *(guides or names()), "--port", str(port)]
        super().__init__(*command, "--out", str(out))


class Host(Process):
    """A plain host of static files for a folder that was built."""

    def __init__(self, folder: Path) -> None:
        command = ["http.server", "0", "--bind", "127.0.0.1"]
        super().__init__(*command, "--directory", str(folder))
