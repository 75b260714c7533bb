"""The report in a browser: from a file, without a network, on screens and on paper."""

import re

import pytest

from photopage import served
from reports import one_iron, ten_irons, written

# The papers in CSS pixels, less the margins of 16 mm and 15 mm.
MM = 96 / 25.4
PAPERS = {
    "A4": (round(180 * MM), round(265 * MM)),
    "Letter": (round(185.9 * MM), round(247.4 * MM)),
}
POINTS = {"A4": (595, 842), "Letter": (612, 792)}
MAKES = {"one": one_iron, "ten": ten_irons}
LONG = "Unbroken" * 25

# Whatever is wider than the page, or than what it stands in, on the screen as it is.
OUTSIDE = """() => {
  const wide = document.documentElement.clientWidth;
  const out = [...document.querySelectorAll("main *")].filter((each) => {
    const { left, right, width } = each.getBoundingClientRect();
    const drawn = each.closest("svg") || each.clientWidth === 0;
    const cut = !drawn && each.scrollWidth > each.clientWidth + 1;
    return width > 0 && (left < 0 || right > wide + 0.5 || cut);
  });
  return out.map((each) => `${each.tagName} ${each.textContent.slice(0, 40)}`);
}"""

HAND = """async ({ asked, width, height }) => {
  const { judge, prepare, unpack } = await import("/phone/engine/index.js");
  const { summed } = await import("/phone/log/record.js");
  const { page } = await import("/phone/log/report.js");
  const { print } = await import("/phone/log/reporthand.js");
  const { STYLE: style } = await import("/phone/log/reportstyle.js");
  const guide = unpack(asked.guide);
  const verdict = judge(prepare(guide), asked.entry.find);
  const bytes = (text) => Uint8Array.from(atob(text), (a) => a.charCodeAt(0)).buffer;
  const photos = asked.photos.map((each) => ({ ...each, bytes: bytes(each.bytes) }));
  const entry = { verdict: summed(verdict), ...asked.entry };
  window.print = () => {
    const [sheet] = document.querySelectorAll("[data-report-sheet]");
    window.printed = [...sheet.shadowRoot.querySelectorAll("img")].map((image) => [
      image.complete, image.naturalWidth, image.src.slice(0, 5)]);
  };
  const told = { guide, entry, verdict, photos, now: asked.now };
  return print({ page: (source) => page(told, source), style });
}"""


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    """Reports as they lie on a disk."""
    folder = tmp_path_factory.mktemp("reports")
    asks = {name: make() for name, make in MAKES.items()}
    asks["long"] = one_iron()
    asks["long"]["entry"] |= {"title": LONG, "note": LONG * 9, "place": LONG}
    asks["long"]["ticked"] = {"place": True, "prices": True}
    for name, html in zip(asks, written(*asks.values()), strict=True):
        (folder / f"{name}.html").write_text(html, "utf-8")
    return folder


@pytest.fixture
def opened(chromium, files):
    """Opens a report from the disk with the network off; it hears of all that fails."""
    contexts = []

    def opened(name, size=(390, 844)):
        viewport = {"width": size[0], "height": size[1]}
        context = chromium.new_context(viewport=viewport)
        contexts.append(context)
        context.set_offline(True)
        page = context.new_page()
        page.heard = []
        page.on("console", lambda message: page.heard.append(message.text))
        page.on("pageerror", lambda error: page.heard.append(str(error)))
        page.on("request", lambda request: page.heard.append(request.url))
        page.goto((files / f"{name}.html").as_uri())
        return page

    yield opened
    for context in contexts:
        context.close()


@pytest.mark.parametrize("name", MAKES)
def test_report_opens_from_a_file_alone(opened, name):
    """It asks for nothing but itself, and nothing complains."""
    page = opened(name)
    images = page.evaluate("[...document.images].map((image) => image.naturalWidth)")

    assert sorted(images) == [900, 1400, 1600]
    assert page.heard == [page.url]
    assert page.evaluate("getComputedStyle(document.querySelector('h1')).fontSize") == (
        "32px"
    )


@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("name", [*MAKES, "long"])
def test_nothing_leaves_the_screen(opened, name, width):
    page = opened(name, (width, 800))

    assert page.evaluate("document.documentElement.scrollWidth") == width
    assert page.evaluate(OUTSIDE) == []


@pytest.mark.parametrize("width", [320, 1280])
def test_years_stand_on_one_line_each(opened, width):
    rows = opened("one", (width, 800)).locator(".years tr")
    heights = rows.evaluate_all("(rows) => rows.map((row) => row.clientHeight)")

    assert len(heights) == 14
    assert max(heights) < 40


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", [*MAKES, "long"])
def test_nothing_is_clipped_on_paper(opened, name, paper):
    page = opened(name, PAPERS[paper])
    page.emulate_media(media="print")
    tallest = page.evaluate(
        """Math.max(...[...document.querySelectorAll("img, tr, li, figure, .beside")]
          .map((each) => each.getBoundingClientRect().height))"""
    )

    assert page.evaluate("document.documentElement.scrollWidth") <= PAPERS[paper][0]
    assert page.evaluate(OUTSIDE) == []
    # What fits on a page need not be cut.
    assert tallest < PAPERS[paper][1]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", MAKES)
def test_no_photo_is_cut_by_a_page(opened, name, paper):
    pages = printed(opened(name), paper)

    assert all(size == pytest.approx(POINTS[paper], abs=1) for size, _ in pages)
    # A photo that is cut is drawn on both pages.
    drawn = [image for _, images in pages for image in images]
    assert len(drawn) == len(set(drawn)) == 3


