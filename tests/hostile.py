"""Files that lie, made in code: nothing harmful is kept in this repository.

`python tests/hostile.py FOLDER` writes them all, and cases.json beside them: the name
of each file, what its refusal says, and how many finds are refused one by one (none if
the file is refused as a whole).
"""

import json
import struct
import sys
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

ENTRY_ID = "00000000-0000-4000-8000-000000000001"
PHOTO_ID = "00000000-0000-4000-8000-000000001001"
PHOTO = f"photos/{PHOTO_ID}.jpg"
SIZE = (40, 30)
TIME = "2026-11-25T10:00:00Z"
FULL_2, FULL_4 = 0xFFFF, 0xFFFFFFFF
FORGED = {"polluted": True, "toString": "forged"}

_TEXT = (True, 7, [], {}, "x" * 3000)
_ID = (*_TEXT, None, "", "<img onerror>", "../x")
_DAY = (*_TEXT, "22.11.2026", "2026-02-31")
_TIME = (*_TEXT, None, "", "yesterday", "2026-11-25")
_NUMBER = (True, "7", [], {}, -1, 1e300)
_TABLE = (None, True, 7, "x", [], {})
WRONG: dict[str, tuple[Any, ...]] = {
    "format": (None, True, "1", [], {}, 0, 1.5, 2),
    "id": _ID,
    "guide": _ID,
    "find": _TABLE,
    "version": _TABLE[:-1],
    "verdict": _TABLE,
    "judged": _TIME,
    "title": _TEXT,
    "note": _TEXT,
    "place": _TEXT,
    "date": _DAY,
    "asked": _NUMBER,
    "paid": _NUMBER,
    "currency": (*_TEXT, "euro", "€"),
    "photos": (True, 7, "x", {}, [7], [None], [[]]),
    "created": _TIME,
    "changed": _TIME,
}
"""For each field of an entry, values that it cannot have."""

Case = tuple[str, str, bytes, int]
"""A file's name, what its refusal says, its bytes, how many finds are refused."""


def find(**changes: Any) -> dict[str, Any]:
    """A find of one object, in the form of a file."""
    item = {"readings": {"rings": "green", "pad": 6.1, "code": None}, "gone": ["grip"]}
    claim = {"model_year": 1952, "cites": ["rings"]}
    return {"format": 1, "guide": "plover", "items": [item], "claim": claim} | changes


def entry(**changes: Any) -> dict[str, Any]:
    """A kept find without photos."""
    return {
        "format": 1,
        "id": ENTRY_ID,
        "guide": "plover",
        "find": find(),
        "version": {"stamp": "a1b2c3", "updated": "2026-02-01"},
        "verdict": verdict(),
        "judged": TIME,
        "title": "Iron from the fair",
        "note": "",
        "place": "",
        "date": "2026-11-22",
        "asked": 120,
        "paid": None,
        "currency": "EUR",
        "photos": [],
        "created": TIME,
        "changed": TIME,
    } | changes


def verdict(**changes: Any) -> dict[str, Any]:
    return {
        "say": "1952: likely, 71 %",
        "leading": 1952,
        "probability": 0.71,
        "outside": 0.02,
        "range": None,
        "flags": [],
    } | changes


def note(**changes: Any) -> dict[str, Any]:
    """What an entry says of its photo."""
    width, height = SIZE
    size = {"width": width, "height": height, "bytes": len(jpeg())}
    return {"id": PHOTO_ID, "clue": None, **size} | changes


def export(*entries: Any, **changes: Any) -> bytes:
    whole = {"format": 1, "app": "fieldid", "finds": list(entries)} | changes
    return json.dumps(whole).encode()


def jpeg(before: bytes = b"", size: tuple[int, int] = SIZE) -> bytes:
    """As little of a JPEG as has a size; `before` is a part before its picture."""
    width, height = size
    frame = struct.pack(">BHHBBBB", 8, height, width, 1, 1, 0x11, 0)
    scan = bytes([1, 1, 0, 0, 63, 0])
    start, end = b"\xff\xd8", b"\xff\xd9"
    return start + before + part(0xC0, frame) + part(0xDA, scan) + b"\1\2\3" + end


