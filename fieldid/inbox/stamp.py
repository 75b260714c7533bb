"""A guide's stamp: what tells a phone's version of it from another one."""

from fieldid.engine.guide import Guide
from fieldid.guides.pack import dump


def stamp(guide: Guide) -> str:
    """The stamp that phones give to this very guide."""
    return fingerprint(dump(guide).decode())


def fingerprint(text: str) -> str:
    """FNV-1a in 32 bits, over the text as JavaScript has it, in units of 16 bits.

    >>> fingerprint(""), fingerprint("a")
    ('811c9dc5', 'e40c292c')
    """
    units = memoryview(text.encode("utf-16-le")).cast("H")
    hash = 0x811C9DC5
    for unit in units:
        hash = (hash ^ unit) * 0x01000193 & 0xFFFFFFFF
    return f"{hash:08x}"
