import json

import pytest

from bundles import built
from fieldid.build.seal import seal
from fieldid.errors import BuildError

POLICY = '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'">'


def page(body: str) -> bytes:
    return f"<!doctype html><html><head>{POLICY}</head><body>{body}</body>".encode()


def whole() -> dict[str, bytes]:
    """A small bundle with nothing wrong."""
    return {
        "index.html": page(
            '<a href="./#look" id="top">a</a><section data-screen="look"></section>'
            '<script src="v/1/phone/app.js"></script><svg><rect id="red"/></svg>'
        ),
        "other.html": page(
            '<a href="./#top">b</a><a href="./#look/pad">c</a>'
            '<link href="v/1/css/a.css">'
        ),
        "icon.svg": b"<svg/>",
        "manifest.webmanifest": json.dumps(
            {"start_url": "./", "icons": [{"src": "icon.svg"}]}
        ).encode(),
        "v/1/css/a.css": b'@import "b.css"; a { fill: url(../../../icon.svg) }',
        "v/1/css/b.css": b"",
        "v/1/phone/app.js": b'import { b } from "./b.js";\nconst c = "http";',
        "v/1/phone/b.js": b'new URL("../guides/g.json", import.meta.url);',
        "v/1/guides/g.json": b'{"fill":"url(#red)"}',
    }


def refused(files: dict[str, bytes]) -> list[str]:
    with pytest.raises(BuildError) as caught:
        seal(files)
    return str(caught.value).splitlines()


def test_whole_bundle_passes():
    seal(whole())
    seal(built().files)


NOWHERE = [
    ("other.html", page('<a href="gone.html">a</a>'), "gone.html"),
    ("other.html", page('<img src="gone.png">'), "gone.png"),
    ("other.html", page('<img srcset="icon.svg 1x, gone.png 2x">'), "gone.png"),
    ("other.html", page('<form action="gone"></form>'), "gone"),
    ("other.html", page('<body data-base="v/2/">'), "v/2/"),
    ("other.html", page('<a href="./#gone">a</a>'), "./#gone"),
    ("other.html", page('<a href="./#gone/a">a</a>'), "./#gone/a"),
    ("other.html", page('<a href="./#top/a">a</a>'), "./#top/a"),
    ("v/1/css/a.css", b"a { fill: url('gone.svg') }", "gone.svg"),
    ("v/1/css/a.css", b'@import "gone.css";', "gone.css"),
    ("v/1/phone/b.js", b'import "./gone.js";', "./gone.js"),
    ("v/1/phone/b.js", b"import * as b from '../gone.js';", "../gone.js"),
    ("v/1/phone/b.js", b'import {\n  c,\n  d as e,\n} from "./gone.js";', "./gone.js"),
    ("v/1/phone/b.js", b'export { f } from "./gone.js";', "./gone.js"),
    ("v/1/phone/b.js", b'export * from "../gone.js";', "../gone.js"),
    ("v/1/phone/b.js", b'new URL("gone.json", import.meta.url)', "gone.json"),
    ("manifest.webmanifest", b'{"icons":[{"src":"gone.png"}]}', "gone.png"),
    ("manifest.webmanifest", b'{"shortcuts":[{"url":"gone"}]}', "gone"),
]


@pytest.mark.parametrize(("path", "body", "link"), NOWHERE)
def test_link_to_nothing_is_named(path, body, link):
    (line,) = refused(whole() | {path: body})

    assert line.startswith(f"{path}: {link!r} ")


OUTSIDE = [
    ("other.html", page('<a href="https://a.example/">a</a>'), "https://a.example/"),
    ("other.html", page('<a href="//a.example/">a</a>'), "//a.example/"),
    ("other.html", page('<a href="/icon.svg">a</a>'), "/icon.svg"),
    ("other.html", page('<a href="data:text/css,a">a</a>'), "data:text/css,a"),
    ("v/1/css/a.css", b"a { fill: url(/icon.svg) }", "/icon.svg"),
    ("v/1/phone/b.js", b'fetch("https://a.example/x")', "https://a.example/x"),
    ("manifest.webmanifest", b'{"start_url":"/"}', "/"),
]


@pytest.mark.parametrize(("path", "body", "link"), OUTSIDE)
def test_address_outside_is_named(path, body, link):
    lines = refused(whole() | {path: body})

    assert (
        f"{path}: {link!r} is an address outside the bundle; use a relative one"
        in lines
    )


TORN = [
    ('<p id="a"></p><p id="a"></p>', "the id 'a' is used twice"),
    ('<label for="gone">a</label>', "for='gone' names no id of the page"),
    ('<p aria-describedby="gone">', "aria-describedby='gone' names no id of the page"),
    ('<p aria-labelledby="gone">', "aria-labelledby='gone' names no id of the page"),
    ('<p aria-controls="gone">', "aria-controls='gone' names no id of the page"),
    ('<svg><path fill="url(#gone)"/></svg>', "fill='gone' names no id of the page"),
    ("<style>a{}</style>", "a <style> would be refused by the policy; use a file"),
    (
        "<script>a</script>",
        "a <script> without src would be refused by the policy; use a file",
    ),
    (
        '<p style="top:0">',
        "the attribute style='top:0' would be refused by the policy; use a file",
    ),
    (
        '<p onclick="a">',
        "the attribute onclick='a' would be refused by the policy; use a file",
    ),
]


@pytest.mark.parametrize(("body", "wrong"), TORN)
def test_page_that_is_torn_is_named(body, wrong):
    assert refused(whole() | {"other.html": page(body)}) == [f"other.html: {wrong}"]


def test_page_without_policy_is_named():
    (line,) = refused(whole() | {"other.html": b"<!doctype html><p>a"})

    assert line.startswith("other.html: no <meta> carries the policy")


def test_picture_that_cannot_be_painted_is_named():
    (line,) = refused(whole() | {"v/1/guides/g.json": b'{"fill":"url(#mauve)"}'})

    assert line == "v/1/guides/g.json: 'url(#mauve)' names no id of index.html"


def test_every_problem_is_told_at_once():
    lines = refused(
        whole() | {"other.html": page('<a href="x">a</a><a href="y">b</a>')}
    )

    assert len(lines) == 2


def test_ids_in_templates_count():
    seal(
        whole() | {"other.html": page('<template><b id="a"></b></template><p for="a">')}
    )


def test_name_of_a_vocabulary_is_no_address():
    seal(whole() | {"v/1/phone/b.js": b'const SVG = "http://www.w3.org/2000/svg";'})


def test_comment_is_no_link():
    seal(whole() | {"v/1/phone/b.js": b'// see "https://a.example/"\n/* "//b" */'})
