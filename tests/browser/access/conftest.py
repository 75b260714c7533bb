"""One walk for all that is held against the states of the app."""

import shutil

import pytest

from access.hosting import hosted
from access.pages import PAGES, places
from access.states import APP
from access.walk import opened, phone, walk


@pytest.fixture(scope="session")
def site(bundle, tmp_path_factory):
    """The app on a host of its own, under its own policy."""
    folder = tmp_path_factory.mktemp("walked") / "site"
    shutil.copytree(bundle, folder)
    with hosted(folder) as site:
        yield site


@pytest.fixture(scope="session")
def walked(chromium, bundle, tmp_path_factory):
    """The walk through all states of the app, which ends with an update of it."""
    folder = tmp_path_factory.mktemp("updated") / "site"
    shutil.copytree(bundle, folder)
    with hosted(folder) as site, phone(chromium) as context:
        return walk(context, site, APP)


@pytest.fixture(scope="session")
def beside(chromium, site, tmp_path_factory):
    """The same for the pages beside the app."""
    folder = tmp_path_factory.mktemp("beside")
    with places(folder, site.url) as at, phone(chromium) as context:
        return walk(context, at, PAGES)


@pytest.fixture
def said():
    """What the browser complained of."""
    return []


@pytest.fixture
def page(chromium, said):
    """A page on a phone that has never seen the app."""
    with phone(chromium) as context:
        yield opened(context, said)
