"""`fieldid give`: a guide as one file, for somebody to add on a phone."""

from pathlib import Path

from fieldid.commands.shelf import path_of
from fieldid.errors import BuildError
from fieldid.guides import given
from fieldid.guides.load import load


def give(name: str, out: Path) -> None:
    """Write the guide as a file that a phone takes in, or say why none would."""
    guide = load(path_of(name))
    body = given.written(guide)
    try:
        out.write_bytes(body)
    except OSError as error:
        raise BuildError(f"{out}: cannot be written: {error.strerror}") from error
    print(
        f"{out}: {guide.title}, {len(body) / 1000:.1f} kB; it is added on a phone by "
        "“Add or give a guide” on the first page"
    )
