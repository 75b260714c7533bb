"""Shares over the years in words: what stands beside a chart in place of its bands."""

from collections.abc import Iterator, Sequence

from fieldid.draw.charts import FEW

NEARLY = 0.05
"""Of many years those are told together whose shares differ by no more than this."""
LEAST = 0.005
"""A share below this rounds to nothing."""


def share(part: float) -> str:
    """A share as a whole per cent; unlike a probability it may be none or all.

    >>> share(0.0), share(0.004), share(0.85), share(1.0)
    ('0', 'under 1 %', '85 %', 'all')
    """
    if part == 0:
        return "0"
    if part < LEAST:
        return "under 1 %"
    return "all" if part >= 1 - LEAST else f"{100 * part:.0f} %"


def runs(years: Sequence[int], shares: Sequence[float]) -> tuple[str, ...]:
    """The years with any share at all, drawn together where it is the same, or of many
    years nearly the same.

    >>> runs([1954, 1955, 1956, 1957], [0.0, 1.0, 1.0, 0.12])
    ('1955-1956: all', '1957: 12 %')
    """
    return tuple(
        f"{span(years[run[0]], years[run[-1]])}: {_between([shares[y] for y in run])}"
        for run in _alike(shares)
        if shares[run[0]]
    )


def span(first: int, last: int) -> str:
    """One year, or the first and the last.

    >>> span(1964, 1964), span(1954, 1958)
    ('1964', '1954-1958')
    """
    return str(first) if first == last else f"{first}-{last}"


def _alike(shares: Sequence[float]) -> Iterator[list[int]]:
    """Places in a row whose shares are told together."""
    run: list[int] = []
    for y in range(len(shares)):
        if run and not _together([shares[i] for i in (*run, y)], len(shares)):
            yield run
            run = []
        run.append(y)
    yield run


def _together(shares: Sequence[float], years: int) -> bool:
    if len({share(each) for each in shares}) == 1:
        return True
    return years > FEW and min(shares) > 0 and max(shares) - min(shares) <= NEARLY


def _between(shares: Sequence[float]) -> str:
    """
    >>> _between([0.91, 0.89, 0.9]), _between([0.25, 0.25]), _between([0.001, 0.03])
    ('89-91 %', '25 %', 'up to 3 %')
    """
    low, high = share(min(shares)), share(max(shares))
    if low == high:
        return low
    if high == "all":
        return f"{low} or more"
    if min(shares) < LEAST:
        return f"up to {high}"
    return f"{low.removesuffix(' %')}-{high}"
