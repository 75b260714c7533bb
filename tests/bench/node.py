"""The engine's twin, asked in Node by `twin.mjs`: answers and seconds."""

import json
import subprocess
from collections.abc import Sequence
from pathlib import Path

from fieldid.engine import Find
from fieldid.engine.guide import Guide
from fieldid.guides.pack import pack, plain
from fieldid.paths import STATIC

TWIN = Path(__file__).parent / "twin.mjs"
ENGINE = STATIC / "phone" / "engine" / "index.js"


def asked(guide: Guide, finds: Sequence[Find], task: str) -> dict:
    """A guide, finds, and the task to take the time of: `weigh` or `judge`."""
    return {"packed": pack(guide), "finds": plain(tuple(finds)), "task": task}


def answers(asks: Sequence[dict], rounds: int) -> list[dict]:
    """For each the `seconds` for all finds and, for `weigh`, the `posteriors`."""
    done = subprocess.run(
        ["node", str(TWIN), ENGINE.as_uri()],
        input=json.dumps({"asks": asks, "rounds": rounds}),
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def seconds(asks: Sequence[dict], rounds: int) -> list[float]:
    """The fewest seconds of the processor for all finds of each."""
    return [told["seconds"] for told in answers(asks, rounds)]
