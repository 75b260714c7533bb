"""The built app on a host that sends the app's own headers, and that can be updated."""

import functools
import http.server
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from fieldid.web.headers import policy


@dataclass(frozen=True)
class Site:
    """Where the app is served, and the folder that it is served from."""

    url: str
    folder: Path

    def update(self) -> None:
        """Brings a newer build, which differs in its name alone."""
        worker = self.folder / "sw.js"
        text = worker.read_text()
        newer = re.sub(r'BUILD = "\w+"', 'BUILD = "newer"', text, count=1)
        assert newer != text
        worker.write_text(newer)


class Sealed(http.server.SimpleHTTPRequestHandler):
    """Files as they lie there, under the policy that fieldid sends."""

    def end_headers(self):
        for name, value in policy(self.path):
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, *_):
        """Says nothing."""


@contextmanager
def hosted(folder: Path) -> Iterator[Site]:
    """The folder, while it is served."""
    handler = functools.partial(Sealed, directory=str(folder))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield Site(f"http://127.0.0.1:{server.server_port}/", folder)
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
