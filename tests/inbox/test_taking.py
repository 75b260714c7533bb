"""Files into the inbox: nothing twice, nothing half, whatever happens meanwhile."""

import io
import json
import os
import signal
import sqlite3
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

import hostile
from fieldid.errors import InboxError
from fieldid.inbox import store
from fieldid.inbox.deciding import accept, refuse
from fieldid.inbox.looking import kept, photo, shelf
from fieldid.inbox.taking import OTHER, Taken, take

LATER = "2026-11-26T10:00:00Z"
NOW = "2026-12-01T08:00:00.000Z"
KILLS = 6


@pytest.fixture
def inbox(tmp_path):
    return tmp_path / "rules-inbox.sqlite"


def sent(inbox, *files, name="finds.zip"):
    """What became of one file, made of the given ones."""
    return take(inbox, io.BytesIO(hostile.pack(*files)), name=name, now=NOW)


def alone(inbox, *entries, name="finds.json"):
    """What became of a file of JSON alone."""
    content = io.BytesIO(hostile.export(*entries))
    return take(inbox, content, name=name, now=NOW)


def test_find_and_photo_come_out_as_they_went_in(inbox):
    assert sent(inbox, *hostile.good()) == Taken("finds.zip", added=1)

    found = kept(inbox, 1)
    assert found.entry.title == "Iron from the fair"
    assert (found.file, found.at) == ("finds.zip", NOW)
    assert photo(inbox, found.photos[0].number) == hostile.jpeg()


def test_find_by_itself_is_here_once(inbox):
    """However its file is written, and whenever it comes."""
    for indent, now in ((0, NOW), (2, "2026-12-02T08:00:00.000Z")):
        content = io.BytesIO(json.dumps(hostile.find(), indent=indent).encode())
        became = take(inbox, content, name="find.json", now=now)

    assert became == Taken("find.json", already=1)
    assert kept(inbox, 1).entry.title == "plover, 1 December 2026"


def test_same_file_twice_is_told_and_adds_nothing(inbox):
    sent(inbox, *hostile.good())

    assert sent(inbox, *hostile.good(), name="copy.zip") == Taken(
        "copy.zip", before=NOW
    )
    assert shelf(inbox).waits == 1


def test_same_find_in_another_file_adds_nothing(inbox):
    sent(inbox, *hostile.good())
    other = hostile.entry(id=hostile.fresh(2))

    told = alone(inbox, hostile.entry(photos=[hostile.note()]), other)

    assert told == Taken("finds.json", added=1, already=1)
    assert shelf(inbox).waits == 2


def test_file_with_refused_finds_is_read_anew(inbox):
    """A newer version may take what this one refuses."""
    good, bad = hostile.entry(), hostile.entry(id=hostile.fresh(1), format=2)
    first, second = alone(inbox, good, bad), alone(inbox, good, bad)

    assert (first.added, len(first.refused)) == (1, 1)
    assert (second.already, second.refused) == (1, first.refused)
    assert second.before == ""


def test_newer_edition_takes_the_place_of_a_waiting_one(inbox):
    sent(inbox, *hostile.good())

    newer = hostile.entry(changed=LATER, title="Better", photos=[hostile.note()])
    assert alone(inbox, newer) == Taken("finds.json", renewed=1)

    (line,) = shelf(inbox).waiting
    assert (line.number, line.entry.title, line.photos) == (1, "Better", 1)


def test_newer_edition_drops_the_photo_it_lists_no_more(inbox):
    sent(inbox, *hostile.good())

    alone(inbox, hostile.entry(changed=LATER))

    assert shelf(inbox).waiting[0].photos == 0
    assert photo(inbox, 1) is None


def test_newer_edition_stands_beside_a_decided_one(inbox):
    alone(inbox, hostile.entry())
    refuse(inbox, 1, reason="too dark", now=NOW)

    alone(inbox, hostile.entry(changed=LATER))

    assert [line.number for line in shelf(inbox).waiting] == [2]
    assert [each.reason for each in kept(inbox, 2).other] == ["too dark"]


def test_older_edition_changes_nothing(inbox):
    alone(inbox, hostile.entry(changed=LATER))

    assert alone(inbox, hostile.entry(title="before")).older == 1
    assert kept(inbox, 1).entry.title == "Iron from the fair"


def test_same_edition_that_says_something_else_is_refused(inbox):
    alone(inbox, hostile.entry())

    (refused,) = alone(inbox, hostile.entry(title="forged")).refused

    assert (refused.why, refused.name, refused.place) == (OTHER, "forged", 1)
    assert kept(inbox, 1).entry.title == "Iron from the fair"


def test_photos_can_come_after_their_find(inbox):
    alone(inbox, hostile.entry())

    assert sent(inbox, *hostile.good()).pictured == 1
    assert photo(inbox, kept(inbox, 1).photos[0].number) == hostile.jpeg()


def test_file_name_is_shown_and_never_a_path(inbox):
    name = "x" * 300 + "../../etc/\x00pass\u202ewd"

    told = alone(inbox, hostile.entry(), name=name)

    assert len(told.name) == 100
    assert told.name.endswith("x../../etc/passwd")
    assert os.listdir(inbox.parent) == [inbox.name]


def test_inbox_is_for_its_owner_alone(inbox):
    alone(inbox, hostile.entry())

    assert inbox.stat().st_mode & 0o777 == 0o600


def test_looking_makes_no_file(inbox):
    assert shelf(inbox).waiting == ()
    assert kept(inbox, 1) is None
    assert photo(inbox, 1) is None
    assert not inbox.exists()


def test_photo_that_was_tampered_with_is_not_served(inbox):
    sent(inbox, *hostile.good())
    with store.writing(inbox) as file:
        file.execute("UPDATE photo SET jpeg = ?", (b"<script>",))

    assert photo(inbox, 1) is None


def test_another_database_is_refused_and_left_alone(inbox):
    other = sqlite3.connect(inbox)
    other.execute("CREATE TABLE mine (x)")
    other.commit()
    other.close()

    with pytest.raises(InboxError, match="another database"):
        alone(inbox, hostile.entry())


def test_no_database_at_all_is_refused(inbox):
    inbox.write_bytes(b"Dear diary, " * 1000)

    with pytest.raises(InboxError, match="not a database"):
        shelf(inbox)


def test_newer_inbox_is_refused(inbox):
    alone(inbox, hostile.entry())
    file = sqlite3.connect(inbox)
    file.execute("PRAGMA user_version = 99")
    file.close()

    with pytest.raises(InboxError, match="newer version of fieldid"):
        shelf(inbox)


def test_locked_inbox_is_told(inbox, monkeypatch):
    monkeypatch.setattr(store, "PATIENCE", 0.05)
    alone(inbox, hostile.entry())

    with store.writing(inbox), pytest.raises(InboxError, match="in use elsewhere"):
        alone(inbox, hostile.entry(id=hostile.fresh(1)))
    assert shelf(inbox).waits == 1


def test_full_disk_is_told_and_leaves_nothing_half(inbox, monkeypatch):
    alone(inbox, hostile.entry())
    opened = store._opened

    def small(path):
        file = opened(path)
        (pages,) = file.execute("PRAGMA page_count").fetchone()
        file.execute(f"PRAGMA max_page_count = {pages}")
        return file

    monkeypatch.setattr(store, "_opened", small)
    many = [hostile.entry(id=hostile.fresh(i), note="x" * 2000) for i in range(50)]
    with pytest.raises(InboxError, match="no room left on the disk"):
        alone(inbox, *many)
    monkeypatch.undo()

    assert shelf(inbox).waits == 1
    assert alone(inbox, *many).added == 50


def test_folder_that_cannot_be_written_is_told(tmp_path):
    with pytest.raises(InboxError, match="cannot be written"):
        alone(tmp_path / "missing" / "inbox.sqlite", hostile.entry())


def test_many_at_once_add_each_find_once(inbox):
    """Two tabs, or a page and the command, take in the same files."""
    files = [hostile.export(hostile.entry(id=hostile.fresh(i))) for i in range(8)]
    told = []

    def work():
        for i, content in enumerate(files):
            stream = io.BytesIO(content + b" " * len(told))
            told.append(take(inbox, stream, name=f"{i}.json", now=NOW))

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert len(told) == 32
    assert sum(each.added for each in told) == shelf(inbox).waits == 8


def test_accepted_find_in_another_edition_counts_once(inbox):
    alone(inbox, hostile.entry())
    accept(inbox, 1, rows="[]", now=NOW, write=lambda: None)
    alone(inbox, hostile.entry(changed=LATER))

    with pytest.raises(InboxError, match="counts once"):
        accept(inbox, 2, rows="[]", now=NOW, write=lambda: None)


WRITER = """
import io, sys
sys.path.insert(0, sys.argv[2])
import hostile
from pathlib import Path
from fieldid.inbox.taking import take
i = int(sys.argv[3])
while True:
    i += 1
    photos = [hostile.note(id=hostile.fresh(i * 10 + k)) for k in range(6)]
    finds = hostile.export(hostile.entry(id=hostile.fresh(i), photos=photos))
    files = [(f"photos/{note['id']}.jpg", hostile.jpeg()) for note in photos]
    content = hostile.pack(*files, ("finds.json", finds))
    take(Path(sys.argv[1]), io.BytesIO(content), name=f"{i}.zip", now="2026")
    print(i, flush=True)
"""


def test_killed_while_taking_in_leaves_whole_finds(inbox):
    done = 0
    for kill in range(KILLS):
        arguments = (str(inbox), str(Path(__file__).parents[1]), str(1000 * kill))
        process = subprocess.Popen(
            [sys.executable, "-c", WRITER, *arguments], stdout=subprocess.PIPE
        )
        process.stdout.readline()
        time.sleep(0.05 + 0.017 * kill)
        process.send_signal(signal.SIGKILL)
        done += 1 + len(process.communicate()[0].splitlines())

    with store.reading(inbox) as file:
        assert file.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
        rows = file.execute("SELECT find, count(*) FROM photo GROUP BY find").fetchall()
        (finds,) = file.execute("SELECT count(*) FROM find").fetchone()
    assert done <= finds <= done + KILLS
    assert {count for _, count in rows} == {6}
    assert len(rows) == finds
