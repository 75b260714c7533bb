"""Shares as people write them."""

import pytest
from marshmallow import ValidationError

from fieldid.guides.shares import WORDS, share


@pytest.mark.parametrize(
    ("written", "number"),
    [
        ("always", 0.98),
        ("nearly always", 0.95),
        ("usually", 0.80),
        ("often", 0.60),
        ("half", 0.50),
        ("sometimes", 0.30),
        ("seldom", 0.10),
        ("rarely", 0.03),
        ("never", 0.0),
        (0, 0.0),
        (1, 1.0),
        (0.25, 0.25),
        ("41/43", 41.5 / 44),
        ("0/30", 0.5 / 31),
        ("30/30", 30.5 / 31),
        ("0/0", 0.5),
    ],
)
def test_share_is_its_number(written, number):
    assert share(written) == pytest.approx(number, abs=1e-15)


def test_words_fall_from_always_to_never():
    assert list(WORDS.values()) == sorted(WORDS.values(), reverse=True)


@pytest.mark.parametrize(
    "written",
    ["", "Always", "1 / 2", "1/2/3", "-1/2", "4/3", "9999999999/1", True, None, [0.5]],
)
def test_what_is_no_share_is_refused(written):
    with pytest.raises(ValidationError):
        share(written)


@pytest.mark.parametrize("number", [-0.01, 1.01, float("nan"), float("inf")])
def test_number_that_is_no_share_is_refused(number):
    with pytest.raises(ValidationError):
        share(number)
