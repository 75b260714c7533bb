"""The pages beside the app: a guide's, those for paper, the app as one file and taken
down, and those that only a server has.
"""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Page, expect
from werkzeug.serving import make_server

from access.hosting import hosted
from bundles import app, built, guide
from fieldid.build import qr
from fieldid.build.onefile import one_file
from fieldid.build.takedown import take_down
from fieldid.web.headers import sealed
from steps import start

SMALL = "tarn-corncrake"
FIND = '{"format": 1, "guide": "tarn-corncrake", "items": [{"readings": {}}]}'


@dataclass(frozen=True)
class Places:
    """Where the pages are served."""

    app: str
    small: str
    """The app with one small guide, since those of the others are long."""
    alone: str
    gone: str
    server: str


@dataclass(frozen=True)
class Shown:
    """A page, and how one comes to it."""

    name: str
    way: Callable[[Page, Places], None]

    def __str__(self) -> str:
        return self.name


def _of_guide(kind: str, of: str = SMALL) -> Callable[[Page, Places], None]:
    def way(page: Page, at: Places) -> None:
        page.goto(f"{at.small if of == SMALL else at.app}{kind}-{of}.html")
        for folded in page.locator("summary:visible").all()[:4]:
            folded.click()

    return way


def _one_file(page: Page, at: Places) -> None:
    page.goto(f"{at.alone}fieldid.html")


def _asked_in_one_file(page: Page, at: Places) -> None:
    start(page)


def _address(page: Page, at: Places) -> None:
    page.goto(f"{at.alone}address.html")


def _gone(page: Page, at: Places) -> None:
    page.goto(at.gone)
    expect(page.get_by_text("No find is kept in this browser.")).to_be_visible()


def _judge(page: Page, at: Places) -> None:
    page.goto(f"{at.server}judge")


def _not_judged(page: Page, at: Places) -> None:
    page.get_by_role("button", name="Judge it").click()
    expect(page.get_by_role("alert")).to_be_visible()


def _judged(page: Page, at: Places) -> None:
    page.locator("textarea").fill(FIND)
    page.get_by_role("button", name="Judge it").click()
    expect(page.get_by_text("Judge another find")).to_be_visible()


PAGES = (
    Shown("what a guide teaches", _of_guide("guide")),
    Shown("the questions on one page", _of_guide("tree")),
    Shown("a card", _of_guide("card")),
    Shown("a card of marks", _of_guide("card", "dated-marks")),
    Shown("the app as one file", _one_file),
    Shown("a question in one file", _asked_in_one_file),
    Shown("the sheet with the address", _address),
    Shown("the app taken down", _gone),
    Shown("the form of the server", _judge),
    Shown("a find that the server refuses", _not_judged),
    Shown("a find that the server judged", _judged),
)


@contextmanager
def places(folder: Path, app_url: str) -> Iterator[Places]:
    """All those pages, served; `folder` is empty and takes the files."""
    alone, gone, small = folder / "alone", folder / "gone", folder / "small"
    alone.mkdir()
    (alone / "fieldid.html").write_bytes(one_file([guide()]))
    (alone / "address.html").write_text(qr.page("https://host.example/app/"))
    take_down([guide()]).write(gone)
    built().write(small)
    server = make_server("127.0.0.1", 0, sealed(app().wsgi_app), threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        with hosted(gone) as other, hosted(small) as few:
            here = f"http://127.0.0.1:{server.server_port}/"
            # From the disk, as these two are opened.
            yield Places(app_url, few.url, f"{alone.as_uri()}/", other.url, here)
    finally:
        server.shutdown()
        thread.join()
        server.server_close()
