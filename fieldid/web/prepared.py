"""The tables of a guide, worked out once for all of its pages."""

from functools import lru_cache

from fieldid.engine import Tables, prepare
from fieldid.engine.guide import Guide


@lru_cache(maxsize=64)
def tables_of(guide: Guide) -> Tables:
    """What judging needs, to be read and not changed."""
    return prepare(guide)
