"""The `fieldid` command: how each subcommand is called, and how a mistake is told.

What a subcommand does is in fieldid.commands, imported only when it is asked for.
"""

import argparse
import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from fieldid import __version__
from fieldid.errors import FieldidError, UsageError

INTERRUPTED = 130
"""What shells give a command that was stopped from the keyboard."""


def main(arguments: Sequence[str] | None = None) -> int:
    """The exit code: 0 good, 1 problems in what was given, 2 a wrong call."""
    asked = parser().parse_args(arguments)
    try:
        code: int = asked.run(asked)
        sys.stdout.flush()
    except FieldidError as error:
        print(error, file=sys.stderr)
        return error.exit_code
    except BrokenPipeError:
        # The reader (`head`, say) has seen enough; nothing is wrong, and nothing may
        # be written any more, not even by the interpreter on its way out.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return INTERRUPTED
    return code


def parser() -> argparse.ArgumentParser:
    """All subcommands with their options."""
    whole = argparse.ArgumentParser(
        prog="fieldid",
        description="Say which model year an old object most likely is.",
    )
    whole.add_argument("--version", action="version", version=__version__)
    commands = whole.add_subparsers(metavar="COMMAND", required=True)
    for run, name, does, options in (
        (_check, "check", "List the mistakes of guides, a line each.", _check_options),
        (
            _build,
            "build",
            "Write the phone app as files for any web host with HTTPS, or as one file.",
            _build_options,
        ),
        (
            _serve,
            "serve",
            "Serve the phone app, and the workbench for guides, until stopped.",
            _serve_options,
        ),
        (
            _judge,
            "judge",
            "Print the verdict on what was read off an object.",
            _judge_options,
        ),
        (
            _card,
            "card",
            "Write a guide as one sheet to print, for a pocket without a phone.",
            _card_options,
        ),
        (
            _give,
            "give",
            "Write a guide as one file, for somebody to add on a phone.",
            _give_options,
        ),
        (
            _audit,
            "audit",
            "Try a guide on specimens drawn from it: how often, how soon it is right.",
            _audit_options,
        ),
        (
            _census,
            "census",
            "Compare a guide's shares with its confirmed specimens, and write counts.",
            _census_options,
        ),
        (
            _inbox,
            "inbox",
            "Take files of finds, as phones save them, into the workbench's inbox.",
            _inbox_options,
        ),
    ):
        own = commands.add_parser(name, help=does, description=does)
        options(own)
        own.set_defaults(run=run)
    return whole


def _check_options(own: argparse.ArgumentParser) -> None:
    _guides(own)


def _check(asked: argparse.Namespace) -> int:
    from fieldid.commands.check import check

    check(asked.guides)
    return 0


def _build_options(own: argparse.ArgumentParser) -> None:
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
    _guides(own)


def _build(asked: argparse.Namespace) -> int:
    from fieldid.commands.build import Asked, build

    build(
        Asked(
            guides=asked.guides,
            out=asked.out,
            one_file=asked.one_file,
            address=asked.address,
            take_down=asked.take_down,
        )
    )
    return 0


def _serve_options(own: argparse.ArgumentParser) -> None:
    own.add_argument(
        "--port",
        type=_port,
        default=8000,
        metavar="N",
        help="the port to listen at, 0 for any that is free (default: 8000)",
    )
    own.add_argument(
        "--host",
        default="127.0.0.1",
        metavar="ADDRESS",
        help="the address to listen at (default: 127.0.0.1, this machine alone)",
    )
    own.add_argument(
        "--out",
        type=Path,
        metavar="DIR",
        help="keep a copy of the built files in this folder",
    )
    own.add_argument(
        "--rules",
        type=Path,
        metavar="DIR",
        help="the folder of guides that the workbench edits and the app shows; it may "
        "be new (default: the guides that come with fieldid)",
    )
    own.add_argument(
        "--certificate",
        type=Path,
        metavar="FILE",
        help="serve over HTTPS with this certificate, in PEM; needs --key",
    )
    own.add_argument(
        "--key", type=Path, metavar="FILE", help="the certificate's private key"
    )
    own.add_argument(
        "--password-file",
        type=Path,
        metavar="FILE",
        help="ask for a password at the workbench, whose hash is in this file; it is "
        "written when a new password was typed",
    )
    _guides(own)


def _serve(asked: argparse.Namespace) -> int:
    from fieldid.commands.serve import Asked, serve

    serve(
        Asked(
            guides=asked.guides,
            rules=asked.rules,
            host=asked.host,
            port=asked.port,
            out=asked.out,
            certificate=asked.certificate,
            key=asked.key,
            password_file=asked.password_file,
        )
    )
    return 0


def _judge_options(own: argparse.ArgumentParser) -> None:
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
        metavar="FIND.json",
        help="a file with one find, or with one a line; - reads standard input",
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


def _judge(asked: argparse.Namespace) -> int:
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


def _card_options(own: argparse.ArgumentParser) -> None:
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")
    own.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="FILE",
        help="the HTML file to write; it needs nothing beside it",
    )


def _card(asked: argparse.Namespace) -> int:
    from fieldid.commands.card import card

    card(asked.guide, asked.out)
    return 0


def _give_options(own: argparse.ArgumentParser) -> None:
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")
    own.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="FILE",
        help="the file to write; name it .txt, since phones hand on texts to any app",
    )


def _give(asked: argparse.Namespace) -> int:
    from fieldid.commands.give import give

    give(asked.guide, asked.out)
    return 0


def _audit_options(own: argparse.ArgumentParser) -> None:
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")
    own.add_argument(
        "--specimens",
        type=_count,
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
        type=_count,
        default=1,
        metavar="N",
        help="how many to work with; the figures stay the same (default: 1)",
    )
    own.add_argument("--json", action="store_true", help="print the audit as JSON")


def _audit(asked: argparse.Namespace) -> int:
    from fieldid.commands.audit import audit

    whole = audit(
        asked.guide,
        specimens=asked.specimens,
        seed=asked.seed,
        processes=asked.processes,
        as_json=asked.json,
    )
    return 0 if whole else INTERRUPTED


def _census_options(own: argparse.ArgumentParser) -> None:
    own.add_argument("guide", metavar="GUIDE", help="a guide's file, or its id")
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


def _census(asked: argparse.Namespace) -> int:
    from fieldid.commands.census import Wishes, census

    accept = tuple(asked.accept)
    wishes = Wishes(date.today(), asked.json, accept, asked.accept_all)
    census(asked.guide, asked.census, wishes)
    return 0


def _inbox_options(own: argparse.ArgumentParser) -> None:
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


def _inbox(asked: argparse.Namespace) -> int:
    from fieldid.commands.inbox import inbox

    return inbox(asked.files, asked.rules)


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


def _guides(own: argparse.ArgumentParser) -> None:
    own.add_argument(
        "guides",
        nargs="*",
        metavar="GUIDE",
        help="a guide's file, or its id; without any, those that come with fieldid",
    )


def _count(text: str) -> int:
    count = int(text)
    if count < 1:
        raise argparse.ArgumentTypeError(f"{count} is too few; use 1 or more")
    return count


def _port(text: str) -> int:
    port = int(text)
    if not 0 <= port <= 65535:
        raise argparse.ArgumentTypeError(f"{port} is no port; use 0 to 65535")
    return port
