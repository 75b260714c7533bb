"""What the Nu Html Checker says of pages, and css-tree of style sheets."""

import json
import subprocess
from pathlib import Path

import checkers

CSS = Path(__file__).with_name("csscheck.js")


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
    """The errors in style sheets."""
    tree = str(checkers.path(checkers.CSS))
    asked = ("node", str(CSS), tree, *map(str, sheets))
    told = subprocess.run(asked, capture_output=True, text=True, check=True)
    return told.stdout.splitlines()
