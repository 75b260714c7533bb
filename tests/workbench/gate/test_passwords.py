import stat

import pytest

from fieldid.errors import FieldidError
from fieldid.workbench.gate import passwords
from workbenches import HASH, PASSWORD


def test_right_password_fits():
    assert passwords.fits(PASSWORD, HASH)


@pytest.mark.parametrize(
    "other", ["", " ", PASSWORD + " ", PASSWORD.upper(), "\0", "\ud800", "x" * 5000]
)
def test_other_passwords_do_not_fit(other):
    assert not passwords.fits(other, HASH)


def test_every_hash_has_its_own_salt():
    assert passwords.hashed(PASSWORD) != HASH


def test_hash_does_not_hold_the_password():
    assert not any(word in HASH for word in PASSWORD.split() if len(word) > 2)


def test_hash_is_dear_enough():
    """No less than RFC 7914 and later advice ask for: 16 MB, and five times over."""
    _, n, r, p, salt, _ = HASH.split("$")

    assert (int(n), int(r), int(p), len(salt)) == (16384, 8, 5, 24)


def test_same_letter_is_typed_in_two_ways():
    """One keyboard sends é, another e and an accent."""
    assert passwords.fits(
        "cafe\u0301 au lait 12", passwords.hashed("caf\xe9 au lait 12")
    )


@pytest.mark.parametrize(
    ("password", "says"),
    [
        ("short", "12 characters or more; this has 5"),
        ("abababababab", "same few characters"),
        ("ab" * 501, "1000 characters at most; this has 1002"),
    ],
)
def test_weak_passwords_are_refused(password, says):
    assert says in passwords.refused(password)


def test_good_password_is_taken():
    assert passwords.refused(PASSWORD) is None


def test_kept_hash_is_read_again(tmp_path):
    passwords.keep(tmp_path / "pw", HASH)

    assert passwords.read(tmp_path / "pw") == HASH
    assert stat.S_IMODE((tmp_path / "pw").stat().st_mode) == 0o600


def test_existing_file_is_never_overwritten(tmp_path):
    (tmp_path / "pw").write_text("mine")

    with pytest.raises(FieldidError, match="cannot be written: File exists"):
        passwords.keep(tmp_path / "pw", HASH)
    assert (tmp_path / "pw").read_text() == "mine"


def weakened(place: int, word: str) -> str:
    parts = HASH.split("$")
    return "$".join([*parts[:place], word, *parts[place + 1 :]])


WEAK = (
    "",
    PASSWORD,
    f"{HASH}\n{HASH}",
    weakened(0, "md5"),
    weakened(1, "1024"),
    weakened(1, "16385"),
    weakened(1, "9999999"),
    weakened(2, "1"),
    weakened(3, "0"),
    weakened(3, "99"),
    weakened(4, "AAAA"),
    weakened(4, "=A=A"),
    weakened(5, "AAAA"),
)


# A hash has a salt, so its text would be another test's name in every process.
@pytest.mark.parametrize("text", WEAK, ids=range(len(WEAK)))
def test_what_is_no_strong_hash_is_refused(tmp_path, text):
    (tmp_path / "pw").write_text(text)

    with pytest.raises(FieldidError, match="does not hold the hash of a password"):
        passwords.read(tmp_path / "pw")


def test_unreadable_file_is_one_sentence(tmp_path):
    with pytest.raises(FieldidError, match="cannot be read: Is a directory"):
        passwords.read(tmp_path)