def part(marker: int, inside: bytes) -> bytes:
    return struct.pack(">BBH", 0xFF, marker, len(inside) + 2) + inside


def pack(*files: tuple[str | bytes, bytes], before: bytes = b"", **lies: int) -> bytes:
    """A stored ZIP of some files, with what lies before them.

    A lie is a value for a field, of the `local_` header or of the one `listed_` in the
    directory of the last file, or of the `end_` of all.
    """
    body, directory = before, b""
    for i, (name, data) in enumerate(files):
        told = lies if i == len(files) - 1 else {}
        named = name if isinstance(name, bytes) else name.encode()
        says = {
            "needs": 10,
            "flags": 0x800,
            "method": 0,
            "crc": zlib.crc32(data),
            "packed": len(data),
            "size": len(data),
            "name": len(named),
        }
        directory += listed({**says, "at": len(body)} | of("listed_", told)) + named
        body += local(says | of("local_", told)) + named + data
    count = len(files)
    end = {"count": count, "length": len(directory), "at": len(body)}
    return body + directory + ending(end | of("end_", lies))


def of(kind: str, lies: dict[str, int]) -> dict[str, int]:
    return {k.removeprefix(kind): v for k, v in lies.items() if k.startswith(kind)}


def local(says: dict[str, int]) -> bytes:
    return b"PK\3\4" + shared(says)


def listed(says: dict[str, int]) -> bytes:
    tail = struct.pack("<HHHII", 0, says.get("disk", 0), 0, 0, says["at"])
    return b"PK\1\2" + struct.pack("<H", 10) + shared(says) + tail


def shared(says: dict[str, int]) -> bytes:
    fields = ("needs", "flags", "method", "time", "day", "crc", "packed", "size")
    values = [says.get(name, 0) for name in fields]
    return struct.pack("<5H3IHH", *values, says["name"], says.get("extra", 0))


def ending(says: dict[str, int]) -> bytes:
    disks = (says.get("disk", 0), 0, says.get("on_disk", says["count"]))
    place = (says["count"], says["length"], says["at"], says.get("comment", 0))
    return b"PK\5\6" + struct.pack("<4HIIH", *disks, *place)


def good(**changes: Any) -> tuple[tuple[str, bytes], tuple[str, bytes]]:
    """The two files of an export of one find with one photo."""
    return (PHOTO, jpeg()), ("finds.json", export(entry(photos=[note()], **changes)))


def lying() -> Iterator[Case]:
    """ZIP files whose headers say what is not so."""
    two = "says two things"
    size = len(good()[1][1])
    for name, says, lies in (
        ("size-local", two, {"local_size": size - 1}),
        ("size-huge-local", two, {"local_size": 10**9, "local_packed": 10**9}),
        ("size-less", "damaged", {"listed_size": 5}),
        ("size-both-less", two, {"listed_size": size - 1, "listed_packed": size - 1}),
        (
            "size-more",
            "over each other",
            {"listed_size": size + 1, "listed_packed": size + 1},
        ),
        (
            "size-huge",
            "too large",
            {"listed_size": 10**9, "listed_packed": 10**9},
        ),
        ("check-sum", "check sum differs", {"local_crc": 7, "listed_crc": 7}),
        ("check-sum-local", two, {"local_crc": 7}),
        ("method-local", two, {"local_method": 8}),
        ("name-local", two, {"local_name": 9}),
        ("extra-local", two, {"local_extra": 4}),
        ("overlap", "over each other", {"listed_at": 0}),
        ("overlap-by-one", "over each other", {"listed_at": len(PHOTO)}),
        ("place-outside", "damaged", {"listed_at": 10**8}),
        ("locked", "password", {"listed_flags": 0x801, "local_flags": 0x801}),
        ("streamed", "compressed", {"listed_flags": 0x808, "local_flags": 0x808}),
        ("method", "compressed", {"listed_method": 8, "local_method": 8}),
        ("disk", "damaged", {"listed_disk": 1}),
        ("zip64-size", "4 GB", {"listed_size": FULL_4, "listed_packed": FULL_4}),
        ("zip64-place", "4 GB", {"listed_at": FULL_4}),
        ("zip64-count", "4 GB", {"end_count": FULL_2}),
        ("zip64-directory", "4 GB", {"end_at": FULL_4}),
        ("zip64-length", "4 GB", {"end_length": FULL_4}),
        ("parts", "several parts", {"end_disk": 1}),
        ("parts-count", "several parts", {"end_on_disk": 1}),
        ("count-more", "damaged", {"end_count": 3}),
        ("count-less", "damaged", {"end_count": 1}),
        ("directory-place", "damaged", {"end_at": 1}),
        ("directory-length", "damaged", {"end_length": 10**8}),
        ("comment", "its end is missing", {"end_comment": 10}),
    ):
        yield f"lie-{name}.zip", says, pack(*good(), **lies), 0


