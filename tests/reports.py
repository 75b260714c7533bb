"""Reports of finds as the phone writes them, for tests that read or open them."""

import base64
import json
import subprocess
from pathlib import Path
from typing import Any

import photofiles

ROOT = Path(__file__).parents[1]
PHONE = ROOT / "static" / "phone"
VECTORS = ROOT / "tests" / "vectors"
WRITE = """
const [, phone] = process.argv;
const { report } = await import(`${phone}/log/report.js`);
const { summed } = await import(`${phone}/log/record.js`);
const { judge, prepare, unpack } = await import(`${phone}/engine/index.js`);
let text = "";
for await (const part of process.stdin) text += part;
const bytes = (base64) => Uint8Array.from(Buffer.from(base64, "base64")).buffer;
const told = JSON.parse(text).map(({ guide: packed, entry, photos, ticked, now }) => {
  const guide = unpack(packed);
  const verdict = judge(prepare(guide), entry.find);
  return report({
    guide,
    entry: { verdict: summed(verdict), ...entry },
    verdict,
    photos: photos.map((photo) => ({ ...photo, bytes: bytes(photo.bytes) })),
    with: ticked,
    now,
  });
});
console.log(JSON.stringify(told));
"""
HOSTILE = (
    "\"><script>alert(1)</script></title></style><img src=x onerror='alert(2)'>&amp;"
)
FORMULA = '=HYPERLINK("http://example.invalid","here")'


def vector(name: str) -> dict[str, Any]:
    """A packed guide and finds under it."""
    read: dict[str, Any] = json.loads((VECTORS / f"{name}.json").read_text("utf-8"))
    return read


def photo(number: int, clue: str | None, size=(1600, 1200)) -> dict[str, Any]:
    """What is kept of a photo of four colours, and its bytes."""
    jpeg = photofiles.saved(photofiles.upright(size), "JPEG", quality=80)
    return {
        "id": f"00000000-0000-4000-8000-{number:012d}",
        "clue": clue,
        "width": size[0],
        "height": size[1],
        "bytes": base64.b64encode(jpeg).decode(),
    }


def asked(guide, find, *photos, ticked=None, **own) -> dict[str, Any]:
    """A find that is kept, as a report is asked for; fields can be given."""
    notes = [{k: v for k, v in each.items() if k != "bytes"} for each in photos]
    entry = {
        "format": 1,
        "id": "00000000-0000-4000-8000-000000000999",
        "guide": guide["id"],
        "find": find,
        "version": {"stamp": "a1b2c3d4", "updated": guide["updated"]},
        "judged": "2026-11-25T10:00:00.000Z",
        "title": "Irons from the fair",
        "note": "Seen on the third table.\nThe seller had them from an uncle.",
        "place": "Market hall",
        "date": "2026-11-22",
        "asked": 120,
        "paid": 80.5,
        "currency": "EUR",
        "photos": notes,
        "created": "2026-11-25T10:00:00.000Z",
        "changed": "2026-11-25T10:00:00.000Z",
    }
    return {
        "guide": guide,
        "entry": entry | own,
        "photos": list(photos),
        "ticked": ticked or {},
        "now": "2026-11-26T09:00:00.000Z",
    }


def written(*asks: dict[str, Any]) -> list[str]:
    """The report of each, as the text of its file."""
    done = subprocess.run(
        ["node", "--input-type=module", "-e", WRITE, PHONE.as_uri()],
        input=json.dumps(asks),
        capture_output=True,
        text=True,
        check=True,
    )
    texts: list[str] = json.loads(done.stdout)
    return texts


def one_iron() -> dict[str, Any]:
    """One iron with a claim, many readings, and photos tied to some of them."""
    read = vector("wrackham-teale-dotterel")
    case = max(read["cases"], key=lambda each: len(each["verdict"]["weights"]))
    clues = [weight["clue"] for weight in case["verdict"]["weights"]]
    photos = [
        photo(1, clues[0]),
        photo(2, clues[2], (900, 1600)),
        photo(3, None, (1400, 1050)),
    ]
    claimed = case["find"] | {"claim": {"model_year": 1957, "cites": clues[:3]}}
    return asked(read["guide"], claimed, *photos)


def ten_irons() -> dict[str, Any]:
    """A set of ten with strays and parts that are gone, and photos."""
    read = vector("wrackham-teale-dotterel")
    case = max(read["cases"], key=lambda each: len(each["find"]["items"]))
    photos = [photo(1, "hosel-code"), photo(2, "toe-outline", (900, 1600))]
    return asked(read["guide"], case["find"], *photos, photo(3, None, (1400, 1050)))
