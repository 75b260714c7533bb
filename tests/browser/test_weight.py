"""What a phone keeps of the guides that come along, from the folder that is served.

Of any four the weight is told from one build of all, since most files are one guide's
own or the same for all; but the page and the examples are made anew. A build of just
these four has another name, which changes the sum by less than a kilobyte.
"""

import json
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from fieldid.build import budget
from fieldid.build.precache import PAGE
from fieldid.build.slim import slim
from fieldid.paths import RULES
from fieldid.web.app import create_app
from pocket import FOUR
from serving import shelf

ALL = sorted(path.stem for path in RULES.glob("*.toml"))


@pytest.fixture(scope="module")
def kept(bundle):
    """The files that the worker keeps, by their paths."""
    script = (bundle / "sw.js").read_text()
    listed = re.search(r"^const FILES = (\[.*?),\n\];$", script, re.M | re.S)
    urls = [each["url"] for each in json.loads(f"{listed[1]}]")]
    paths = [url.replace("./", PAGE) for url in urls]
    return {path: bundle / path for path in paths}


@pytest.mark.parametrize("fifth", ALL)
def test_any_four_guides_fit_the_budget(kept, fifth):
    """As brotli."""
    assert len(ALL) == 5
    assert 300_000 < _without(kept, fifth) < budget.WHOLE


def test_benchmark_weighs_the_dearest_four(kept):
    lightest = max(ALL, key=lambda fifth: _without(kept, fifth))

    assert {*FOUR} == {*ALL} - {lightest}


@pytest.mark.parametrize("guide", ALL)
def test_four_files_are_one_guides_own(kept, guide):
    """All others are counted with every four."""
    assert len([path for path in kept if guide in path]) == 4


def _without(kept: Mapping[str, Path], fifth: str) -> int:
    """How much is sent without one guide."""
    (examples,) = (path for path in kept if path.endswith("vectors.json"))
    anew = {
        PAGE: _page(fifth, build=Path(examples).parent.name),
        examples: _worked(kept[examples], fifth),
    }
    others = (path for path in kept if path not in anew and fifth not in path)
    sizes = (len(budget.sent(path, body, ".br")) for path, body in anew.items())
    return sum(sizes) + sum(_sent(kept[path]) for path in others)


@cache
def _page(fifth: str, *, build: str) -> bytes:
    """The page of the other guides."""
    guides = [each for each in shelf() if each.id != fifth]
    app = create_app(guides=guides, build=build, testing=True)
    return slim(PAGE, app.test_client().get("/").data)


def _worked(file: Path, fifth: str) -> bytes:
    """The examples of the other guides, written as the build writes them."""
    every = json.loads(file.read_bytes())
    others = [each for each in every if each["guide"] != fifth]
    assert len(others) == len(every) - 1
    return json.dumps(others, ensure_ascii=False, separators=(",", ":")).encode()


def _sent(file: Path) -> int:
    """The file's size as a host with compressed copies sends it."""
    packed = file.with_name(f"{file.name}.br")
    return (packed if packed.exists() else file).stat().st_size
