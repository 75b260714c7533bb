"""Cases by seed, judged in both languages: what crashes, hangs, is refused without a
word, or is taken by one and refused by the other.
"""

import json
import resource
import subprocess
import tempfile
from base64 import b64encode
from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from traceback import format_exc
from typing import Any

from mutate import chance
from targets import SECONDS, TARGETS, HangError, Said, guides, in_time

from fieldid.guides.pack import dump

PHONE = Path(__file__).with_name("phone.js")
Case = tuple[str, bytes]
"""A target, and what it is fed."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A case that went wrong, and how."""

    target: str
    content: bytes
    why: str


def cases(seeds: Iterable[int], targets: Iterable[str] = TARGETS) -> list[Case]:
    """One case of each target for each seed."""
    names = list(targets)
    return [
        (name, TARGETS[name].make(chance(seed, name)))
        for seed in seeds
        for name in names
    ]


def faults(batch: Sequence[Case]) -> list[Fault]:
    """What goes wrong with these cases."""
    twins = [each for each in batch if TARGETS[each[0]].phone]
    phone = dict(zip(twins, _phone(twins), strict=False))
    found = []
    for target, content in batch:
        on_phone = phone.get((target, content))
        if TARGETS[target].phone and on_phone is None:
            # Whatever came after it was never asked.
            return [*found, Fault(target, content, "the phone gave no answer")]
        why = _wrong(target, content, on_phone)
        if why:
            found.append(Fault(target, content, why))
    return found


def _wrong(target: str, content: bytes, on_phone: Said | None) -> str:
    if on_phone and "crash" in on_phone:
        return f"the phone: {on_phone['crash']}"
    fed = content
    if target == "keys":
        assert on_phone
        fed = json.dumps({**json.loads(content), **on_phone}).encode()
    say = TARGETS[target].say
    try:
        with in_time():
            said = say(fed) if say else None
    except HangError as error:
        return str(error)
    except Exception:
        return format_exc()
    for each in (said, on_phone):
        if each and not each["taken"] and not str(each["say"]).strip():
            return "it is refused without a word"
    if said and on_phone and _compared(said) != _compared(on_phone):
        return f"Python: {said}\nthe phone: {on_phone}"
    return ""


def _compared(said: Said) -> dict[str, Any]:
    aside = ("say", "seconds", "reading")
    return {key: value for key, value in said.items() if key not in aside}


def _phone(batch: Sequence[Case]) -> list[Said]:
    """What the phone says, as far as it came in its time."""
    packed = {guide.id: json.loads(dump(guide)) for guide in guides()}
    with tempfile.NamedTemporaryFile("w", suffix=".json") as shelf:
        json.dump(packed, shelf)
        shelf.flush()
        lines = [shelf.name] + [
            json.dumps({"target": target, "content": b64encode(content).decode()})
            for target, content in batch
        ]
        done = subprocess.run(
            ["node", PHONE],
            input="\n".join(lines),
            stdout=subprocess.PIPE,
            text=True,
            preexec_fn=lambda: _limit(SECONDS + len(batch)),
            check=False,
        )
    said = []
    for line in done.stdout.splitlines():
        with suppress(json.JSONDecodeError):
            said.append(json.loads(line))
    return said


def _limit(seconds: int) -> None:
    """Ends this process after so much of the processor's time."""
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))
