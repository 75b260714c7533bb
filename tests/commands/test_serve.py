import io
import os
import pty
import re
import shutil
import signal
import socket
import ssl
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path
from urllib.request import urlopen

import pytest

from bundles import RULES
from fieldid.cli import main
from fieldid.commands.serve import _greeting, own_addresses
from fieldid.web import headers
from workbenches import HASH, PASSWORD

PROJECT = Path(__file__).parents[2]
GUIDE = str(RULES / "lone-dunlin.toml")
EVERYWHERE = ("--host", "0.0.0.0")


@contextmanager
def serving(*options: str, guides=(GUIDE,), stdin=subprocess.DEVNULL):
    """A server of its own process at a free port, and what it says until it serves."""
    process = subprocess.Popen(
        [sys.executable, "-m", "fieldid", "serve", "--port", "0", *options, *guides],
        cwd=PROJECT,
        stdin=stdin,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    with process:
        said = []
        for line in process.stdout:
            said.append(line)
            if line.startswith("Stop with"):
                break
        try:
            yield process, "".join(said)
        finally:
            process.kill()


def port(said: str) -> int:
    return int(re.search(r"(?:localhost|127\.0\.0\.1):(\d+)/", said)[1])


@pytest.fixture(scope="module")
def secure(tmp_path_factory):
    """Options for HTTPS with a certificate that was made for this test."""
    folder = tmp_path_factory.mktemp("certificate")
    certificate, key = str(folder / "certificate.pem"), str(folder / "key.pem")
    subprocess.run(
        [
            *("openssl", "req", "-x509", "-newkey", "ec", "-nodes", "-days", "2"),
            *("-pkeyopt", "ec_paramgen_curve:P-256", "-subj", "/CN=localhost"),
            *("-addext", "subjectAltName=DNS:localhost,IP:127.0.0.1"),
            *("-keyout", key, "-out", certificate),
        ],
        check=True,
        capture_output=True,
    )
    return "--certificate", certificate, "--key", key


@pytest.fixture
def password(tmp_path):
    (tmp_path / "password").write_text(f"{HASH}\n")
    return "--password-file", str(tmp_path / "password")


@contextmanager
def connected(number: int, *, trusted: str | None = None):
    """A connection, encrypted if there is a certificate that is trusted."""
    with socket.create_connection(("127.0.0.1", number), timeout=20) as plain:
        if trusted is None:
            yield plain
            return
        context = ssl.create_default_context(cafile=trusted)
        with context.wrap_socket(plain, server_hostname="localhost") as safe:
            yield safe


def heard(number: int, sent: bytes, *, trusted: str | None = None) -> str:
    """All that the server answers to these bytes."""
    with connected(number, trusted=trusted) as connection:
        connection.sendall(sent)
        answer = b""
        while piece := connection.recv(65536):
            answer += piece
    return answer.decode("utf-8", "replace")


def asked(path: str, number: int, *, host: str = "localhost") -> bytes:
    lines = (f"GET {path} HTTP/1.1", f"Host: {host}:{number}", "Connection: close")
    return ("\r\n".join(lines) + "\r\n\r\n").encode()


@pytest.fixture(scope="module")
def running():
    """One server on this machine alone, and its port."""
    with serving() as (_, said):
        yield port(said)


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_server_starts_and_stops_cleanly(number):
    with serving() as (process, said):
        address = re.search(r"Serving at (http://127\.0\.0\.1:\d+/)", said)[1]
        with urlopen(address, timeout=5) as answer:
            assert b"lone-dunlin" in answer.read()
        process.send_signal(number)

        rest, _ = process.communicate(timeout=30)
        assert (process.returncode, rest) == (0, "Stopped.\n")


def test_own_machine_hears_nothing_of_https():
    with serving() as (_, said):
        assert "HTTPS" not in said


def test_workbench_is_beside_the_app(running):
    told = heard(running, asked("/workbench/nowhere", running))

    assert told.startswith("HTTP/1.1 404 ")
    assert "There is no such page here." in told
    assert heard(running, asked("/", running)).startswith("HTTP/1.1 200 ")


def test_other_names_of_this_machine_lead_to_no_workbench(running):
    told = heard(running, asked("/workbench/", running, host="evil.example"))

    assert told.startswith("HTTP/1.1 421 ")


def test_other_machines_are_told_what_fails():
    with serving(*EVERYWHERE) as (_, said):
        assert "every address of this machine" in said
        assert "never ready for no signal" in said
        assert "web host with HTTPS" in said
        (address, *_) = re.findall(
            r"On a phone in the same network: http://(.+):", said
        )
        assert address not in ("localhost", "127.0.0.1", "0.0.0.0")


def test_own_addresses_are_those_that_others_reach(monkeypatch):
    known = ["127.0.1.1", "::1", "fe80::1%eth0", "192.168.1.20", "2001:db8::7"]
    monkeypatch.setattr(
        "socket.getaddrinfo", lambda *_: [(0, 0, 0, "", (each, 0)) for each in known]
    )
    monkeypatch.setattr("fieldid.commands.serve.NOWHERE", ())

    assert own_addresses(socket.AF_INET) == ["192.168.1.20"]
    assert own_addresses(socket.AF_INET6) == ["192.168.1.20", "[2001:db8::7]"]


def test_machine_that_knows_no_address_says_so(monkeypatch):
    def unknown(*_):
        raise OSError

    monkeypatch.setattr("socket.getaddrinfo", unknown)
    monkeypatch.setattr("fieldid.commands.serve.NOWHERE", ())
    with socket.create_server(("0.0.0.0", 0)) as listener:
        said = list(_greeting(listener, "http", has_bench=False))

    assert any("http://this machine's address:" in line for line in said)


def test_password_without_https_is_never_asked_for(tmp_path):
    """It would be typed for nothing."""
    kept = tmp_path / "password"
    said, code = typed(
        ["serve", "--port", "0", *EVERYWHERE, "--password-file", str(kept), GUIDE]
    )

    assert code == 0
    assert said.index("A password alone does not open") < said.index("Building")
    assert not kept.exists()


@pytest.mark.parametrize("with_password", [False, True])
def test_other_machines_get_no_workbench_without_https(password, with_password):
    with serving(*EVERYWHERE, *(password if with_password else ())) as (_, said):
        assert "THE WORKBENCH IS OFF" in said
        assert "--certificate FILE --key FILE" in said
        number = port(said)
        told = heard(number, asked("/workbench/sign-in", number))
        assert told.startswith("HTTP/1.1 404 ")
        assert ("A password alone does not open" in said) == with_password
        for path in ("/workbench", "/workbench/", "/workbench/sign-in"):
            told = heard(number, asked(path, number))
            assert told.startswith("HTTP/1.1 404 ")
            assert "The workbench is off" in told
            assert "--certificate FILE --key FILE" in told
        assert heard(number, asked("/judge", number)).startswith("HTTP/1.1 200 ")


def test_other_machines_get_no_workbench_without_a_password(secure):
    with serving(*EVERYWHERE, *secure) as (_, said):
        assert "THE WORKBENCH IS OFF" in said
        assert "never ready" not in said
        number = port(said)
        path = asked("/workbench/sign-in", number)
        assert heard(number, path, trusted=secure[1]).startswith("HTTP/1.1 404 ")


def test_https_and_a_password_open_the_workbench(secure, password):
    with serving(*EVERYWHERE, *secure, *password) as (_, said):
        assert "OFF" not in said
        assert re.search(r"workbench for guides: https://localhost:\d+/workb", said)
        number = port(said)
        told = heard(number, asked("/workbench/", number), trusted=secure[1])
        assert "\r\nLocation: /workbench/sign-in\r\n" in told
        told = heard(number, asked("/workbench/sign-in", number), trusted=secure[1])
        assert "; Secure; HttpOnly;" in told


def test_password_counts_on_this_machine_too(password):
    with serving(*password) as (_, said):
        number = port(said)
        told = heard(number, asked("/workbench/", number))
        assert "\r\nLocation: /workbench/sign-in\r\n" in told


def test_who_speaks_http_is_told_of_https(secure):
    with serving(*secure) as (_, said):
        told = heard(port(said), asked("/", port(said)))
        assert told.startswith("HTTP/1.1 400 ")
        assert "begin it with https://" in told
        assert "\r\nContent-Security-Policy: default-src 'none';" in told


def test_silent_one_keeps_nobody_waiting(secure):
    """Who connects and does not shake hands waits alone, and goes on waiting."""
    with serving(*secure) as (_, said):
        number = port(said)
        with connected(number) as silent, connected(number):
            told = heard(number, asked("/sw.js", number), trusted=secure[1])
            assert told.startswith("HTTP/1.1 200 ")
            silent.setblocking(False)
            with pytest.raises(BlockingIOError):
                silent.recv(1)


def test_old_encryption_is_refused(secure):
    context = ssl.create_default_context(cafile=secure[1])
    context.minimum_version = ssl.TLSVersion.MINIMUM_SUPPORTED
    with pytest.warns(DeprecationWarning, match="TLSv1_1"):
        context.maximum_version = ssl.TLSVersion.TLSv1_1
    context.set_ciphers("ALL:@SECLEVEL=0")
    with (
        serving(*secure) as (_, said),
        socket.create_connection(("127.0.0.1", port(said)), timeout=20) as plain,
        pytest.raises(ssl.SSLError),
    ):
        context.wrap_socket(plain, server_hostname="localhost")


BABBLE = [
    (b"\r\n\r\n", "400"),
    (b"nonsense\r\n\r\n", "400"),
    (b"GET / HTTP/9.9\r\n\r\n", "505"),
    (b"get / HTTP/1.1\r\n\r\n", "400"),
    (b"GET http://evil.example/ HTTP/1.1\r\n\r\n", "400"),
    (b"CONNECT evil.example:443 HTTP/1.1\r\n\r\n", "405"),
    (b"GET /" + b"x" * 70_000 + b" HTTP/1.1\r\n\r\n", "414"),
    (b"GET / HTTP/1.1\r\nX: " + b"x" * 70_000 + b"\r\n\r\n", "413"),
    (b"GET / HTTP/1.1\r\nno colon\r\n\r\n", "400"),
    (b"POST / HTTP/1.1\r\nContent-Length: many\r\n\r\n", "400"),
    (b"POST / HTTP/1.1\r\nTransfer-Encoding: gzip\r\n\r\n", "501"),
    (b"GET /workbench/ HTTP/1.0\r\n\r\n", "421"),
    (b"GET /workbench/ HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", "421"),
    (b"GET /workbench/%00 HTTP/1.0\r\nHost: localhost\r\n\r\n", "421"),
    (b"BREW / HTTP/1.0\r\n\r\n", "405"),
]


@pytest.mark.parametrize(("sent", "status"), BABBLE)
def test_babble_is_answered_under_the_headers(running, sent, status):
    told = heard(running, sent)

    assert told[9:12] == status
    for name, value in headers.policy("/")[1:]:
        assert f"\r\n{name}: {value}\r\n" in told


def test_body_that_nobody_wants_keeps_no_answer_back(running):
    """A browser reads the answer when all is sent, or sees the connection break."""
    size = 9_000_000
    head = (
        f"POST /workbench/sign-in HTTP/1.1\r\nHost: localhost:{running}\r\n"
        f"Content-Type: application/x-www-form-urlencoded\r\n"
        f"Content-Length: {size}\r\nConnection: close\r\n\r\n"
    )

    told = heard(running, head.encode() + b"x" * size)
    assert told.startswith("HTTP/1.1 413 ")
    assert "No more than 2 MB are taken here." in told


def test_new_folder_is_where_an_author_begins(tmp_path):
    with serving("--rules", str(tmp_path / "new"), guides=()) as (_, said):
        assert "No phone app is served" in said
        assert (tmp_path / "new").is_dir()
        number = port(said)
        assert "There is no guide yet" in heard(number, asked("/", number))
        told = heard(number, asked("/workbench/nowhere", number))
        assert told.startswith("HTTP/1.1 404 ")


def test_folder_of_guides_is_what_is_shown(tmp_path):
    shutil.copy(GUIDE, tmp_path)
    with serving("--rules", str(tmp_path), guides=()) as (_, said):
        assert "lone-dunlin" in heard(port(said), asked("/", port(said)))


def test_guide_with_problems_can_be_mended(tmp_path):
    """The workbench is there although the app is served without that guide."""
    shutil.copy(GUIDE, tmp_path)
    (tmp_path / "broken.toml").write_text("id = 7\n")
    with serving("--rules", str(tmp_path), guides=()) as (_, said):
        assert "Left out of the phone app until they are mended" in said
        assert "broken.toml:1: id: " in said
        assert "lone-dunlin" in heard(port(said), asked("/", port(said)))


def test_id_means_a_guide_of_the_folder(tmp_path):
    shutil.copy(GUIDE, tmp_path)
    (tmp_path / "broken.toml").write_text("id = 7\n")
    with serving("--rules", str(tmp_path), guides=("lone-dunlin",)) as (_, said):
        assert "lone-dunlin" in heard(port(said), asked("/", port(said)))


def test_files_are_kept_where_asked(tmp_path):
    with serving("--out", str(tmp_path / "kept")):
        assert (tmp_path / "kept" / "sw.js").is_file()


def typed(arguments: list[str], *lines: str) -> tuple[str, int]:
    """What a command says to somebody who types these lines at a terminal."""
    child, terminal = pty.fork()
    if child == 0:
        # Where the tests run in the background, a shell has them deaf to Ctrl-C.
        signal.signal(signal.SIGINT, signal.SIG_DFL)
        os.execv(sys.executable, [sys.executable, "-m", "fieldid", *arguments])
    said = b""
    # Each line when it is asked for, because what comes earlier is shown.
    for line in lines:
        said += until(terminal, b": ")
        os.write(terminal, f"{line}\n".encode())
    said += until(terminal, b"Stop with Ctrl-C.")
    os.kill(child, signal.SIGINT)
    said += until(terminal, b"Stopped.")
    code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    os.close(terminal)
    return said.decode(), code


def until(terminal: int, words: bytes) -> bytes:
    """What is read up to these words."""
    said = b""
    while words not in said:
        said += os.read(terminal, 4096)
    return said


def test_password_is_asked_for_at_the_terminal(tmp_path, secure):
    kept = tmp_path / "password"
    arguments = ["serve", "--port", "0", *EVERYWHERE, *secure, GUIDE]
    said, code = typed(
        [*arguments, "--password-file", str(kept)],
        *("short", PASSWORD, "another one entirely", PASSWORD, PASSWORD),
    )

    assert code == 0
    assert "12 characters or more; this has 5" in said
    assert "These two differ." in said
    assert "The workbench for guides: https://localhost:" in said
    assert PASSWORD not in said
    assert kept.read_text().startswith("scrypt$16384$8$5$")


def test_typed_password_needs_no_file(secure):
    arguments = ["serve", "--port", "0", *EVERYWHERE, *secure, GUIDE]

    said, code = typed(arguments, PASSWORD, PASSWORD)
    assert code == 0
    assert "The workbench for guides:" in said


def refused(capsys, *options: str) -> tuple[int, str]:
    code = main(["serve", "--port", "0", *options, GUIDE])
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    return code, error


def test_nobody_there_to_type_is_one_sentence(capsys, tmp_path, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO())
    code, error = refused(capsys, "--password-file", str(tmp_path / "none"))

    assert code == 1
    assert "nobody can type a password" in error


def test_certificate_needs_its_key(capsys, secure):
    assert refused(capsys, *secure[:2]) == (
        2,
        "--certificate and --key go together: name both files.\n",
    )


def test_missing_certificate_is_one_sentence(capsys, secure):
    _, error = refused(capsys, "--certificate", "none.pem", *secure[2:])

    assert error == "There is no file none.pem.\n"


@pytest.mark.parametrize("text", ["", "-----BEGIN CERTIFICATE-----\nAAAA\n"])
def test_what_is_no_certificate_is_one_sentence(capsys, secure, tmp_path, text):
    (tmp_path / "c.pem").write_text(text)
    _, error = refused(capsys, "--certificate", str(tmp_path / "c.pem"), *secure[2:])

    assert "are no certificate in PEM and its key" in error


def test_key_of_another_certificate_is_one_sentence(capsys, secure, tmp_path):
    key = tmp_path / "key.pem"
    command = ["openssl", "ecparam", "-name", "prime256v1", "-genkey", "-out", str(key)]
    subprocess.run(command, check=True, capture_output=True)

    _, error = refused(capsys, *secure[:2], "--key", str(key))
    assert "key values mismatch" in error.replace("_", " ")


def test_file_is_no_folder_of_guides(capsys):
    _, error = refused(capsys, "--rules", GUIDE)

    assert "can be no folder" in error


def test_port_in_use_is_one_sentence(capsys):
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        code = main(["serve", "--port", str(port), GUIDE])

    error = capsys.readouterr().err
    assert code == 1
    assert error.startswith(f"Port {port} of 127.0.0.1 is in use by another program")
    assert error.count("\n") == 1


def test_strange_address_is_one_sentence(capsys):
    code = main(["serve", "--host", "no.such.host.invalid", GUIDE])

    error = capsys.readouterr().err
    assert code == 1
    assert "'no.such.host.invalid' is not an address of this machine" in error
    assert error.count("\n") == 1


@pytest.mark.parametrize("port", ["70000", "-1", "http"])
def test_what_is_no_port_is_a_wrong_call(capsys, port):
    with pytest.raises(SystemExit) as left:
        main(["serve", "--port", port])

    assert left.value.code == 2
    assert "Traceback" not in capsys.readouterr().err
