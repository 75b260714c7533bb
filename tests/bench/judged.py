"""Finds judged a second from the command line, and the memory of the main commands.

The finds are simulated, one a line on standard input, for one process and for two
that share them; starting up counts. Memory is the most that a command held at once.
"""

import json
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from fieldid.guides.load import load
from fieldid.paths import RULES
from machine import peak
from report import Record
from specimens import look, specimen

GUIDE = "wrackham-teale-dotterel"
FINDS = 2_000
FIELDID = (sys.executable, "-m", "fieldid")


def measure(*, quick: bool) -> list[Record]:
    lines = finds(FINDS // 10 if quick else FINDS)
    speeds = [len(lines) / elapsed(lines, processes) for processes in (1, 2)]
    note = f"{len(lines)} finds, half of the clues read"
    one, two = speeds
    return [
        Record("one process", one, "finds a second", note=note),
        Record("two processes", two, "finds a second"),
        Record("two processes / one", two / one, "times"),
        *_memory(lines),
    ]


def finds(count: int) -> list[bytes]:
    """Finds as the command reads them, one a line."""
    guide = load(RULES / f"{GUIDE}.toml")
    dice = random.Random(1)
    items = [
        look(guide, specimen(guide, dice), dice, seen=0.5, lost=0.3)
        for _ in range(count)
    ]
    return [_line(guide.id, item) for item in items]


def elapsed(lines: Sequence[bytes], processes: int) -> float:
    """Seconds until processes that share the lines have judged them all."""
    with tempfile.TemporaryDirectory() as folder:
        shares = []
        for n in range(processes):
            share = Path(folder) / f"{n}.jsonl"
            share.write_bytes(b"".join(lines[n::processes]))
            shares.append(share)
        start = time.perf_counter()
        started = [_judging(share) for share in shares]
        for each in started:
            if each.wait() != 0:
                raise SystemExit(f"judge ended with {each.returncode}")
        return time.perf_counter() - start


def _memory(lines: Sequence[bytes]) -> list[Record]:
    """A row for each of the main commands."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        (home / "in").write_bytes(b"".join(lines))
        commands = {
            "check": ("check",),
            f"judge, {len(lines)} finds": ("judge", GUIDE, "--find", str(home / "in")),
            "build": ("build", "--out", str(home / "site")),
            "card": ("card", GUIDE, "--out", str(home / "card")),
            "audit, 20 specimens": ("audit", GUIDE, "--specimens", "20"),
            "census": ("census", GUIDE),
        }
        return [
            Record(f"memory of {name}", peak([*FIELDID, *command]), "MB")
            for name, command in commands.items()
        ]


def _line(guide: str, item) -> bytes:
    told = {"readings": dict(item.readings), "gone": list(item.gone)}
    return json.dumps({"format": 1, "guide": guide, "items": [told]}).encode() + b"\n"


def _judging(share: Path) -> subprocess.Popen:
    """The command at work on its share, what it prints thrown away."""
    with share.open("rb") as stream:
        return subprocess.Popen(
            [*FIELDID, "judge", GUIDE, "--find", "-", "--json"],
            stdin=stream,
            stdout=subprocess.DEVNULL,
        )
