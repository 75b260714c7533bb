"""The server at a port, by HTTP or HTTPS: the library's, with our headers and limits.

What the library answers by itself carries the table's headers too; nobody who is slow
to shake hands keeps others waiting; and an answer arrives although a body was not read.
It is cheroot because that speaks HTTPS by the standard library. Should silent
connections become a nuisance, an event loop would bear those.
"""

import errno
import logging
import socket
import ssl
from pathlib import Path
from typing import Any
from wsgiref.types import WSGIApplication

from cheroot import wsgi
from cheroot.makefile import MakeFile
from cheroot.server import HTTPConnection, HTTPRequest
from cheroot.ssl import Adapter

from fieldid.errors import FieldidError
from fieldid.web import headers

THREADS = 12
QUEUE = 128
"""Browsers ask for several files at once, and so many may wait."""
KEPT_OPEN = 100
SECONDS = 10
"""How long a connection may say nothing."""
HEADERS_MOST = 64 * 1024
DRAINED = 64 * 1024 * 1024
"""So much of a body that nobody wants is read, for its sender to hear the answer."""
PIECE = 64 * 1024

SPEAK_HTTPS = "This address speaks HTTPS alone: begin it with https://"


class Request(HTTPRequest):
    """One request."""

    def simple_response(self, status: str, msg: str = "") -> None:
        """An answer of the server itself, after which the connection is closed."""
        self.close_connection = True
        self.conn.wfile.write(plain(status, msg))

    def send_headers(self) -> None:
        """Sends them when the body is out of the way."""
        self._drain()
        super().send_headers()

    def _drain(self) -> None:
        """Throws away what was not read, or closes where it is too much or unknown."""
        read = 0
        while (left := getattr(self.rfile, "remaining", 0)) > 0 and read < DRAINED:
            read += len(self.rfile.read(min(left, PIECE))) or DRAINED
        if self.chunked_read or left > 0:
            self.close_connection = True


class Connection(HTTPConnection):
    """One connection; with HTTPS it begins by shaking hands."""

    RequestHandlerClass = Request
    is_open = False

    def communicate(self) -> bool:
        """Whether it is kept open after the request that was answered."""
        if isinstance(self.socket, ssl.SSLSocket) and not self.is_open:
            try:
                self.socket.do_handshake()
            except OSError as error:
                self._tell(error)
                return False
        self.is_open = True
        return bool(super().communicate())  # type: ignore[no-untyped-call]

    def _tell(self, error: OSError) -> None:
        """Answers who spoke HTTP; to others there is nothing to be said."""
        if getattr(error, "reason", "") == "HTTP_REQUEST":
            # Beside the encryption, which never came about.
            socket.socket.sendall(self.socket, plain("400 Bad Request", SPEAK_HTTPS))


class Secure(Adapter):
    """HTTPS by the standard library."""

    def __init__(self, context: ssl.SSLContext) -> None:
        self.context = context

    def bind(self, sock: socket.socket) -> socket.socket:
        """The listening socket, as it is."""
        return sock

    def wrap(self, sock: socket.socket) -> tuple[socket.socket, dict[str, str]]:
        """The encrypted connection, which shakes hands later, in its own thread."""
        made = self.context.wrap_socket(
            sock, server_side=True, do_handshake_on_connect=False
        )
        return made, self.get_environ()

    def get_environ(self) -> dict[str, str]:
        """What an application is told of it."""
        return {"wsgi.url_scheme": "https", "HTTPS": "on"}

    def makefile(self, sock: socket.socket, mode: str = "r", bufsize: int = -1) -> Any:
        """A file of the connection."""
        return MakeFile(sock, mode, bufsize)


class Server(wsgi.Server):
    """The server at a socket that listens already."""

    ConnectionClass = Connection
    max_request_header_size = HEADERS_MOST
    keep_alive_conn_limit = KEPT_OPEN

    def __init__(
        self,
        listener: socket.socket,
        app: WSGIApplication,
        context: ssl.SSLContext | None,
    ) -> None:
        super().__init__(
            listener.getsockname()[:2],
            app,
            numthreads=THREADS,
            server_name="fieldid",
            request_queue_size=QUEUE,
            timeout=SECONDS,
        )
        self._listener = listener
        self.ssl_adapter = Secure(context) if context else None

    def bind(self, family: int, type: int, proto: int = 0) -> socket.socket:
        """The socket that was taken before."""
        self.socket = self._listener
        return self._listener

    def error_log(
        self, msg: str = "", level: int = logging.INFO, traceback: bool = False
    ) -> None:
        """Prints what is our mistake; that clients go away or babble is no news."""
        if level >= logging.ERROR:
            super().error_log(msg, level, traceback)


def plain(status: str, sentence: str) -> bytes:
    """A whole answer in plain text, under the headers of every answer."""
    body = (sentence or status[4:]).encode()
    lines = [
        f"HTTP/1.1 {status}",
        f"Content-Length: {len(body)}",
        "Content-Type: text/plain; charset=utf-8",
        "Connection: close",
        f"Cache-Control: {headers.NEVER}",
        *(f"{name}: {value}" for name, value in headers.policy("/")),
    ]
    return "\r\n".join([*lines, "", ""]).encode() + body


def listening(host: str, port: int) -> socket.socket:
    """A socket at the address; a FieldidError says why there is none."""
    try:
        family, _, _, _, address = socket.getaddrinfo(
            host, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE
        )[0]
        return socket.create_server(address[:2], family=family, backlog=QUEUE)
    except OSError as error:
        raise FieldidError(_why(error, host, port)) from error


def encryption(certificate: Path, key: Path) -> ssl.SSLContext:
    """What HTTPS needs, or a FieldidError that says what is wrong with the files."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    for path in (certificate, key):
        if not path.is_file():
            raise FieldidError(f"There is no file {path}.")
    try:
        # An empty password, because otherwise one would be asked for without a word.
        context.load_cert_chain(certificate, key, password="")
    except OSError as error:
        raise FieldidError(
            f"{certificate} and {key} are no certificate in PEM and its key without a "
            f"password ({_reason(error)})."
        ) from error
    return context


def _reason(error: OSError) -> str:
    """What the library has against it, in few words."""
    return str(getattr(error, "reason", None) or error.strerror or error).lower()


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
