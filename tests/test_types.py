"""The types that scripts name in their comments, held by TypeScript's own checker.

The service worker is left out: its scope has other types than a page's.
"""

import json
import subprocess

from checkers import TYPES, path
from fieldid.paths import STATIC

CONFIG = STATIC.parent / "tests" / "js" / "tsconfig.json"


def told(config):
    """What the checker says of the scripts, nothing where their types hold."""
    done = subprocess.run(
        ["node", path(TYPES), "--project", config],
        capture_output=True,
        text=True,
        check=False,
    )
    return done.stdout


def test_scripts_keep_their_types():
    assert told(CONFIG) == ""


def test_wrong_type_is_noticed(tmp_path):
    (tmp_path / "wrong.js").write_text('/** @type {number} */\nexport const a = "b";\n')
    config = tmp_path / "tsconfig.json"
    config.write_text(json.dumps({"extends": str(CONFIG), "include": ["*.js"]}))

    assert "TS2322" in told(config)
