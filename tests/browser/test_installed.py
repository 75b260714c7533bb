import re

import pytest

import installed
from cleanmachine import ROOT


def test_missing_browser_says_what_to_install(monkeypatch):
    monkeypatch.setitem(installed.PROGRAMS, "/usr/bin/no-such-browser", "some-package")

    with pytest.raises(AssertionError, match="apt-get install some-package"):
        installed.installed("/usr/bin/no-such-browser")


def test_test_command_installs_every_browser():
    asked = re.findall(
        r'missing="\$missing ([\w-]+)"', (ROOT / "tests/run").read_text()
    )

    assert {*installed.PROGRAMS.values()} <= {*asked}
