"""Fetching the open tables, out of wheels that lie in a folder."""

import hashlib
import zipfile

import pytest

from opendata import FetchError, Table, fetch, text

CONTENT = "animal\tlegs\nheron\t2\n"
METADATA = "Metadata-Version: 2.1\nName: marsh\nVersion: 1.0\n"


@pytest.fixture
def table(tmp_path, monkeypatch):
    """A table in the wheel of a package, and pip that looks nowhere else for it."""
    monkeypatch.setenv("PIP_NO_INDEX", "1")
    monkeypatch.setenv("PIP_FIND_LINKS", str(tmp_path))
    info = "marsh-1.0.dist-info"
    with zipfile.ZipFile(tmp_path / "marsh-1.0-py3-none-any.whl", "w") as wheel:
        wheel.writestr("marsh/birds.tab", CONTENT)
        wheel.writestr(f"{info}/METADATA", METADATA)
        wheel.writestr(f"{info}/WHEEL", "Wheel-Version: 1.0\nTag: py3-none-any\n")
    digest = hashlib.sha256(CONTENT.encode()).hexdigest()
    return Table("marsh==1.0", "marsh/birds.tab", digest)


def test_table_comes_out_of_its_wheel(table, tmp_path):
    fetch(table, tmp_path / "kept")

    assert text(table, tmp_path / "kept") == CONTENT
    assert [each.name for each in (tmp_path / "kept").iterdir()] == ["birds.tab"]


def test_table_that_is_there_stays(table, tmp_path):
    """Without pip: there is no such package."""
    (tmp_path / "birds.tab").write_text(CONTENT)
    fetch(Table("marsh==2.0", table.member, table.sha256), tmp_path)

    assert text(table, tmp_path) == CONTENT


def test_table_of_other_content_is_refused(table, tmp_path):
    other = Table(table.package, table.member, "0" * 64)
    with pytest.raises(FetchError, match=r"birds.tab of marsh==1.0 is not the known"):
        fetch(other, tmp_path / "kept")

    assert not (tmp_path / "kept").exists()


def test_spoiled_table_is_fetched_anew(table, tmp_path):
    (tmp_path / "birds.tab").write_text("heron")
    fetch(table, tmp_path)

    assert text(table, tmp_path) == CONTENT


@pytest.mark.parametrize(
    ("package", "member", "said"),
    [
        ("marsh==1.0", "marsh/fish.tab", r"marsh==1.0 has no marsh/fish.tab"),
        ("fen==1.0", "fen/fish.tab", r"(?s)fish.tab, .* package fen==1.0\. pip says:"),
    ],
)
def test_what_cannot_be_fetched_is_said(table, tmp_path, package, member, said):
    with pytest.raises(FetchError, match=said):
        fetch(Table(package, member, table.sha256), tmp_path)


def test_missing_table_names_the_command(table, tmp_path):
    with pytest.raises(FetchError, match=r"sh tests/run fetches it"):
        text(table, tmp_path)
