"""How `fieldid check` is called."""

import argparse

from fieldid.calls.shared import guides

DOES = "List the mistakes of guides, a line each."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guides(own)


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.check import check

    check(asked.guides)
    return 0
