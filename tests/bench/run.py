"""The benchmark: `python tests/bench/run.py --out FOLDER`; nothing is asserted.

It writes `benchmark.md` and `benchmark.json` into the folder, and prints the first.
All of it takes about half an hour on an idle machine; `--quick` takes a few minutes
and is less exact; `--only NAME ...` takes some of the measurements.
"""

import argparse
import importlib
import sys
import time
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parent / "browser")]

from machine import facts
from report import Section, as_json, markdown

MEASUREMENTS = (
    "inference",
    "procedure",
    "optimum",
    "calibration",
    "open_tables",
    "growth",
    "manyguides",
    "judged",
    "phone",
    "taps",
    "loads",
    "weight",
    "lighthouse",
    "fulllog",
)
"""The modules that measure, in the order of the report."""


def main(arguments: list[str] | None = None) -> None:
    asked = _asked(arguments)
    asked.out.mkdir(parents=True, exist_ok=True)
    sections = []
    for name in MEASUREMENTS:
        if not asked.only or name in asked.only:
            sections.append(section(name, quick=asked.quick))
            # What was measured stays, whatever becomes of the next.
            write(asked.out, sections, quick=asked.quick)
    print((asked.out / "benchmark.md").read_text())


def section(name: str, *, quick: bool) -> Section:
    """One module's records, under the first sentence of its docstring."""
    print(f"{name} ... ", end="", file=sys.stderr, flush=True)
    start = time.monotonic()
    module = importlib.import_module(name)
    title = " ".join(module.__doc__.split("\n\n")[0].split()).partition(". ")[0]
    records = tuple(module.measure(quick=quick))
    print(f"{time.monotonic() - start:.0f} s", file=sys.stderr)
    return Section(name, title.removesuffix("."), records)


def write(out: Path, sections: list[Section], *, quick: bool) -> None:
    """Both tables, as far as they are known."""
    told = facts() | {"kind": "quick, less exact" if quick else "whole"}
    (out / "benchmark.md").write_text(markdown(told, sections))
    (out / "benchmark.json").write_text(as_json(told, sections))


def _asked(arguments: list[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Measure fieldid.")
    parser.add_argument("--quick", action="store_true", help="fewer repetitions")
    parser.add_argument(
        "--only", nargs="+", metavar="NAME", choices=MEASUREMENTS, help="only these"
    )
    parser.add_argument("--out", type=Path, required=True, help="a folder")
    return parser.parse_args(arguments)


if __name__ == "__main__":
    main()
