"""Months as people write them and as the engine counts them."""

import re


def month_number(value: object) -> int | None:
    """The engine's number of a month; None for what is no month.

    >>> month_number("1951-09"), month_number("1951-13")
    (23420, None)
    """
    match = _MONTH.fullmatch(value) if isinstance(value, str) else None
    return 12 * int(match[1]) + int(match[2]) - 1 if match else None


def month_text(t: int) -> str:
    """A month as people write it.

    >>> month_text(23420)
    '1951-09'
    """
    return f"{t // 12}-{t % 12 + 1:02}"


_MONTH = re.compile(r"([12][0-9]{3})-(0[1-9]|1[0-2])")
