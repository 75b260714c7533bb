import pytest

from fieldid.build.precache import Entry, entries, fill
from fieldid.errors import BuildError

SOURCE = b'// Why.\nconst BUILD = "dev";\nconst FILES = [];\nrest();\n'
ONE = (Entry("./", "sha256-x", 3),)


def test_constants_are_filled():
    assert fill(SOURCE, "0123", ONE).decode().splitlines() == [
        "// Why.",
        'const BUILD = "0123";',
        "const FILES = [",
        '  {"url": "./", "sha256": "sha256-x", "bytes": 3},',
        "];",
        "rest();",
    ]


@pytest.mark.parametrize("line", ['const BUILD = "dev";', "const FILES = [];"])
def test_worker_without_its_constants_is_refused(line):
    with pytest.raises(BuildError, match="must stand there once"):
        fill(SOURCE.replace(line.encode(), b""), "0123", ONE)


def test_page_is_kept_as_its_folder():
    """A host that redirects index.html would give what no navigation may use."""
    assert [entry.url for entry in entries({"index.html": b"", "a.js": b""})] == [
        "./",
        "a.js",
    ]
