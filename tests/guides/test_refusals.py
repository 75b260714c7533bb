"""Every refusal of a guide and of a find, with the exact line that is printed."""

import re

import pytest

from fieldid.errors import FindError, GuideError
from fieldid.guides import finds, read
from fieldid.guides.load import load, loads
from fieldid.guides.refusals import REFUSALS
from make import PLOVER, lapwing, plover
from mistakes import TWENTY, cases, edited

FILE = "plover.toml"


def told(text: str | bytes) -> list[str]:
    """The lines that a guide's text is refused with."""
    content = text.encode() if isinstance(text, str) else text
    with pytest.raises(GuideError) as refused:
        loads(content, file=FILE, stem="plover")
    return str(refused.value).removeprefix(f"{FILE}:").split(f"\n{FILE}:")


def wrong(line: str) -> str:
    """A line without its remedy, which lists names that other mistakes change."""
    return line.partition("; would be right")[0]


@pytest.mark.parametrize("block", cases("refusals.txt"))
def test_guide_refusal_prints_its_line(block):
    text, lines = edited(block)

    assert told(text) == lines


@pytest.mark.parametrize("block", cases("find_refusals.txt"))
def test_find_refusal_prints_its_sentence(block):
    source, sentence = block.splitlines()
    text = lapwing().replace('replaced = "rarely"', "replaced = 0")
    without_set = loads(text.encode(), file="lapwing.toml", stem="lapwing")

    with pytest.raises(FindError) as refused:
        finds.load(source, [load(PLOVER), without_set])

    assert str(refused.value) == sentence


def test_twenty_mistakes_make_their_lines():
    """Two more than twenty; each is told once, with nothing that follows from it."""
    lines = told(plover(*TWENTY))

    places = [int(line.split(":")[0]) for line in lines]
    assert places == sorted(places)
    assert len(lines) == len(TWENTY)
    alone = [line for edit in TWENTY for line in told(plover(edit))]
    assert sorted(map(wrong, lines)) == sorted(map(wrong, alone))


def test_every_code_has_its_case():
    """A refusal that no case above or below prints could say anything."""
    printed = [line for block in cases("refusals.txt") for line in edited(block)[1]]
    printed += [block.splitlines()[1] for block in cases("find_refusals.txt")]
    elsewhere = {"unreadable", "not-utf-8", "too-large", "too-deep"}
    elsewhere |= {"include-circle", "include-broken", "include-clash"}

    for code in REFUSALS.keys() - elsewhere:
        assert any(shape(code).search(line) for line in printed), code


def shape(code: str) -> re.Pattern[str]:
    """What a line with this refusal looks like."""
    wrong, right = (
        re.sub(r"\\{\w+\\}", ".+", re.escape(template)) for template in REFUSALS[code]
    )
    return re.compile(f": {wrong}; would be right: {right}$")


def test_missing_file_is_refused(tmp_path):
    with pytest.raises(GuideError, match=r"gone\.toml: cannot be read: No such file"):
        load(tmp_path / "gone.toml")


def test_byte_that_is_no_text_names_its_line():
    text = plover().encode().replace(b"Ember Forge", b"Ember \xff Forge")

    assert told(text) == [
        "4: has a byte that is not UTF-8: 0xff; would be right: a file saved as UTF-8"
    ]


def test_huge_file_is_refused():
    lines = told(b"#" * (read.MOST_BYTES + 1))

    assert lines == [
        " is larger than 2000000 bytes; would be right: at most 2000000 bytes"
    ]


def nested(depth: int) -> list[str]:
    """What a picture of lists in lists is refused with."""
    deep = f"lines = {'[' * depth}{']' * depth}"
    return told(plover(('lines = ["A017"]', deep)))


def test_deep_nesting_is_refused():
    """Somewhere the stack ends, first in our own steps and then in TOML's: there
    and around it the mistake is one line.
    """
    first = next(d for d in range(100, 10_000, 20) if "too deeply" in nested(d)[0])

    for depth in range(first - 20, first + 20):
        [line] = nested(depth)
        assert "clue[3].picture: lines" in line or "is nested too deeply" in line


def test_endless_number_is_refused():
    lines = told(plover(("seconds = 8", f"seconds = {'9' * 5000}")))

    assert lines[0].startswith(" is not TOML: Exceeds the limit")


@pytest.mark.parametrize(
    ("old", "key", "wants"),
    [
        ("seconds = 8", "50: clue[1].seconds", "a number from 0.1 to 86400"),
        (
            'lines = ["A017"]',
            "96: clue[3].picture.lines",
            "text, a number, or a list of these",
        ),
    ],
)
def test_long_hexadecimal_number_is_refused(old, key, wants):
    """Python reads such a number and then refuses to print it."""
    new = f"{old.split()[0]} = 0x{'f' * 5000}"

    assert told(plover((old, new))) == [
        f"{key}: a number far too large does not fit here; would be right: {wants}"
    ]


def test_sizes_overlap_without_a_set_too():
    size = "{ years = 1953, mean = 7.0, sd = 0.3 }"
    twice = lapwing().replace("sd = 0.3 },", f"sd = 0.3 }}, {size}")

    with pytest.raises(GuideError, match="size 2 covers 1953 too"):
        loads(twice.encode(), file="lapwing.toml")
