"""The phone's ZIP files against Python's zipfile: each reads what the other writes."""

import io
import json
import subprocess
import zipfile
from base64 import b64decode, b64encode
from pathlib import Path

ZIP = (Path(__file__).parents[1] / "static" / "phone" / "log" / "zip.js").as_uri()
FILES = {
    "finds.json": b'{"format": 1}',
    "photos/\N{LATIN SMALL LETTER U WITH DIAERESIS}.jpg": bytes(range(256)) * 3,
    "empty.txt": b"",
}

WRITE = """
const { zip } = await import(process.argv[1]);
const files = JSON.parse(process.argv[2]).map(([name, bytes]) => ({
  name, bytes: new Uint8Array(Buffer.from(bytes, "base64")),
}));
process.stdout.write(Buffer.from(await (await zip(files)).arrayBuffer()));
"""
READ = """
const { unzip } = await import(process.argv[1]);
const chunks = [];
for await (const chunk of process.stdin) chunks.push(chunk);
const files = await unzip(new Blob(chunks), () => 1e9);
const read = [];
for (const [name, file] of files) {
  read.push([name, Buffer.from(await file.bytes()).toString("base64")]);
}
console.log(JSON.stringify(read));
"""


def node(code: str, *arguments: str, stdin: bytes = b"") -> bytes:
    command = ["node", "--input-type=module", "--eval", code, ZIP, *arguments]
    return subprocess.run(command, input=stdin, capture_output=True, check=True).stdout


def written(files) -> bytes:
    """The ZIP file that the phone makes of them."""
    pairs = [(name, b64encode(data).decode()) for name, data in files.items()]
    return node(WRITE, json.dumps(pairs))


def read(content: bytes) -> dict[str, bytes]:
    """What the phone finds in a ZIP file."""
    pairs = json.loads(node(READ, stdin=content))
    return {name: b64decode(data) for name, data in pairs}


def test_python_reads_what_the_phone_writes():
    with zipfile.ZipFile(io.BytesIO(written(FILES))) as archive:
        assert archive.testzip() is None
        assert {name: archive.read(name) for name in archive.namelist()} == FILES
        assert {info.compress_type for info in archive.infolist()} == {
            zipfile.ZIP_STORED
        }
        assert {info.date_time for info in archive.infolist()} == {
            (1980, 1, 1, 0, 0, 0)
        }


def test_empty_file_is_read_by_both():
    with zipfile.ZipFile(io.BytesIO(written({}))) as archive:
        assert archive.namelist() == []
    assert read(written({})) == {}


def test_phone_reads_what_python_writes():
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, data in FILES.items():
            archive.writestr(name, data)

    assert read(out.getvalue()) == FILES


def test_extra_fields_are_passed_over():
    """As packers leave them that keep times and owners."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name, data in FILES.items():
            info = zipfile.ZipInfo(name)
            info.extra = b"UT\x05\x00\x01\x00\x00\x00\x00"
            info.comment = b"from elsewhere"
            archive.writestr(info, data)

    assert read(out.getvalue()) == FILES
