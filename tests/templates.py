"""Templates compiled once in a process, though each test makes an application."""

from flask import Flask
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket


class _Compiled(BytecodeCache):
    """What Jinja made of each template, by its name, path and text."""

    def __init__(self) -> None:
        self._known: dict[tuple[str, str], bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        known = self._known.get((bucket.key, bucket.checksum))
        if known is not None:
            bucket.bytecode_from_string(known)

    def dump_bytecode(self, bucket: Bucket) -> None:
        self._known[bucket.key, bucket.checksum] = bucket.bytecode_to_string()


_COMPILED = _Compiled()


def shared(app: Flask) -> Flask:
    """The application, which compiles no template that another one has compiled."""
    app.jinja_env.bytecode_cache = _COMPILED
    return app
