"""Words of the author's pages."""


def so_many(number: int, one: str, many: str = "") -> str:
    """A number with its noun; `many` is for where an s at the end does not do.

    >>> so_many(1, "clue"), so_many(2000, "clue"), so_many(2, "find is", "finds are")
    ('1 clue', '2,000 clues', '2 finds are')
    """
    return f"{number:,} {one if number == 1 else many or f'{one}s'}"
