"""A guide given away from its page: the file of `fieldid give`, or why not."""

import pytest

from bundles import RULES
from desks import Desk
from fieldid.guides import given
from fieldid.guides.load import load
from workbenches import ROOT

NAME = "lone-dunlin"
FILE = f"/guides/{NAME}/give/{NAME}.txt"


@pytest.fixture
def desk(tmp_path):
    made = Desk(tmp_path)
    made.write(NAME, (RULES / f"{NAME}.toml").read_text("utf-8"))
    return made


def fetched(desk, address):
    """What a browser gets in the end."""
    return desk.client.get(address, base_url=ROOT, follow_redirects=True)


def test_file_is_the_one_that_the_command_writes(desk):
    answer = fetched(desk, FILE)

    assert answer.status_code == 200
    assert answer.data == given.written(load(desk.rules / f"{NAME}.toml"))
    assert answer.headers["Content-Disposition"] == (
        f'attachment; filename="{NAME}.txt"'
    )


def test_page_of_the_guide_has_the_button(desk):
    desk.open(f"/guides/{NAME}/")

    assert FILE in desk.links()
    assert "Add or give a guide" in desk.said()


def test_guide_with_mistakes_is_not_given(desk):
    path = desk.rules / f"{NAME}.toml"
    desk.write(NAME, path.read_text("utf-8").replace("format = 1", "format = 7"))
    desk.open(f"/guides/{NAME}/")

    assert FILE not in desk.links()
    assert "It can be given away as a file once it has no mistakes." in desk.said()
    answer = fetched(desk, FILE)
    assert "It was not given: it has 1 mistake" in answer.text
    assert "Content-Disposition" not in answer.headers


def test_guide_that_no_phone_takes_is_told(desk, monkeypatch):
    monkeypatch.setattr(given, "MOST_BYTES", 1000)
    answer = fetched(desk, FILE)

    assert "is larger than 1000 bytes" in answer.text


@pytest.mark.parametrize("name", ["nowhere", "..", "%2e%2e"])
def test_other_guide_is_not_given(desk, name):
    assert fetched(desk, f"/guides/{name}/give/{name}.txt").status_code == 404
    assert fetched(desk, f"/guides/{NAME}/give/{name}.txt").status_code == 404
