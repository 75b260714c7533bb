"""How `fieldid census` is called."""

import argparse
from datetime import date
from pathlib import Path

from fieldid.calls.shared import guide

DOES = "Compare a guide's shares with its confirmed specimens, and write counts."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide(own)
    own.add_argument(
        "--census",
        type=Path,
        metavar="FILE.csv",
        help="the specimens (default: <guide>.census.csv beside the guide)",
    )
    own.add_argument(
        "--accept",
        action="append",
        default=[],
        metavar="CLUE[.OPTION[.PLACE]]",
        help="write these counts into the guide; may be repeated",
    )
    own.add_argument(
        "--accept-all",
        action="store_true",
        help="write the counts of all spans that disagree into the guide",
    )
    own.add_argument("--json", action="store_true", help="print it as JSON")


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.census import Wishes, census

    accept = tuple(asked.accept)
    wishes = Wishes(date.today(), asked.json, accept, asked.accept_all)
    census(asked.guide, asked.census, wishes)
    return 0
