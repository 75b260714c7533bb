import re

import pytest
from flask import request
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldid.workbench.gate.limits import ONE
from fieldid.workbench.gate.sessions import IDLE, LONGEST
from workbenches import HASH, PASSWORD, SAFE, Clock, author, bench, signed_in


def probed(tmp_path, **wishes):
    """A workbench with one page more, which says what was sent to it."""
    app = bench(tmp_path, **wishes)
    app.add_url_rule(
        "/probe", "probe", lambda: f"inside {request.form}", methods=["GET", "POST"]
    )
    return app


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def locked(tmp_path, clock):
    return probed(tmp_path, password=HASH, clock=clock)


@pytest.fixture
def open_one(tmp_path):
    return probed(tmp_path)


def test_stranger_is_led_to_the_sign_in(locked):
    answer = author(locked, root=SAFE).get("/probe")

    assert (answer.status_code, answer.location) == (303, "/workbench/sign-in")


@pytest.mark.parametrize("path", ["/", "/nowhere", "/guides", "/guides/x/../../y"])
def test_stranger_learns_of_no_page(locked, path):
    answer = author(locked, root=SAFE).get(path)

    assert (answer.status_code, answer.location) == (303, "/workbench/sign-in")


def test_sign_in_has_all_that_it_is_shown_with(locked):
    """Its colours in the dark, too."""
    browser = author(locked, root=SAFE)
    needed = re.findall(
        r'<(?:link|script)[^>]*(?:href|src)="/workbench([^"]+)"',
        browser.get("/sign-in").text,
    )

    assert any("following" in each for each in needed)
    assert {browser.get(each).status_code for each in needed} == {200}


def test_right_password_opens(locked):
    browser = author(locked, root=SAFE)
    assert browser.send("/sign-in", password=PASSWORD).status_code == 303

    assert "inside" in browser.get("/probe").text


def test_sign_in_leads_back_to_the_page(locked):
    browser = author(locked, root=SAFE)
    browser.get("/probe?a=1&b=%C3%A9")

    answer = browser.send("/sign-in", password=PASSWORD)
    assert answer.location == "/workbench/probe?a=1&b=%C3%A9"


@pytest.mark.parametrize("path", ["//evil.example/", "/%2fevil.example", "/\\evil"])
def test_sign_in_leads_to_no_other_site(locked, path):
    browser = author(locked, root=SAFE)
    browser.get(path)

    answer = browser.send("/sign-in", password=PASSWORD)
    assert answer.location.startswith("/workbench/")


@pytest.mark.parametrize("password", ["wrong and long enough", "x", "\0", "é" * 900])
def test_wrong_password_is_told_at_the_field(locked, password):
    browser = author(locked, root=SAFE)
    answer = browser.send("/sign-in", password=password)

    assert answer.status_code == 403
    assert '<a class="problems__link" href="#password">This is not' in answer.text
    assert 'aria-describedby="password-hint password-error"' in answer.text
    assert browser.get("/probe").status_code == 303


@pytest.mark.parametrize("password", ["", "x" * 1001])
def test_what_is_no_password_is_not_tried(locked, password):
    """Nothing is counted as a miss, and no hash is worked out."""
    browser = author(locked, root=SAFE)
    for _ in range(ONE.free + 1):
        assert browser.send("/sign-in", password=password).status_code == 400


def test_typed_password_is_never_shown(locked):
    answer = author(locked, root=SAFE).send("/sign-in", password="wrong but mine 1")

    assert "wrong but mine 1" not in answer.text


def test_misses_are_held(locked):
    browser = author(locked, root=SAFE)
    for _ in range(ONE.free):
        assert browser.send("/sign-in", password="x" * 12).status_code == 403

    answer = browser.send("/sign-in", password=PASSWORD)
    assert (answer.status_code, answer.headers["Retry-After"]) == (429, "30")
    assert "nothing is tried for 30 seconds" in answer.text
    assert browser.get("/probe").status_code == 303


def test_held_one_may_try_again_later(locked, clock):
    browser = author(locked, root=SAFE)
    for _ in range(ONE.free):
        browser.send("/sign-in", password="x" * 12)

    clock.now += 30
    assert browser.send("/sign-in", password=PASSWORD).status_code == 303


def test_right_password_is_no_miss(locked):
    for _ in range(ONE.free + 1):
        signed_in(locked)


