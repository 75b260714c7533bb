import re
import shutil
from urllib.parse import quote

import html5lib
import pytest
from flask import flash, render_template, request
from hypothesis import given, settings
from hypothesis import strategies as st

from bundles import RULES
from fieldid.paths import STATIC
from fieldid.web import headers
from fieldid.workbench.app import FILES, MEGABYTE, MOST_FIELDS, MOST_MEGABYTES
from fieldid.workbench.gate.limits import up_to
from workbenches import HASH, SAFE, author, bench, signed_in


@up_to(4)
def large():
    return str(len(request.files["file"].read()))


def plain():
    return str(sum(map(len, request.form)))


def broken():
    raise RuntimeError("a secret of the code")


def told():
    flash("Saved <it>.")
    return render_template("workbench/base.html")


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    made = bench(tmp_path_factory.mktemp("rules"), testing=False)
    for view in (large, plain, broken, told):
        rule, methods = f"/{view.__name__}", ["GET", "POST"]
        made.add_url_rule(rule, view_func=view, methods=methods)
    made.logger.disabled = True
    return made


@pytest.fixture
def browser(app):
    return author(app)


def sent(browser, path, **fields):
    return browser.post(path, data={"csrf_token": browser.token(), **fields})


def upload(browser, path: str, size: int, *, fields: int = 0):
    """The answer to a form with a file, whose body the client keeps in memory."""
    head = 'Content-Disposition: form-data; name="{}"'
    parts = [
        f"{head.format('csrf_token')}\r\n\r\n{browser.token()}",
        *[f"{head.format('x')}\r\n\r\ny"] * fields,
        f'{head.format("file")}; filename="a.zip"\r\n\r\n{"x" * size}',
    ]
    body = "".join(f"--cut\r\n{part}\r\n" for part in parts) + "--cut--\r\n"
    kind = "multipart/form-data; boundary=cut"
    return browser.post(path, data=body.encode(), content_type=kind)


ANSWERS = [
    ("GET", "/plain", {}, 200),
    ("GET", "/static/css/base.css", {}, 200),
    ("GET", "/icon.svg", {}, 200),
    ("GET", "/sign-in", {}, 303),
    ("POST", "/plain", {}, 400),
    ("POST", "/plain", {"Origin": "https://evil.example"}, 403),
    ("GET", "/nowhere", {}, 404),
    ("GET", "/static/css/none.css", {}, 404),
    ("DELETE", "/plain", {}, 405),
    ("GET", "/plain", {"Host": "evil.example"}, 421),
    ("GET", "/broken", {}, 500),
]


@pytest.mark.parametrize(("method", "path", "given", "status"), ANSWERS)
def test_every_answer_carries_the_policy(browser, method, path, given, status):
    answer = browser.open(path, method=method, headers=given)

    assert answer.status_code == status
    for name, value in headers.policy("/workbench/"):
        assert answer.headers[name] == value


@pytest.mark.parametrize(("method", "path", "given", "status"), ANSWERS)
def test_every_refusal_is_a_plain_page(browser, method, path, given, status):
    answer = browser.open(path, method=method, headers=given)

    if status >= 400:
        page = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
        assert page.parse(answer.text).find(".//h1").text
        assert "secret" not in answer.text
        assert "Traceback" not in answer.text


def test_refusal_of_a_method_says_which_there_are(browser):
    allowed = browser.delete("/plain").headers["Allow"].split(", ")

    assert sorted(allowed) == ["GET", "HEAD", "OPTIONS", "POST"]


def test_pages_are_kept_nowhere(browser):
    assert browser.get("/plain").headers["Cache-Control"] == "no-store"


def test_styles_are_asked_for_again(browser):
    first = browser.get("/static/css/base.css")
    assert first.headers["Cache-Control"] == "no-cache"

    again = browser.get(
        "/static/css/base.css", headers={"If-None-Match": first.headers["ETag"]}
    )
    assert again.status_code == 304


def test_strangers_files_are_sandboxed():
    rules = dict(headers.policy("/workbench/photos/7"))

    assert rules["Content-Security-Policy"] == "default-src 'none'; sandbox"


def test_files_are_those_of_the_table(browser):
    for pattern in FILES:
        for path in STATIC.glob(pattern):
            name = path.relative_to(STATIC).as_posix()
            with browser.get(f"/static/{name}") as answer:
                assert answer.data == path.read_bytes()


@pytest.mark.parametrize(
    "name",
    [
        "../templates/judge.html",
        "css/../../templates/judge.html",
        "%2e%2e/pyproject.toml",
        "..%2fpyproject.toml",
        "/etc/passwd",
        "css/",
        "css\\base.css",
        "css/base.css%00",
        "",
    ],
)
def test_nothing_else_is_a_file(browser, name):
    assert browser.get(f"/static/{name}").status_code in (404, 308)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=60))
