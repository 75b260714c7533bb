"""The types that scripts name in their comments, held by TypeScript's own checker.

The service worker is left out: its scope has other types than a page's.
"""

import json
import subprocess

from checkers import TYPES, path
from fieldid.paths import STATIC

CONFIG = STATIC.parent / "tests" / "js" / "tsconfig.json"


def checked(config):
    """The checker's run over the scripts; it says nothing where their types hold."""
    return subprocess.run(
        ["node", path(TYPES), "--project", config],
        capture_output=True,
        text=True,
        check=False,
    )


def test_scripts_keep_their_types():
    done = checked(CONFIG)

    assert done.stdout + done.stderr == ""
    assert done.returncode == 0


def test_wrong_type_is_noticed(tmp_path):
    (tmp_path / "wrong.js").write_text('/** @type {number} */\nexport const a = "b";\n')
    config = tmp_path / "tsconfig.json"
    config.write_text(json.dumps({"extends": str(CONFIG), "include": ["*.js"]}))

    assert "TS2322" in checked(config).stdout