def test_held_tries_work_out_no_hash(locked, monkeypatch):
    """A flood of tries costs a look into a table each."""
    browser = author(locked, root=SAFE)
    for _ in range(ONE.free):
        browser.send("/sign-in", password="x" * 12)
    monkeypatch.setattr("fieldid.workbench.gate.passwords._scrypt", None)

    assert browser.send("/sign-in", password=PASSWORD).status_code == 429


def test_stranger_is_not_listened_to_for_long(locked):
    browser = author(locked, root=SAFE)

    assert browser.send("/sign-in", password="x" * 20_000).status_code == 413
    assert browser.send("/probe", text="x" * 20_000).status_code == 401


def test_sign_in_needs_a_token_of_its_own(locked):
    """Nobody is signed in by a page of another site."""
    browser = author(locked, root=SAFE)

    answer = browser.post("/sign-in", data={"password": PASSWORD})
    assert answer.status_code == 400
    assert browser.get("/probe").status_code == 303


def test_signing_out_ends_the_session(locked):
    browser = signed_in(locked)
    assert browser.send("/sign-out").location == "/workbench/sign-in"

    assert browser.get("/probe").status_code == 303


def test_copied_cookie_dies_with_the_session(locked):
    browser = signed_in(locked)
    copy = author(locked, root=SAFE)
    copy._cookies.update(browser._cookies)
    assert copy.get("/probe").status_code == 200

    browser.send("/sign-out")
    assert copy.get("/probe").status_code == 303


@pytest.mark.parametrize(("steps", "step"), [(1, IDLE), (50, LONGEST / 50)])
def test_session_ends_by_itself(locked, clock, steps, step):
    browser = signed_in(locked)
    for _ in range(steps - 1):
        clock.now += step
        assert browser.get("/probe").status_code == 200

    clock.now += step
    assert browser.get("/probe").status_code == 303


def test_session_ends_with_the_server(tmp_path):
    browser = signed_in(probed(tmp_path, password=HASH))
    anew = author(probed(tmp_path, password=HASH), root=SAFE)
    anew._cookies.update(browser._cookies)

    assert anew.get("/probe").status_code == 303


def test_cookie_keeps_to_the_workbench(locked):
    answer = author(locked, root=SAFE).get("/sign-in")

    cookie = answer.headers["Set-Cookie"]
    for word in ("Secure", "HttpOnly", "SameSite=Strict", "Path=/workbench;"):
        assert word in cookie
    assert "Expires" not in cookie


def test_token_is_new_after_the_sign_in(locked):
    """Whoever could plant a stranger's cookie would know it."""
    browser = author(locked, root=SAFE)
    before = browser.token("/sign-in")
    browser.send("/sign-in", password=PASSWORD)

    headers = {"Referer": SAFE}
    sent = browser.post("/probe", data={"csrf_token": before}, headers=headers)
    assert sent.status_code == 400
    sent = {"csrf_token": browser.token()}
    assert browser.post("/probe", data=sent, headers=headers).status_code == 200


def test_form_sent_too_late_is_not_lost(locked, clock):
    browser = signed_in(locked)
    token = browser.token()
    clock.now += IDLE

    sent = {"csrf_token": token, "why": "Two rings\nsince <1956>", "password": "pw"}
    answer = browser.post("/probe", data=sent, headers={"Referer": SAFE})
    assert answer.status_code == 401
    assert "Nothing was saved" in answer.text
    assert "\nTwo rings\nsince &lt;1956&gt;</textarea>" in answer.text
    assert token not in answer.text.split("</head>")[1]
    assert ">pw<" not in answer.text


def test_open_form_is_good_after_signing_in_again(locked, clock):
    browser = signed_in(locked)
    token = browser.token()
    clock.now += IDLE
    browser.send("/sign-in", password=PASSWORD)

    sent = {"csrf_token": token, "why": "still"}
    answer = browser.post("/probe", data=sent, headers={"Referer": SAFE})
    assert (answer.status_code, "still" in answer.text) == (200, True)


def test_form_of_who_signed_out_is_good_no_more(locked):
    browser = signed_in(locked)
    token = browser.token()
    browser.send("/sign-out")
    browser.send("/sign-in", password=PASSWORD)

    sent = {"csrf_token": token}
    answer = browser.post("/probe", data=sent, headers={"Referer": SAFE})
    assert answer.status_code == 400


def test_form_from_elsewhere_is_refused_by_its_page(locked):
    browser = signed_in(locked)
    sent = {"csrf_token": browser.token()}
    answer = browser.post(
        "/probe", data=sent, headers={"Referer": "https://evil.example/"}
    )

    assert answer.status_code == 400


def test_own_machine_needs_no_password(open_one):
    assert author(open_one).get("/probe").status_code == 200


