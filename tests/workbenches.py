"""Workbenches for tests: mounted and sealed as they are served, with a client."""

import re
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import SimpleNamespace

from flask import Flask
from flask.testing import FlaskClient
from werkzeug.middleware.dispatcher import DispatcherMiddleware
from werkzeug.serving import make_server

import templates
from fieldid.inbox.store import beside
from fieldid.web.headers import sealed
from fieldid.workbench.app import create_workbench
from fieldid.workbench.gate import passwords
from fieldid.workbench.gate.guard import Guard
from fieldid.workbench.phone import State

PASSWORD = "a heron over the weir"
HASH = passwords.hashed(PASSWORD)
ROOT = "http://localhost/workbench"
SAFE = "https://bench.example/workbench"
"""The address where a password is asked for."""


class Clock:
    """Seconds that pass when they are told to."""

    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


def bench(
    folder: Path,
    *,
    password: str | None = None,
    clock: Callable[[], float] | None = None,
    testing: bool = True,
) -> Flask:
    """A workbench of a folder of guides, with a phone app that says it is idle."""
    phone = SimpleNamespace(
        state=State("idle"), served=None, changed=False, rebuild=lambda: True
    )
    made = create_workbench(
        rules=folder,
        inbox=beside(folder),
        phone=phone,
        password=password,
        testing=testing,
    )
    app = templates.shared(made)
    if clock:
        app.extensions["guard"] = Guard(password, clock)
    app.wsgi_app = sealed(app.wsgi_app)
    return app


@contextmanager
def served(app: Flask) -> Iterator[str]:
    """The address of a workbench, while it is served in a thread for real browsers."""
    mounted = DispatcherMiddleware(app.wsgi_app, {"/workbench": app.wsgi_app})
    server = make_server("127.0.0.1", 0, mounted, threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/workbench"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


class Author(FlaskClient):
    """A browser at the address of a workbench."""

    root = ROOT

    def open(self, *given, **wishes):
        """The answer; forms carry no token by themselves."""
        wishes.setdefault("base_url", self.root)
        wishes.setdefault("buffered", True)
        return super().open(*given, **wishes)

    def token(self, path: str = "/static/none") -> str:
        """The token of a page's forms."""
        text = self.get(path).text
        return re.search(r'name="csrf-token" content="([^"]+)"', text)[1]

    def send(self, path: str, **fields: str):
        """The answer to a form that was sent from this browser."""
        headers = {"Referer": self.root} if self.root == SAFE else {}
        sent = {"csrf_token": self.token(), **fields}
        return self.post(path, data=sent, headers=headers)


def author(app: Flask, *, root: str = ROOT) -> Author:
    """A browser that nobody has signed in with."""
    made = Author(app, app.response_class)
    made.root = root
    return made


def signed_in(app: Flask) -> Author:
    """A browser in which the password was typed."""
    made = author(app, root=SAFE)
    assert made.send("/sign-in", password=PASSWORD).status_code == 303
    return made
