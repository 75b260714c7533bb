"""How `fieldid give` is called."""

import argparse
from pathlib import Path

from fieldid.calls.shared import guide

DOES = "Write a guide as one file, for somebody to add on a phone."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide(own)
    own.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="FILE",
        help="the file to write; name it .txt, since phones hand on texts to any app",
    )


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.give import give

    give(asked.guide, asked.out)
    return 0
