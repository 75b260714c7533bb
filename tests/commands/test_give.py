import pytest

from fieldid.cli import main
from fieldid.guides import given


def test_file_is_written_and_named(tmp_path, capsys):
    out = tmp_path / "grebe.txt"

    assert main(["give", "oxmere-grebe", "--out", str(out)]) == 0
    assert given.taken(out.read_bytes())["id"] == "oxmere-grebe"
    assert f"{out}: " in capsys.readouterr().out


def test_guide_that_no_phone_takes_is_not_written(tmp_path, capsys, monkeypatch):
    """It may be larger than what a phone takes from anybody."""
    monkeypatch.setattr(given, "MOST_BYTES", 1000)
    out = tmp_path / "grebe.txt"

    assert main(["give", "oxmere-grebe", "--out", str(out)]) == 1
    assert "is larger than 1000 bytes" in capsys.readouterr().err
    assert not out.exists()


def test_folder_that_is_not_there_is_told(tmp_path, capsys):
    out = tmp_path / "none" / "grebe.txt"

    assert main(["give", "oxmere-grebe", "--out", str(out)]) == 1
    assert f"{out}: cannot be written" in capsys.readouterr().err


def test_give_needs_a_file_to_write():
    with pytest.raises(SystemExit) as caught:
        main(["give", "oxmere-grebe"])

    assert caught.value.code == 2
