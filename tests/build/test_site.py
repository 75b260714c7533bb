import hashlib
import json
import os
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from bundles import RULES, built, guide, worker
from fieldid.build.precache import address, integrity
from fieldid.build.site import bundle, identity
from fieldid.build.slim import slim
from fieldid.errors import BuildError
from fieldid.paths import TEMPLATES
from fieldid.web import headers

PROJECT = Path(__file__).parents[2]
BUILD = "import sys; from fieldid.cli import main; sys.exit(main(sys.argv[1:]))"


def run(folder: Path, seed: str) -> dict[str, bytes]:
    """What the command writes under this order of hashing, path by path."""
    subprocess.run(
        [
            sys.executable,
            "-c",
            BUILD,
            "build",
            "--out",
            folder,
            RULES / "tarn-corncrake.toml",
        ],
        cwd=PROJECT,
        env=os.environ | {"PYTHONHASHSEED": seed},
        check=True,
        capture_output=True,
    )
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


def test_two_builds_are_the_same_bytes(tmp_path):
    one, other = run(tmp_path / "a", "1"), run(tmp_path / "far" / "b", "2")

    assert one == other
    assert len(one) > 40


SERVERS = ("/form.css", "/verdict.css", "/judge.css")
"""Styles of pages that only a server can answer with."""


def test_worker_keeps_every_file_by_its_hash():
    """But for what is of no use without a server."""
    made = built()
    build, kept = worker(made)
    found = {entry["url"]: (entry["sha256"], entry["bytes"]) for entry in kept}

    assert build == made.build
    assert found == {
        address(path): (integrity(body), len(body))
        for path, body in made.files.items()
        if path not in ("sw.js", "_headers") and not path.endswith(SERVERS)
    }
    assert [entry["url"] for entry in kept] == sorted(found)


def test_worker_never_keeps_itself():
    _, kept = worker(built())

    assert not {"sw.js", "_headers", "index.html"} & {entry["url"] for entry in kept}


def test_unchanging_files_lie_under_the_build():
    made = built()
    loose = {path for path in made.files if not path.startswith(f"v/{made.build}/")}

    assert loose == {
        "_headers",
        "apple-touch-icon.png",
        "card-tarn-corncrake.html",
        "guide-tarn-corncrake.html",
        "icon-192.png",
        "icon-512.png",
        "icon-maskable-512.png",
        "icon.svg",
        "index.html",
        "manifest.webmanifest",
        "sw.js",
        "tree-tarn-corncrake.html",
    }


def test_no_file_knows_the_live_folder():
    """A page that still named it would lose its scripts in the bundle."""
    for path, body in built().files.items():
        assert b"v/dev/" not in body, path


def test_changed_guide_changes_the_build():
    changed = replace(guide(), updated="2031-01-01")

    assert bundle([changed]).build != built().build
    assert bundle([guide()]).build == built().build


def test_changed_header_changes_the_build(monkeypatch):
    """Kept pages carry the headers that they were kept with."""
    files = {"a": b"1"}
    before = identity(files)
    monkeypatch.setattr(headers, "HEADERS", (*headers.HEADERS, ("X-New", "1")))

    assert identity(files) != before


def test_build_is_a_hash_of_all_contents():
    assert len(identity({"a": b"1"})) == 12
    assert identity({"a": b"1"}) != identity({"a": b"2"})
    assert identity({"a": b"1"}) != identity({"b": b"1"})
    assert identity({"a": b"1", "b": b""}) == identity({"b": b"", "a": b"1"})


def test_words_like_a_folder_of_a_build_stay_as_they_are():
    """Only addresses are changed where a page learns the name of its build."""
    note = "The list lies in v/dev/css and in v/0123456789ab/css."
    made = bundle([replace(guide("lone-dunlin"), cautions=(note,))])

    assert note in made.files["guide-lone-dunlin.html"].decode()


def test_each_page_is_printed_once(monkeypatch):
    """A guide's pages take seconds, and a shelf may hold hundreds of guides."""
    printed = []
    monkeypatch.setattr(
        "fieldid.build.site.slim",
        lambda path, body: printed.append(path) or slim(path, body),
    )
    made = bundle([guide("lone-dunlin")])

    assert _pages(printed) == _pages(made.files)


def _pages(paths):
    return sorted(path for path in paths if path.endswith(".html"))


def test_guide_named_twice_is_refused():
    with pytest.raises(BuildError, match="'tarn-corncrake' is named twice"):
        bundle([guide(), guide()])


def test_build_without_guides_is_refused():
    with pytest.raises(BuildError, match="no guide"):
        bundle([])


def test_page_that_links_to_nothing_is_no_bundle(tmp_path):
    templates = tmp_path / "templates"
    shutil.copytree(TEMPLATES, templates)
    page = templates / "phone" / "paper.html"
    page.write_text(page.read_text().replace('href="./"', 'href="home.html"'))

    with pytest.raises(BuildError, match=r"'home[.]html' is not in the bundle"):
        bundle([guide("lone-dunlin")], templates=templates)


def test_compressed_copies_are_reproducible(tmp_path):
    """The eight bytes from the fifth on would hold the time of day."""
    built().write(tmp_path)
    packed = sorted(tmp_path.rglob("*.gz"))

    assert packed
    assert {path.read_bytes()[4:8] for path in packed} == {bytes(4)}


def test_examples_come_along():
    made = built()
    worked = json.loads(made.files[f"v/{made.build}/vectors.json"])

    assert [each["guide"] for each in worked] == ["tarn-corncrake"]
    assert len(worked[0]["cases"]) == 6


def test_budget_counts_what_the_page_asks_for():
    lines = built().budget()

    assert [line.split(":")[0] for line in lines] == [
        "page, styles and first script",
        "with the script of a find",
        "the script of kept finds",
        "the script of offers, wants and sizes",
        "the script of practice",
        "the script of guides from files",
        "the largest guide",
        "kept on a phone",
    ]
    assert f"{len(worker(built())[1])} files" in lines[7]


def test_hash_of_a_file_is_checkable_by_hand():
    """printf '' | openssl dgst -sha256 -binary | base64"""
    assert integrity(b"") == "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU="
    assert hashlib.sha256(b"").hexdigest().startswith("e3b0c442")