def test_own_machine_is_not_asked_for_one(open_one):
    answer = author(open_one).get("/sign-in")

    assert (answer.status_code, answer.location) == (303, "/workbench/")


def test_nothing_to_sign_out_of_without_a_password(open_one, locked):
    assert "Sign out" not in author(open_one).get("/none").text
    assert "Sign out" in signed_in(locked).get("/none").text


HOSTS = [
    ("localhost", 200),
    ("127.0.0.1:80", 200),
    ("127.8.8.8", 200),
    ("[::1]", 200),
    ("localhost:8000", 421),
    ("localhost.evil.example", 421),
    ("127.0.0.1.evil.example", 421),
    ("evil.example", 421),
    ("evil.example:80", 421),
    ("localhost@evil.example", 421),
    ("[::ffff:1.2.3.4]", 421),
    ("192.0.2.7", 421),
    ("LOCALHOST.", 421),
    ("", 421),
]


@pytest.mark.parametrize(("host", "status"), HOSTS)
def test_only_own_names_are_answered(open_one, host, status):
    """A page elsewhere can let its own name lead here."""
    answer = author(open_one).get("/probe", headers={"Host": host})

    assert answer.status_code == status
    assert ("inside" in answer.text) == (status == 200)


@pytest.mark.parametrize(
    ("address", "status"),
    [("127.0.0.1", 200), ("::1", 200), ("127.3.2.1", 200), ("192.0.2.7", 421)],
)
def test_only_own_addresses_are_answered(open_one, address, status):
    environ = {"REMOTE_ADDR": address}

    answer = author(open_one).get("/probe", environ_overrides=environ)
    assert answer.status_code == status


@pytest.mark.parametrize(
    "name", ["X-Forwarded-For", "X-Forwarded-Host", "Forwarded", "X-Real-IP", "Via"]
)
def test_request_through_another_machine_is_refused(open_one, name):
    answer = author(open_one).get("/probe", headers={name: "198.51.100.7"})

    assert answer.status_code == 421


@pytest.mark.parametrize(
    "origin",
    ["https://localhost", "http://localhost:81", "http://evil.example", "null"],
)
def test_page_of_another_origin_may_send_nothing(open_one, origin):
    browser = author(open_one)
    sent = {"csrf_token": browser.token()}

    answer = browser.post("/probe", data=sent, headers={"Origin": origin})
    assert answer.status_code == 403
    own = browser.post("/probe", data=sent, headers={"Origin": "http://localhost"})
    assert own.status_code == 200


def test_script_needs_the_token_too(open_one):
    browser = author(open_one)
    assert browser.post("/probe", json={"a": 1}).status_code == 400

    headers = {"X-CSRFToken": browser.token()}
    assert browser.post("/probe", json={"a": 1}, headers=headers).status_code == 200


METHODS = st.one_of(
    st.sampled_from(["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "TRACE"]),
    st.from_regex(r"[A-Z]{1,12}", fullmatch=True),
)
PATHS = st.one_of(
    st.sampled_from(["/", "/sign-in", "/sign-out", "/probe", "/static/css/base.css"]),
    st.text(max_size=40).map(lambda text: f"/{text}"),
)
BODIES = st.one_of(
    st.binary(max_size=300),
    st.dictionaries(
        st.sampled_from(["password", "csrf_token", "x", "\0"]), st.text(), max_size=4
    ),
)
TYPES = st.sampled_from(
    [
        None,
        "application/x-www-form-urlencoded",
        "multipart/form-data",
        "multipart/form-data; boundary=x",
        "application/json",
        "text/plain; charset=utf-99",
    ]
)


@pytest.fixture(scope="module")
def fuzzed(tmp_path_factory):
    return probed(tmp_path_factory.mktemp("rules"), password=HASH, clock=Clock())


@settings(max_examples=300, deadline=None)
@given(METHODS, PATHS, BODIES, TYPES)
def test_nothing_odd_gets_in(fuzzed, method, path, body, kind):
    """Every answer is one of those that are meant, under the headers, and closed."""
    answer = author(fuzzed, root=SAFE).open(
        path, method=method, data=body, content_type=kind
    )

    assert answer.status_code in {200, 303, 304, 308, 400, 401, 403, 404, 405, 413, 429}
    assert "form-action 'self'" in answer.headers["Content-Security-Policy"]
    assert "inside" not in answer.text
    if answer.status_code >= 400 and method != "HEAD":
        assert re.search(r'<h1 class="work__title">[^<]+</h1>', answer.text)
