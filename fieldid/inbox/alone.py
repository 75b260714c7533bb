"""One find by itself, as the app saves it under its verdict: what was read and no more.

It comes in as an entry of which its owner said nothing.
"""

from collections.abc import Mapping
from dataclasses import replace
from hashlib import sha256
from json import dumps
from typing import Any
from uuid import UUID

from fieldid.engine.words import day
from fieldid.inbox.entry import FORMAT, Entry, entry_of


def is_alone(json: object) -> bool:
    """Whether a file holds one find and no log."""
    return (
        isinstance(json, dict)
        and "items" in json
        and not json.keys()
        & {
            "app",
            "finds",
        }
    )


def entry_alone(find: Mapping[str, Any], *, now: str) -> Entry:
    """The entry of a find that arrived now, or an InboxError: why it is none."""
    said = {"say": "", "probability": 0, "outside": 0, "flags": []}
    unsaid = {"format": FORMAT, "id": str(UUID(int=0)), "version": {}, "verdict": said}
    times = {"judged": now, "created": now, "changed": now}
    entry = entry_of({"guide": find.get("guide"), "find": find} | unsaid | times)
    # The same however its file is written, so that nothing comes in twice.
    read = sha256(dumps(entry.find, sort_keys=True).encode()).digest()
    return replace(
        entry,
        id=str(UUID(bytes=read[:16], version=5)),
        title=f"{entry.guide}, {day(now[:10])}",
    )
