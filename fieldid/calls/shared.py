"""Options and types that several commands share."""

import argparse

INTERRUPTED = 130
"""What shells give a command that was stopped from the keyboard."""


def guide(own: argparse.ArgumentParser) -> None:
    """The one guide that the command works on."""
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")


def guides(own: argparse.ArgumentParser) -> None:
    """Any number of guides."""
    own.add_argument(
        "guides",
        nargs="*",
        metavar="GUIDE",
        help="a guide's file, or its id; without any, those that come with fieldid",
    )


def count(text: str) -> int:
    """A whole number from 1 on."""
    number = int(text)
    if number < 1:
        raise argparse.ArgumentTypeError(f"{number} is too few; use 1 or more")
    return number
