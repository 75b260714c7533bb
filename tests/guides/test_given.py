"""Guides as files that are given: what is written, what is refused, and that the phone
refuses the same.
"""

import json
import random
import subprocess
from copy import deepcopy
from dataclasses import fields
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from fieldid import draw
from fieldid.draw.nodes import Node
from fieldid.draw.params import Number, OneOf, Several, checks
from fieldid.engine import guide as records
from fieldid.guides import given
from fieldid.guides.givenfit import misfits
from fieldid.guides.givenshape import described
from fieldid.guides.load import load
from fieldid.guides.pack import dump, plain
from fieldid.paths import RULES
from make_given import base, found, stale

SHIPPED = sorted(RULES.glob("*.toml"))
TWIN = Path(__file__).parents[1] / "js" / "given-twin.js"
DRAWN = {"is": "drawing"}
MANY = 2000


def file_of(text: str, **said: Any) -> bytes:
    """The file of a text, with its head as it should be but for what is said."""
    packed = text.encode()
    head = {"app": "fieldid", "kind": "guide", "format": 1}
    head |= {"sha256": sha256(packed).hexdigest()} | said
    return json.dumps(head).encode() + b"\n" + packed + b"\n"


def refused(content: bytes) -> str:
    with pytest.raises(given.GivenError) as caught:
        given.taken(content)
    return str(caught.value)


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_shipped_guide_can_be_given(path):
    """The second line is what the app fetches, byte for byte."""
    guide = load(path)

    content = given.written(guide)

    assert content.split(b"\n")[1] == dump(guide)
    assert given.taken(content)["id"] == guide.id


def test_files_of_the_phone_are_fresh():
    """Else: python tests/make_given.py"""
    assert stale() == []


def test_description_names_every_field_of_a_guide():
    named = [name for name, _ in described()["fields"]]

    assert named == [*(each.name for each in fields(records.Guide)), "scene", "own"]


def test_every_scene_is_a_drawing_that_may_be_given():
    told = [told for name in draw.SCENES for told in wrong_in(draw.scene(name))]

    assert told == []


def wrong_in(node: Node) -> list[str]:
    return [told.wrong for _, told in misfits(plain(node), DRAWN)]


@pytest.mark.parametrize("name", draw.SHAPES)
def test_every_shape_may_be_given(name):
    """With all that it can be told, the most of each and the least."""
    told = []
    for most in (True, False):
        known = checks(draw.SHAPES[name]).items()
        picture = (name, tuple((key, example(check, most)) for key, check in known))
        assert draw.problems(picture) == ()
        told += wrong_in(draw.node(picture))

    assert told == []


def example(check: Any, most: bool) -> Any:
    match check:
        case OneOf():
            return check.words[-1 if most else 0]
        case Number():
            return check.high if most else check.low
        case Several():
            count = check.most if most else check.least
            return tuple(example(check.each, most) for _ in range(count))
    return "A" * check.most if most else "A"


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "is no file of a guide"),
        (b"\xff\xd8\xff\xe0", "has a byte that is not UTF-8: 0xff"),
        (b"<html></html>", "is no file of a guide"),
        (file_of("[]"), "is no file of a guide"),
        (file_of("{", app="other"), "is no file of a guide"),
        (file_of("{}", kind="find"), "is no file of a guide"),
        (file_of("{}", extra=1), "is no file of a guide"),
        (file_of("{}", sha256="0"), "is not what it was when it was given"),
        (file_of("{}"), "is no file of a guide"),
        (file_of("NaN"), "is no file of a guide"),
        (file_of('{"format": 2}'), "format 2 cannot be read by this version"),
        (file_of("{}", format=2), "format 2 cannot be read by this version"),
        (file_of('{"format": true}'), "is no file of a guide"),
        (file_of("{}", format=True), "is no file of a guide"),
        (file_of("[" * 100_000), "is nested too deeply"),
        (b" " * (given.MOST_BYTES + 1), "is larger than 1500000 bytes"),
    ],
)
def test_what_is_no_guide_is_refused(content, says):
    assert refused(content) == says


