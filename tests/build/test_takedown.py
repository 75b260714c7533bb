import re
from dataclasses import replace

from bs4 import BeautifulSoup

from bundles import built, guide, worker
from fieldid.build.folder import MARKER
from fieldid.build.takedown import take_down


def test_worker_keeps_nothing_and_so_retires():
    """Unfilled, as it is written: what it does then, its own tests tell."""
    gone = take_down([guide()])

    text = gone.files["sw.js"].decode()
    assert 'const BUILD = "dev";' in text
    assert "const FILES = [];" in text
    assert gone.files["sw.js"] != built().files["sw.js"]


def test_worker_removes_no_log():
    """What it takes for the app's begins otherwise than what the log is kept in."""
    text = take_down([]).files["sw.js"].decode()

    assert "const OURS = `fieldid:${SCOPE}:`;" in text
    assert "indexedDB" not in text
    assert "fieldid-log" not in text


def test_page_registers_no_worker():
    for path, body in take_down([]).files.items():
        if path != "sw.js":
            assert b"serviceWorker" not in body, path


def test_page_has_its_files_in_its_folder():
    gone = take_down([guide()])
    page = BeautifulSoup(gone.files["index.html"], "html.parser")
    found = [page.script["src"], page.find("link", rel="stylesheet")["href"]]

    assert all(path.startswith(f"v/{gone.build}/") for path in found)
    assert {*found} < {*gone.files}


def test_page_asks_for_the_prices_of_its_guides():
    page = BeautifulSoup(take_down([guide()]).files["index.html"], "html.parser")

    assert page.body["data-guides"] == "tarn-corncrake"


def test_other_guides_make_another_build():
    renamed = replace(guide(), id="other")

    assert take_down([guide()]).build == take_down([guide()]).build
    assert take_down([guide()]).build != take_down([renamed]).build


def test_folder_of_the_app_is_taken_down(tmp_path):
    """Pages that are open still find the app's files; nothing else of it is left."""
    built().write(tmp_path)
    take_down([guide()]).write(tmp_path)

    left = {
        path.relative_to(tmp_path).as_posix()
        for path in tmp_path.rglob("*")
        if path.is_file()
    }
    old = {path for path in left if path.startswith(f"v/{built().build}/")}
    assert "tree-tarn-corncrake.html" not in left
    assert {path.partition(".gz")[0].partition(".br")[0] for path in old} == {
        path for path in built().files if path.startswith("v/")
    }
    assert re.search("^build ", (tmp_path / MARKER).read_text(), re.MULTILINE)


def test_app_can_be_put_back(tmp_path):
    built().write(tmp_path)
    take_down([guide()]).write(tmp_path)
    assert (tmp_path / "sw.js").read_bytes() != built().files["sw.js"]
    built().write(tmp_path)

    assert (tmp_path / "sw.js").read_bytes() == built().files["sw.js"]
    assert worker(built())[1]