def misshapen() -> Iterator[Case]:
    """Files that are no ZIP file, or not only one."""
    whole = pack(*good())
    packed = zlib.compressobj(9, zlib.DEFLATED, -15)
    bomb = packed.compress(bytes(10**8)) + packed.flush()
    sizes = {"listed_packed": len(bomb), "listed_size": 10**8, "listed_method": 8}
    yield "bomb.zip", "compressed", pack(("finds.json", bomb), **sizes), 0
    yield "empty.zip", "is empty", b"", 0
    yield "empty.json", "is empty", b"", 0
    yield "no-files.zip", "holds no finds.json", pack(), 0
    yield "only-photo.zip", "holds no finds.json", pack(good()[0]), 0
    yield "text.zip", "no ZIP file", b"This is a text, and no ZIP file at all.", 0
    yield "json-as.zip", "no ZIP file", export(entry()), 0
    yield "zip-as.json", "says two things", pack(*good(), local_crc=1), 0
    yield "one-byte.zip", "too short", b"P", 0
    yield "end-alone.zip", "damaged", whole[-22:], 0
    yield "before.zip", "damaged", b"#!/bin/sh\n" + whole, 0
    hidden = pack(*good(), before=b"<html><script>")
    yield "hidden.zip", "damaged", hidden, 0
    marked = whole.replace(b"PK\3\4", b"PK\3\5")
    yield "mark.zip", "says two things", marked, 0
    yield "after.zip", "its end is missing", whole + b"\n", 0
    yield "twice.zip", "damaged", whole + whole, 0
    yield "same-name.zip", "one name", pack(*good(), good()[1]), 0
    for share in (1, 25, 50, 75, 99):
        cut = whole[: len(whole) * share // 100]
        yield f"cut-{share}.zip", "ZIP file", cut, 0


def named() -> Iterator[Case]:
    """ZIP files with names that lead elsewhere."""
    for i, name in enumerate(
        (
            f"../{PHOTO}",
            "../../../../etc/passwd",
            "/etc/passwd",
            "C:\\finds.json",
            "photos\\1.jpg",
            "photos/",
            "photos/../finds.json",
            f"./{PHOTO}",
            f"{PHOTO}/x",
            f"{PHOTO}\0.exe",
            PHOTO.upper(),
            "photos/1.jpg",
            "<img src=x onerror=alert(1)>",
            "finds.json\n",
            b"\xef\xbb\xbffinds.json",
            b"\xff\xfe",
            "",
            "FINDS.JSON",
            "__proto__",
            "\u202egpj.sdnif",
            "x" * 400,
        )
    ):
        yield f"name-{i}.zip", "does not belong", pack(*good(), (name, b"x")), 0
    long = pack(*good(), ("x" * 60_000, b""))
    yield "name-long.zip", "damaged", long, 0


def unfit() -> Iterator[Case]:
    """JSON that is none, or none of ours."""
    deep, wide = 10**6, 10_000_000
    for name, says, text in (
        ("deep-list", "too deeply", "[" * deep + "]" * deep),
        ("deep-table", "too deeply", '{"a":' * deep + "1" + "}" * deep),
        ("deep-open", "too deeply", "[" * deep),
        ("many-values", "more than", f"[{'0,' * (wide // 2 - 2)}0]"),
        ("many-tables", "more than", f"[{'{},' * (wide // 3 - 2)}{{}}]"),
        ("open-quote", "no file of finds", '"' + '\\"' * (wide // 2 - 1)),
        ("quotes", "no file of finds", '"' * wide),
        ("null", "no log", "null"),
        ("number", "no log", "1"),
        ("list", "no log", "[]"),
        ("table", "no log", "{}"),
        ("find-alone", "no log", json.dumps(find())),
        (
            "not-a-number",
            "no file of finds",
            '{"format": 1, "app": "fieldid", "finds": [NaN]}',
        ),
        (
            "infinity",
            "no file of finds",
            '{"format": 1, "app": "fieldid", "finds": [Infinity]}',
        ),
        ("two", "no file of finds", export().decode() * 2),
        ("script", "no file of finds", "<script>alert(1)</script>"),
    ):
        yield f"{name}.json", says, text.encode(), 0
    newer = "newer version of fieldid (format 2; this one reads 1)"
    yield "newer.json", newer, export(entry(), format=2), 0
    yield "newer.zip", newer, pack(("finds.json", export(format=2))), 0
    yield "format-text.json", "no log", export(entry(), format="1"), 0
    yield "other-app.json", "no log", export(entry(), app="other"), 0
    yield "finds-table.json", "no log", export(finds={"length": 1}), 0
    yield "many.json", "5001 finds", export(*[None] * 5001), 0
    keyed = export({f"k{i}": [] for i in range(240_000)})
    yield "keys-many.json", "more than", keyed, 0
    # As much as is parsed at all, all of it for nothing.
    spread = [{f"k{i * 48 + j}": [] for j in range(48)} for i in range(4990)]
    yield "keys-spread.json", "missing", export(*spread), len(spread)
    yield "large.json", "megabytes", b" " * 10_000_001, 0
    yield "utf-16.json", "no text", export(entry()).decode().encode("utf-16"), 0
    yield "half-letter.json", "no text", export(entry())[:-1] + b"\xc3", 0
    forged = b'{"__proto__": {"format": 1, "app": "fieldid", "finds": []}}'
    yield "proto-file.json", "no log", forged, 0


def inherited() -> Iterator[Case]:
    """Tables whose fields come by way of what all tables share."""
    plain = entry()
    for i, key in enumerate(("__proto__", "constructor", "prototype")):
        table = {key: {**plain, **FORGED}}
        nested = {"constructor": {"prototype": plain}}
        for name, forged in (("table", table), ("nested", nested)):
            yield f"proto-{name}-{i}.json", "missing", export(forged), 1
        without = {k: v for k, v in plain.items() if k != "verdict"}
        forged = {**without, "verdict": {key: {**verdict(), **FORGED}}}
        yield f"proto-verdict-{i}.json", "missing", export(forged), 1


def mistyped() -> Iterator[Case]:
    """Finds with one value of a wrong kind each."""
    wrong = [entry(**{key: value}) for key in WRONG for value in WRONG[key]]
    wrong += [entry(verdict=verdict(**{key: {}})) for key in verdict()]
    wrong += [entry(version={"stamp": "a", "updated": value}) for value in _DAY]
    wrong += [entry(find=find(**{key: 7})) for key in find()]
    wrong += [entry(find=find(items=items)) for items in (None, [], [7], [[]], {}, "")]
    wrong += [
        entry(find=find(items=[{"readings": readings}]))
        for readings in (None, 7, "x", {"rings": True}, {"rings": []}, {"<b>": 1})
    ]
    wrong += [entry(photos=[note(**{key: [7]})]) for key in note()]
    wrong += [entry(photos=[note(id=fresh(i)) for i in range(7)])]
    wrong += [entry(photos=[note(), note()])]
    for i, each in enumerate(wrong):
        if each["id"] == ENTRY_ID:
            each["id"] = fresh(i)
    none = [None, True, 7, "find", [], [entry()], {}]
    yield "types.json", "", export(*none, *wrong), len(none) + len(wrong)
    for name, says, text in (
        ("title", "9000000 characters", export(entry(title="x" * 9_000_000)).decode()),
        ("key", "missing", export({"x" * 9_000_000: 1}).decode()),
        ("price", "a number is needed", export(entry(asked=1)).decode()),
        ("day", "a day is needed", export(entry(date="2026-02-31")).decode()),
        ("newer-find", "newer version", export(entry(format=2)).decode()),
        ("newer-reading", "format 2", export(entry(find=find(format=2))).decode()),
    ):
        written = text.replace('"asked": 1,', '"asked": 1e999,')
        yield f"entry-{name}.json", says, written.encode(), 1


def fresh(number: int) -> str:
    return f"00000000-0000-4000-9000-{number:012}"


def pictured() -> Iterator[Case]:
    """Exports whose photos are not what their finds say, or belong to two."""
    place = part(0xE1, b"Exif\0\0" + bytes(20))
    png = b"\x89PNG\r\n\x1a\n" + bytes(len(jpeg()) - 8)
    html = b"<html><script>".ljust(len(jpeg()), b" ")
    for name, says, data in (
        ("png", "no JPEG", png),
        ("html", "no JPEG", html),
        ("magic", "no JPEG", b"\xff\xd7" + jpeg()[2:]),
        ("cut", "bytes", jpeg()[:-1]),
        ("no-end", "no JPEG", jpeg()[:-2] + b"\0\0"),
        ("empty", "bytes", b""),
        ("other-size", "40 by 31", jpeg(size=(40, 31))),
        ("more", "bytes", jpeg() + b"more"),
    ):
        files = (PHOTO, data), good()[1]
        yield f"photo-{name}.zip", says, pack(*files), 1
    located = jpeg(place)
    finds = export(entry(photos=[note(bytes=len(located))]))
    files = (PHOTO, located), ("finds.json", finds)
    yield "photo-place.zip", "where it was taken", pack(*files), 1
    yield "photo-missing.zip", "is missing", pack(good()[1]), 1
    large = bytes(5_000_001)
    yield "photo-large.zip", "too large", pack((PHOTO, large), good()[1]), 0
    own, other = entry(photos=[note()]), entry(id=fresh(1), photos=[note()])
    stolen = pack(good()[0], ("finds.json", export(own, other)))
    yield "photo-of-two.zip", "same id", stolen, 2
    yield "id-twice.json", "same id", export(entry(), entry(title="other")), 2


GROUPS: tuple[Callable[[], Iterator[Case]], ...] = (
    lying,
    misshapen,
    named,
    unfit,
    inherited,
    mistyped,
    pictured,
)


def write(folder: Path) -> None:
    """Write all files, and what is to be said of them."""
    cases = []
    for name, says, content, refused in (case for group in GROUPS for case in group()):
        (folder / name).write_bytes(content)
        cases.append({"file": name, "says": says, "refused": refused})
    for name in ("sparse.zip", "sparse.json"):
        # A gigabyte that takes no room.
        with (folder / name).open("wb") as file:
            file.truncate(10**9)
        cases.append({"file": name, "says": "1000 megabytes", "refused": 0})
    (folder / "good.zip").write_bytes(pack(*good()))
    (folder / "cases.json").write_text(json.dumps(cases))


if __name__ == "__main__":
    write(Path(sys.argv[1]))
