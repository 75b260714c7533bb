"""HTML and CSS by the rules: every file of the build, and each state as it lies in the
browser. The Nu Html Checker reads pages, css-tree style sheets.
"""

import json
import re
import subprocess
from pathlib import Path

import pytest

import checkers
from fieldid.paths import STATIC

# It waits, hidden, for the photo that somebody chooses.
NO_PHOTO = re.compile(r'<img class="stage__photo"(?![^>]* src=)[^>]*>')
CSS = Path(__file__).with_name("csscheck.js")


@pytest.fixture(scope="module")
def pages(walked, beside, bundle, tmp_path_factory):
    """The pages of the build, and what scripts and servers made of them."""
    folder = tmp_path_factory.mktemp("live")
    live = [*walked.pages.values(), *beside.pages.values()]
    for place, text in enumerate(live):
        (folder / f"{place}.html").write_text(NO_PHOTO.sub("", text))
    return [*bundle.glob("*.html"), *sorted(folder.glob("*.html"))]


def test_pages_are_valid(pages):
    assert len(pages) > 60
    assert wrong_pages(pages) == []


def test_styles_are_valid(bundle, standing):
    sheets = [*STATIC.rglob("*.css"), *bundle.rglob("*.css")]

    assert len(sheets) > 20
    assert wrong_styles(sheets) == []


@pytest.mark.parametrize(
    ("broken", "wanted"),
    [
        ("<ul><p>a</p></ul>", "not allowed as child of element “ul”"),
        ("<p id=a>a</p><p id=a>b</p>", "Duplicate ID “a”"),
        ("<button role=lead>a</button>", "Bad value “lead” for attribute “role”"),
        ("<a href=x><button>a</button></a>", "must not appear as a descendant"),
        ("<p>a</div>", "Stray end tag “div”"),
    ],
)
def test_broken_page_is_refused(broken, wanted, tmp_path):
    page = tmp_path / "page.html"
    head = "<!doctype html><html lang=en><title>a</title><body>"
    page.write_text(head + broken)

    assert any(wanted in each for each in wrong_pages([page]))


@pytest.mark.parametrize(
    "broken",
    [
        "a { colour: red }",
        "a { width: 3px 4px }",
        ":root { --gap: 4px } a { color: var(--gap) }",
        "@media (min-width 3em) { a { top: 0 } }",
        "a { top 0 }",
    ],
)
def test_broken_style_is_refused(broken, tmp_path):
    sheet = tmp_path / "sheet.css"
    sheet.write_text(broken)

    assert wrong_styles([sheet])


def wrong_pages(pages: list[Path]) -> list[str]:
    """The errors in pages; what the checker only advises is no error."""
    # Deep pages need a deep stack.
    java = ("java", "-Xss64m", "-jar", str(checkers.path(checkers.NU)))
    asked = (*java, "--format", "json", "--stdout", *map(str, pages))
    told = subprocess.run(asked, capture_output=True, text=True, check=False)
    return [
        f"{Path(each.get('url', '')).name}: {each['message']}"
        for each in json.loads(told.stdout)["messages"]
        # Of styles css-tree knows more, and younger ones.
        if each["type"] != "info" and not each["message"].startswith("CSS:")
    ]


def wrong_styles(sheets: list[Path]) -> list[str]:
    tree = str(checkers.path(checkers.CSS))
    asked = ("node", str(CSS), tree, *map(str, sheets))
    told = subprocess.run(asked, capture_output=True, text=True, check=True)
    return told.stdout.splitlines()
