"""How `fieldid card` is called."""

import argparse

from fieldid.calls.shared import guide_to_file

DOES = "Write a guide as one sheet to print, for a pocket without a phone."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide_to_file(own, "the HTML file to write; it needs nothing beside it")


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.card import card

    card(asked.guide, asked.out)
    return 0
