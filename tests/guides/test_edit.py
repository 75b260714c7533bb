"""One thing of a guide's text changes, and every other byte stays."""

import difflib
import tomllib
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldid.guides.edit import added, drop, moved, put
from fieldid.guides.load import loads
from fieldid.guides.walk import Walk
from make import plover

TEXT = """\
# A guide.
id = "a"   # its name

[[part]] # first
id = "head"
# why so often
replaced = 0.1

# The shaft is
# a part, too.
[[part]]
id = "shaft"
follows = { part = "head", share = 0.5 }

[[clue]]
id = "rings"

  [[clue.option]]
  id = "green"
  seen = [
    # early
    { years = 1951, share = "41/43" }, # counted
    { years = 1952 }
  ]

  [[clue.option]]
  id = "none"
  seen = [{ years = 1951 }, { years = 1953 }]

[set]
members = ["3", "4"]
# the end
"""


def changed(before, after):
    """The lines that went and came."""
    lines = difflib.ndiff(before.splitlines(), after.splitlines())
    return [line for line in lines if line[0] in "+-"]


def test_value_changes_in_its_place():
    after = put(TEXT, ("clue", 0, "option", 0, "seen", 0, "share"), 0.5)

    assert changed(TEXT, after) == [
        '-     { years = 1951, share = "41/43" }, # counted',
        "+     { years = 1951, share = 0.5 }, # counted",
    ]


def test_same_value_changes_nothing():
    text = "a = 1_000\nb = 0x10\nc = '''x'''\nd = 2026-02-01\ne = { f = 1 }\n"
    for key, value in tomllib.loads(text).items():
        assert put(text, (key,), value) == text


def test_value_of_another_kind_is_another():
    assert put("a = 1\n", ("a",), True) == "a = true\n"
    assert put("a = 1\n", ("a",), 1.0) == "a = 1.0\n"


@pytest.mark.parametrize(
    ("path", "value", "line"),
    [
        (("title",), "A", '+ title = "A"'),
        (("part", 0, "name"), "x", '+ name = "x"'),
        (("clue", 0, "option", 1, "label"), "no", '+   label = "no"'),
        (("part", 1, "note x"), date(2026, 2, 1), '+ "note x" = 2026-02-01'),
        (("set", "stray_for"), {"3": 0.5}, "+ stray_for = { 3 = 0.5 }"),
    ],
)
def test_new_key_stands_below_the_others(path, value, line):
    assert changed(TEXT, put(TEXT, path, value)) == [line]


def test_new_key_joins_an_inline_table():
    after = put(TEXT, ("clue", 0, "option", 1, "seen", 1, "fade"), 3)

    assert "{ years = 1953, fade = 3 }]" in after


def test_new_table_stands_where_guides_have_it():
    after = put(TEXT, ("model", "floor"), 0.01)

    assert after.index("[model]\nfloor = 0.01\n\n[[part]]") > after.index("id =")
    assert put("", ("model", "floor"), 0.01) == "[model]\nfloor = 0.01\n"


def test_new_key_beside_one_that_is_dotted():
    assert put("model.floor = 1\n", ("model", "misread"), 2) == (
        "model.floor = 1\nmodel.misread = 2\n"
    )
    assert put("[a.b]\nc = 1\n", ("a", "d"), 2) == "[a]\nd = 2\n\n[a.b]\nc = 1\n"


def test_table_under_a_header_takes_over_keys():
    after = put(TEXT, ("set",), {"members": ["3"], "stray": 0.1})

    assert after.endswith('[set]\nmembers = ["3"]\nstray = 0.1\n# the end\n')
    assert "usual" not in after


def test_long_text_is_broken_into_lines():
    about = 'He said ""so"" \\ and "more". ' * 9 + '\n\n  The end"""'
    after = put("about = 1\nx = 2\n", ("about",), about)

    assert tomllib.loads(after) == {"about": about, "x": 2}
    assert max(map(len, after.splitlines())) < 92


def test_dropped_key_takes_its_line():
    after = drop(TEXT, ("part", 0, "replaced"))

    assert changed(TEXT, after) == ["- replaced = 0.1"]
    assert drop(TEXT, ("part", 0, "name")) == TEXT


def test_dropped_table_takes_its_comments():
    after = drop(TEXT, ("part", 1))

    assert "# The shaft is" not in after
    assert "replaced = 0.1\n\n[[clue]]" in after


def test_dropped_span_takes_its_line_or_its_comma():
    after = drop(TEXT, ("clue", 0, "option", 0, "seen", 0))
    assert len(changed(TEXT, after)) == 1
    assert "counted" not in after

    after = drop(TEXT, ("clue", 0, "option", 1, "seen", 1))
    assert "seen = [{ years = 1951 }]" in after
    assert "seen = []" in drop(after, ("clue", 0, "option", 1, "seen", 0))


def test_added_option_stands_below_the_last():
    after = added(TEXT, ("clue", 0, "option"), {"id": "x", "seen": [{"years": 1951}]})

    assert (
        "  seen = [{ years = 1951 }, { years = 1953 }]\n\n"
        '  [[clue.option]]\n  id = "x"\n  seen = [{ years = 1951 }]\n\n[set]\n'
    ) in after


def test_first_option_is_added_below_its_clue():
    text = drop(drop(TEXT, ("clue", 0, "option", 0)), ("clue", 0, "option", 0))
    after = added(text, ("clue", 0, "option"), {"id": "x"})

    assert '[[clue]]\nid = "rings"\n\n  [[clue.option]]\n  id = "x"\n\n[set]' in after


