"""A share as people write it: a number, a count or a word, made a number."""

import re

from fieldid.guides.refusals import quote, refused

WORDS = {
    "always": 0.98,
    "nearly always": 0.95,
    "usually": 0.80,
    "often": 0.60,
    "half": 0.50,
    "sometimes": 0.30,
    "seldom": 0.10,
    "rarely": 0.03,
    "never": 0.0,
}
WANTS = 'a number from 0 to 1, a count such as "41/43", or a word: ' + ", ".join(WORDS)


def share(value: object) -> float:
    """The number that a share stands for.

    >>> share("usually"), share(0.25), round(share("41/43"), 4)
    (0.8, 0.25, 0.9432)
    """
    if isinstance(value, str):
        return WORDS[value] if value in WORDS else _count(value)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise refused("not-that", value=quote(value), wants=WANTS)
    # "Not a number" compares false with everything, so this refuses it too.
    if not 0 <= value <= 1:
        raise refused("share-limits", value=quote(value), least=0, most=1)
    return float(value)


def _count(text: str) -> float:
    """`k` seen of `n` looked at: none seen in thirty is not never."""
    match = _COUNT.fullmatch(text)
    if not match:
        raise refused("not-that", value=quote(text), wants=WANTS)
    k, n = int(match[1]), int(match[2])
    if k > n:
        raise refused("count-over", value=quote(text))
    return (k + 0.5) / (n + 1)


_COUNT = re.compile(r"([0-9]{1,9})/([0-9]{1,9})")
