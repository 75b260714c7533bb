"""What a phone keeps of the app with four guides, as a host sends it.

Sizes are brotli, which every browser of today takes over HTTPS. Of the guides that come
along these are the four that weigh most; what the others add is told at the end.
"""

import re
from collections.abc import Sequence

from fieldid.build import budget
from fieldid.build.precache import is_kept
from fieldid.build.site import bundle
from fieldid.guides.load import load
from fieldid.paths import RULES
from pocket import FOUR
from report import Record, at_most

KINDS = {
    "page": r"index\.html",
    "scripts": r".*\.js",
    "styles": r".*\.css",
    "guides": r"v/\w+/guides/.*",
    "what guides teach": r"guide-.*\.html",
    "questions and marks on one page": r"tree-.*\.html",
    "cards to print": r"card-.*\.html",
    "worked examples": r"v/\w+/vectors\.json",
    "icons and manifest": r".*(\.png|\.svg|\.webmanifest)",
}


def measure(*, quick: bool) -> list[Record]:
    """A row a kind, and all; a build takes as long for few figures as for many."""
    files = _kept(FOUR)
    every = [*FOUR, *(p.stem for p in RULES.glob("*.toml") if p.stem not in FOUR)]
    small, usual, whole = (_weighed(files, suffix) for suffix in (".br", ".gz", ""))
    return [
        *(_row(name, _of(files, form)) for name, form in KINDS.items()),
        at_most(
            budget.WHOLE / 1000,
            "all that is kept with the four that weigh most",
            small,
            "kB",
            _so_many(files),
        ),
        Record("the same as gzip", usual, "kB"),
        Record("the same unpacked", whole, "kB"),
        Record(f"with all {len(every)} guides", _weighed(_kept(every), ".br"), "kB"),
    ]


def _kept(guides: Sequence[str]) -> dict[str, bytes]:
    """What a phone keeps of a bundle of these guides."""
    made = bundle([load(RULES / f"{each}.toml") for each in guides])
    return {path: body for path, body in made.files.items() if is_kept(path)}


def _weighed(files: dict[str, bytes], suffix: str) -> float:
    """In kB, as a host sends them that keeps copies of this kind, or none."""
    sizes = (
        len(budget.sent(path, body, suffix) if suffix else body)
        for path, body in files.items()
    )
    return sum(sizes) / 1000


def _of(files: dict[str, bytes], form: str) -> dict[str, bytes]:
    return {path: body for path, body in files.items() if re.fullmatch(form, path)}


def _row(name: str, files: dict[str, bytes]) -> Record:
    return Record(name, _weighed(files, ".br"), "kB", note=_so_many(files))


def _so_many(files: dict[str, bytes]) -> str:
    return f"{len(files)} file{'s' if len(files) > 1 else ''}"
