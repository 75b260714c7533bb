"""Key paths to line numbers, over everything that TOML can write."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldid.guides.lines import line_of, lines
from make import plover

TEXT = '''# a comment = 1
top = 1 # "quoted"

"quoted key" = "a # b"
dotted . 'k.ey' = 1979-05-27 07:32:00
[model]
floor = 0.5

[[clue]]
id = """
several
\\""" lines"""
list = [
  1, # one
  [2, 3],

  { a = 1, b = [
    "]" ] },
]
  [[clue.option]]
  id = 'x'
  [clue.option.deep."a]b"]
  n = 1.5e3
  [[clue.option]]
  seen = [{ years = "[", to = '{' }, {}, []]
[[clue]]
raw = \'\'\'
'quoted''
\'\'\'
last = true
'''

KEYS = {
    ("top",): 2,
    ("quoted key",): 4,
    ("dotted",): 5,
    ("dotted", "k.ey"): 5,
    ("model",): 6,
    ("model", "floor"): 7,
    ("clue",): 9,
    ("clue", 0): 9,
    ("clue", 0, "id"): 10,
    ("clue", 0, "list"): 13,
    ("clue", 0, "list", 0): 14,
    ("clue", 0, "list", 1): 15,
    ("clue", 0, "list", 1, 1): 15,
    ("clue", 0, "list", 2): 17,
    ("clue", 0, "list", 2, "b"): 17,
    ("clue", 0, "list", 2, "b", 0): 18,
    ("clue", 0, "option", 0): 20,
    ("clue", 0, "option", 0, "id"): 21,
    ("clue", 0, "option", 0, "deep", "a]b"): 22,
    ("clue", 0, "option", 0, "deep", "a]b", "n"): 23,
    ("clue", 0, "option", 1): 24,
    ("clue", 0, "option", 1, "seen", 0, "to"): 25,
    ("clue", 0, "option", 1, "seen", 2): 25,
    ("clue", 1): 26,
    ("clue", 1, "raw"): 27,
    ("clue", 1, "last"): 30,
}


@pytest.mark.parametrize("path", KEYS)
def test_key_has_its_line(path):
    assert lines(TEXT)[path] == KEYS[path]


@pytest.mark.parametrize("text", [TEXT, plover()], ids=["odd", "plover"])
def test_every_key_and_nothing_else_has_a_line(text):
    assert set(lines(text)) == {(), *paths(tomllib.loads(text))}


def test_missing_key_has_the_line_of_its_table():
    assert line_of(lines(TEXT), ("clue", 0, "option", 1, "label")) == 24
    assert line_of(lines(TEXT), ("title",)) == 1


def test_table_alone_stands_for_a_list_of_one():
    text = "[[flag]]\n[flag.when]\nis = 1\n"

    assert line_of(lines(text), ("flag", 0, "when", 0, "is")) == 3
    assert line_of(lines(text), ("flag", 0, "when", 0, "clue")) == 2


def paths(value, path=()):
    """The paths of all keys and list elements in a parsed table."""
    pairs = value.items() if isinstance(value, dict) else enumerate(value)
    for key, inner in pairs:
        yield (*path, key)
        if isinstance(inner, dict | list):
            yield from paths(inner, (*path, key))


WORDS = st.text("ab\"'\\#[]{}=,. \n?", max_size=6)
VALUES = st.recursive(
    st.booleans() | st.floats(allow_nan=False) | st.integers() | WORDS,
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3)
    ),
    max_leaves=8,
)


def written(value) -> str:
    """A value as TOML, its lists spread over lines."""
    if isinstance(value, dict):
        return (
            "{ "
            + ", ".join(f"{quoted(k)} = {written(v)}" for k, v in value.items())
            + " }"
        )
    if isinstance(value, list):
        return "[ # [\n" + ",\n".join(map(written, value)) + "\n]"
    return quoted(value) if isinstance(value, str) else str(value).lower()


def quoted(text: str) -> str:
    marked = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + marked.replace("\n", "\\n") + '"'


@given(st.dictionaries(WORDS, VALUES, max_size=4))
def test_any_value_is_walked_to_its_end(table):
    text = "".join(f"{quoted(k)} = {written(v)}\n" for k, v in table.items())
    parsed = tomllib.loads(text)

    assert set(lines(text)) == {(), *paths(parsed)}
    starts = [
        i + 1
        for i, line in enumerate(text.split("\n"))
        if line.startswith(tuple(f"{quoted(k)} = " for k in table))
    ]
    assert set(starts) >= {lines(text)[(key,)] for key in table}
