"""Where the author's work lies: the folder of guides, and the inbox.

A guide is in the app if its file lies in the folder itself. Those that are left out lie
in a folder within, where no build looks, and are edited like all others.
"""

from dataclasses import dataclass
from pathlib import Path

from flask import current_app

LEFT_OUT = "left-out"
"""The folder within, of guides that are left out of the app."""


@dataclass(frozen=True, slots=True)
class Place:
    """The folder of the guides, and the file that keeps the finds that were sent in."""

    rules: Path
    inbox: Path

    def guides(self) -> dict[str, Path]:
        """The guides' files by id, as they lie there now.

        What a request names is looked up here and never made into a path.
        """
        found = self.left_out() | _by_id(self.rules)
        return dict(sorted(found.items()))

    def left_out(self) -> dict[str, Path]:
        """Those of them that the app is built without."""
        return _by_id(self.rules / LEFT_OUT)


def _by_id(folder: Path) -> dict[str, Path]:
    return {path.stem: path for path in folder.glob("*.toml")}


def place() -> Place:
    """The place of the application that answers the request."""
    found: Place = current_app.extensions["place"]
    return found
