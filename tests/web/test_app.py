import os
import re

import html5lib
import pytest

from bundles import app, built
from fieldid.web import headers


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("bundle")
    built().write(folder)
    return folder


@pytest.fixture(scope="module")
def served(folder):
    """A client of the application that serves a bundle."""
    return app(bundle=folder, build=built().build).test_client()


@pytest.fixture(scope="module")
def live():
    made = app(testing=False)
    made.add_url_rule("/broken", view_func=lambda: 1 / 0)
    made.logger.disabled = True
    return made.test_client()


SENDING = re.compile(
    r"""sendBeacon|XMLHttpRequest|WebSocket|EventSource|formmethod|formaction
    |\bmethod["']?\s*:\s*["'`]|["'`](?:POST|PUT|PATCH|DELETE)["'`]""",
    re.VERBOSE,
)
"""What a script or a page would need to send something away."""


def policies(answer) -> dict[str, str]:
    return {name: answer.headers[name] for name, _ in headers.policy("/")}


ANSWERS = [
    ("GET", "/", 200),
    ("GET", "/nowhere", 404),
    ("POST", "/", 405),
    ("PUT", "/sw.js", 405),
    ("GET", "/broken", 500),
]


@pytest.mark.parametrize(("method", "path", "status"), ANSWERS)
def test_every_live_answer_carries_the_policy(live, method, path, status):
    answer = live.open(path, method=method)

    assert answer.status_code == status
    assert policies(answer) == dict(headers.policy("/"))


SERVED = [
    ("GET", "/", 200),
    ("HEAD", "/sw.js", 200),
    ("GET", "/index.html", 302),
    ("GET", "/nowhere", 404),
    ("POST", "/sw.js", 405),
]


@pytest.mark.parametrize(("method", "path", "status"), SERVED)
def test_every_served_answer_carries_the_policy(served, method, path, status):
    with served.open(path, method=method) as answer:
        assert answer.status_code == status
        assert policies(answer) == dict(headers.policy("/"))


def test_unchanged_file_carries_the_policy(served):
    """A browser takes the headers of a 304 in place of those that it kept."""
    with served.get("/") as first:
        tag = first.headers["ETag"]
    again = served.get("/", headers={"If-None-Match": tag})

    assert again.status_code == 304
    assert policies(again) == dict(headers.policy("/"))


def test_part_of_a_file_carries_the_policy(served):
    with served.get("/sw.js", headers={"Range": "bytes=0-9"}) as answer:
        assert answer.status_code == 206
        assert policies(answer) == dict(headers.policy("/"))


@pytest.mark.parametrize("path", ["/", "/sw.js", "/manifest.webmanifest", "/icon.svg"])
def test_what_may_change_is_asked_for_again(served, path):
    with served.get(path) as answer:
        assert answer.headers["Cache-Control"] == "no-cache"


def test_what_never_changes_is_kept(served):
    with served.get(f"/v/{built().build}/phone/app.js") as answer:
        assert answer.status_code == 200
        assert answer.headers["Cache-Control"].endswith("immutable")


def test_mistake_is_never_kept(served):
    answer = served.get(f"/v/{built().build}/phone/gone.js")

    assert answer.status_code == 404
    assert answer.headers["Cache-Control"] == "no-store"


def test_manifest_is_sent_as_one(served):
    with served.get("/manifest.webmanifest") as answer:
        assert answer.mimetype == "application/manifest+json"


def test_files_are_for_their_own_origin(served):
    with served.get("/") as answer:
        assert "Access-Control-Allow-Origin" not in answer.headers


def test_compressed_copy_is_sent(served):
    with served.get("/", headers={"Accept-Encoding": "gzip"}) as packed:
        assert packed.headers["Content-Encoding"] == "gzip"
        assert packed.headers["Vary"] == "Accept-Encoding"


def test_etag_is_of_the_content(tmp_path):
    """Time and size are the same for two reproducible builds that differ in a byte."""
    tags = []
    for body in ("one", "two"):
        (tmp_path / "index.html").write_text(body)
        os.utime(tmp_path / "index.html", (1e9, 1e9))
        with app(bundle=tmp_path).test_client().get("/") as answer:
            tags.append(answer.headers["ETag"])

    assert tags[0] != tags[1]


def test_only_the_judge_may_be_sent_forms(live):
    judge = live.get("/judge").headers["Content-Security-Policy"]
    home = live.get("/").headers["Content-Security-Policy"]

    assert "form-action 'self'" in judge
    assert "form-action 'none'" in home
    assert live.get("/judge").headers["Cache-Control"] == "no-store"


def test_bundle_holds_no_form_that_posts():
    """What is read off an object stays on the phone."""
    for path, body in built().files.items():
        if path.endswith(".html"):
            for form in html5lib.parse(body, namespaceHTMLElements=False).iter("form"):
                assert form.get("method", "get") in ("get", "dialog"), path
                assert "action" not in form.attrib, path
        if path.endswith((".html", ".js")):
            assert not SENDING.search(body.decode()), path


def test_phone_never_sees_a_cookie(live):
    """A client that other tests share may have its cookie already."""
    fresh = live.application.test_client()
    assert "Set-Cookie" not in fresh.get("/").headers

    cookie = fresh.get("/judge").headers["Set-Cookie"]
    assert "Path=/judge" in cookie
    assert "HttpOnly" in cookie
    assert "SameSite=Strict" in cookie


def test_secret_is_drawn_anew():
    assert app().secret_key != app().secret_key
    assert app(secret="given").secret_key == "given"


def test_table_is_written_out_for_other_hosts(served):
    written = built().files["_headers"].decode()

    with served.get("/") as answer:
        for name, value in policies(answer).items():
            assert f"\n  {name}: {value}\n" in written
    assert f"\n/sw.js\n  Cache-Control: {headers.FRESH}\n" in written
    assert f"\n/v/*\n  Cache-Control: {headers.IMMUTABLE}\n" in written


def test_meta_holds_what_a_meta_may():
    assert "frame-ancestors" not in headers.meta()
    assert headers.meta().startswith("default-src 'none'; script-src 'self'; ")
