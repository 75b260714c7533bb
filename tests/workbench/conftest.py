"""What several rooms are tested with: a desk, and an inbox beside the guides."""

import shutil

import pytest

from desks import Desk
from fieldid.census import read
from make import PLOVER, plover
from workbenches import author, bench


@pytest.fixture
def desk(tmp_path):
    """A folder with the small guide."""
    made = Desk(tmp_path)
    made.write("plover", plover())
    return made


@pytest.fixture
def rules(tmp_path):
    folder = tmp_path / "rules"
    folder.mkdir()
    shutil.copy(PLOVER, folder)
    return folder


@pytest.fixture
def app(rules):
    return bench(rules)


@pytest.fixture
def browser(app):
    return author(app)


@pytest.fixture
def inbox(app):
    return app.extensions["place"].inbox


@pytest.fixture
def census(rules):
    return read.beside(rules / PLOVER.name)