def test_file_that_went_through_mail_is_taken():
    """Ends of lines were changed, and a mark was put before it all."""
    content = given.written(load(SHIPPED[0])).replace(b"\n", b"\r\n")

    assert given.taken(b"\xef\xbb\xbf" + content)["id"] == SHIPPED[0].stem


def test_refusal_names_the_first_and_counts_the_rest():
    packed = base() | {"title": 5, "kind": 6, "about": 7}

    told = refused(file_of(json.dumps(packed)))

    assert told == "title: 5 does not fit here (and 2 more)"


def test_number_is_whole_however_it_is_written():
    text = dump(load(SHIPPED[0])).decode()

    assert given.taken(file_of(text.replace('"format":1,', '"format":1.0,', 1)))


STRANGE: tuple[Any, ...] = (
    *(None, True, 0, -1, 1.5, 1e300, 10**20, 7e-7, "", " ", "a", "head", "'\"\\\n"),
    *("\u202e\u00e9", "x" * 5000, [], {}, [1951, 1950], ["a", "a"], [["a", 1]]),
    *({"name": "choice"}, ["svg", [], []], ["g", [["class", "drawing"]], ["t"]], 23500),
)
"""Values to put where others belong."""


Place = tuple[str | int, ...]


def places(value: Any, path: Place = ()) -> list[Place]:
    """Where there is a value in a guide; a drawing is one, since it has so many."""
    inner = value.items() if isinstance(value, dict) else enumerate(value)
    found: list[Place] = []
    for key, each in inner:
        at = (*path, key)
        is_one = key in ("scene", "picture") or not isinstance(each, dict | list)
        found += [at] if is_one else [at, *places(each, at)]
    return found


def value_at(guide: Any, path: Place) -> Any:
    for key in path:
        guide = guide[key]
    return guide


def strange(lot: random.Random, guide: dict[str, Any]) -> dict[str, Any]:
    """A guide with one to four of its values changed, dropped or doubled by lot."""
    made = deepcopy(guide)
    for _ in range(lot.randint(1, 4)):
        known = places(made)
        path = lot.choice(known)
        under = named(path)
        alike = [value_at(made, each) for each in known if named(each) == under]
        _changed(lot, value_at(made, path[:-1]), path[-1], alike)
    return made


def named(path: Place) -> Any:
    """The key that a value is under, be it in a list."""
    return next((key for key in reversed(path) if isinstance(key, str)), None)


def _changed(lot: random.Random, at: Any, key: Any, alike: list[Any]) -> None:
    """Most often to what has the right form at least, so that it is looked into."""
    among = [each for each in alike if type(each) is type(at[key])]
    if isinstance(at, list) and lot.random() < 0.3:
        at.append(deepcopy(at[key]))
    elif type(at[key]) is int and lot.random() < 0.5:
        at[key] += lot.choice((-100, -1, 1, 100))
    elif isinstance(at[key], list) and lot.random() < 0.5:
        at[key] = []
    elif lot.random() < 0.9:
        at[key] = deepcopy(lot.choice(among))
    elif lot.random() < 0.2:
        del at[key]
    else:
        at[key] = deepcopy(lot.choice(STRANGE))


def test_phone_says_the_same_of_strange_guides():
    """Guides with mistakes by lot: the same places, codes and words; and what both take
    can be judged with.
    """
    lot = random.Random(1951)
    guide = base()
    guides = [strange(lot, guide) for _ in range(MANY)]
    lines = "".join(f"{json.dumps(each)}\n" for each in guides)

    said = subprocess.run(
        ["node", TWIN], input=lines, check=True, capture_output=True, text=True
    )

    phone = [json.loads(line) for line in said.stdout.splitlines()]
    here = [found(given.parsed(json.dumps(each))) for each in guides]
    pairs = [*zip(here, phone, strict=True)]
    assert [pair for pair in pairs if pair[0] and pair[0] != pair[1]][:3] == []
    assert all(sums == pytest.approx(1) for told, sums in pairs if not told)
    assert MANY / 2 < sum(map(bool, here)) < MANY * 0.8
    assert len({code for told in here for _, code, _ in told}) > 28
