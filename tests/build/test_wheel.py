"""What is installed is what was tested: the wheel, alone, builds a bundle."""

import os
import subprocess
import sys
from pathlib import Path

from bundles import RULES

PROJECT = Path(__file__).parents[2]


def test_installed_wheel_builds_a_bundle(tmp_path):
    """In an empty folder, with nothing of the checkout in reach."""
    wheels, site, empty = (tmp_path / name for name in ("wheels", "site", "empty"))
    empty.mkdir()
    local = ("--quiet", "--no-deps", "--no-index", "--disable-pip-version-check")
    _run("-m", "pip", "wheel", *local, "--no-build-isolation", "-w", wheels, PROJECT)
    (wheel,) = wheels.glob("fieldid-*.whl")
    _run("-m", "pip", "install", *local, "--target", site, wheel)
    guide = RULES / "lone-dunlin.toml"
    alone = {"cwd": empty, "env": os.environ | {"PYTHONPATH": str(site)}}

    where = _run("-c", "import fieldid; print(fieldid.__file__)", **alone)
    assert Path(where.strip()) == site / "fieldid" / "__init__.py"
    assert "1 model years" in _run("-m", "fieldid", "check", guide, **alone)
    _run("-m", "fieldid", "build", "--out", "bundle", guide, **alone)
    assert (empty / "bundle" / "sw.js").is_file()
    assert {path.name for path in (site / "fieldid" / "rules").glob("*.toml")} == {
        path.name for path in (PROJECT / "rules").glob("*.toml")
    }


def _run(*arguments: object, **settings) -> str:
    done = subprocess.run(
        [sys.executable, *map(str, arguments)],
        capture_output=True,
        text=True,
        **settings,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout
