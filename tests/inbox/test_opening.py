"""Files of finds that lie, from tests/hostile.py: each is refused in a sentence."""

import io
import json
import re
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

import hostile
from fieldid.errors import InboxError
from fieldid.inbox.opening import MOST_JSON, opened

TIMES = 200
"""So much longer than honest JSON no file takes."""
CASES = [
    pytest.param(name, says, content, refused, id=name)
    for group in hostile.GROUPS
    for name, says, content, refused in group()
    # Here one find by itself is taken, which a phone has no use for.
    if name != "find-alone.json"
]
NOW = "2026-11-26T10:00:00.000Z"
SENTENCE = re.compile(r"[A-Z].{5,250}\.", re.DOTALL)
GOOD = hostile.pack(*hostile.good())


def tried(content, name=""):
    """What was opened, or the sentence of the refusal."""
    try:
        return opened(io.BytesIO(content), name=name, now=NOW)
    except InboxError as error:
        return str(error)


def test_honest_file_is_taken():
    found = tried(GOOD, "good.zip")

    assert found.refused == ()
    (incoming,) = found.incoming
    assert incoming.entry.title == "Iron from the fair"
    assert incoming.entry.find["items"][0]["readings"]["pad"] == 6.1
    assert [stored.read() for _, stored in incoming.held] == [hostile.jpeg()]


@pytest.fixture(scope="module")
def honest():
    """How long as much honest JSON takes."""
    text = json.dumps(
        ["forty letters, as in a note on an old iron"] * (MOST_JSON // 45)
    )
    start = time.perf_counter()
    json.loads(text)
    return time.perf_counter() - start


@pytest.mark.parametrize(("name", "says", "content", "refused"), CASES)
def test_file_that_lies_is_refused(name, says, content, refused, honest):
    start = time.perf_counter()
    found = tried(content, name)
    took = time.perf_counter() - start

    assert took < TIMES * honest
    if refused == 0:
        assert isinstance(found, str), "was taken"
        assert SENTENCE.fullmatch(found)
        assert says in found
        return
    assert found.incoming == ()
    assert len(found.refused) == refused
    for each in found.refused:
        assert SENTENCE.fullmatch(each.why)
        assert says in each.why


@pytest.mark.parametrize("name", ["sparse.zip", "sparse.json"])
def test_file_of_a_gigabyte_is_refused_unread(name, tmp_path):
    with (tmp_path / name).open("w+b") as file:
        file.truncate(10**9)

        with pytest.raises(InboxError, match="1000 megabytes"):
            opened(file, name=name, now=NOW)


def test_find_by_itself_is_taken():
    (incoming,) = tried(json.dumps(hostile.find()).encode()).incoming
    entry = incoming.entry

    assert entry.title == "plover, 26 November 2026"
    assert entry.find == tried(GOOD).incoming[0].entry.find
    assert (entry.say, entry.photos, entry.changed) == ("", (), NOW)


def test_find_by_itself_has_one_id_however_it_is_written():
    found = hostile.find()
    ids = {
        tried(json.dumps(found, indent=n).encode()).incoming[0].entry.id for n in (0, 2)
    }

    assert len(ids) == 1
    found["claim"] = {"model_year": 1951, "cites": []}
    assert tried(json.dumps(found).encode()).incoming[0].entry.id not in ids


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"format": 2}, "is of format 2"),
        ({"guide": "../plover"}, "The guide cannot be"),
        ({"guide": "a" * 10_000}, "10000 characters"),
        ({"guide": None}, "guide cannot be empty"),
        ({"items": []}, "The items cannot be an empty list"),
        ({"items": [{"readings": {"../x": 1}}]}, "The clue cannot be"),
        ({"claim": 7}, "The claim cannot be 7"),
    ],
)
def test_find_by_itself_that_lies_is_refused(changes, says):
    (refused,) = tried(json.dumps(hostile.find(**changes)).encode()).refused

    assert says in refused.why
    assert SENTENCE.fullmatch(refused.why)


@pytest.mark.parametrize("size", [0, 20_000_000])
def test_report_is_told_which_file_is_wanted(size):
    """However large it is with its photos."""
    report = b"\xef\xbb\xbf\n<!doctype html>\n<html></html>" + b" " * size

    assert tried(report, "report.html") == (
        "This is a page to be read, and no file of finds. The app makes one under "
        "“Finds”: “File of all finds”."
    )


