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

import fulllog
import phone
import procedure
from calibration import bins, simulate
from fieldid.build.site import bundle
from fieldid.engine import Find, Item, judge, prepare
from fieldid.guides.load import load
from fieldid.paths import RULES

SPECIMENS = 2_000
SETS = 2_000
EXAMPLES = 20_000


def main() -> None:
    guide = load(RULES / f"{phone.GUIDE}.toml")
    tables = prepare(guide)
    print(f"{platform.platform()}, Python {platform.python_version()}\n")
    speed(tables)
    print("\n".join(bundle([guide]).budget()), "\n")
    orders(tables)
    calibrated(tables)


def speed(tables) -> None:
    """Judge and rank with six readings, and a set of ten; in Python and on a slowed
    phone. On that, a full log as well.
    """
    print("| milliseconds | median | worst |\n|---|---|---|")
    one = Item(tuple(map(tuple, phone.READINGS)))
    ten = tuple(
        Item(tuple(map(tuple, item["readings"])), (), item["member"])
        for item in phone.ten()
    )
    for name, items in (("judge and rank", (one,)), ("set of ten", ten)):
        find = Find(tables.guide.id, items)
        times = []
        for _ in range(40):
            start = time.perf_counter()
            judge(tables, find)
            times.append(1000 * (time.perf_counter() - start))
        print(f"| Python, {name} | {_pair(statistics.median(times), max(times))} |")
    for name, pair in (phone.measure() | fulllog.measure()).items():
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


def calibrated(tables) -> None:
    """Whether strays and leading years come true as often as they are told."""
    members = tables.guide.members.all
    # With much read, ten members leave no doubt of their year.
    some, _ = simulate(tables, members=members, sets=SETS, seen=0.4)
    _, few = simulate(tables, members=members, sets=SETS, seen=0.05)
    for what, told, seen in (
        ("strays", some, "40 %"),
        ("leading model years", few, "5 %"),
    ):
        print(
            f"\n{what}, {SETS} simulated sets of {len(members)}, {seen} read\n\n"
            "| told between | how many | told on average | came true | deviations |\n"
            "|---|---|---|---|---|"
        )
        for each in bins(told):
            print(
                f"| {each.low:.0%} - {each.high:.0%} | {len(each.told)} "
                f"| {each.mean:.1%} | {each.true / len(each.told):.1%} "
                f"| {each.deviations:+.1f} |"
            )


def _pair(median: float, worst: float) -> str:
    return f"{median:.2f} | {worst:.2f}"


if __name__ == "__main__":
    main()
