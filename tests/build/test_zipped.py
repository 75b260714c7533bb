import io
from zipfile import ZipFile

from bundles import built
from fieldid.build.zipped import zipped


def test_archive_holds_what_the_folder_holds(tmp_path):
    built().write(tmp_path / "folder")
    with ZipFile(io.BytesIO(zipped(built()))) as archive:
        held = {name: archive.read(name) for name in archive.namelist()}

    (tmp_path / "folder" / ".fieldid").unlink()
    written = {
        path.relative_to(tmp_path / "folder").as_posix(): path.read_bytes()
        for path in (tmp_path / "folder").rglob("*")
        if path.is_file()
    }
    assert held == written
    assert "_headers" in held


def test_same_bundle_gives_the_same_archive():
    assert zipped(built()) == zipped(built())


def test_unpacked_files_can_be_read_by_a_host():
    """Without a mode some programs unpack files that nobody may read."""
    with ZipFile(io.BytesIO(zipped(built()))) as archive:
        modes = {entry.external_attr >> 16 for entry in archive.infolist()}

    assert modes == {0o644}
