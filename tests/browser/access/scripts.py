"""The scripts that look at a page from within; each is one function."""

from pathlib import Path

FOLDER = Path(__file__).parent / "js"


def script(name: str) -> str:
    """The text of a script, as a browser evaluates it."""
    text = (FOLDER / f"{name}.js").read_text("utf-8")
    # An expression has no end.
    return text.strip().removesuffix(";")
