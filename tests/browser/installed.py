"""The browsers that the tests need, and what to do where one is missing: never skip."""

from pathlib import Path

PROGRAMS = {
    "/usr/bin/chromium": "chromium",
    "/usr/bin/chromium-headless-shell": "chromium-headless-shell",
    "/usr/bin/firefox-esr": "firefox-esr",
    "/usr/bin/WebKitWebDriver": "webkit2gtk-driver",
    "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser": "webkit2gtk-driver",
    "/usr/bin/Xvfb": "xvfb",
}
"""Each program, and the package of Debian that brings it."""


def installed(program: str) -> str:
    """The program, which is there; or a failure that says how to come by it."""
    package = PROGRAMS[program]
    assert Path(program).is_file(), (
        f"{program} is missing, and no test of a browser is left out for that: "
        f"run `sh tests/run`, which installs it, or `apt-get install {package}`."
    )
    return program
