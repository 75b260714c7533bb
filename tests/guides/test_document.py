"""A file is replaced as a whole or not at all, and never over somebody's change."""

import os
import random
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from fieldid.errors import ChangedError, GuideError, TakenError, WriteError
from fieldid.guides.document import created, opened, relocated, saved

ROUNDS = int(os.environ.get("FIELDID_KILLS", "25"))
SAVING = """
import sys, itertools
from pathlib import Path
from fieldid.guides.document import opened, saved
document = opened(Path(sys.argv[1]))
print("begun", flush=True)
for count in itertools.count():
    document = saved(document, f"# {count}\\n" * 20_000)
"""


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "lapwing.toml"
    path.write_bytes(b"a = 1 # one\n")
    return path


def test_save_replaces_the_text(path):
    after = saved(opened(path), "a = 2\n")

    assert path.read_bytes() == b"a = 2\n"
    assert after == opened(path)
    assert os.listdir(path.parent) == ["lapwing.toml"]


@pytest.mark.parametrize("other", [b"a = 3\n", b"a = 1 # one\r\n", b""])
def test_change_meanwhile_is_never_overwritten(path, other):
    before = opened(path)
    path.write_bytes(other)

    with pytest.raises(ChangedError, match=r"lapwing\.toml was changed on disk"):
        saved(before, "a = 2\n")
    assert path.read_bytes() == other


def test_file_that_is_gone_stays_gone(path):
    before = opened(path)
    path.unlink()

    with pytest.raises(ChangedError):
        saved(before, "a = 2\n")
    assert os.listdir(path.parent) == []


def test_file_is_moved_only_as_it_was_opened(path):
    before, to = opened(path), path.with_name("dunlin.toml")
    path.write_bytes(b"a = 3\n")

    with pytest.raises(ChangedError):
        relocated(path, to, tag=before.tag)
    assert os.listdir(path.parent) == ["lapwing.toml"]
    relocated(path, to, tag=opened(path).tag)
    assert to.read_bytes() == b"a = 3\n"
    assert os.listdir(path.parent) == ["dunlin.toml"]


def test_move_writes_over_nothing(path):
    to = path.with_name("dunlin.toml")
    to.write_bytes(b"other")

    with pytest.raises(TakenError, match=r"dunlin\.toml is there already"):
        relocated(path, to)
    with pytest.raises(WriteError):
        relocated(path, path.parent / "none" / "dunlin.toml")
    assert to.read_bytes() == b"other"
    assert path.read_bytes() == b"a = 1 # one\n"


def test_link_is_not_moved(path):
    """It would lead nowhere from another folder."""
    link = path.with_name("dunlin.toml")
    link.symlink_to("lapwing.toml")

    with pytest.raises(WriteError, match="is a link"):
        relocated(link, path.with_name("curlew.toml"))
    assert link.is_symlink()


def test_one_of_many_savers_wins(path):
    """All opened the same file: the check and the write are one step."""
    before = opened(path)

    def save(n):
        try:
            return saved(before, f"a = {n}\n").text
        except ChangedError:
            return None

    with ThreadPoolExecutor(8) as pool:
        kept = [text for text in pool.map(save, range(100, 140)) if text]
    assert kept == [path.read_text()]


def test_save_keeps_marks_ends_of_lines_and_rights(path):
    path.write_bytes(b"\xef\xbb\xbfa = 1\r\nb = 2\r\n")
    path.chmod(0o640)

    before = opened(path)
    saved(before, before.text.replace("2", "3"))

    assert before.text == "a = 1\nb = 2\n"
    assert path.read_bytes() == b"\xef\xbb\xbfa = 1\r\nb = 3\r\n"
    assert path.stat().st_mode & 0o777 == 0o640


def test_link_stays_a_link(path):
    link = path.with_name("link.toml")
    link.symlink_to(path)

    saved(opened(link), "a = 2\n")

    assert link.is_symlink()
    assert path.read_text() == "a = 2\n"


def test_new_file_replaces_none(path):
    with pytest.raises(TakenError, match="is there already"):
        created(path, "a = 2\n")

    assert path.read_bytes() == b"a = 1 # one\n"
    assert created(path.with_name("b.toml"), "a = 2\n") == opened(
        path.with_name("b.toml")
    )


def test_write_that_fails_leaves_the_old(path, monkeypatch):
    def full(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(WriteError, match="could not be written: No space left"):
        saved(opened(path), "a = 2\n")

    assert path.read_bytes() == b"a = 1 # one\n"
    assert os.listdir(path.parent) == ["lapwing.toml"]


def test_folder_that_is_gone_is_told(path):
    with pytest.raises(WriteError, match="could not be written: No such file"):
        created(path.parent / "none" / "a.toml", "a = 2\n")


def test_bytes_that_are_no_text_are_told(path):
    path.write_bytes(b"a = '\xff'\n")

    with pytest.raises(GuideError, match="not UTF-8"):
        opened(path)


def test_kill_leaves_the_old_or_the_new(path):
    """Killed at random moments of saving; what lies there is always one whole text,
    and the next save works beside what was left over.
    """
    lot = random.Random(7)
    begun = 0
    for _ in range(ROUNDS):
        command = [sys.executable, "-c", SAVING, str(path)]
        with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
            assert process.stdout.readline() == b"begun\n"
            try:
                process.wait(lot.uniform(0.0, 0.05))
            except subprocess.TimeoutExpired:
                process.kill()
        text = path.read_text()
        assert text == "a = 1 # one\n" or text == text.splitlines(True)[0] * 20_000
        begun += text[0] == "#"
        path.write_text("a = 1 # one\n")

    assert begun > ROUNDS / 5, "hardly one was killed that had saved anything"
    saved(opened(path), "a = 2\n")
    assert os.listdir(path.parent) == ["lapwing.toml"]
