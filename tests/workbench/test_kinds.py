"""How numbers are read off a form's field: thousands are never taken for decimals."""

import tomllib

import pytest


@pytest.mark.parametrize("typed", ["14,000", "14.000", "14 000", "14000"])
def test_thousands_are_read_however_they_are_parted(desk, typed):
    desk.open("/guides/plover/table/clue/4")
    desk.send(first=f"1951 = 1\n1952 = {typed}", last="1,000,000")

    assert "Saved." in desk.said(), desk.said(".problems")
    clue = tomllib.loads(desk.text("plover"))["clue"][4]
    assert clue["first"] == {"1951": 1, "1952": 14000}
    assert clue["last"] == 1_000_000


def test_money_has_no_three_decimals(desk):
    desk.open("/guides/plover/table/prices")
    desk.send(
        worth="1951 = 1,060\n1952 = 12,50",
        other="1.200",
        off="shaft = 2,000\ncollar = 5",
    )

    assert "Saved." in desk.said(), desk.said(".problems")
    prices = tomllib.loads(desk.text("plover"))["prices"]
    assert prices["worth"] == {"1951": 1060, "1952": 12.5}
    assert prices["other"] == 1200
    assert prices["off"] == {"shaft": 2000, "collar": 5}


def test_size_that_can_be_read_in_two_ways_is_asked_about(desk):
    desk.open("/guides/plover/table/clue/1").send(size__0__mean="6,125")

    assert desk.status == 400
    assert "write 6125 or 6.125" in desk.errors()["at.size.0.mean"]
    desk.send(size__0__mean="6.125")
    assert tomllib.loads(desk.text("plover"))["clue"][1]["size"][0]["mean"] == 6.125
