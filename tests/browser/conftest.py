"""Real browsers: Chromium and Firefox by Playwright, WebKitGTK by Selenium."""

import os
import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import expect, sync_playwright
from selenium.webdriver import WebKitGTK, WebKitGTKOptions
from selenium.webdriver.webkitgtk.service import Service

import firefox as debian
import workbenches
from bundles import once
from fieldid.build.site import bundle as build
from installed import installed
from serving import Host, served, shelf

CHROMIUM = "/usr/bin/chromium"
SHELL = "/usr/bin/chromium-headless-shell"
"""Chromium without the windows around a page, which take half of the time."""
QUIET = (
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)


WEBKIT = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser"
WEBKIT_DRIVER = "/usr/bin/WebKitWebDriver"
XVFB = "/usr/bin/Xvfb"
SIZE = (390, 844)

PATIENCE = 30_000
"""How long, in ms, a state may take to come: a busy machine is not a fault."""

expect.set_options(timeout=PATIENCE)

LONGEST = (
    "tests/browser/access/test_screens.py",
    "tests/documents/test_followed.py",
    "tests/browser/test_finds.py",
)
"""Files of a minute and more, the longest first."""
assert all((Path(__file__).parents[2] / file).is_file() for file in LONGEST)


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Brings what takes long to the front, since a whole file goes to one process:
    begun last, it would go on alone. The rest stays mixed.
    """
    items.sort(key=lambda item: _place(item.nodeid.partition("::")[0]))


def _place(file: str) -> int:
    if file in LONGEST:
        return LONGEST.index(file)
    return len(LONGEST) + (not file.startswith("tests/browser/"))


@pytest.fixture(scope="session")
def playwright():
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def chromium(playwright):
    """One Chromium for all tests that need no profile which outlives it."""
    browser = playwright.chromium.launch(
        executable_path=installed(SHELL), args=[*QUIET]
    )
    yield browser
    browser.close()


@pytest.fixture(scope="session")
def bundle(tmp_path_factory):
    """The built guides that come along, one folder for all processes of the run."""
    own = tmp_path_factory.getbasetemp()
    whole = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    return once(whole / "bundle", lambda folder: build(shelf()).write(folder))


@pytest.fixture(scope="session")
def standing(bundle):
    """A server for all tests that need one running."""
    with served(bundle) as running:
        yield running


@pytest.fixture
def server(bundle):
    """A host of the test's own, with the same files, that it may stop."""
    running = Host(bundle)
    yield running
    running.stop()


@pytest.fixture
def visit(chromium):
    """Opens a page on a phone that has never seen the app; each call is another phone.

    It costs less than a start of Chromium, and what is kept there ends with the test.
    """
    opened = []

    def visit(size=SIZE, **options):
        viewport = {"width": size[0], "height": size[1]}
        context = chromium.new_context(viewport=viewport, **options)
        context.set_default_timeout(PATIENCE)
        opened.append(context)
        return context.new_page()

    yield visit
    for context in opened:
        context.close()


@pytest.fixture
def launch(playwright, tmp_path):
    """Starts Chromium on a profile that survives; each call is a restart."""
    open_now = []

    def launch(size=SIZE, args=(), **options):
        while open_now:
            open_now.pop().close()
        context = playwright.chromium.launch_persistent_context(
            tmp_path / "profile",
            executable_path=installed(CHROMIUM),
            args=[*QUIET, *args],
            viewport={"width": size[0], "height": size[1]},
            **options,
        )
        context.set_default_timeout(PATIENCE)
        open_now.append(context)
        return context.pages[0]

    yield launch
    while open_now:
        open_now.pop().close()


@pytest.fixture
def launch_firefox(playwright, tmp_path):
    """Starts Firefox on a profile that survives; each call is a restart."""
    program = debian.program(tmp_path)
    profile = debian.profile(tmp_path / "firefox-profile")
    open_now = []

    def launch(size=SIZE):
        while open_now:
            open_now.pop().close()
        context = playwright.firefox.launch_persistent_context(
            profile,
            executable_path=program,
            # The one of Playwright's ways to Firefox that needs no build of its own.
            channel="moz-firefox",
            viewport={"width": size[0], "height": size[1]},
        )
        context.set_default_timeout(PATIENCE)
        open_now.append(context)
        return context.pages[0]

    yield launch
    while open_now:
        open_now.pop().close()


@pytest.fixture
def rules(tmp_path):
    """The folder of a workbench's guides: empty."""
    folder = tmp_path / "rules"
    folder.mkdir()
    return folder


@pytest.fixture
def workbench(rules):
    """The address of a workbench that is served in a thread."""
    with workbenches.served(workbenches.bench(rules)) as address:
        yield address


@pytest.fixture
def display():
    """A screen that nobody sees; the number is the server's own choice."""
    read, write = os.pipe()
    screen = subprocess.Popen(
        [installed(XVFB), "-displayfd", str(write), "-screen", "0", "800x900x24"],
        pass_fds=[write],
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as told:
        number = told.readline().strip()
    yield f":{number}"
    screen.terminate()
    screen.wait()


@pytest.fixture
def webkit(display):
    """A WebKitGTK window. As root, WebKit's own sandbox has to be off."""
    options = WebKitGTKOptions()
    options.binary_location = installed(WEBKIT)
    options.add_argument("--automation")
    environment = {
        **os.environ,
        "DISPLAY": display,
        "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1",
    }
    driver = WebKitGTK(options, Service(installed(WEBKIT_DRIVER), env=environment))
    driver.set_window_size(*SIZE)
    yield driver
    driver.quit()
