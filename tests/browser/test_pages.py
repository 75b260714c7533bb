"""The card on paper: one sheet in both sizes, nothing cut off."""

import re

import pytest

from fieldid.paths import RULES

GUIDES = [path.stem for path in sorted(RULES.glob("*.toml"))]

CUT = """() => [...document.querySelectorAll(".card :not(.unseen)")]
  .filter((each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth
    && getComputedStyle(each).display !== "inline")
  .map((each) => each.className + ": " + each.textContent.slice(0, 40))"""


@pytest.mark.parametrize("guide", GUIDES)
def test_card_is_one_sheet_in_both_sizes(guide, standing, launch):
    page = launch((718, 971))
    page.goto(f"{standing.url}card-{guide}.html")

    for size in ("A4", "Letter"):
        printed = page.pdf(format=size, prefer_css_page_size=True)
        assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1, size
    page.emulate_media(media="print")
    # The sheet without its edges, in pixels of 1/96 inch.
    box = page.locator(".card").bounding_box()
    assert box["width"] <= 718.5
    assert box["height"] <= 971
    assert page.evaluate(CUT) == []
