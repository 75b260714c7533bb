"""The app taken down: phones that have it lose the app, and not one find."""

import os
import shutil
import time
from pathlib import Path

import pytest
from playwright.sync_api import Error, Page, expect

import photofiles
from fieldid.build.takedown import take_down
from finds import ALL_ROWS, add_photos, kept, said, unpacked
from serving import Host
from steps import open_kept

PHOTO = photofiles.camera_photo(6, size=(1200, 900))
KEPT = """async () => ({
  caches: (await caches.keys()).map((name) => name.replace(/:.*/, "")),
  workers: (await navigator.serviceWorker.getRegistrations()).length,
})"""
HEADING = "fieldid is no longer here"
GONE = {"caches": ["fieldid-log"], "workers": 0}
"""Of what was kept, the second copy of the finds is left."""


class Site(Host):
    """A host of a folder of its own, where the app can be taken down."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        super().__init__(folder)

    def take_down(self) -> None:
        take_down([]).write(self.folder)


@pytest.fixture
def site(bundle, tmp_path):
    shutil.copytree(bundle, tmp_path / "site")
    aged(tmp_path / "site")
    running = Site(tmp_path / "site")
    yield running
    running.stop()


def aged(folder: Path) -> None:
    """Makes the files a year old: of a host that names no age, a browser then takes
    them to be good for weeks, and does not ask again.
    """
    then = time.time() - 365 * 24 * 3600
    for path in folder.rglob("*"):
        os.utime(path, (then, then))


def find_with_photo(page: Page, url: str) -> list:
    """A kept find with a photo, as it lies in the database."""
    kept(page, url)
    add_photos(page, PHOTO)
    expect(said(page)).to_have_text("The photo is added.")
    return page.evaluate(ALL_ROWS)


def test_phone_that_takes_it_keeps_its_finds(site, visit, tmp_path):
    """The update is offered like any other; taken, it leaves the finds as a file."""
    page = visit()
    before = find_with_photo(page, site.url)
    site.take_down()
    page.goto(site.url)
    page.get_by_role("button", name="Update now").click()
    expect(
        page.get_by_role("heading", name="fieldid is no longer here")
    ).to_be_visible()
    expect(page.get_by_text("1 find is kept in this browser.")).to_be_visible()

    page.get_by_role("button", name="Make the file").click()
    with page.expect_download() as downloading:
        page.get_by_role("link", name="Save the file").click()
    downloading.value.save_as(tmp_path / "finds.zip")
    finds, photos = unpacked(tmp_path / "finds.zip")
    assert len(finds) == 1
    assert [*photos.values()] == [bytes(data) for _, data in before]
    assert page.evaluate(ALL_ROWS) == before
    assert page.evaluate(KEPT) == GONE


def test_phone_that_asks_nothing_gets_it_too(site, launch):
    """Nobody taps anything: the app is gone once it was closed and opened again."""
    page = launch()
    before = find_with_photo(page, site.url)
    site.take_down()
    page.goto(site.url)
    expect(page.get_by_role("button", name="Update now")).to_be_visible()

    page = launch()
    page.goto(site.url)

    expect(
        page.get_by_role("heading", name="fieldid is no longer here")
    ).to_be_visible()
    expect(page.get_by_text("1 find is kept in this browser.")).to_be_visible()
    assert page.evaluate(ALL_ROWS) == before
    assert page.evaluate(KEPT) == GONE


def test_nothing_answers_without_signal_afterwards(site, visit):
    page = visit()
    open_kept(page, site.url)
    site.take_down()
    page.goto(site.url)
    page.get_by_role("button", name="Update now").click()
    expect(page.get_by_text("No find is kept in this browser.")).to_be_visible()
    site.stop()
    page.context.new_cdp_session(page).send("Network.clearBrowserCache")

    with pytest.raises(Error, match="ERR_CONNECTION_REFUSED"):
        page.goto(site.url)


def test_app_that_comes_back_shows_the_finds(site, bundle, visit):
    page = visit()
    before = find_with_photo(page, site.url)
    site.take_down()
    page.goto(site.url)
    page.get_by_role("button", name="Update now").click()
    expect(page.get_by_text("1 find is kept in this browser.")).to_be_visible()
    shutil.copytree(bundle, site.folder, dirs_exist_ok=True)
    # The plain host tells files apart by the second in which they were written.
    page.context.new_cdp_session(page).send("Network.clearBrowserCache")

    open_kept(page, site.url)

    assert page.evaluate(ALL_ROWS) == before
    page.goto(f"{site.url}#finds")
    expect(page.locator("[data-screen=finds] .kept")).to_have_count(1)
