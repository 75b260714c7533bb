"""How many bytes a phone must fetch, against what we allow ourselves."""

import gzip
from collections.abc import Iterable, Mapping

from fieldid.build.page import read_page
from fieldid.build.precache import PAGE, UNKEPT

FIRST_LOAD = 60_000
"""HTML, styles and scripts together, compressed."""
GUIDES = 60_000
"""All guides together, compressed."""

SMALLER = 0.95
"""Compression that saves less is not worth a second file."""
TEXTS = (".html", ".css", ".js", ".json", ".svg", ".webmanifest")


def lines(files: Mapping[str, bytes]) -> tuple[str, ...]:
    """One line for each budget, and one for all that a phone keeps."""
    linked = read_page(files[PAGE].decode()).links
    first = [PAGE, *(path for path in linked if path.endswith((".css", ".js")))]
    guides = [path for path in files if "/guides/" in path]
    kept = [path for path in files if path not in UNKEPT]
    whole = sum(len(files[path]) for path in kept)
    return (
        _line("page, styles and scripts", _packed(files, first), FIRST_LOAD),
        _line("guides", _packed(files, guides), GUIDES),
        f"kept on a phone: {len(kept)} files, {_kb(whole)}, "
        f"{_kb(_packed(files, kept))} compressed",
    )


def compressed(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """A `.gz` beside every text that it makes smaller; the same in, the same out."""
    found = {}
    for path, body in files.items():
        small = _gzip(body) if path.endswith(TEXTS) else body
        if len(small) < SMALLER * len(body):
            found[f"{path}.gz"] = small
    return found


def _packed(files: Mapping[str, bytes], paths: Iterable[str]) -> int:
    # A page names its entry twice: to fetch early, and to run.
    once = dict.fromkeys(paths)
    return sum(min(len(files[path]), len(_gzip(files[path]))) for path in once)


def _gzip(body: bytes) -> bytes:
    # Without its time, so that building twice gives the same bytes.
    return gzip.compress(body, 9, mtime=0)


def _line(name: str, size: int, limit: int) -> str:
    verdict = f"of {_kb(limit)}"
    if size > limit:
        verdict = f"over the {_kb(limit)} that a poor line bears"
    return f"{name}: {_kb(size)} compressed, {verdict}"


def _kb(size: int) -> str:
    """Bytes as a person reads them.

    >>> _kb(61_440)
    '61.4 kB'
    """
    return f"{size / 1000:.1f} kB"
