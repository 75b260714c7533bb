"""A guide's price table becomes the record that an offer begins with."""

import json

import pytest

from fieldid.engine.guide import Off, PartPrice, Prices, SetPrices
from fieldid.engine.offer import starting
from fieldid.guides.load import load, loads
from fieldid.guides.pack import dump, pack
from make import PLOVER, lapwing, plover

TABLE = """
[prices]
currency = "GBP"
date = 2026-02-01
source = "Invented."
worth = { 1951 = 40 }
"""


def read(text: str):
    return loads(text.encode(), file="lapwing.toml", stem="lapwing")


def test_prices_are_read():
    assert load(PLOVER).prices == Prices(
        currency="EUR",
        date="2026-01-31",
        source="Invented.",
        worth=((1951, 40.0), (1953, 120.5)),
        other=8.0,
        condition=(("worn", Off(share=0.2)), ("poor", Off(25.0))),
        parts=(
            PartPrice("shaft", Off(share=0.4)),
            PartPrice("collar", Off(15.0), 9.5),
        ),
        set=SetPrices(
            ((1951, 200.0), (1953, 700.0)), 40.0, Off(share=0.15), Off(share=0.6)
        ),
    )


def test_defaults_of_prices_are_those_of_the_readme():
    assert read(lapwing() + TABLE).prices == Prices(
        "GBP", "2026-02-01", "Invented.", ((1951, 40.0),)
    )


def test_guide_without_prices_has_none():
    bare = read(lapwing())

    assert bare.prices is None
    assert starting(bare) == Prices("", "", "", ())


def test_guide_begins_with_its_own_prices():
    own = load(PLOVER)

    assert starting(own) is own.prices


def test_prices_go_along_to_the_phone():
    packed = json.loads(dump(load(PLOVER)))["prices"]

    assert packed == json.loads(json.dumps(pack(load(PLOVER))["prices"]))
    assert packed["worth"] == [[1951, 40.0], [1953, 120.5]]
    assert packed["parts"][1] == {
        "part": "collar",
        "off": {"amount": 15.0, "share": 0.0},
        "put_right": 9.5,
    }


@pytest.mark.parametrize(
    ("written", "off"),
    [
        ("30", Off(30.0)),
        ("0.5", Off(0.5)),
        ('"30 %"', Off(share=0.3)),
        ('"2.5%"', Off(share=0.025)),
        ('"100 %"', Off(share=1.0)),
    ],
)
def test_what_is_taken_off_is_money_or_a_share(written, off):
    text = plover(('shaft = "40 %"', f"shaft = {written}"))

    assert loads(text.encode(), file="plover.toml").prices.parts[0].off == off
