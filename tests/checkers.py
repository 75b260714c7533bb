"""What others made to check with: axe-core, the Nu Html Checker, css-tree, TypeScript.

None of it lies in the project. Run as a program, this fetches what is missing with npm
into the virtual environment; `tests/run` does so before the tests.
"""

import hashlib
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(sys.prefix) / "share" / "checkers"
"""In the virtual environment, which goes with everything else that was fetched."""


@dataclass(frozen=True)
class Checker:
    """A package of one version, and the file of known content that is used of it."""

    package: str
    file: str
    sha256: str

    def path(self, folder: Path = FOLDER) -> Path:
        """The file, as it was fetched."""
        name = self.package.rpartition("@")[0]
        return folder / "node_modules" / name / self.file


AXE = Checker(
    "axe-core@4.14.1",
    "axe.min.js",
    "29348999450cdf2849a8e70b7912fc2da85a849da39c0d0d5394f51d4a9ed95c",
)
# One jar of 32 MB, run by Java 11 or newer.
NU = Checker(
    "vnu-jar@26.9.27",
    "build/dist/vnu.jar",
    "22f15dd39a33bed929d2a5c0cddf5946849a647eca9272bf4d5d00bc7e7a4d47",
)
CSS = Checker(
    "css-tree@3.2.1",
    "dist/csstree.esm.js",
    "a34589878a06f95e4e144c27748db5e6d81ba19619d3f36036027098e16c3522",
)
TYPES = Checker(
    "typescript@5.9.3",
    "lib/_tsc.js",
    "e8f349eabd48486bdb2bf9dc1a00c89d58297270c54b745838879e2859194419",
)
CHECKERS = (AXE, NU, CSS, TYPES)


class FetchError(Exception):
    """Why a checker is not there, in a sentence for whoever runs the tests."""


def path(checker: Checker, folder: Path = FOLDER) -> Path:
    """Where a checker lies; it is the known one."""
    if not _is(checker, folder):
        raise FetchError(f"{checker.package} is not there; sh tests/run fetches it.")
    return checker.path(folder)


def fetch(folder: Path = FOLDER) -> None:
    """Fetches all checkers, unless they are there already."""
    if all(_is(checker, folder) for checker in CHECKERS):
        return
    npm = shutil.which("npm")
    if not npm:
        raise FetchError("npm fetches what pages are checked with, and is not here.")
    folder.mkdir(parents=True, exist_ok=True)
    # Nothing of them is run while they are fetched.
    quiet = ("--ignore-scripts", "--no-audit", "--no-fund", "--no-package-lock")
    wanted = [checker.package for checker in CHECKERS]
    asked = (npm, "install", *quiet, "--prefix", str(folder), *wanted)
    done = subprocess.run(asked, capture_output=True, text=True, check=False)
    if done.returncode:
        raise FetchError(
            f"What pages are checked with could not be fetched: {', '.join(wanted)}. "
            f"npm says:\n{done.stderr.strip()}"
        )
    for checker in CHECKERS:
        if not _is(checker, folder):
            raise FetchError(f"{checker.file} of {checker.package} is not known here.")


def _is(checker: Checker, folder: Path) -> bool:
    at = checker.path(folder)
    return at.exists() and hashlib.sha256(at.read_bytes()).hexdigest() == checker.sha256


if __name__ == "__main__":
    try:
        fetch()
    except FetchError as why:
        sys.exit(str(why))
