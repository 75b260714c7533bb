"""The phone's modules in Node: every file of tests/js/, and each is one test here."""

import re
import subprocess
from pathlib import Path

import pytest

FOLDER = Path(__file__).parent / "js"
FILES = sorted(path.name for path in FOLDER.glob("*.test.js"))


@pytest.mark.parametrize("name", FILES)
def test_modules_keep_their_promises(name):
    done = subprocess.run(
        ["node", "--test-reporter=tap", FOLDER / name],
        cwd=FOLDER.parents[1],
        capture_output=True,
        text=True,
    )

    assert done.returncode == 0, done.stdout + done.stderr
    # A file without a test in it would pass, too.
    assert re.search(r"^# pass [1-9]", done.stdout, re.MULTILINE), done.stdout