def test_cut_photo_would_be_noticed(opened):
    """The check before can fail: here the photos are too tall for a page."""
    page = opened("one")
    page.add_style_tag(content=".photo img { width: 9rem; height: 40cm !important; }")
    page.add_style_tag(content=".photo img { max-height: none !important; }")
    drawn = [image for _, images in printed(page, "A4") for image in images]

    assert len(drawn) > len(set(drawn)) == 3


def printed(page, paper):
    """Each page of the PDF: its size in points, and the photos that it draws."""
    pdf = page.pdf(format=paper)
    objects = dict(re.findall(rb"\n(\d+) 0 obj\n(.*?)\nendobj", pdf, re.DOTALL))
    photos = {each for each, body in objects.items() if b"/DCTDecode" in body}
    found = []
    for body in objects.values():
        if not re.search(rb"/Type /Page\b", body):
            continue
        size = re.search(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", body)
        drawn = re.findall(rb"/X\d+ (\d+) 0 R", body)
        images = [each for each in drawn if each in photos]
        found.append(((float(size[1]), float(size[2])), images))
    return found


def test_paper_is_black_on_white(opened):
    page = opened("ten")
    page.emulate_media(media="print", color_scheme="dark")
    colours = page.evaluate(
        """[...document.querySelectorAll("body, body *")].flatMap((each) => {
          const { color, backgroundColor } = getComputedStyle(each);
          return [color, backgroundColor];
        })"""
    )

    assert {*colours} == {"rgb(0, 0, 0)", "rgb(255, 255, 255)", "rgba(0, 0, 0, 0)"}


def test_screen_stays_light(opened):
    page = opened("one")
    page.emulate_media(color_scheme="dark")

    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == (
        "rgb(244, 236, 216)"
    )
    assert page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches")


@pytest.fixture
def app(chromium):
    """A page under the app's own policy, and what it complains of."""
    with served() as address:
        page = chromium.new_page()
        page.heard = []
        # The page has no icon, of which browsers complain at any time.
        page.on(
            "console",
            lambda message: (
                "icon" in message.location["url"] or page.heard.append(message.text)
            ),
        )
        page.goto(address)
        yield page
        page.close()


def test_app_prints_with_photos_and_styles(app):
    """Under its policy a frame or a window of the report would have neither."""
    said = app.evaluate(HAND, {"asked": one_iron()})
    app.emulate_media(media="print")

    assert said == "Handed to the printer."
    assert app.heard == []
    assert sorted(app.evaluate("printed")) == [
        [True, 900, "blob:"],
        [True, 1400, "blob:"],
        [True, 1600, "blob:"],
    ]
    assert app.locator("input").is_hidden()
    assert app.get_by_role("heading", name="Which year, and how sure").is_visible()
    title = app.get_by_role("heading", name="Irons from the fair")
    size = title.evaluate("(each) => parseFloat(getComputedStyle(each).fontSize)")
    assert size == pytest.approx(20 / 0.75, abs=0.01)
    assert len(printed(app, "A4")) > 2


def test_printed_report_is_not_on_the_screen(app):
    app.evaluate(HAND, {"asked": one_iron()})
    app.evaluate(HAND, {"asked": ten_irons()})

    assert app.locator("[data-report-sheet]").count() == 1
    assert app.locator("[data-report-sheet]").is_hidden()
    assert app.locator("input").is_visible()


SHARE = """async ({ can, fails }) => {
  const { share } = await import("/phone/log/reporthand.js");
  window.shared = [];
  const canShare = ({ files }) => can && files.length === 1;
  navigator.canShare = can === null ? undefined : canShare;
  navigator.share = async (what) => {
    if (fails) throw new DOMException("no", fails);
    const [file] = what.files;
    window.shared = [Object.keys(what), file.name, file.type, await file.text()];
  };
  return share("<!doctype html><p>A report", "find-a.html");
}"""


AFTER = """() => {
  const href = URL.createObjectURL(new Blob(["after"]));
  Object.assign(document.createElement("a"), { href, download: "after.txt" }).click();
}"""


def test_report_goes_to_the_share_sheet(app):
    said = app.evaluate(SHARE, {"can": True, "fails": None})

    assert said == "Handed on."
    assert app.evaluate("shared") == [
        ["files"],
        "find-a.html",
        "text/html",
        "<!doctype html><p>A report",
    ]


@pytest.mark.parametrize(
    ("can", "fails"),
    [(False, None), (None, None), (True, "NotAllowedError"), (True, "TypeError")],
)
def test_report_that_cannot_be_shared_is_saved(app, can, fails):
    with app.expect_download() as download:
        said = app.evaluate(SHARE, {"can": can, "fails": fails})

    assert download.value.suggested_filename == "find-a.html"
    assert download.value.path().read_text() == "<!doctype html><p>A report"
    assert said.endswith("Saved as find-a.html.")
    assert said.startswith("This phone could not share it.") == (fails is not None)


def test_sharing_can_be_called_off(app):
    saved = []
    app.on("download", lambda download: saved.append(download))

    assert app.evaluate(SHARE, {"can": True, "fails": "AbortError"}) == (
        "It was not shared."
    )
    # Downloads come in their order, so one before this would be in the list.
    with app.expect_download(lambda each: each.suggested_filename == "after.txt"):
        app.evaluate(AFTER)
    assert [each.suggested_filename for each in saved] == ["after.txt"]


def test_app_on_an_iphone_offers_no_print(app):
    asking = """async (standalone) => {
      const { canPrint } = await import("/phone/log/reporthand.js");
      navigator.standalone = standalone;
      return canPrint();
    }"""

    assert app.evaluate(asking, None) is True
    assert app.evaluate(asking, True) is False
