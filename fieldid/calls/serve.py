"""How `fieldid serve` is called."""

import argparse
from pathlib import Path

from fieldid.calls.shared import guides, told

DOES = "Serve the phone app, and the workbench for guides, until stopped."


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
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
    guides(own)


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.serve import Asked, serve

    serve(told(asked, Asked))
    return 0


def _port(text: str) -> int:
    port = int(text)
    if not 0 <= port <= 65535:
        raise argparse.ArgumentTypeError(f"{port} is no port; use 0 to 65535")
    return port
