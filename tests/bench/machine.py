"""What the figures were taken on: the machine, its languages and its browsers."""

import os
import platform
import shutil
import subprocess
import sys
import time
from collections.abc import Sequence
from datetime import date
from pathlib import Path

KILOBYTES = 1024
"""How many make a megabyte."""
WATCH = """
import resource, subprocess, sys
subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, check=True)
print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
"""
PROGRAMS = {"Node": "node", "Chromium": "chromium", "Firefox": "firefox-esr"}


def facts() -> dict[str, str]:
    """Each fact by its name, in the order of the report."""
    return {
        "date": date.today().isoformat(),
        "cores": str(os.cpu_count()),
        "processor": _processor(),
        "system": platform.platform(),
        "Python": platform.python_version(),
        **{name: _version(program) for name, program in PROGRAMS.items()},
        "WebKitGTK": _webkit(),
    }


def least(repeat: int, task) -> float:
    """The fewest seconds of the processor that a task took, tried so many times.

    What else the machine does takes processors away, and so time, but hardly ever
    makes the least of many such figures larger.
    """
    found = []
    for _ in range(repeat):
        start = time.process_time()
        task()
        found.append(time.process_time() - start)
    return min(found)


def peak(command: Sequence[str], source: Path = Path(os.devnull)) -> float:
    """The most megabytes that a command held at once, fed with a file.

    It is started by a small Python, since at first a process counts what the one that
    started it held.
    """
    with source.open("rb") as stream:
        done = subprocess.run(
            [sys.executable, "-S", "-E", "-c", WATCH, *command],
            stdin=stream,
            stdout=subprocess.PIPE,
            check=True,
        )
    return int(done.stdout.split()[-1]) / KILOBYTES


def _processor() -> str:
    """The model of the processor, which Linux tells in a file."""
    told = Path("/proc/cpuinfo")
    lines = told.read_text().splitlines() if told.exists() else []
    names = [line.partition(":")[2].strip() for line in lines if "model name" in line]
    return names[0] if names else platform.processor() or "not told"


def _version(program: str) -> str:
    if not shutil.which(program):
        return "not installed"
    told = subprocess.run([program, "--version"], capture_output=True, text=True)
    words = told.stdout.split()
    return next((w for w in words if w.strip("v")[:1].isdigit()), "not told")


def _webkit() -> str:
    """Its driver does not tell; Debian knows the package that it came in."""
    if not shutil.which("dpkg-query"):
        return "not told"
    query = ("dpkg-query", "--show", "--showformat=${Version}", "webkit2gtk-driver")
    told = subprocess.run(query, capture_output=True, text=True)
    return told.stdout or "not installed"
