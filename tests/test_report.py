"""The report as strict readers of HTML see it: whole, harmless, in need of nothing."""

import base64
import io

import html5lib
import pytest
from PIL import Image

import photofiles
from fieldid.guides.load import load
from fieldid.guides.pack import pack
from fieldid.paths import RULES
from reports import (
    FORMULA,
    HOSTILE,
    VECTORS,
    asked,
    one_iron,
    photo,
    ten_irons,
    vector,
    written,
)

TAGS = {
    *("html", "head", "meta", "title", "style", "body", "main", "header", "section"),
    *("h1", "h2", "p", "strong", "dl", "div", "dt", "dd", "ul", "li", "span"),
    *("table", "thead", "tbody", "tr", "th", "td", "figure", "figcaption", "img"),
    *("svg", "rect", "line", "text"),
}
ATTRIBUTES = {
    *("lang", "charset", "name", "http-equiv", "content", "class", "dir", "scope"),
    *("src", "alt", "width", "height", "role", "aria-label", "aria-hidden"),
    *("x", "y", "x1", "x2", "y1", "y2"),
}
POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'"


def parsed(html: str):
    """The page; the first mistake in it is an error."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    return parser.parse(html)


def name(element) -> str:
    return element.tag.rpartition("}")[2]


def text(element) -> str:
    return "".join(element.itertext()).replace("\u00a0", " ")


def assert_harmless(page) -> None:
    """Nothing that runs, and no address of anything outside."""
    for element in page.iter():
        assert name(element) in TAGS
        assert {*element.attrib} <= ATTRIBUTES
        if name(element) == "img":
            assert element.attrib["src"].startswith("data:image/jpeg;base64,")
    [style] = page.iter("style")
    assert "url(" not in style.text
    assert "@import" not in style.text
    assert page.find("head/meta[@http-equiv]").attrib["content"] == POLICY


def assert_ordered(page) -> None:
    """One title above all headings, a language, and words for each picture."""
    headings = [name(each) for each in page.iter() if name(each) in ("h1", "h2", "h3")]
    assert headings == ["h1", *["h2"] * (len(headings) - 1)]
    assert page.attrib["lang"] == "en"
    assert page.find("head/title").text
    for image in page.iter("img"):
        assert image.attrib["alt"]
        assert int(image.attrib["width"])
        assert int(image.attrib["height"])


@pytest.mark.parametrize("file", sorted(VECTORS.glob("*.json")), ids=lambda f: f.stem)
def test_every_guide_gives_a_whole_page(file):
    read = vector(file.stem)
    longest = max(read["cases"], key=lambda case: len(str(case["find"])))
    cases = [*read["cases"][::40], longest]
    for html in written(*(asked(read["guide"], case["find"]) for case in cases)):
        page = parsed(html)

        assert_harmless(page)
        assert_ordered(page)


@pytest.mark.parametrize("make", [one_iron, ten_irons])
def test_hostile_texts_stay_texts(make):
    """Whatever a person, an import or a guide says is shown as it stands."""
    ask = make()
    hostile = {key: f"{HOSTILE} {key}" for key in ("title", "note", "place")}
    ask["entry"] |= hostile | {"currency": FORMULA}
    ask["ticked"] = {"place": True, "prices": True}
    ask["guide"] = hostile_guide(ask["guide"])
    page = parsed(*written(ask))
    shown = text(page.find("body"))

    assert_harmless(page)
    assert_ordered(page)
    assert all(each in shown for each in hostile.values())
    assert FORMULA in shown
    assert page.find("head/title").text == hostile["title"]
    assert shown.count(HOSTILE) > 20


def hostile_guide(guide):
    """The guide with every name and sentence of it turned against the reader."""
    parts = [each | {"name": f"{each['name']} {HOSTILE}"} for each in guide["parts"]]
    clues = [each | {"name": f"{each['name']} {HOSTILE}"} for each in guide["clues"]]
    return guide | {
        "title": HOSTILE,
        "maker": HOSTILE,
        "about": HOSTILE,
        "source": HOSTILE,
        "cautions": [HOSTILE],
        "parts": parts,
        "clues": clues,
        "years": [each | {"note": HOSTILE} for each in guide["years"]],
    }


def test_control_characters_break_no_page():
    """A strict reader refuses them anywhere; people paste them unseen."""
    [html] = written(one_iron() | {"entry": one_iron()["entry"] | {"title": UNSEEN}})
    page = parsed(html)

    assert page.find("head/title").text == "a\N{REPLACEMENT CHARACTER}" * 4


UNSEEN = "a\x00a\x0ba\x7fa\ufffe"


def test_photos_come_whole_and_bare():
    """Should one ever be kept with its place, it still is not handed on."""
    file = photofiles.camera_photo(1)
    spoilt = photo(1, None) | {"bytes": base64.b64encode(file).decode()}
    assert b"GPS" in file
    ask = asked(vector("lone-dunlin")["guide"], nothing_read(), spoilt, photo(2, None))
    images = [*parsed(*written(ask)).iter("img")]
    files = [base64.b64decode(each.attrib["src"].partition(",")[2]) for each in images]

    assert [Image.open(io.BytesIO(each)).size for each in files] == [
        photofiles.SIZE,
        (1600, 1200),
    ]
    assert files[1] == base64.b64decode(photo(2, None)["bytes"])
    for each in files:
        assert {marker for marker, _ in photofiles.parts(each)}.isdisjoint({0xE1, 0xFE})
        assert not dict(Image.open(io.BytesIO(each)).getexif())


def nothing_read():
    item = {"member": None, "readings": [], "gone": []}
    return {"guide": "lone-dunlin", "items": [item], "claim": None}


def test_range_is_told_in_large_figures():
    guide = pack(load(RULES / "dated-marks.toml"))
    clues = [clue for clue in guide["clues"] if clue["kind"]["name"] == "choice"]
    read = [[clue["id"], clue["kind"]["options"][1]["id"]] for clue in clues[:2]]
    item = {"member": None, "readings": read, "gone": []}
    find = {"guide": guide["id"], "items": [item], "claim": None}
    page = parsed(*written(asked(guide, find)))

    assert_harmless(page)
    figure = page.find(".//strong[@class='figure figure--range']")
    assert figure is not None
    assert any(year in text(figure) for year in ("to", "or later", "or earlier"))
    [heads] = [each for each in page.iter("table") if each.attrib["class"] == "years"]
    assert text(heads).startswith("Decade")
    assert "Runner-up" not in text(page)
    assert "Invented" not in text(page)
