"""`fieldid serve`: builds the phone app and serves it until it is stopped."""

import errno
import ipaddress
import logging
import signal
import socket
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from types import FrameType

# The library does not say its types.
from waitress import create_server  # type: ignore[import-untyped]

from fieldid.build.site import bundle
from fieldid.commands.shelf import load_all
from fieldid.errors import FieldidError
from fieldid.web.app import create_app

NO_HTTPS = (
    "Other machines reach this address without HTTPS, and browsers keep nothing from "
    "such an address:\n"
    "a phone can use the app here while this machine is on and in reach, but it is "
    "never ready for no signal.\n"
    "For that, put the folder of `fieldid build` on a web host with HTTPS."
)

THREADS = 8


def serve(names: Sequence[str], *, host: str, port: int, out: Path | None) -> None:
    """Serves until Ctrl-C or SIGTERM, both of which are a good end."""
    signal.signal(signal.SIGTERM, _stop)
    try:
        with _listening(host, port) as listener, _folder(out) as folder:
            _serve(names, listener, folder)
    except KeyboardInterrupt:
        pass
    print("Stopped.", flush=True)


def _serve(names: Sequence[str], listener: socket.socket, folder: Path) -> None:
    guides = load_all(names)
    print("Building the phone app, some seconds a guide...", flush=True)
    made = bundle(guides)
    made.write(folder)
    app = create_app(guides=guides, build=made.build, bundle=folder)
    # A browser asks for several files at once; that a few wait is no news.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    server = create_server(app, sockets=[listener], threads=THREADS)
    print(*_greeting(listener), sep="\n", flush=True)
    try:
        server.run()
    finally:
        server.close()


def _greeting(listener: socket.socket) -> Iterator[str]:
    host, port = listener.getsockname()[:2]
    shown = f"[{host}]" if ":" in host else host
    address = ipaddress.ip_address(host)
    if address.is_unspecified:
        yield f"Serving at port {port} of every address of this machine."
        yield f"On this machine: http://localhost:{port}/"
    else:
        yield f"Serving at http://{shown}:{port}/"
    if not address.is_loopback:
        yield NO_HTTPS
    yield "Stop with Ctrl-C."


@contextmanager
def _listening(host: str, port: int) -> Iterator[socket.socket]:
    """A socket at the address, taken before the build so that nobody waits in vain."""
    try:
        family, _, _, _, address = socket.getaddrinfo(
            host, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE
        )[0]
        listener = socket.create_server(address[:2], family=family)
    except OSError as error:
        raise FieldidError(_why(error, host, port)) from error
    with listener:
        yield listener


def _why(error: OSError, host: str, port: int) -> str:
    """Why the address cannot be had, and what to do."""
    if error.errno == errno.EADDRINUSE:
        return (
            f"Port {port} of {host} is in use by another program: "
            f"stop that one, or choose another port with --port {port + 1}."
        )
    if error.errno == errno.EACCES:
        return f"Port {port} may not be used here: choose one from 1024 up with --port."
    return (
        f"{host!r} is not an address of this machine ({error.strerror}): "
        "leave out --host, or use --host 0.0.0.0 for all of its addresses."
    )


@contextmanager
def _folder(out: Path | None) -> Iterator[Path]:
    """The folder for the built files."""
    if out is not None:
        yield out
        return
    with TemporaryDirectory(prefix="fieldid-") as folder:
        yield Path(folder)


def _stop(number: int, frame: FrameType | None) -> None:
    raise KeyboardInterrupt
