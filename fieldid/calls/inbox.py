"""How `fieldid inbox` is called."""

import argparse
from pathlib import Path

DOES = "Take files of finds, as phones save them, into the workbench's inbox."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    own.add_argument(
        "files",
        nargs="+",
        type=Path,
        metavar="FILE",
        help="a file of finds, or a folder with some: .zip and .json",
    )
    own.add_argument(
        "--rules",
        type=Path,
        metavar="DIR",
        help="the folder of guides, beside which the inbox lies (default: the guides "
        "that come with fieldid)",
    )


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.inbox import inbox

    return inbox(asked.files, asked.rules)
