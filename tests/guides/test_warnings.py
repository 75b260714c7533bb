"""Warnings: what a guide without mistakes still cannot tell."""

from dataclasses import replace

import pytest

from fieldid.engine.guide import Field, Members, Size
from fieldid.guides.load import load
from fieldid.guides.warnings import cliques, warnings
from make import (
    PLOVER,
    choice,
    code,
    guide,
    measure,
    model_year,
    number,
    option,
    part,
    span,
)

BOTH = choice("rings", option("a", span((1951, 1952))), option("b"))
TELLS = choice("toe", option("a", span((1951, 1951))), option("b", span((1952, 1952))))
ALIKE = "1951 and 1952 cannot be told apart by any clue"
MONTH = Field("month", "month", 1, "ABCDEFGHJKLM")


def test_guide_that_tells_all_has_no_warning():
    assert warnings(load(PLOVER)) == ()


def test_clue_of_both_years_tells_nothing():
    assert warnings(guide(BOTH)) == (
        "the clue 'rings' tells nothing about the year",
        ALIKE,
    )


def test_idle_clue_beside_a_telling_one_is_named():
    assert warnings(guide(BOTH, TELLS)) == (
        "the clue 'rings' tells nothing about the year",
    )


def test_names_that_stand_twice_are_told():
    twins = replace(TELLS.kind.options[0], id="c", label="B")
    toe = replace(TELLS, kind=replace(TELLS.kind, options=(*TELLS.kind.options, twins)))
    parts = (part(), replace(part(), id="other"))

    assert warnings(guide(toe, parts=parts)) == (
        f"two parts are called {part().name!r}",
        "two answers of the clue 'toe' are called 'b'",
    )


def test_years_that_are_alike_are_named_together():
    def found(until):
        years = tuple(map(model_year, range(1951, until)))
        return warnings(guide(TELLS, years=years))

    end = "cannot be told apart by any clue"
    assert found(1955) == (f"1953 and 1954 {end}",)
    assert found(1956) == (f"1953, 1954 and 1955 {end}",)
    assert found(1959) == (f"1953-1958 {end}",)


def test_only_years_that_are_all_alike_are_named_together():
    """A year may be like two others that are not alike."""
    pairs = {(0, 1), (1, 2), (3, 4), (3, 5), (4, 5)}

    assert list(cliques(6, lambda i, j: (i, j) in pairs)) == [[0, 1], [1, 2], [3, 4, 5]]


def test_years_of_a_range_may_be_alike():
    """An idle clue is named there too."""
    assert warnings(guide(BOTH, verdict="range")) == (
        "the clue 'rings' tells nothing about the year",
    )


def test_size_tells_years_apart():
    sizes = (Size((1951, 1951), 20.0, 1.0), Size((1952, 1952), 30.0, 1.0))

    assert warnings(guide(measure("pad", *sizes))) == ()
    assert ALIKE in warnings(guide(measure("pad", Size((1951, 1952), 20.0, 1.0))))


def test_month_tells_windows_apart_and_only_those():
    """A month letter says nothing about years that were built in the same months."""
    years = (model_year(1951), model_year(1952, "1951-09", "1952-10"))

    assert ALIKE in warnings(guide(code("stamp", MONTH)))
    assert warnings(guide(code("stamp", MONTH), years=years)) == ()


def test_one_member_that_tells_is_enough():
    only_w = choice(
        "sole", option("a", span((1951, 1951), members=("W",))), option("b")
    )
    found = warnings(guide(only_w, members=Members(("3", "W"))))

    assert found == ()


def test_change_within_a_year_tells_it_apart():
    """What counts is the whole window: both years begin with the same option."""
    until_june = choice(
        "cap",
        option("a", span((1951, 1951), until="1951-06"), span((1952, 1952))),
        option("b", span((1951, 1951), since="1951-07")),
    )

    assert warnings(guide(until_june)) == ()


def test_windows_of_different_length_are_still_alike():
    """Averages over fourteen and over twelve months differ in the last bit."""
    years = (model_year(1951), model_year(1952, "1951-09", "1952-10"))

    seldom = choice(
        "rings", option("a", span((1951, 1952), share=0.2)), option("b", span())
    )

    assert ALIKE in warnings(guide(seldom, years=years))


def test_year_without_a_serial_is_named():
    """Here the autumn before the first model year is forgotten, and a year after."""
    years = (model_year(1951, "1950-09"), *map(model_year, range(1952, 1957)))
    serial = number("serial", {1951: 1, 1954: 500, 1955: 900}, 2000)

    assert warnings(guide(serial, TELLS, years=years))[:1] == (
        "the clue 'serial' has no number for 1950, 1952 to 1953, 1956: "
        "what was built then shows one only by mistake",
    )


def test_serial_of_every_year_has_no_warning():
    assert warnings(guide(number("serial", {1951: 1, 1952: 500}, 900))) == ()


def test_patent_may_leave_years_out():
    """In most years no patent was given that the line could show."""
    patent = number("patent", {1930: 1, 1951: 500}, 900, lag=8.0)

    assert warnings(guide(patent, TELLS)) == ()


@pytest.mark.parametrize("lag", [0.0, 8.0])
def test_numbers_of_later_years_tell_nothing(lag):
    """A guide may take them over from another, whose years these are."""
    late = number("late", {1960: 1, 1961: 500}, 900, lag=lag)

    assert warnings(guide(late, TELLS)) == (
        "the clue 'late' tells nothing about the year",
    )
