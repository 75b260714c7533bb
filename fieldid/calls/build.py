"""How `fieldid build` is called."""

import argparse
from pathlib import Path

from fieldid.calls.shared import guides, told

DOES = "Write the phone app as files for any web host with HTTPS, or as one file."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    own.add_argument(
        "--out",
        type=Path,
        metavar="DIR",
        help="the folder to write: new, empty, or written by an earlier build",
    )
    own.add_argument(
        "--one-file",
        type=Path,
        metavar="FILE",
        help="write the app as one HTML file, which desktops and Android open without "
        "any host; it keeps nothing",
    )
    own.add_argument(
        "--address",
        metavar="URL",
        help="where the folder will be: write a page with its QR code beside it",
    )
    own.add_argument(
        "--take-down",
        action="store_true",
        help="write what takes the app off phones, and leaves them their finds, "
        "instead of the app",
    )
    guides(own)


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.build import Asked, build

    build(told(asked, Asked))
    return 0
