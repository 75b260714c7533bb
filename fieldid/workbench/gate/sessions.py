"""Sessions: they end by themselves, at sign-out, and with the server."""

import secrets
from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock

from flask import Flask, request
from flask.sessions import SecureCookieSessionInterface

IDLE = 30 * 60
"""Seconds without a request after which a session ends."""
LONGEST = 8 * 3600
"""Seconds after which it ends whatever happens."""
MOST = 100


@dataclass(slots=True)
class Session:
    """When it began, and when it was last used."""

    began: float
    used: float


class Sessions:
    """The sessions of this server, by the secret that a browser's cookie carries."""

    def __init__(self, clock: Callable[[], float]) -> None:
        self._clock = clock
        self._lock = Lock()
        self._all: dict[str, Session] = {}

    def begin(self) -> str:
        """The secret of a new session; the oldest ends if there are too many."""
        secret, now = secrets.token_urlsafe(32), self._clock()
        with self._lock:
            self._all[secret] = Session(now, now)
            if len(self._all) > MOST:
                del self._all[next(iter(self._all))]
        return secret

    def goes_on(self, secret: str | None) -> bool:
        """Whether it has not ended; if so, this was a use of it."""
        now = self._clock()
        with self._lock:
            found = self._all.get(secret or "")
            if found is None:
                return False
            if now - found.used >= IDLE or now - found.began >= LONGEST:
                return False
            found.used = now
            return True

    def knows(self, secret: str | None) -> bool:
        """Whether it went on once, and ended by itself if it ended."""
        with self._lock:
            return (secret or "") in self._all

    def end(self, secret: str | None) -> None:
        """Signs out; a copy of the cookie opens nothing any more."""
        with self._lock:
            self._all.pop(secret or "", None)


class Cookies(SecureCookieSessionInterface):
    """The signed cookie: one for each port, over HTTPS alone where that is spoken."""

    def get_cookie_secure(self, app: Flask) -> bool:
        """Whether the browser may send it over HTTPS alone.

        Plain HTTP is spoken on the own machine alone, where some browsers would not
        keep it otherwise.
        """
        return request.is_secure

    def get_cookie_name(self, app: Flask) -> str:
        """The cookie's name; browsers take all ports of a machine for one place."""
        return f"workbench-{request.environ['SERVER_PORT']}"
