"""Words of the author's pages."""


def numeral(number: float) -> str:
    """A number as people read it: thousands apart, no idle decimals, no exponent.

    >>> numeral(14000), numeral(1060.0), numeral(0.25)
    ('14,000', '1,060', '0.25')
    """
    whole, _, rest = f"{number:,.6f}".partition(".")
    return f"{whole}.{rest}".rstrip("0").rstrip(".")


def so_many(number: int, one: str, many: str = "") -> str:
    """A number with its noun; `many` is for where an s at the end does not do.

    >>> so_many(1, "clue"), so_many(2000, "clue"), so_many(2, "find is", "finds are")
    ('1 clue', '2,000 clues', '2 finds are')
    """
    return f"{numeral(number)} {one if number == 1 else many or f'{one}s'}"
