"""Real browsers: Chromium through Playwright, WebKitGTK through Selenium."""

import pytest
from playwright.sync_api import sync_playwright

from serving import Host, Server

CHROMIUM = "/usr/bin/chromium"
QUIET = (
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)


@pytest.fixture(scope="session")
def playwright():
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def bundle(tmp_path_factory):
    """One built bundle for all servers of the run."""
    return tmp_path_factory.mktemp("bundle") / "site"


@pytest.fixture(scope="session")
def standing(bundle):
    """A server for all tests that need one running; a build takes its time."""
    running = Server(bundle)
    yield running
    running.stop()


@pytest.fixture
def server(bundle, standing):
    """A host of the test's own, with the same files, that it may stop."""
    running = Host(bundle)
    yield running
    running.stop()


@pytest.fixture
def launch(playwright, tmp_path):
    """Starts Chromium on a profile that survives; each call is a restart."""
    open_now = []

    def launch(size=(390, 844), args=(), **options):
        while open_now:
            open_now.pop().close()
        context = playwright.chromium.launch_persistent_context(
            tmp_path / "profile",
            executable_path=CHROMIUM,
            args=[*QUIET, *args],
            viewport={"width": size[0], "height": size[1]},
            **options,
        )
        context.set_default_timeout(15_000)
        open_now.append(context)
        return context.pages[0]

    yield launch
    while open_now:
        open_now.pop().close()
