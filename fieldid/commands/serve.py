"""`fieldid serve`: the phone app and the workbench, until it is stopped."""

import getpass
import ipaddress
import signal
import socket
import ssl
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from types import FrameType
from wsgiref.types import WSGIApplication

from flask import Flask, render_template
from werkzeug.exceptions import HTTPException
from werkzeug.middleware.dispatcher import DispatcherMiddleware

from fieldid.commands.listening import Server, encryption, listening
from fieldid.commands.shelf import load_all
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError, FieldidError, GuideError, Problem, UsageError
from fieldid.guides.load import load
from fieldid.inbox.store import beside
from fieldid.paths import RULES, TEMPLATES
from fieldid.web.headers import sealed
from fieldid.workbench.app import create_workbench
from fieldid.workbench.gate import passwords
from fieldid.workbench.phone import Phone, State

NO_HTTPS = (
    "Other machines reach this address without HTTPS, and browsers keep nothing from "
    "such an address:\n"
    "a phone can use the app here while this machine is on and in reach, but it is "
    "never ready for no signal.\n"
    "For that, put the folder of `fieldid build` on a web host with HTTPS, or give "
    "--certificate and --key that phones trust."
)
WORKBENCH_OFF = (
    "THE WORKBENCH IS OFF, because other machines reach this address.\n"
    "It is on with HTTPS (--certificate FILE --key FILE) and a password "
    "(--password-file FILE, or typed when asked),\n"
    "or on this machine alone, without --host."
)
"""Said loudly, because somebody will look for it."""
IDLE_PASSWORD = (
    "A password alone does not open the workbench to other machines: give "
    "--certificate and --key too, since without HTTPS anybody between could read it."
)
SOMEWHERE = "this machine's address"
NOWHERE = ("192.0.2.1", "2001:db8::1")
"""Addresses that are kept for examples (RFC 5737, RFC 3849)."""
LEFT_OUT = "Left out of the phone app until they are mended, at the workbench say:"
MOUNT = "/workbench"


@dataclass(frozen=True, slots=True)
class Asked:
    """What the command was called with."""

    guides: Sequence[str]
    rules: Path | None
    host: str
    port: int
    out: Path | None
    certificate: Path | None
    key: Path | None
    password_file: Path | None


def serve(asked: Asked) -> None:
    """Serves until Ctrl-C or SIGTERM, both of which are a good end."""
    signal.signal(signal.SIGTERM, _stop)
    try:
        with listening(asked.host, asked.port) as listener, _work() as work:
            _serve(asked, listener, work)
    except KeyboardInterrupt:
        pass
    print("Stopped.", flush=True)


def _serve(asked: Asked, listener: socket.socket, work: Path) -> None:
    rules = _folder(asked.rules or RULES)
    context = _encryption(asked)
    alone = _address(listener).is_loopback
    safe = alone or context is not None
    if asked.password_file and not safe:
        print(IDLE_PASSWORD, flush=True)
    password = _password(asked, needed=not alone) if safe else None
    has_bench = alone or password is not None
    phone = Phone(
        lambda: _guides(asked, rules),
        work,
        asked.out,
        files=lambda: sorted(rules.glob("*.toml")),
    )
    print("Building the phone app, some seconds a guide...", flush=True)
    if has_bench and not asked.guides:
        _begin(phone, rules)
    else:
        phone.make()
    bench = _off()
    if has_bench:
        bench = create_workbench(
            rules=rules, inbox=beside(rules), phone=phone, password=password
        )
    app: WSGIApplication = DispatcherMiddleware(phone, {MOUNT: bench})
    server = Server(listener, sealed(app), context)
    server.prepare()
    scheme = "https" if context else "http"
    try:
        print(*_greeting(listener, scheme, has_bench=has_bench), sep="\n", flush=True)
        server.serve()
    finally:
        server.stop()


def _guides(asked: Asked, rules: Path) -> list[Guide]:
    """The guides that were named, or those of the folder; every problem at once."""
    own = {path.stem: str(path) for path in sorted(rules.glob("*.toml"))}
    names = [own.get(name, name) for name in asked.guides] or list(own.values())
    if not names:
        raise BuildError(
            f"There is no guide in {rules}, and the app is made of guides."
        )
    return load_all(names)


def _begin(phone: Phone, rules: Path) -> None:
    """Serves the guides that are whole; the others can be mended at the workbench."""
    guides: list[Guide] = []
    problems: list[Problem] = []
    for path in sorted(rules.glob("*.toml")):
        try:
            guides.append(load(path))
        except GuideError as error:
            problems.extend(error.problems)
    left = f"{LEFT_OUT}\n{GuideError(problems)}" if problems else ""
    if left:
        print(left, flush=True)
        phone.state = State("idle", left)
    if not guides:
        why = f"No phone app is served: {rules} holds no whole guide."
        return _tell(phone, why, left)
    try:
        phone.make(guides)
    except BuildError as error:
        _tell(phone, f"No phone app is served: {error}", left)


