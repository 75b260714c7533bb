"""The pages followed word for word on a clean machine, in the order of the reader.

Every command is typed as it stands there, or `followed.toml` says how else and why.
"""

import re
import shutil
import tomllib
from dataclasses import dataclass
from pathlib import Path
from urllib.request import urlopen

import pytest

from cleanmachine import PORT, ROOT, Machine
from pages import Block, blocks, spans

PAGES = ("README.md", "DEVELOPERS.md", "rules/README.md")
ELSEWHERE = tomllib.loads((Path(__file__).parent / "followed.toml").read_text())
INSTEAD = {each["command"]: each["run"] for each in ELSEWHERE["instead"]}
APART = [each["command"] for each in ELSEWHERE["apart"]]
NAMES = ELSEWHERE["names"]["names"]
SERVES = re.compile(r"(?:^|&& )\S*fieldid serve\b")
LOCAL = re.compile(r"<(http://(?:127\.0\.0\.1|localhost):\d+/[^>]*)>")
OMITTED = "…"


@dataclass(frozen=True, slots=True)
class Step:
    """A command, the addresses beside it, and what the page says that it prints."""

    command: str
    addresses: tuple[str, ...]
    prints: str


def steps(page: str) -> list[Step]:
    """The commands of a page, in its order."""
    found = blocks(page)
    steps = {
        block.at: Step(block.text.strip(), (), _printed(found[i + 1 : i + 2]))
        for i, block in enumerate(found)
        if block.language == "sh"
    }
    steps |= {
        span.at: Step(span.text, (), "")
        for span in spans(page)
        if is_command(span.text)
    }
    return [
        Step(
            steps[at].command, tuple(LOCAL.findall(_around(page, at))), steps[at].prints
        )
        for at in sorted(steps)
    ]


def is_command(code: str) -> bool:
    """Whether somebody would type it into a terminal."""
    bare = re.sub(r"^(?:[A-Z_]+=\S* )*", "", code)
    first, _, rest = bare.partition(" ")
    if first.startswith(".venv/bin/") or first == "fieldid":
        return bool(rest) or first != "fieldid"
    return bool(rest) and (first == "." or is_program(first))


def is_program(word: str) -> bool:
    return (
        re.fullmatch(r"\w[\w.-]*", word) is not None and shutil.which(word) is not None
    )


def _printed(after: list[Block]) -> str:
    """The block of text behind a command is what it prints."""
    return "".join(block.text for block in after if block.language == "text")


def _around(page: str, at: int) -> str:
    """The line of a command; for a block, the line before it."""
    start = page.rfind("\n", 0, max(at - 2, 0)) + 1
    return page[start : page.find("\n", at)]


@pytest.fixture
def machine(tmp_path):
    """Its environment is large, so nothing of it is left behind."""
    yield Machine(tmp_path / "fieldid")
    shutil.rmtree(tmp_path / "fieldid")


def test_pages_are_followed_word_for_word(machine):
    followed = set(APART)
    for page in PAGES:
        text = (machine.folder / page).read_text()
        give(machine, page, text)
        for step in steps(text):
            command = as_followed(step.command)
            if command not in followed:
                follow(machine, command, step)
                followed.add(command)
        for each in ELSEWHERE["made"]:
            assert each["page"] != page or (machine.folder / each["file"]).exists()


def give(machine: Machine, page: str, text: str) -> None:
    """Puts there what the reader has by then."""
    for each in ELSEWHERE["given"]:
        if each["page"] == page:
            found = [b.text for b in blocks(text) if b.language == each.get("block")]
            machine.write(each["file"], each.get("text") or found[0])


def as_followed(command: str) -> str:
    """The command that is typed where this one stands."""
    return f"{command} --help" if command in NAMES else INSTEAD.get(command, command)


def follow(machine: Machine, command: str, step: Step) -> None:
    if SERVES.search(command):
        with machine.serving(command) as (said, port):
            fetch(said, step.addresses, port)
        return
    said = machine.run(command)
    assert is_quoted(step.prints, said), f"{command}\nprints:\n{said}"


def fetch(said: str, addresses: tuple[str, ...], port: int) -> None:
    """Every address that the command prints or that stands beside it has a page."""
    told = re.findall(r"http://\S+", said)
    beside = [each.replace(f":{PORT}/", f":{port}/") for each in addresses]
    assert told, said
    for address in {*told, *beside}:
        with urlopen(address, timeout=60) as answer:
            assert b"fieldid" in answer.read(), address


def is_quoted(quoted: str, said: str) -> bool:
    """Whether the lines stand there in this order; what is left out may be anything."""
    at = 0
    for passage in re.split(rf"^{OMITTED}\n", quoted, flags=re.MULTILINE):
        found = f"\n{said}".find(f"\n{passage}", at)
        if found < 0:
            return False
        at = found + len(passage)
    return True


def test_what_is_followed_otherwise_stands_on_a_page():
    typed = {
        step.command for page in PAGES for step in steps((ROOT / page).read_text())
    }

    assert {*INSTEAD, *APART, *NAMES} <= typed


def test_what_is_followed_otherwise_has_a_reason():
    assert all(each["why"] for each in ELSEWHERE["instead"] + ELSEWHERE["apart"])


def test_quoted_lines_are_found_in_their_order():
    said = "one\ntwo\nthree\nfour\n"

    assert is_quoted("one\ntwo\n…\nfour\n", said)
    assert not is_quoted("two\n…\none\n", said)
    assert not is_quoted("one\nthree\n", said)
    assert not is_quoted("wo\n", said)


def test_commands_are_told_from_other_code():
    typed = [
        "sh x",
        ".venv/bin/mypy",
        "fieldid check",
        "A=1 sh x",
        ". .venv/bin/activate",
    ]
    named = [
        "fieldid",
        "[ ]",
        "key = value",
        "site",
        "judge(tables, find)",
        "--port 8001",
    ]

    assert [code for code in typed + named if is_command(code)] == typed
