"""What Lighthouse says of the screens of a find and of a guide's page.

Lighthouse is fetched by npm into a folder that goes again, so this needs npm and its
registry; without them nothing is measured, and the table says so. The line and the
processor are simulated as a slow phone's, and the score is the median of the runs.
Home and a guide's page are loaded as by a stranger. Looking and Verdict are what
somebody sees who comes back to a find, so they are loaded on a phone that has one.
"""

import json
import os
import socket
import statistics
import subprocess
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import Page, sync_playwright

from conftest import CHROMIUM, QUIET
from faults import expect_kept
from pocket import FOUR, GUIDE, PATIENCE, SCREEN, served
from report import Record, at_least
from steps import open_kept, tap_first

VERSION = "12.8.2"
"""The last that runs on Node 20."""
NOBODYS = ("Home", ""), ("a guide's page", f"guide-{GUIDE}.html")
OWN = ("Looking", "#look"), ("Verdict", "#verdict")
CATEGORIES = ("performance", "accessibility", "best-practices")
RUNS = 3
GOAL = 100
PATIENT = 300
"""Seconds that npm or one run of Lighthouse may take."""


def measure(*, quick: bool) -> list[Record]:
    """The three scores of each page."""
    with TemporaryDirectory() as folder:
        program, reason = _fetched(Path(folder))
        if reason:
            return [at_least(GOAL, "not measured", 0, "score", reason)]
        runs = range(1 if quick else RUNS)
        with served(FOUR) as server:
            told = {
                name: [_come(program, server.url + path) for _ in runs]
                for name, path in NOBODYS
            }
            profile = Path(folder) / "profile"
            with _phone(profile) as (page, _):
                _begin(page, server.url)
            told |= {
                name: [_come_back(program, server.url + path, profile) for _ in runs]
                for name, path in OWN
            }
    return [row for name, reports in told.items() for row in _rows(name, reports)]


def _fetched(folder: Path) -> tuple[Path, str]:
    """Where Lighthouse lies, and why not."""
    (folder / "package.json").write_text('{"private": true}')
    command = ["npm", "install", f"lighthouse@{VERSION}", "--ignore-scripts"]
    try:
        subprocess.run(
            [*command, "--no-audit", "--no-fund"],
            cwd=folder,
            check=True,
            capture_output=True,
            timeout=PATIENT,
        )
    except FileNotFoundError:
        return folder, "npm is not there"
    except subprocess.TimeoutExpired:
        return folder, f"npm took more than {PATIENT} seconds"
    except subprocess.CalledProcessError as error:
        said = error.stderr.decode(errors="replace").strip().splitlines()
        return folder, f"npm: {said[0] if said else 'it failed'}"
    return folder / "node_modules" / "lighthouse" / "cli" / "index.js", ""


@contextmanager
def _phone(profile: Path) -> Iterator[tuple[Page, int]]:
    """A Chromium that Lighthouse can use too, at its port."""
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    with sync_playwright() as started:
        context = started.chromium.launch_persistent_context(
            profile,
            executable_path=CHROMIUM,
            args=[*QUIET, f"--remote-debugging-port={port}"],
            viewport=SCREEN,
        )
        context.set_default_timeout(PATIENCE)
        try:
            yield context.pages[0], port
        finally:
            context.close()


def _begin(page: Page, url: str) -> None:
    """A find with a few answers, and the app kept."""
    open_kept(page, url)
    page.locator(f"[data-guide-card={GUIDE}] [data-act=start]").click()
    for _ in range(2):
        tap_first(page)
    expect_kept(page, 2)


def _come(program: Path, url: str) -> dict[str, Any]:
    """One load on a phone that has nothing yet, by a browser that was just started:
    what an earlier page left behind in its process would count as blocking.
    """
    with TemporaryDirectory() as profile, _phone(Path(profile)) as (_, port):
        return _run(program, url, port)


def _come_back(program: Path, url: str, profile: Path) -> dict[str, Any]:
    """The same on a phone that has a find."""
    with _phone(profile) as (_, port):
        return _run(program, url, port, "--disable-storage-reset")


def _run(program: Path, url: str, port: int, *more: str) -> dict[str, Any]:
    """Lighthouse's own report of one load."""
    command = ["node", str(program), url, f"--port={port}", "--output=json", "--quiet"]
    named = f"--only-categories={','.join(CATEGORIES)}"
    done = subprocess.run(
        [*command, named, "--throttling-method=simulate", *_SILENT, *more],
        check=True,
        # What it complains of is for whoever runs the benchmark.
        stdout=subprocess.PIPE,
        timeout=PATIENT,
        env=os.environ | {"CHROME_PATH": CHROMIUM},
    )
    report: dict[str, Any] = json.loads(done.stdout)
    if "runtimeError" in report:
        raise RuntimeError(f"{url}: {report['runtimeError']['message']}")
    return report


_SILENT = ("--no-enable-error-reporting",)


def _rows(name: str, reports: Sequence[dict[str, Any]]) -> Iterator[Record]:
    for category in CATEGORIES:
        scores = [100 * each["categories"][category]["score"] for each in reports]
        middle = statistics.median_low(scores)
        worst = reports[scores.index(min(scores))]
        yield at_least(
            GOAL,
            f"{name}: {category}",
            middle,
            "score",
            ", ".join(_lost(worst, category)),
        )


def _lost(report: dict[str, Any], category: str) -> Iterator[str]:
    """What took points away."""
    for each in report["categories"][category]["auditRefs"]:
        score = report["audits"][each["id"]]["score"]
        if each["weight"] and score is not None and score < 1:
            yield f"{each['id']} {score:.2f}"
