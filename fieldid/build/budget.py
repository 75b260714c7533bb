"""How many bytes a phone must fetch, against what we allow ourselves.

Brotli saves a phone on a slow line a seventh of the bytes against gzip, where a host
serves the ready-made copies. The largest guide counts and not all of them together,
since a phone fetches them one by one.
"""

import gzip
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache

# The library does not say its types.
import brotli  # type: ignore[import-untyped]

from fieldid.build.page import read_page
from fieldid.build.precache import PAGE, is_kept
from fieldid.web.script import DEALING, FINDING, GUESTS, KEPT, PRACTICE

FIRST_LOAD = 40_000
"""HTML, styles and scripts until Home can be used, as brotli."""
WITH_A_FIND = 80_000
"""The same with the script that a find needs, which comes while Home is read."""
KEPT_FINDS = 45_000
"""The script of finds that are kept, which comes after that."""
DEALS = 40_000
"""The script of offers, wants and sizes, which comes after that."""
ROUNDS = 25_000
"""The script of practice, which comes when it is asked for."""
GIVEN = 25_000
"""The script of guides from files, which comes where there are some, or on asking."""
GUIDE = 25_000
"""Any one guide, as brotli."""
WHOLE = 400_000
"""All that a phone keeps, with four guides."""

SMALLER = 0.95
"""Compression that saves less is not worth a second file."""
TEXTS = (".html", ".css", ".js", ".json", ".svg", ".webmanifest")


def lines(files: Mapping[str, bytes]) -> tuple[str, ...]:
    """One line for each budget, and one for all that a phone keeps.

    Counted as brotli, which every browser of today takes over HTTPS; gzip beside it.
    """
    linked = read_page(files[PAGE].decode()).links
    first = [PAGE, *(path for path in linked if path.endswith((".css", ".js")))]
    found = [path for path in files if path.endswith(FINDING)]
    kept_finds = [path for path in files if path.endswith(KEPT)]
    deals = [path for path in files if path.endswith(DEALING)]
    rounds = [path for path in files if path.endswith(PRACTICE)]
    given = [path for path in files if path.endswith(GUESTS)]
    guides = [path for path in files if "/guides/" in path]
    heaviest = max(guides, key=lambda path: _packed(files, [path], ".br"), default="")
    kept = [path for path in files if is_kept(path)]
    whole = sum(len(files[path]) for path in kept)
    return (
        _line("page, styles and first script", files, first, FIRST_LOAD),
        _line("with the script of a find", files, [*first, *found], WITH_A_FIND),
        _line("the script of kept finds", files, kept_finds, KEPT_FINDS),
        _line("the script of offers, wants and sizes", files, deals, DEALS),
        _line("the script of practice", files, rounds, ROUNDS),
        _line("the script of guides from files", files, given, GIVEN),
        _line("the largest guide", files, [heaviest] if guides else [], GUIDE),
        f"kept on a phone: {len(kept)} files, {_sizes(files, kept)}, "
        f"{_kb(whole)} unpacked",
    )


def compressed(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """A `.br` and a `.gz` beside every text that they make smaller; the same bytes in
    give the same bytes out.
    """
    found = {}
    for path, body in files.items():
        for suffix in PACKERS:
            small = sent(path, body, suffix)
            if small != body:
                found[f"{path}{suffix}"] = small
    return found


def sent(path: str, body: bytes, suffix: str) -> bytes:
    """What a host sends of a file: its copy of that kind, or itself where none is kept.

    >>> sent("a.css", b"a" * 99, ".gz") == sent("a.png", b"a" * 99, ".gz")
    False
    """
    small = PACKERS[suffix](body) if path.endswith(TEXTS) else body
    return small if len(small) < SMALLER * len(body) else body


# A bundle is both weighed and written, and this takes its time.
@lru_cache(maxsize=256)
def _brotli(body: bytes) -> bytes:
    return bytes(brotli.compress(body, quality=11))


def _gzip(body: bytes) -> bytes:
    # Without its time, so that building twice gives the same bytes.
    return gzip.compress(body, 9, mtime=0)


PACKERS: dict[str, Callable[[bytes], bytes]] = {".br": _brotli, ".gz": _gzip}


def _line(
    name: str, files: Mapping[str, bytes], paths: Iterable[str], limit: int
) -> str:
    verdict = f"of {_kb(limit)}"
    if _packed(files, paths, ".br") > limit:
        verdict = f"over the {_kb(limit)} that a poor line bears"
    return f"{name}: {_sizes(files, paths)}, {verdict}"


def _sizes(files: Mapping[str, bytes], paths: Iterable[str]) -> str:
    small, usual = (_packed(files, paths, suffix) for suffix in PACKERS)
    return f"{_kb(small)} ({_kb(usual)} as gzip)"


def _packed(files: Mapping[str, bytes], paths: Iterable[str], suffix: str) -> int:
    # A page names its entry twice: to fetch early, and to run.
    once = dict.fromkeys(paths)
    return sum(len(sent(path, files[path], suffix)) for path in once)


def _kb(size: int) -> str:
    """Bytes as a person reads them.

    >>> _kb(61_440)
    '61.4 kB'
    """
    return f"{size / 1000:.1f} kB"
