"""The workbench's one password: only its scrypt hash is ever kept."""

import base64
import hashlib
import os
import re
import secrets
import unicodedata
from hmac import compare_digest
from pathlib import Path

from fieldid.errors import FieldidError

LEAST, MOST = 12, 1000
"""Characters of a password."""
N, R, P = 2**14, 8, 5
"""16 MB for each try; four tries a second keep one processor busy."""
SALT, LENGTH = 16, 32

_FORM = re.compile(
    r"scrypt\$(?P<n>\d{1,7})\$(?P<r>\d{1,2})\$(?P<p>\d{1,2})"
    r"\$(?P<salt>[\w+/=]{1,100})\$(?P<hash>[\w+/=]{1,200})"
)


def refused(password: str) -> str | None:
    """Why a new password is not good enough, or None."""
    if len(password) < LEAST:
        return f"A password has {LEAST} characters or more; this has {len(password)}."
    if len(password) > MOST:
        return f"A password has {MOST} characters at most; this has {len(password)}."
    if len(set(password)) < LEAST // 2:
        return "This is the same few characters again and again; choose another."
    return None


def hashed(password: str) -> str:
    """The hash with its salt and settings, as one line of text."""
    salt = secrets.token_bytes(SALT)
    made = _scrypt(password, salt, n=N, r=R, p=P)
    return f"scrypt${N}${R}${P}${_text(salt)}${_text(made)}"


def fits(password: str, kept: str) -> bool:
    """Whether the hash was made of this password; the time tells nothing of either."""
    parts = _FORM.fullmatch(kept)
    assert parts, "a hash is checked when it is read"
    n, r, p = (int(parts[name]) for name in ("n", "r", "p"))
    made = _scrypt(password, base64.b64decode(parts["salt"]), n=n, r=r, p=p)
    return compare_digest(made, base64.b64decode(parts["hash"]))


def read(path: Path) -> str:
    """The hash that a file keeps."""
    try:
        kept = path.read_text("utf-8", "replace").strip()
    except OSError as error:
        raise FieldidError(f"{path} cannot be read: {error.strerror}.") from error
    if not _FORM.fullmatch(kept) or not _is_strong(kept):
        raise FieldidError(
            f"{path} does not hold the hash of a password as fieldid writes it: "
            "name a file that is not there yet, and it is made when you have typed one."
        )
    return kept


def keep(path: Path, kept: str) -> None:
    """Write the hash into a new file that only its owner can read."""
    try:
        number = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(number, "w", encoding="utf-8") as file:
            file.write(f"{kept}\n")
    except OSError as error:
        raise FieldidError(f"{path} cannot be written: {error.strerror}.") from error


def _is_strong(kept: str) -> bool:
    """Whether a try costs no less than what is wanted here, and can be paid."""
    parts = _FORM.fullmatch(kept)
    assert parts
    n, r, p = (int(parts[name]) for name in ("n", "r", "p"))
    power = n & (n - 1) == 0
    return power and 2**14 <= n <= 2**18 and r == R and 1 <= p <= 16 and _whole(parts)


def _whole(parts: re.Match[str]) -> bool:
    """Whether salt and hash are as long as they are made here."""
    try:
        salt, made = (base64.b64decode(parts[name], validate=True) for name in (4, 5))
    except ValueError:
        return False
    return len(salt) == SALT and len(made) == LENGTH


def _scrypt(password: str, salt: bytes, *, n: int, r: int, p: int) -> bytes:
    # Keyboards write the same letter in several ways.
    typed = unicodedata.normalize("NFC", password).encode("utf-8", "surrogatepass")
    most = 2 * 128 * r * (n + p)
    return hashlib.scrypt(typed, salt=salt, n=n, r=r, p=p, maxmem=most, dklen=LENGTH)


def _text(data: bytes) -> str:
    return base64.b64encode(data).decode("ascii")