def test_no_text_becomes_a_path(app, name):
    assert author(app).get(f"/static/{name}x").status_code in (404, 308)


def test_too_large_a_form_is_told(browser):
    answer = sent(browser, "/plain", text="x" * (MOST_MEGABYTES * MEGABYTE))

    assert answer.status_code == 413
    assert f"No more than {MOST_MEGABYTES} MB are taken here" in answer.text


def test_too_many_fields_are_refused(browser):
    assert upload(browser, "/plain", 1, fields=MOST_FIELDS - 2).status_code == 200
    assert upload(browser, "/plain", 1, fields=MOST_FIELDS - 1).status_code == 413


def test_marked_view_takes_more(browser):
    assert upload(browser, "/large", 3 * MEGABYTE).text == str(3 * MEGABYTE)


def test_marked_view_does_not_take_all(browser):
    answer = upload(browser, "/large", 4 * MEGABYTE)

    assert answer.status_code == 413
    assert "No more than 4 MB" in answer.text


def test_stranger_may_send_no_more_than_a_form(tmp_path):
    made = bench(tmp_path, password=HASH)
    made.add_url_rule("/large", view_func=large, methods=["POST"])
    answer = upload(author(made, root=SAFE), "/large", 3 * MEGABYTE)

    assert answer.status_code == 401
    assert "What you had typed" not in answer.text


def test_stale_form_keeps_what_was_typed(browser):
    answer = browser.post("/plain", data={"why": "a <day> of work", "x": ["1", "2"]})

    assert answer.status_code == 400
    assert "the server has started anew" in answer.text
    assert answer.text.count("readonly>") == 3
    assert "\na &lt;day&gt; of work</textarea>" in answer.text


def test_notice_is_shown_once(browser):
    assert '<p class="notice" role="status">Saved &lt;it&gt;.</p>' in (
        browser.get("/told").text
    )
    assert "notice" not in browser.get("/nowhere").text


def test_pages_hold_nothing_inline(browser):
    text = browser.get("/nowhere").text

    for word in ("<style", " style=", "<script>", " onclick", "javascript:"):
        assert word not in text


def test_page_begins_with_the_way_to_its_content(browser):
    page = html5lib.parse(browser.get("/nowhere").text, namespaceHTMLElements=False)

    assert page.find("body")[0].attrib == {"class": "skip", "href": "#main"}
    assert page.find(".//main").get("id") == "main"


def test_who_is_signed_in_can_leave(tmp_path):
    page = signed_in(bench(tmp_path, password=HASH)).get("/nowhere").text

    assert 'method="post" action="/workbench/sign-out"' in page


@pytest.fixture(scope="module")
def furnished(tmp_path_factory):
    """A workbench with a guide, and every rule of every room."""
    folder = tmp_path_factory.mktemp("rules")
    shutil.copy(RULES / "lone-dunlin.toml", folder)
    return bench(folder)


@pytest.mark.parametrize(
    ("action", "page"),
    [
        ("/inbox/2/accept", "/inbox/2"),
        ("/inbox/decisions/5/undo", "/inbox"),
        ("/guides/lone-dunlin/move/clue/0", "/guides/lone-dunlin/"),
        ("/sign-out", "/"),
    ],
)
def test_address_of_an_action_leads_to_its_page(furnished, action, page):
    answer = author(furnished).get(action)

    assert answer.status_code == 303
    assert answer.headers["Location"] == f"/workbench{page}"


REFUSED = (308, 400, 404, 405)
READ = (200, 302, 303, *REFUSED)
ARGUMENTS = st.one_of(
    st.sampled_from(["lone-dunlin", "0", "1", "-1", "9" * 21, "..", "%"]),
    st.text(max_size=20),
)


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_every_route_stands_odd_requests(furnished, data):
    """None of them breaks; and none that changes something works without a token."""
    rules = sorted(furnished.url_map.iter_rules(), key=str)
    rule = data.draw(st.sampled_from(rules))
    path = re.sub("<[^>]*>", lambda _: quote(data.draw(ARGUMENTS)), rule.rule)
    method = data.draw(
        st.sampled_from(["GET", "HEAD", "POST", "PUT", "DELETE", "BREW"])
    )
    query = data.draw(st.dictionaries(st.text(max_size=9), ARGUMENTS, max_size=2))
    answer = author(furnished).open(path, method=method, query_string=query)

    meant = READ if method in ("GET", "HEAD") else REFUSED
    assert answer.status_code in meant, (method, path)
    assert "Content-Security-Policy" in answer.headers
