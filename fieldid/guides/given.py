"""A guide as a file that is given to somebody: two lines of text. The first says what
it is and the hash of the second, which is the packed guide, byte for byte as the app
fetches it. The phone's twin is `guests/file.js`.

It is text, and called so, because phones hand on texts to any other app, and of JSON
only some.
"""

import json
from hashlib import sha256
from itertools import islice
from typing import Any, NoReturn

from fieldid.engine.guide import FORMAT, Guide
from fieldid.errors import FieldidError
from fieldid.guides.givenfit import given, misfits
from fieldid.guides.givenshape import described
from fieldid.guides.giventables import problems
from fieldid.guides.pack import dump
from fieldid.guides.refusals import Finding, Refusal, place, refusal

MOST_BYTES = 1_500_000
"""The largest guide that comes with fieldid has a ninth of it."""
MOST_DEEP = 60
MOST_HEAD = 400
MOST_TOLD = 10
"""Of so many mistakes each is named; who was given a guide cannot mend it."""
FILE_FORMAT = 1
"""The form of the file; the guide in it has one of its own."""
_HEAD = {"app": "fieldid", "kind": "guide", "format": FILE_FORMAT}


class GivenError(FieldidError):
    """A file that holds no guide which could be judged with; one sentence."""

    def __init__(self, found: list[Finding]) -> None:
        self.found = found
        super().__init__(_sentence(found))


def written(guide: Guide) -> bytes:
    """The file; a GivenError if a phone would not take it."""
    packed = dump(guide)
    told = {**_HEAD, "sha256": sha256(packed).hexdigest()}
    head = json.dumps(told, separators=(",", ":"))
    whole = b"\n".join((head.encode(), packed, b""))
    taken(whole)
    return whole


def taken(content: bytes) -> dict[str, Any]:
    """The packed guide of a file, or a GivenError with what is wrong with it."""
    said = parsed(_checked(content))
    if not _is_of(said, FORMAT):
        _refuse(_later(said))
    packed: dict[str, Any] = said
    found = list(islice(misfits(packed, described()), MOST_TOLD))
    # What has the wrong form cannot be looked into.
    found = found or problems(packed)[:MOST_TOLD]
    if found:
        raise GivenError(found)
    return packed


def _checked(content: bytes) -> str:
    """The second line, if the first says what it is and its hash."""
    if len(content) > MOST_BYTES:
        _refuse(refusal("too-large", most=MOST_BYTES))
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        byte = f"0x{error.object[error.start]:02x}"
        _refuse(refusal("not-utf-8", value=byte))
    # Mail may have changed how lines end.
    head, _, rest = text.partition("\n")
    said = _head(head.strip())
    if not _is_of(said, FILE_FORMAT):
        _refuse(_later(said))
    body = rest.strip("\r\n ")
    if sha256(body.encode()).hexdigest() != said["sha256"]:
        _refuse(given("damaged"))
    return body


def _head(line: str) -> dict[str, Any]:
    try:
        said = json.loads(line) if len(line) <= MOST_HEAD else None
    except (ValueError, RecursionError):
        said = None
    keys = [*_HEAD, "sha256"]
    if not isinstance(said, dict) or sorted(said) != sorted(keys):
        _refuse(given("no-guide"))
    if [said[key] for key in ("app", "kind")] != ["fieldid", "guide"]:
        _refuse(given("no-guide"))
    return said


def parsed(text: str) -> Any:
    """The value of a JSON text; a GivenError if it is none."""
    try:
        return json.loads(text, parse_float=_number, parse_constant=_no_number)
    except RecursionError:
        _refuse(refusal("too-deep"))
    except ValueError:
        _refuse(given("no-guide"))


def _number(text: str) -> float:
    """The number; a whole one is whole however it is written, as in JavaScript."""
    number = float(text)
    return int(number) if number.is_integer() else number


def _no_number(word: str) -> NoReturn:
    raise ValueError(word)


def _is_of(said: Any, known: int) -> bool:
    """Whether it is a table of this format; to Python, true is a 1."""
    value = said.get("format") if isinstance(said, dict) else None
    return not isinstance(value, bool) and bool(value == known)


def _later(said: Any) -> Refusal:
    """Whatever is no format that is known here may be one of a newer fieldid."""
    value = said.get("format") if isinstance(said, dict) else None
    if isinstance(value, int) and not isinstance(value, bool) and value > FORMAT:
        return refusal("later-format", value=value, known=FORMAT)
    return given("no-guide")


def _refuse(told: Refusal) -> NoReturn:
    raise GivenError([((), told)])


def _sentence(found: list[Finding]) -> str:
    path, told = found[0]
    where = f"{place(path)}: " if path else ""
    more = len(found) - 1
    others = f" (and {more} more)" if more else ""
    return f"{where}{told.wrong}{others}"
