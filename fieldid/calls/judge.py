"""How `fieldid judge` is called."""

import argparse
from collections.abc import Sequence
from typing import Any

from fieldid.errors import UsageError

DOES = "Print the verdict on what was read off an object."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    own.set_defaults(words=[])
    own.add_argument(
        "guide",
        nargs="?",
        metavar="GUIDE",
        help="a guide's file, or its id; not needed where --find names one that "
        "comes with fieldid",
    )
    own.add_argument(
        "--find",
        metavar="FILE",
        help="a file of finds, as phones save them, or with one find a line; - reads "
        "standard input",
    )
    own.add_argument(
        "--read",
        action=_InOrder,
        metavar="CLUE=READING",
        help="a reading, ? if it cannot be told, 6.1±0.2 for a size with its "
        "error; may be repeated",
    )
    own.add_argument(
        "--gone",
        action=_InOrder,
        metavar="PART",
        help="a part that is gone; may be repeated",
    )
    own.add_argument(
        "--member",
        action=_InOrder,
        help="which member of a set it is; repeated, each begins the next object",
    )
    own.add_argument(
        "--claim", type=int, metavar="YEAR", help="the model year that is claimed"
    )
    own.add_argument(
        "--cites",
        action="append",
        default=[],
        metavar="CLUE",
        help="a clue that is cited for the claim; may be repeated",
    )
    own.add_argument(
        "--away",
        action="store_true",
        help="name as next only what shows from a step away",
    )
    own.add_argument(
        "--without",
        action="append",
        default=[],
        metavar="TOOL",
        help="a tool that is not at hand; may be repeated",
    )
    own.add_argument(
        "--photos",
        action="store_true",
        help="name as next only what a photo can show",
    )
    own.add_argument(
        "--message",
        action="store_true",
        help="print a message to the seller after the verdict",
    )
    own.add_argument("--json", action="store_true", help="print the verdict as JSON")


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.judge import Wishes, judge_file, judge_told
    from fieldid.commands.told import Told

    wishes = Wishes(
        asked.json, asked.away, tuple(asked.without), asked.photos, asked.message
    )
    told = Told(tuple(asked.words), asked.claim, tuple(asked.cites))
    if asked.find is None:
        if asked.guide is None:
            raise UsageError("judge needs a GUIDE, or a file with --find")
        return judge_told(asked.guide, told, wishes)
    if told != Told():
        raise UsageError("--find holds the whole find; leave out what else is read")
    return judge_file(asked.guide, asked.find, wishes)


class _InOrder(argparse.Action):
    """Keeps its values in `words`, among those of other options, as they were given."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        asked: argparse.Namespace,
        values: str | Sequence[Any] | None,
        option: str | None = None,
    ) -> None:
        asked.words = [*asked.words, (self.dest, values)]
