import io
import json
import re
from itertools import chain

import pytest
from bs4 import BeautifulSoup
from PIL import Image

from bundles import app, built, guide
from fieldid.engine import Claim, Find, Item, judge, prepare
from fieldid.guides.pack import dump, plain
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web.icons import CUTS, PAPER
from fieldid.web.phone import ALONE, JOINED, LIVE, SHEET, Shelf, addresses


@pytest.fixture(scope="module")
def client():
    return app().test_client()


@pytest.fixture(scope="module")
def index(client):
    return BeautifulSoup(client.get("/").text, "html.parser")


def test_every_address_answers(client):
    for address in addresses(Shelf((guide(),), STATIC, "dev")):
        assert client.get(f"/{address}").status_code == 200, address


def test_no_page_names_the_root_of_its_host(client):
    """Or it would not work in a folder of a shared host."""
    for path in ("/", "/tree-tarn-corncrake.html"):
        page = BeautifulSoup(client.get(path).text, "html.parser")
        for name in ("href", "src", "data-base"):
            for tag in page.find_all(attrs={name: True}):
                assert not str(tag[name]).startswith("/"), tag


def test_page_runs_two_scripts(index):
    scripts = [str(tag["src"]) for tag in index.find_all("script")]

    assert scripts == ["v/dev/phone/early.js", "v/dev/phone/app.js"]


def test_page_says_what_it_may_load(index):
    meta = index.find("meta", attrs={"http-equiv": "Content-Security-Policy"})

    assert "default-src 'none'" in meta["content"]


@pytest.mark.parametrize(
    "path",
    [
        "/v/0123456789ab/phone/app.js",
        "/v/dev/phone/sw.js",
        "/v/dev/guides/nobody.json",
        "/v/dev/../cli.py",
        "/tree-nobody.html",
    ],
)
def test_what_is_not_of_this_build_is_not_found(client, path):
    assert client.get(path).status_code == 404


def test_guide_is_sent_as_packed(client):
    answer = client.get("/v/dev/guides/tarn-corncrake.json")

    assert answer.data == dump(guide())
    assert answer.mimetype == "application/json"


def test_live_worker_keeps_nothing(client):
    """A preview that was kept would hide what its author changes."""
    assert 'const BUILD = "dev";\nconst FILES = [];\n' in client.get("/sw.js").text


def test_manifest_names_no_other_folder(client):
    manifest = client.get("/manifest.webmanifest").get_json(force=True)

    assert (manifest["start_url"], manifest["scope"]) == ("./", "./")
    assert "id" not in manifest
    assert manifest["display"] == "standalone"
    assert {(icon["sizes"], icon["purpose"]) for icon in manifest["icons"]} == {
        ("192x192", "any"),
        ("512x512", "any"),
        ("512x512", "maskable"),
    }


@pytest.mark.parametrize("name", CUTS)
def test_icon_has_the_size_it_is_cut_to(client, name):
    answer = client.get(f"/{name}")
    image = Image.open(io.BytesIO(answer.data))

    assert answer.mimetype == "image/png"
    assert image.size == (CUTS[name].side, CUTS[name].side)
    assert answer.data == client.get(f"/{name}").data


def test_maskable_icon_keeps_to_its_circle(client):
    """Systems may cut off all that lies outside four fifths of the width."""
    data = client.get("/icon-maskable-512.png").data
    image = Image.open(io.BytesIO(data)).convert("RGB")
    paper = tuple(bytes.fromhex(PAPER[1:]))
    drawn = [
        (x - 255.5, y - 255.5)
        for x in range(512)
        for y in range(512)
        if image.getpixel((x, y)) != paper
    ]

    assert drawn
    assert max((x * x + y * y) ** 0.5 for x, y in drawn) < 0.4 * 512


def test_touch_icon_is_opaque(client):
    image = Image.open(io.BytesIO(client.get("/apple-touch-icon.png").data))

    assert image.convert("RGBA").getextrema()[3] == (255, 255)


def test_examples_are_what_the_engine_says(client):
    (worked,) = client.get("/v/dev/vectors.json").get_json()
    tables = prepare(guide())
    for case in worked["cases"]:
        limits = {key: case[key] for key in ("away", "without", "photos")}
        verdict = judge(tables, _find(case["find"]), **limits)
        wanted = json.loads(json.dumps(plain(verdict)))

        assert case["verdict"]["say"] == wanted["say"]
        assert case["verdict"]["outside"] == pytest.approx(wanted["outside"], abs=1e-9)
        assert [n["clue"] for n in case["verdict"]["next"]] == [
            n["clue"] for n in wanted["next"]
        ]


def test_examples_reach_into_every_corner(client):
    (worked,) = client.get("/v/dev/vectors.json").get_json()
    cases = worked["cases"]
    items = [case["find"]["items"][0] for case in cases]
    unread = [len(guide().clues) - len(item["readings"]) for item in items]

    assert 0 in unread
    assert any(unread)
    assert any(case["verdict"]["next"] for case in cases)
    assert any(item["gone"] for item in items)
    assert any(reading is None for item in items for _, reading in item["readings"])
    assert any(item["member"] for item in items)
    assert any(case["find"]["claim"] for case in cases)
    assert any(case["away"] for case in cases)
    assert any(case["without"] for case in cases)
    assert any(case["photos"] for case in cases)


def test_examples_hold_a_few_sets(client):
    """One of them with a stray; none so long that the file grows by much."""
    (worked,) = client.get("/v/dev/vectors.json").get_json()
    sets = [case for case in worked["cases"] if len(case["find"]["items"]) > 1]
    members = [each for case in sets for each in case["verdict"]["members"]]

    assert len(sets) == 3
    assert any(each["stray"] > 0.5 for each in members)
    assert max(len(json.dumps(case)) for case in sets) < 20_000


def _find(packed: dict) -> Find:
    claim = packed["claim"]
    return Find(
        packed["guide"],
        tuple(
            Item(
                tuple((clue, reading) for clue, reading in item["readings"]),
                tuple(item["gone"]),
                item["member"],
            )
            for item in packed["items"]
        ),
        claim and Claim(claim["model_year"], tuple(claim["cites"])),
    )


def test_bundle_pages_name_their_build():
    made = built()

    assert re.findall(r'data-base="([^"]*)"', made.files["index.html"].decode()) == [
        f"v/{made.build}/"
    ]


def test_page_links_the_first_sheet_alone(index):
    (link,) = index.find_all("link", rel="stylesheet")

    assert link["href"].endswith(SHEET)


@pytest.mark.parametrize("joined", JOINED)
def test_joined_sheet_holds_all_of_its_own(client, joined):
    sheet = client.get(f"/v/{LIVE}/{joined}").text

    for name in JOINED[joined]:
        assert (STATIC / f"css/{name}.css").read_text() in sheet, name


def test_every_style_sheet_is_used_somewhere():
    phone = {*chain.from_iterable(JOINED.values()), *ALONE}
    pages = "".join(
        page.read_text("utf-8") for page in TEMPLATES.glob("workbench/*.html")
    )
    workbench = set(re.findall(r"""["'/](\w+)(?:\.css)?["']""", pages))

    sheets = {file.stem for file in STATIC.glob("css/*.css")}
    assert phone <= sheets <= phone | workbench
