"""How much memory the processes that a test has started take."""

import os
import threading
from pathlib import Path

PAUSE = 0.02
"""Seconds between two looks."""


class Memory:
    """While it is open, `grown` is how much more they have held at their largest."""

    def __enter__(self):
        self.grown = 0
        self._before = _held()
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._watch)
        self._thread.start()
        return self

    def _watch(self):
        while not self._over.wait(PAUSE):
            self.grown = max(self.grown, _held() - self._before)

    def __exit__(self, *_):
        self._over.set()
        self._thread.join()


def _held():
    """Bytes of all processes below this one; a page that n share counts 1/n."""
    return sum(_proportion(pid) for pid in _below(os.getpid()))


def _below(pid):
    children = _children()
    found = list(children.get(pid, []))
    # The list grows while it is walked: a level more with each process that has some.
    for child in found:
        found += children.get(child, [])
    return found


def _children():
    """The processes that each process has started."""
    children = {}
    for stat in Path("/proc").glob("[0-9]*/stat"):
        text = _read(stat)
        if text:
            parent = int(text.rpartition(")")[2].split()[1])
            children.setdefault(parent, []).append(int(stat.parent.name))
    return children


def _proportion(pid):
    lines = _read(Path(f"/proc/{pid}/smaps_rollup")).splitlines()
    return sum(int(line.split()[1]) * 1024 for line in lines if line.startswith("Pss:"))


def _read(path):
    """The text of a file of a process; none if the process has ended."""
    try:
        return path.read_text()
    except (FileNotFoundError, ProcessLookupError):
        return ""
