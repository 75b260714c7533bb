"""`fieldid audit`: a guide tried on specimens drawn from it, with a bar meanwhile."""

import json
import sys
import time
from dataclasses import asdict
from typing import TextIO

from fieldid.audit.report import report
from fieldid.audit.run import Run, usual
from fieldid.audit.text import text
from fieldid.commands.shelf import path_of
from fieldid.guides.load import load

WIDE = 30


def audit(
    name: str, *, specimens: int | None, seed: int, processes: int, as_json: bool
) -> bool:
    """Prints what was found; False if it was stopped before all was done."""
    guide = load(path_of(name))
    run = Run(
        guide, specimens=specimens or usual(guide), seed=seed, processes=processes
    )
    bar = Bar(sys.stderr, run.total)
    try:
        for done in run.steps():
            bar.show(done)
    except KeyboardInterrupt:
        bar.clear()
        print(f"stopped after {run.done} of {run.total} pieces", file=sys.stderr)
    bar.clear()
    found = report(run)
    if as_json:
        print(json.dumps(asdict(found), ensure_ascii=False, indent=2))
    else:
        print(text(found))
    return run.whole


class Bar:
    """How much is done and how long the rest will take, on one line of a terminal."""

    def __init__(self, stream: TextIO, total: int) -> None:
        self._stream = stream
        self._total = total
        self._began = time.monotonic()

    def show(self, done: int) -> None:
        """Draws the bar anew; nothing where it would be kept in a file."""
        spent = time.monotonic() - self._began
        self._write(drawn(done, self._total, spent))

    def clear(self) -> None:
        """Leaves the line empty for what comes."""
        self._write("")

    def _write(self, line: str) -> None:
        if self._stream.isatty():
            # To the line's beginning, and all of it away.
            self._stream.write(f"\r\x1b[K{line}")
            self._stream.flush()


def drawn(done: int, total: int, spent: float) -> str:
    """The bar as text.

    >>> drawn(1, 3, 10.0)
    '[##########....................]  33 %, about 20 s left'
    """
    filled = WIDE * done // total
    left = spent * (total - done) / done
    bar = "#" * filled + "." * (WIDE - filled)
    return f"[{bar}] {100 * done // total:3} %, about {left:.0f} s left"
