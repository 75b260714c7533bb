"""CSS by the rules, and broken pages and sheets that are refused."""

import pytest

from access.validity import wrong_pages, wrong_styles
from fieldid.paths import STATIC


def test_styles_are_valid(bundle):
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
        "@property --gap { inherits: perhaps }",
        "@property --gap { margin: 0 }",
    ],
)
def test_broken_style_is_refused(broken, tmp_path):
    sheet = tmp_path / "sheet.css"
    sheet.write_text(broken)

    assert wrong_styles([sheet])