def test_fields_that_nobody_knows_are_dropped():
    forged = json.loads(hostile.export(hostile.entry(__proto__={"id": 1}, x=[7])))
    forged["finds"][0]["find"]["items"][0]["constructor"] = {"prototype": 1}

    (incoming,) = tried(json.dumps(forged).encode()).incoming

    assert incoming.entry == tried(hostile.export(hostile.entry())).incoming[0].entry


def test_numbers_beyond_all_bounds_are_refused():
    for number in ("1" * 400, "1" * 5000, "1e999", "-1e999", "1" * 30):
        text = hostile.export(hostile.entry(asked=1)).replace(
            b'"asked": 1,', b'"asked": ' + number.encode() + b","
        )
        found = tried(text)

        assert isinstance(found, str) or not found.incoming


def test_half_letters_become_whole_ones():
    text = hostile.export(hostile.entry(title="half \ud83d letter"))

    assert tried(text).incoming[0].entry.title == "half \ufffd letter"


def test_photo_of_thousands_of_millions_of_pixels_is_refused():
    vast = hostile.jpeg(size=(60_000, 60_000))
    note = hostile.note(width=60_000, height=60_000, bytes=len(vast))
    finds = hostile.export(hostile.entry(photos=[note]))

    (refused,) = tried(
        hostile.pack((hostile.PHOTO, vast), ("finds.json", finds))
    ).refused

    assert "more than the app writes" in refused.why


@pytest.mark.parametrize(
    "photo",
    [hostile.jpeg() + b"more", hostile.jpeg().replace(b"\xff\xda", b"more\xff\xda")],
    ids=["after", "between"],
)
def test_photo_with_something_beside_its_picture_is_refused(photo):
    """What lies after the picture, or between its parts, decoders skip."""
    note = hostile.note(bytes=len(photo))
    finds = hostile.export(hostile.entry(photos=[note]))

    (refused,) = tried(
        hostile.pack((hostile.PHOTO, photo), ("finds.json", finds))
    ).refused

    assert "more than a picture" in refused.why


def test_readings_under_another_guide_are_refused():
    (refused,) = tried(hostile.export(hostile.entry(guide="curlew"))).refused

    assert refused.why == (
        'The guide of the readings cannot be "plover": “curlew” is needed.'
    )


def test_true_is_no_format():
    assert "no log" in tried(hostile.export(hostile.entry(), format=True))


def test_many_lists_none_of_them_long_are_refused():
    rows = ["[" + "0," * 9000 + "0]"] * 60

    assert "more than a file of finds" in tried(f"[{','.join(rows)}]".encode())


def test_set_without_members_is_refused():
    items = [{"readings": {}}, {"readings": {}, "member": "4"}]

    (refused,) = tried(
        hostile.export(hostile.entry(find=hostile.find(items=items)))
    ).refused

    assert "names its own" in refused.why


@given(st.data())
def test_flipped_bytes_do_no_harm(data):
    """What is taken is what was sent; all else is refused in a sentence."""
    content = bytearray(GOOD)
    for _ in range(data.draw(st.integers(1, 4))):
        content[data.draw(st.integers(0, len(content) - 1))] ^= data.draw(
            st.integers(1, 255)
        )
    found = tried(bytes(content[: data.draw(st.integers(0, 2 * len(content)))]))

    if isinstance(found, str):
        assert SENTENCE.fullmatch(found)
        return
    good = tried(GOOD).incoming[0]
    for incoming in found.incoming:
        assert incoming.entry == good.entry
        assert [stored.read() for _, stored in incoming.held] == [hostile.jpeg()]


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text(max_size=10), inner, max_size=4)
    ),
    max_leaves=12,
)


@given(st.sampled_from([*hostile.entry()]), VALUES)
def test_any_value_in_any_field_is_told(field, value):
    found = tried(
        json.dumps(
            {"format": 1, "app": "fieldid", "finds": [hostile.entry(**{field: value})]}
        ).encode()
    )

    if isinstance(found, str):
        assert SENTENCE.fullmatch(found)
    else:
        assert len(found.incoming) + len(found.refused) == 1
        assert all(SENTENCE.fullmatch(each.why) for each in found.refused)


@given(st.binary(max_size=300))
def test_any_bytes_are_told(content):
    for name in ("x.zip", "x.json"):
        assert SENTENCE.fullmatch(tried(content, name))
