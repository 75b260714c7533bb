"""The benchmark: `python tests/bench/run.py` prints its tables; nothing is asserted.

It takes some minutes. Times are noisy; compare figures of one run with each other.
"""

import platform
import statistics
import sys
import time
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

import phone
import procedure
from fieldid.build.site import bundle
from fieldid.engine import Find, Item, judge, prepare
from fieldid.guides.load import load
from fieldid.paths import RULES

SPECIMENS = 2_000
EXAMPLES = 20_000


def main() -> None:
    guide = load(RULES / f"{phone.GUIDE}.toml")
    tables = prepare(guide)
    print(f"{platform.platform()}, Python {platform.python_version()}\n")
    speed(tables)
    print("\n".join(bundle([guide]).budget()), "\n")
    orders(tables)


def speed(tables) -> None:
    """Judge and rank with six readings, in Python and on a slowed phone."""
    readings = tuple((clue, reading) for clue, reading in phone.READINGS)
    find = Find(tables.guide.id, (Item(readings),))
    times = []
    for _ in range(60):
        start = time.perf_counter()
        judge(tables, find)
        times.append(1000 * (time.perf_counter() - start))
    print("| milliseconds | median | worst |\n|---|---|---|")
    print(f"| Python, judge and rank | {_pair(statistics.median(times), max(times))} |")
    for name, pair in phone.measure().items():
        print(f"| Chromium, CPU slowed 4 times, {name} | {_pair(*pair)} |")
    print()


def orders(tables) -> None:
    """Until one answer has 95 %, in four orders, on simulated specimens."""
    print(
        f"{SPECIMENS} simulated specimens; the tree is trained on {EXAMPLES} others\n\n"
        "| order | readings | seconds | told with 95 % | of these right |\n"
        "|---|---|---|---|---|"
    )
    rows = procedure.compare(tables, specimens=SPECIMENS, examples=EXAMPLES)
    for name, readings, seconds, sure, right in rows:
        print(f"| {name} | {readings:.2f} | {seconds:.1f} | {sure:.1%} | {right:.1%} |")


def _pair(median: float, worst: float) -> str:
    return f"{median:.2f} | {worst:.2f}"


if __name__ == "__main__":
    main()
