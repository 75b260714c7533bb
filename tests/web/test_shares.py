"""Shares over the years in words: told together where they are the same."""

from fieldid.web.shares import runs


def test_years_of_one_share_are_told_together():
    assert runs([1951, 1952, 1953, 1954], [0.5, 0.5, 0.2, 0.0]) == (
        "1951-1952: 50 %",
        "1953: 20 %",
    )


def test_years_without_any_are_left_out():
    assert runs([1951, 1952, 1953], [0.0, 0.003, 0.0]) == ("1952: under 1 %",)
    assert runs([1951], [0.0]) == ()


def test_few_years_are_told_exactly():
    assert len(runs([1951, 1952], [0.90, 0.91])) == 2


def test_many_years_are_told_where_they_nearly_agree():
    years = range(1900, 1920)
    shares = [*(0.90 + 0.01 * (y % 3) for y in range(10)), *[1.0] * 10]

    assert runs(years, shares) == ("1900-1909: 90-92 %", "1910-1919: all")


def test_nothing_is_not_nearly_something():
    years = range(1900, 1920)

    assert runs(years, [0.0] * 10 + [0.01] * 10) == ("1910-1919: 1 %",)
