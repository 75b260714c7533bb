"""What is fed, and with what: each target makes a case from dice, and says of it what
Python says, without a traceback and in time.
"""

import json
import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import Any

from mutate import Random, some, table

import hostile
from fieldid.engine import judge, prepare
from fieldid.engine.code import UNREADABLE
from fieldid.engine.find import Find, Item
from fieldid.engine.guide import Choice, Clue, Code, Guide, Measure
from fieldid.errors import FieldidError
from fieldid.guides import finds, given
from fieldid.guides.load import load, loads
from fieldid.guides.pack import dump
from fieldid.guides.readings import misfit
from fieldid.inbox.opening import opened
from fieldid.paths import RULES

SMALL = Path(__file__).parents[1] / "rules"
NOW = "2026-11-25T10:00:00Z"
SECONDS = 20
"""Of the processor's time, a hundred times what the slowest case takes."""


class HangError(Exception):
    """A case that took all its time."""


@contextmanager
def in_time() -> Iterator[None]:
    """Ends what runs with a HangError once it has had its time of the processor."""

    def late(*_: object) -> None:
        raise HangError(f"no answer after {SECONDS} s of the processor")

    before = signal.signal(signal.SIGPROF, late)
    signal.setitimer(signal.ITIMER_PROF, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


Said = dict[str, Any]
"""What is compared: `taken`, and more where both languages say the same; `say` is the
sentence of a refusal and is not compared.
"""


@dataclass(frozen=True, slots=True)
class Target:
    """What is fed, and who says something of it."""

    make: Callable[[Random], bytes]
    say: Callable[[bytes], Said] | None
    phone: bool


@cache
def guides() -> tuple[Guide, ...]:
    return tuple(load(path) for path in (*paths(RULES), *paths(SMALL)))


def paths(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.toml"))


def refused(error: FieldidError) -> Said:
    return {"taken": False, "say": str(error)}


def toml(dice: Random) -> bytes:
    """A guide as its author might have left it."""
    return some(dice, dice.choice([*paths(RULES), *paths(SMALL)]).read_bytes())


def toml_says(content: bytes) -> Said:
    try:
        guide = loads(content, file="guide.toml", folder=RULES)
    except FieldidError as error:
        return refused(error)
    judge(prepare(guide), Find(guide.id, (Item(()),)))
    return {"taken": True}


OF_THE_FILE = {"no-guide", "not-utf-8", "too-deep"}


def given_guide(dice: Random) -> bytes:
    """A guide's file, mostly with the hash that belongs to it."""
    packed = dump(dice.choice(guides()))
    if dice.random() < 0.2:
        return some(dice, headed(packed))
    if dice.random() < 0.3:
        return headed(some(dice, packed).replace(b"\n", b" "))
    return headed(dumped(table(dice, json.loads(packed))))


def headed(packed: bytes) -> bytes:
    told = {"app": "fieldid", "kind": "guide", "format": given.FILE_FORMAT}
    head = dumped({**told, "sha256": sha256(packed).hexdigest()})
    return head + b"\n" + packed + b"\n"


def dumped(made: Any) -> bytes:
    return json.dumps(made, separators=(",", ":")).encode()


def given_says(content: bytes) -> Said:
    try:
        given.taken(content)
    except given.GivenError as error:
        codes = [told.code for _, told in error.found]
        # Why a text is no guide at all, each language may say in its own way.
        return {**refused(error), "codes": [] if codes[0] in OF_THE_FILE else codes}
    return {"taken": True}


@cache
def logs() -> tuple[Any, ...]:
    """Honest exports as tables."""
    note = hostile.note()
    return tuple(
        json.loads(each)
        for each in (
            hostile.export(hostile.entry()),
            hostile.export(
                hostile.entry(photos=[note]), hostile.entry(id=hostile.fresh(1))
            ),
        )
    )


def log(dice: Random) -> bytes:
    """A file of finds: a ZIP file, or its text alone."""
    photo, whole = hostile.good()
    text = dumped(table(dice, dice.choice((json.loads(whole[1]), *logs()))))
    kind = dice.randrange(4)
    if kind == 0:
        return some(dice, hostile.pack(*hostile.good()))
    if kind == 1:
        return hostile.pack(photo, (whole[0], text))
    if kind == 2:
        return hostile.pack((photo[0], some(dice, photo[1])), whole)
    return some(dice, text) if dice.random() < 0.5 else text


def log_says(content: bytes) -> Said:
    try:
        found = opened(BytesIO(content), now=NOW)
    except FieldidError as error:
        return refused(error)
    for each in found.refused:
        assert each.why, "a find is refused without a word"
    brought = [each.place for each in found.incoming]
    return {
        "taken": True,
        "places": brought,
        "refused": [r.place for r in found.refused],
    }


def find(dice: Random) -> bytes:
    """A find by itself, as the verdict's button saves it."""
    guide = dice.choice(guides())
    item = {"readings": _readings(dice, guide), "gone": []}
    claim = _claim(dice, guide)
    made = {"format": 1, "guide": guide.id, "items": [item], "claim": claim}
    return spoilt(dice, made)


def _readings(dice: Random, guide: Guide) -> dict[str, Any]:
    return {c.id: _typed(dice, c) for c in guide.clues if dice.random() < 0.4}


def _claim(dice: Random, guide: Guide) -> dict[str, Any]:
    clue, year = dice.choice(guide.clues).id, dice.choice(guide.years).year
    return {"model_year": year, "cites": [clue]}


def spoilt(dice: Random, made: Any) -> bytes:
    text = dumped(table(dice, made))
    return some(dice, text) if dice.random() < 0.3 else text


def draft(dice: Random) -> bytes:
    """What lies open on a phone, as its database has it."""
    guide = dice.choice(guides())
    item = {"member": None, "readings": [*_readings(dice, guide).items()], "gone": []}
    state = {
        **{"guide": guide.id, "items": [item], "at": -1, "away": False},
        **{"claim": _claim(dice, guide), "photos": False, "without": []},
    }
    session = {**state, "past": [{**state, "claim": None}]}
    whole = {"format": 2, "guide": guide.id, "stamp": "x", "session": session}
    return dumped({"guide": guide.id, "draft": table(dice, whole)})


def find_says(content: bytes) -> Said:
    # The inbox takes it without its guide, and so says less.
    log_says(content)
    try:
        found = finds.load(content, guides())
    except FieldidError as error:
        return refused(error)
    of = next(guide for guide in guides() if guide.id == found.guide)
    judge(prepare(of), found)
    return {"taken": True}


@cache
def typed_clues() -> tuple[tuple[Guide, Clue], ...]:
    kinds = [(g, clue) for g in guides() for clue in g.clues]
    return tuple(each for each in kinds if not isinstance(each[1].kind, Choice))


def keys(dice: Random) -> bytes:
    """What is pressed on the keypad of a clue, or typed into its field."""
    guide, clue = dice.choice(typed_clues())
    pressed = list(_text(dice, clue))
    for _ in range(dice.choice((0, 0, 1, 2, 5))):
        odd = ("back", UNREADABLE, "toString", "", "AB", "é", "💥", "0", " ", "-", ".")
        pressed.insert(dice.randrange(len(pressed) + 1), dice.choice(odd))
    return dumped({"guide": guide.id, "clue": clue.id, "keys": pressed})


def _typed(dice: Random, clue: Clue) -> Any:
    kind = clue.kind
    if isinstance(kind, Choice):
        return dice.choice(kind.options).id
    text = _text(dice, clue)
    return text if isinstance(kind, Code) or dice.random() < 0.1 else float(text)


def _text(dice: Random, clue: Clue) -> str:
    kind = clue.kind
    if isinstance(kind, Code):
        fields = kind.fields or dice.choice(kind.layouts).fields
        return "".join(
            dice.choice((*each.alphabet, UNREADABLE))
            for each in fields
            for _ in range(each.width)
        )
    if isinstance(kind, Measure):
        return f"{dice.uniform(kind.low, kind.high):.2f}"
    return str(dice.randint(kind.first[0][1], kind.last))


def keys_say(content: bytes) -> Said:
    """Whether what was read by these keys is a reading; the phone says what that is."""
    said = json.loads(content)
    guide = next(each for each in guides() if each.id == said["guide"])
    clue = next(each for each in guide.clues if each.id == said["clue"])
    if said["reading"] is None and not said["taken"]:
        # Nothing like a number was typed; a reading of nothing is another thing.
        return {"taken": False, "say": said["say"]}
    found = misfit(said["reading"], clue)
    return {"taken": found is None, "say": found.wrong if found else ""}


TARGETS = {
    "guide": Target(toml, toml_says, phone=False),
    "given": Target(given_guide, given_says, phone=True),
    "log": Target(log, log_says, phone=True),
    "find": Target(find, find_says, phone=False),
    "draft": Target(draft, None, phone=True),
    "keys": Target(keys, keys_say, phone=True),
}