def _tell(phone: Phone, sentence: str, left: str) -> None:
    print(sentence, flush=True)
    phone.state = State("failed", "\n".join(filter(None, (sentence, left))))


def _folder(rules: Path) -> Path:
    """The folder of the guides, made if it is new."""
    try:
        rules.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FieldidError(f"{rules} can be no folder: {error.strerror}.") from error
    return rules.resolve()


def _encryption(asked: Asked) -> ssl.SSLContext | None:
    if asked.certificate and asked.key:
        return encryption(asked.certificate, asked.key)
    if asked.certificate or asked.key:
        raise UsageError("--certificate and --key go together: name both files.")
    return None


def _password(asked: Asked, *, needed: bool) -> str | None:
    """The hash of the password: from its file, or of what is typed; None without."""
    file = asked.password_file
    if file and file.exists():
        return passwords.read(file)
    if not file and not (needed and sys.stdin.isatty()):
        return None
    if not sys.stdin.isatty():
        raise FieldidError(
            f"{file} is not there, and nobody can type a password: "
            "start once from a terminal, and the file is written."
        )
    kept = passwords.hashed(_typed())
    if file:
        passwords.keep(file, kept)
    return kept


def _typed() -> str:
    """A new password, typed twice alike."""
    while True:
        first = getpass.getpass("A new password for the workbench: ")
        if sentence := passwords.refused(first):
            print(sentence, flush=True)
        elif first == getpass.getpass("The same once more: "):
            return first
        else:
            print("These two differ.", flush=True)


def _greeting(
    listener: socket.socket, scheme: str, *, has_bench: bool
) -> Iterator[str]:
    port, address = listener.getsockname()[1], _address(listener)
    shown = f"[{address}]" if address.version == 6 else str(address)
    here = "localhost" if address.is_unspecified else shown
    if address.is_unspecified:
        yield f"Serving at port {port} of every address of this machine."
        yield f"On this machine: {scheme}://localhost:{port}/"
        for each in own_addresses(listener.family) or [SOMEWHERE]:
            yield f"On a phone in the same network: {scheme}://{each}:{port}/"
    else:
        yield f"Serving at {scheme}://{shown}:{port}/"
    if not address.is_loopback and scheme == "http":
        yield NO_HTTPS
    if has_bench:
        yield f"The workbench for guides: {scheme}://{here}:{port}{MOUNT}/"
    else:
        yield WORKBENCH_OFF
    yield "Stop with Ctrl-C."


def own_addresses(family: int) -> list[str]:
    """What this machine may be reached by from others, as an address line has it; the
    one that leads to most of them first.
    """
    found: list[str] = []
    for nowhere in NOWHERE:
        # Nothing is sent: the system only says from which address it would be.
        with suppress(OSError), _asking(nowhere) as asking:
            asking.connect((nowhere, 9))
            found.append(asking.getsockname()[0])
    with suppress(OSError):
        found += [
            str(each[4][0]) for each in socket.getaddrinfo(socket.gethostname(), None)
        ]
    kinds = [ipaddress.ip_address(each.partition("%")[0]) for each in found]
    return [
        f"[{each}]" if each.version == 6 else str(each)
        for each in dict.fromkeys(kinds)
        if not (each.is_loopback or each.is_link_local or each.is_unspecified)
        and (each.version == 4 or family == socket.AF_INET6)
    ]


def _asking(address: str) -> socket.socket:
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    return socket.socket(family, socket.SOCK_DGRAM)


def _off() -> Flask:
    """What stands in place of the workbench where it is off: a page that says why."""
    app = Flask(__name__, static_folder=None, template_folder=str(TEMPLATES))

    @app.errorhandler(HTTPException)
    def told(error: HTTPException) -> tuple[str, int]:
        return render_template("off.html"), 404

    return app


def _address(listener: socket.socket) -> ipaddress.IPv4Address | ipaddress.IPv6Address:
    return ipaddress.ip_address(listener.getsockname()[0].partition("%")[0])


@contextmanager
def _work() -> Iterator[Path]:
    """A folder for the bundles that are served."""
    with TemporaryDirectory(prefix="fieldid-") as folder:
        yield Path(folder)


def _stop(number: int, frame: FrameType | None) -> None:
    raise KeyboardInterrupt
