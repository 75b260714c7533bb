"""What a phone keeps of the guides that come along, from the folder that is served."""

import json
import re

from fieldid.build import budget

INCLUDING = "golf-club-era"
"""The fifth guide that comes along, which has another one's marks once more."""


def test_four_guides_fit_the_budget(standing, bundle):
    """As brotli. What the page and the examples have of a fifth is counted too."""
    script = (bundle / "sw.js").read_text()
    listed = re.search(r"^const FILES = (\[.*?),\n\];$", script, re.M | re.S)
    urls = [each["url"] for each in json.loads(f"{listed[1]}]")]
    kept = [url.replace("./", "index.html") for url in urls if INCLUDING not in url]

    assert len(urls) - len(kept) == 4
    assert 300_000 < sum(_sent(bundle / url) for url in kept) < budget.WHOLE


def _sent(file) -> int:
    """The file's size as a host with compressed copies sends it."""
    packed = file.with_name(f"{file.name}.br")
    return (packed if packed.exists() else file).stat().st_size
