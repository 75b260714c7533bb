"""How `fieldid audit` is called."""

import argparse

from fieldid.calls.shared import INTERRUPTED, count, guide

DOES = "Try a guide on specimens drawn from it: how often, how soon it is right."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide(own)
    own.add_argument(
        "--specimens",
        type=count,
        metavar="N",
        help="how many to draw (default: 1000, or 200 for a guide that brackets)",
    )
    own.add_argument(
        "--seed",
        type=int,
        default=1,
        metavar="N",
        help="another number draws other specimens (default: 1)",
    )
    own.add_argument(
        "--processes",
        type=count,
        default=1,
        metavar="N",
        help="how many to work with; the figures stay the same (default: 1)",
    )
    own.add_argument("--json", action="store_true", help="print the audit as JSON")


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.audit import audit

    whole = audit(
        asked.guide,
        specimens=asked.specimens,
        seed=asked.seed,
        processes=asked.processes,
        as_json=asked.json,
    )
    return 0 if whole else INTERRUPTED
