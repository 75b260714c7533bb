"""How the build's time grows with the guides: `python tests/bench/manyguides.py`.

Each guide is the small one of rules/README.md under a name of its own, so that what
is measured is the build and not a guide. Every count is built in a process of its
own, which also tells the most memory that it took. Seconds are those of the
processor, since what else the machine does would bend the curve.
"""

import resource
import subprocess
import sys
import time
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

from fieldid.build.site import bundle
from fieldid.guides.load import loads
from make import lapwing

COUNTS = (1, 10, 100, 1000)
MEGABYTE = 1024


def main(counts: tuple[int, ...]) -> None:
    """A row a count; the first count's seconds are what every build costs."""
    print("| guides | seconds | seconds a guide beyond the first | MB |")
    print("|---|---|---|---|")
    alone = 0.0
    for count in counts:
        seconds, peak = measured(count)
        alone = alone or seconds
        more = f"{(seconds - alone) / (count - 1):.3f}" if count > 1 else ""
        print(f"| {count} | {seconds:.1f} | {more} | {peak} |", flush=True)


def measured(count: int) -> tuple[float, int]:
    """Seconds and the most megabytes of one build, in a process of its own."""
    done = subprocess.run(
        [sys.executable, __file__, "--one", str(count)],
        capture_output=True,
        text=True,
        check=True,
    )
    seconds, peak = done.stdout.split()
    return float(seconds), int(peak)


def one(count: int) -> None:
    """Prints what a build of so many guides took."""
    text = lapwing()
    guides = [
        loads(text.replace('id = "lapwing"', f'id = "lapwing-{n}"').encode(), file="")
        for n in range(count)
    ]
    start = time.process_time()
    bundle(guides).whole()
    seconds = time.process_time() - start
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // MEGABYTE
    print(seconds, peak)


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        one(int(sys.argv[2]))
    else:
        main(tuple(map(int, sys.argv[1:])) or COUNTS)