def test_added_span_follows_its_list():
    after = added(TEXT, ("clue", 0, "option", 0, "seen"), {"years": 1954})
    assert changed(TEXT, after) == [
        "-     { years = 1952 }",
        "+     { years = 1952 },",
        "+     { years = 1954 }",
    ]

    after = added(TEXT, ("clue", 0, "option", 1, "seen"), {"years": 1954})
    assert "{ years = 1953 }, { years = 1954 }]" in after


def test_list_too_long_for_its_line_is_broken():
    text = TEXT
    for year in range(1954, 1958):
        text = added(text, ("clue", 0, "option", 1, "seen"), {"years": year})

    assert "  seen = [\n    { years = 1951 },\n" in text
    assert "    { years = 1957 },\n  ]\n" in text


def test_moved_table_takes_comments_along():
    after = moved(TEXT, ("part", 1), -1)

    assert after.index("# The shaft is\n# a part") < after.index("[[part]] # first")
    assert moved(after, ("part", 0), 1) == TEXT
    assert moved(TEXT, ("part", 0), -1) == TEXT


def test_what_stands_apart_moves_together():
    """TOML lets another table stand between a clue and the next one."""
    text = plover()
    after = moved(text, ("clue", 4), -2)

    ids = [clue["id"] for clue in tomllib.loads(after)["clue"]]
    assert ids == ["rings", "pad", "serial", "stamp", "band", "patent", "mark"]
    assert {**tomllib.loads(after), "clue": 0} == {**tomllib.loads(text), "clue": 0}
    loads(after.encode(), file="plover.toml")


def test_path_that_leads_nowhere_is_an_error():
    for path in (("clue", 3), ("clue", 3, "id"), ("part", 0, "x", 2)):
        with pytest.raises(LookupError):
            put(TEXT, path, 1)


# Any guide that has been written by somebody, in several layouts.
SCALARS = st.one_of(
    st.booleans(),
    st.integers(-5, 3000),
    st.floats(0, 1).map(lambda x: round(x, 3)),
    st.dates(),
    st.text(st.characters(codec="utf-8", exclude_characters="\r"), max_size=120),
)
SMALL = st.dictionaries(st.sampled_from(["abc", "d"]), SCALARS, max_size=3)
LAYOUTS = [
    TEXT,
    plover(),
    'a = [1, [2, 3], { b = "x" }]\nm.n.o = 1\nm.n.p = { q = {} }\n[t.u]\nv = []\n',
    "x = [\n  1, # one\n  # two\n  2\n]\n[[part]]\n[[part]]\n[[part.a]]\n[s]\n#end",
]


def paths(data, path=()):
    """Every path of what was read."""
    pairs = data.items() if isinstance(data, dict) else enumerate(data)
    for key, value in pairs:
        yield (*path, key)
        if isinstance(value, dict | list):
            yield from paths(value, (*path, key))


def at(data, path):
    for key in path:
        data = data[key]
    return data


@pytest.mark.parametrize("text", LAYOUTS)
@given(lot=st.data())
def test_edits_do_what_they_say(text, lot):
    """The same changes to what was read; and no other line is touched."""
    for _ in range(4):
        data = tomllib.loads(text)
        path = lot.draw(st.sampled_from([*paths(data), ()]))
        act = lot.draw(st.sampled_from([one_put, one_key, one_drop, one_add, one_move]))
        after = act(text, data, path, lot)
        assert tomllib.loads(after) == pruned(data, tomllib.loads(after))
        text = after


def one_put(text, data, path, lot):
    if not path or isinstance(at(data, path), dict | list):
        return text
    value = lot.draw(SCALARS)
    after, at(data, path[:-1])[path[-1]] = put(text, path, value), value
    piece = Walk(text).pieces[path]
    assert after.startswith(text[: piece.value])
    assert after.endswith(text[piece.stop :])
    return after


def one_key(text, data, path, lot):
    table = at(data, path)
    if not isinstance(table, dict):
        return text
    key, table[key] = lot.draw(st.tuples(st.sampled_from(["n", "n 2"]), SCALARS))
    return put(text, (*path, key), table[key])


def one_drop(text, data, path, lot):
    if not path:
        return text
    parent = at(data, path[:-1])
    del parent[path[-1]]
    # The last table under a header takes the list along.
    if parent == [] and path[:-1] not in Walk(text).pieces:
        del at(data, path[:-2])[path[-2]]
    return drop(text, path)


def one_add(text, data, path, lot):
    tables = at(data, path)
    if not is_tables(tables):
        return text
    tables.append(lot.draw(SMALL))
    return added(text, path, tables[-1])


def one_move(text, data, path, lot):
    if not path or not isinstance(parent := at(data, path[:-1]), list):
        return text
    place = path[-1]
    step = lot.draw(st.sampled_from([-1, 1]))
    if 0 <= place + step < len(parent):
        parent[place], parent[place + step] = parent[place + step], parent[place]
    return moved(text, path, step)


def is_tables(value):
    return isinstance(value, list) and all(isinstance(v, dict) for v in value)


def pruned(data, like):
    """Without tables that only their pairs made: no header, no table."""
    return {
        key: pruned(value, like[key])
        if isinstance(value, dict) and key in like
        else value
        for key, value in data.items()
        if key in like or not isinstance(value, dict) or any_value(value)
    }


def any_value(value):
    if isinstance(value, dict):
        return any(map(any_value, value.values()))
    return True
