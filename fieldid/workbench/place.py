"""Where the author's work lies: the folder of guides, and the inbox."""

from dataclasses import dataclass
from pathlib import Path

from flask import current_app


@dataclass(frozen=True, slots=True)
class Place:
    """The folder of the guides, and the file that keeps the finds that were sent in."""

    rules: Path
    inbox: Path

    def guides(self) -> dict[str, Path]:
        """The guides' files by id, as they lie there now.

        What a request names is looked up here and never made into a path.
        """
        return {path.stem: path for path in sorted(self.rules.glob("*.toml"))}


def place() -> Place:
    """The place of the application that answers the request."""
    found: Place = current_app.extensions["place"]
    return found
