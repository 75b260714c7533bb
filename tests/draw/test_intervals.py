"""A count beside a share: what is drawn lies where its numbers are."""

import re

import pytest

from fieldid.draw.intervals import interval
from fieldid.draw.nodes import svg


def drawn(*given, **more):
    text = svg(interval(*given, **more))
    return dict(re.findall(r'class="interval__(\w+)" d="([^"]+)"', text)), text


def test_each_mark_lies_at_its_number():
    paths, _ = drawn(0.2, 0.6, count=0.35, share=0.9)

    assert paths["range"] == "M20 0.33H60V0.67H20Z"
    assert paths["count"] == "M35 0.33V0.67"
    assert paths["share"] == "M90 0V1"
    assert paths["rail"] == "M0 0.5H100"


@pytest.mark.parametrize("end", [0.0, 1.0])
def test_ends_stay_on_the_drawing(end):
    paths, text = drawn(0.0, 1.0, count=end, share=end)

    assert 'viewBox="0 0 100 1"' in text
    assert paths["share"] == f"M{100 * end:g} 0V1"


def test_readers_of_screens_pass_over_it():
    assert 'aria-hidden="true"' in drawn(0.1, 0.2, count=0.15, share=0.3)[1]
