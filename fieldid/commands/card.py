"""`fieldid card`: one sheet for a pocket, as a file that prints itself alone."""

from pathlib import Path

from fieldid.commands.shelf import path_of
from fieldid.errors import BuildError
from fieldid.guides.load import load
from fieldid.paths import STATIC
from fieldid.web.app import create_app
from fieldid.web.phone import CARD, card_page


def card(name: str, out: Path) -> None:
    """Write the guide's card as one HTML file without anything beside it."""
    guide = load(path_of(name))
    sheets = (STATIC / "css" / f"{sheet}.css" for sheet in CARD)
    styles = "\n".join(sheet.read_text("utf-8") for sheet in sheets)
    with create_app(guides=[guide]).app_context():
        page = card_page(guide, styles=styles)
    try:
        out.write_text(page, "utf-8")
    except OSError as error:
        raise BuildError(f"{out}: cannot be written: {error.strerror}") from error
    print(f"{out}: print it on one sheet, A4 or Letter")
