"""How the build's time and memory grow with the guides.

Each guide is the small one of rules/README.md under a name of its own, so that what
is measured is the build and not a guide. Every count is built in a process of its
own, which also tells the most memory that it took. Seconds are those of the
processor, since what else the machine does would bend the curve.
"""

import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

from fieldid.build.site import bundle
from fieldid.guides.load import loads
from machine import peak
from make import lapwing
from report import Record

COUNTS = (1, 10, 100, 1000)


def measure(*, quick: bool) -> list[Record]:
    return rows({n: measured(n) for n in (COUNTS[:2] if quick else COUNTS)})


def rows(found: dict[int, tuple[float, float]]) -> list[Record]:
    """Seconds and megabytes of each count; the first is what every build costs."""
    (_, (alone, _)), *_ = found.items()
    records = []
    for count, (seconds, most) in found.items():
        more = 1000 * (seconds - alone) / (count - 1) if count > 1 else 0
        note = f"{more:.1f} ms a guide beyond the first" if more else ""
        records += [
            Record(f"guides, {count}: build", seconds, "s", note=note),
            Record(f"guides, {count}: memory", most, "MB"),
        ]
    return records


def measured(count: int) -> tuple[float, float]:
    """Seconds and the most megabytes of one build, in a process of its own."""
    with tempfile.TemporaryDirectory() as folder:
        told = Path(folder) / "seconds"
        most = peak([sys.executable, __file__, str(count), str(told)])
        return float(told.read_text()), most


def one(count: str, told: str) -> None:
    """Builds so many guides, and writes down what that took."""
    text = lapwing()
    guides = [
        loads(text.replace('id = "lapwing"', f'id = "lapwing-{n}"').encode(), file="")
        for n in range(int(count))
    ]
    start = time.process_time()
    bundle(guides).whole()
    Path(told).write_text(str(time.process_time() - start))


if __name__ == "__main__":
    one(*sys.argv[1:])
