"""Feeds mistakes to all that reads what people wrote, for as long as it is let:

    .venv/bin/python tests/fuzz/feed.py --minutes 10

What went wrong is written to a folder, one file a case, with how; the exit code says
whether anything did.
"""

import argparse
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parents[1])]

from targets import TARGETS  # noqa: E402

from fuzz import Fault, cases, faults  # noqa: E402 - once these can be found

BATCH = 40


def main() -> int:
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--minutes", type=float, default=10)
    asked.add_argument("--seed", type=int, default=0, help="the first seed")
    asked.add_argument("--target", choices=TARGETS, action="append")
    asked.add_argument("--out", type=Path, help="where to write what went wrong")
    said = asked.parse_args()
    out = said.out or Path(tempfile.mkdtemp(prefix="fuzz-"))
    out.mkdir(exist_ok=True)
    until, seed, wrong = time.monotonic() + 60 * said.minutes, said.seed, 0
    while time.monotonic() < until:
        for fault in faults(cases(range(seed, seed + BATCH), said.target or TARGETS)):
            wrong += 1
            _write(out, fault, wrong)
        seed += BATCH
    each = ", ".join(said.target or TARGETS)
    print(f"seeds {said.seed} to {seed - 1} of {each}: {wrong} went wrong")
    if wrong:
        print(f"they lie in {out}")
    return int(wrong > 0)


def _write(out: Path, fault: Fault, number: int) -> None:
    name = f"{number:03}-{fault.target}"
    (out / name).write_bytes(fault.content)
    (out / f"{name}.why").write_text(fault.why)
    print(f"{name}: {fault.why.strip().splitlines()[-1][:200]}", flush=True)


if __name__ == "__main__":
    raise SystemExit(main())
