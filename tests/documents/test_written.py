"""What the pages say of the project is so: their links, names, map and length."""

import re
import tomllib
from pathlib import Path

import pytest

from cleanmachine import ROOT
from pages import anchors, blocks, lines, links, spans, words

MODEL = "fieldid/engine/README.md"
PAGES = ("README.md", "DEVELOPERS.md", "rules/README.md", MODEL)
A_MINUTE = 200
"""Words that somebody reads."""
ROOMS = ("", "fieldid", "static/phone", "static", "fieldid/engine")
"""From where the pages name files, beside their own folder."""
NAME = re.compile(r"[\w.<>-]+(?:/[\w.<>-]*)*")
FILE = re.compile(r"\w\.(?:py|js|css|html|toml|md|json|png|csv|txt|mjs)$")
ELSEWHERE = tomllib.loads((Path(__file__).parent / "followed.toml").read_text())
MADE = {each["file"] for each in ELSEWHERE["given"] + ELSEWHERE["made"]}
"""Files that the pages name and that are not there before somebody makes them."""


@pytest.fixture(params=PAGES)
def page(request) -> Path:
    return ROOT / request.param


def test_links_lead_somewhere(page):
    for link in links(page.read_text()):
        name, _, anchor = link.partition("#")
        there = page.parent / name if name else page

        assert not link.startswith("http")
        assert there.is_file(), link
        assert not anchor or anchor in anchors(there.read_text()), link


def test_named_files_are_there(page):
    missing = [name for name in named(page) if not is_there(page, name)]

    assert missing == []


def named(page: Path) -> list[str]:
    """The files and folders that the page names in its sentences."""
    found = dict.fromkeys(span.text for span in spans(page.read_text()))
    return [code for code in found if NAME.fullmatch(code) and is_file(code)]


def is_file(code: str) -> bool:
    """Whether it looks like a path rather than a name in the code."""
    return bool(FILE.search(code)) or (code.endswith("/") and code != "/")


def is_there(page: Path, name: str) -> bool:
    if name in MADE:
        return True
    places = [page.parent, *(ROOT / room for room in ROOMS)]
    return any((place / name).exists() for place in places)


def test_modules_of_the_map_are_there():
    missing = [path for path in mapped() if not (ROOT / path).exists()]

    assert missing == []


def test_every_folder_is_on_the_map():
    """A folder of tests that mirrors one of fieldid/ is named with it."""
    on_it = {path.rstrip("/") for path in mapped()}
    mirrors = {path.replace("fieldid", "tests", 1) for path in on_it}

    assert folders() - on_it - mirrors == set()


def mapped() -> list[str]:
    """The paths of DEVELOPERS.md's map, each below the folder that it stands under."""
    text = blocks((ROOT / "DEVELOPERS.md").read_text())
    [tree] = [block.text for block in text if "fieldid/  " in block.text]
    above: list[str] = []
    paths = []
    for line in tree.splitlines():
        depth = (len(line) - len(line.lstrip())) // 2
        names = re.split(r"\s{2,}", line.strip())[0].split()
        del above[depth:]
        paths += ["".join(above) + name for name in names]
        above.append(names[-1])
    return paths


def folders() -> set[str]:
    """All folders of the project that hold something of it."""
    ours = re.compile(r"fieldid|rules|static|templates|tests|\.ci")
    found = {
        path.parent
        for top in ROOT.iterdir()
        if ours.fullmatch(top.name)
        for path in top.rglob("*")
        if is_kept(path)
    }
    return {str(path.relative_to(ROOT)) for path in found}


def is_kept(path: Path) -> bool:
    unkept = {"__pycache__", "node_modules"}
    return path.is_file() and not unkept & {*path.parts}


@pytest.mark.parametrize(("name", "minutes"), [("README.md", 5), ("DEVELOPERS.md", 10)])
def test_page_is_read_in_its_time(name, minutes):
    assert words((ROOT / name).read_text()) <= minutes * A_MINUTE


def test_line_holds_one_sentence(page):
    """So that a change shows which sentence it was."""
    several = [
        line
        for line in lines(page.read_text())
        if len(re.findall(r"(?<![ (]\w)[.?!]\s+(?=[A-Z`*])", line)) > 0
        and not line.lstrip().startswith(("-", "1.", "2.", "3.", "4.", "5.", "6."))
    ]

    assert several == []
