"""Options and types that several commands share."""

import argparse
from dataclasses import fields
from pathlib import Path
from typing import TypeVar

Asked = TypeVar("Asked")

INTERRUPTED = 130
"""What shells give a command that was stopped from the keyboard."""


def guide(own: argparse.ArgumentParser) -> None:
    """The one guide that the command works on."""
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")


def guide_to_file(own: argparse.ArgumentParser, written: str) -> None:
    """One guide, and the file that the command makes of it; `written` is its help."""
    guide(own)
    own.add_argument("--out", type=Path, required=True, metavar="FILE", help=written)


def told(asked: argparse.Namespace, kind: type[Asked]) -> Asked:
    """What was asked, as a record that has a field for each option."""
    names = [field.name for field in fields(kind)]  # type: ignore[arg-type]  # a dataclass has no type of its own to be named
    return kind(**{name: getattr(asked, name) for name in names})


def guides(own: argparse.ArgumentParser) -> None:
    """Any number of guides."""
    own.add_argument(
        "guides",
        nargs="*",
        metavar="GUIDE",
        help="a guide's file or its id, or a folder with guides; without any, those "
        "that come with fieldid",
    )


def count(text: str) -> int:
    """A whole number from 1 on."""
    number = int(text)
    if number < 1:
        raise argparse.ArgumentTypeError(f"{number} is too few; use 1 or more")
    return number
