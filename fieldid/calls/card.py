"""How `fieldid card` is called."""

import argparse
from pathlib import Path

from fieldid.calls.shared import guide

DOES = "Write a guide as one sheet to print, for a pocket without a phone."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide(own)
    own.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="FILE",
        help="the HTML file to write; it needs nothing beside it",
    )


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.card import card

    card(asked.guide, asked.out)
    return 0
