import os

import pytest

from fieldid.build.folder import MARKER, place
from fieldid.errors import BuildError

OLD = {
    "index.html": b"1",
    "v/aaa/a.js": b"1",
    "sw.js": b"1",
    "gone.html": b"1",
    "tree.html": b"1",
}
NEW = {"index.html": b"2", "v/bbb/a.js": b"2", "sw.js": b"2"}
NEXT = {"index.html": b"3", "v/ccc/a.js": b"3", "sw.js": b"3"}


def held(folder) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.name != MARKER
    }


def test_new_folder_holds_the_files(tmp_path):
    place(OLD, "aaa", tmp_path / "new" / "er")

    assert held(tmp_path / "new" / "er") == OLD


def test_leftovers_go_and_the_build_before_stays(tmp_path):
    """A page that is open still asks for the files it came with."""
    place(OLD, "aaa", tmp_path)
    place(NEW, "bbb", tmp_path)
    assert held(tmp_path) == NEW | {"v/aaa/a.js": b"1"}

    place(NEXT, "ccc", tmp_path)
    assert held(tmp_path) == NEXT | {"v/bbb/a.js": b"2"}
    assert not (tmp_path / "v" / "aaa").exists()


def test_same_build_again_forgets_nothing(tmp_path):
    place(OLD, "aaa", tmp_path)
    place(NEW, "bbb", tmp_path)
    place(NEW, "bbb", tmp_path)

    assert held(tmp_path) == NEW | {"v/aaa/a.js": b"1"}


def test_unchanged_file_is_not_written(tmp_path):
    place(OLD, "aaa", tmp_path)
    before = (tmp_path / "sw.js").stat().st_mtime_ns, (tmp_path / "sw.js").stat().st_ino
    place(OLD, "aaa", tmp_path)

    after = (tmp_path / "sw.js").stat().st_mtime_ns, (tmp_path / "sw.js").stat().st_ino
    assert after == before


def test_file_of_somebody_else_survives(tmp_path):
    place(OLD, "aaa", tmp_path)
    (tmp_path / "CNAME").write_text("mine")
    place(NEW, "bbb", tmp_path)

    assert (tmp_path / "CNAME").read_text() == "mine"


def test_folder_with_other_files_is_refused(tmp_path):
    (tmp_path / "thesis.txt").write_text("mine")

    with pytest.raises(BuildError, match="holds files that fieldid did not write"):
        place(OLD, "aaa", tmp_path)
    assert held(tmp_path) == {"thesis.txt": b"mine"}


def test_file_in_place_of_a_folder_is_refused(tmp_path):
    (tmp_path / "out").write_text("mine")

    with pytest.raises(BuildError, match="is a file; name a folder"):
        place(OLD, "aaa", tmp_path / "out")


@pytest.mark.parametrize("path", ["../victim", "/etc/victim", "v/../../victim"])
def test_marker_that_points_outside_is_refused(tmp_path, path):
    folder = tmp_path / "out"
    place(OLD, "aaa", folder)
    (tmp_path / "victim").write_text("mine")
    with (folder / MARKER).open("a") as marker:
        marker.write(f"{path}\n")

    with pytest.raises(BuildError, match="is not as fieldid wrote it"):
        place(NEW, "bbb", folder)
    assert (tmp_path / "victim").exists()


def test_build_cut_short_is_taken_up(tmp_path, monkeypatch):
    """Half a bundle carries the marker, or the next build would refuse the folder."""
    monkeypatch.setattr("os.replace", _fails_at("sw.js"))
    with pytest.raises(BuildError, match="could not be written"):
        place(OLD, "aaa", tmp_path)
    monkeypatch.undo()
    place(NEW, "bbb", tmp_path)

    assert "gone.html" not in held(tmp_path)


def test_worker_is_written_last(tmp_path, monkeypatch):
    """Phones learn of a build by its worker."""
    monkeypatch.setattr("os.replace", _fails_at("sw.js"))
    with pytest.raises(BuildError):
        place(OLD, "aaa", tmp_path)

    assert {*OLD} - {"sw.js"} < {*held(tmp_path)}


def _fails_at(name):
    replace = os.replace

    def failing(source, target):
        if target.name == name:
            raise OSError(28, "No space left on device")
        replace(source, target)

    return failing
