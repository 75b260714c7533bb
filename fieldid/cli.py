"""The `fieldid` command: its subcommands, and how a mistake is told.

How a subcommand is called is in fieldid.calls; what it does is in fieldid.commands,
imported only when it is asked for.
"""

import argparse
import os
import sys
from collections.abc import Sequence

from fieldid import __version__
from fieldid.calls import (
    audit,
    build,
    card,
    census,
    check,
    give,
    inbox,
    judge,
    serve,
)
from fieldid.calls.shared import INTERRUPTED
from fieldid.errors import FieldidError

CALLS = (check, build, serve, judge, card, give, audit, census, inbox)
"""In the order of the help."""


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
    for call in CALLS:
        name = call.__name__.rpartition(".")[2]
        own = commands.add_parser(name, help=call.DOES, description=call.DOES)
        call.options(own)
        own.set_defaults(run=call.run)
    return whole
