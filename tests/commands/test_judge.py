"""`fieldid judge`, called as a person or a batch calls it."""

import io
import json
import os
import subprocess
import sys
from itertools import permutations
from pathlib import Path

import pytest

import hostile
from fieldid.cli import main
from make import PLOVER, plover

GUIDE = "wrackham-teale-dotterel"
FIND = {
    "format": 1,
    "guide": GUIDE,
    "items": [{"readings": {"toe-outline": "peaked", "pad": 7.0}, "gone": ["grip"]}],
}


def typed(content):
    """Standard input as Python opens it."""
    return io.TextIOWrapper(io.BufferedReader(io.BytesIO(content)))


@pytest.fixture
def run(capsys, monkeypatch):
    """Runs the command: (exit code, what it printed, what it complained of)."""

    def run(*arguments, stdin=b""):
        monkeypatch.setattr(sys, "stdin", typed(stdin))
        try:
            code = main(["judge", *arguments])
        except SystemExit as stop:
            code = stop.code
        return code, *capsys.readouterr()

    return run


def line(**changes):
    return json.dumps({**FIND, **changes}).encode() + b"\n"


def test_readings_become_a_story(run):
    code, out, err = run(GUIDE, "--read", "hosel-code=C624", "--gone", "grip")

    assert (code, err) == (0, "")
    assert "(invented)" in out
    assert "  1956 |####" in out
    assert "Runner-up" in out
    assert "  grip    gone" in out
    assert 'Ask: "Do you still have the grip?"' in out
    assert "not an authentication" in out


@pytest.mark.parametrize("mark", ["±", "+-", " ± "])
def test_size_may_have_its_error(run, mark):
    code, out, err = run(GUIDE, "--read", f"pad=7{mark}0.3")

    assert (code, err) == (0, "")
    assert "(7 mm, give or take 0.3)" in out


def test_bars_are_as_long_as_the_shares(run):
    _, out, _ = run(GUIDE, "--read", "hosel-code=C624")

    bars = [row.count("#") for row in out.splitlines() if " |" in row]
    assert len(bars) == 13
    assert max(bars) == bars[2] == 30


def test_claim_is_weighed(run):
    _, out, _ = run(
        GUIDE,
        *("--read", "face-scoring=dotted", "--claim", "1957"),
        *("--cites", "face-scoring"),
    )

    assert "The claim" in out
    assert "prove next to nothing" in out


def test_each_member_begins_the_next_object(run):
    code, out, err = run(
        GUIDE,
        *("--member", "6", "--read", "hosel-code=C724"),
        *("--member", "7", "--read", "hosel-code=C724", "--gone", "grip"),
        *("--member", "W", "--read", "sole-numerals=ringed"),
    )

    assert (code, err) == (0, "")
    assert "Sold as 3 to 9: the 3, 4, 5, 8 and 9 irons are missing" in out
    rows = [row.split() for row in out.splitlines()]
    assert ["6", "iron", "1957:"] in [row[:3] for row in rows]
    assert "  pitching wedge  leaning to 1962: " in out
    assert "The pitching wedge is probably a stray" in out
    assert "no alarm: it was often bought apart" in out
    assert 'Ask: "Do you still have the grip of the 7 iron?"' in out
    assert "On the whole set\n  shaft   not looked at\n" in out
    assert "The 6 iron: very strong evidence for 1957" in out
    assert "\nParts\n" not in out


def test_single_member_may_stand_anywhere(run):
    pairs = (("--member", "7"), ("--read", "pad=7"), ("--gone", "grip"))
    told = [
        run(GUIDE, "--json", *order[0], *order[1], *order[2])
        for order in permutations(pairs)
    ]

    assert len(set(told)) == 1
    assert json.loads(told[0][1])["next"][0]["member"] == "7"


def test_set_in_a_file_is_as_told(run):
    items = [
        {"member": "6", "readings": {"hosel-code": "C724"}},
        {"member": "W", "gone": ["grip"]},
    ]

    file = run(GUIDE, "--find", "-", "--json", stdin=line(items=items))
    told = run(
        GUIDE,
        *("--member", "6", "--read", "hosel-code=C724"),
        *("--member", "W", "--gone", "grip", "--json"),
    )

    assert file == told
    assert [each["member"] for each in json.loads(told[1])["stray"]] == ["6", "W"]


def test_unread_proof_is_weighed_beforehand(run):
    _, out, _ = run(GUIDE, "--claim", "1957", "--cites", "face-scoring")

    assert "What was read so far speaks neither for nor against 1957." in out
    assert "If read as on most 1957s (rows of dots), the face scoring alone " in out
    assert "would prove next to nothing: any of " in out


def test_message_follows_the_verdict(run):
    _, plain, _ = run(GUIDE, "--read", "pad=7", "--gone", "grip")
    _, out, _ = run(GUIDE, "--read", "pad=7", "--gone", "grip", "--message")

    assert out.startswith(plain)
    told = out.removeprefix(plain)
    assert told.startswith("A message to the seller\n\n  Hello,\n")
    assert "\n  - Do you still have the grip?\n" in told
    assert "\nThe same for a text message\n\n  Hello, I am interested in" in told


def test_message_is_in_the_json(run):
    finds = line() + b'{"format": 1}\n' + line()

    _, out, _ = run(GUIDE, "--find", "-", "--json", "--message", stdin=finds)

    first, bad, last = map(json.loads, out.splitlines())
    assert list(first["message"]) == ["long", "short"]
    assert first["message"]["short"].startswith("Hello, ")
    assert list(bad) == ["error"]
    assert first == last


def test_json_without_message_has_none(run):
    assert "message" not in json.loads(run(GUIDE, "--json")[1])


def test_photos_limit_what_is_next(run, tmp_path):
    guide = tmp_path / "plover.toml"
    guide.write_text(plover(("seconds = 8\n", 'seconds = 8\nphoto = "The collar"\n')))

    _, out, _ = run(str(guide), "--photos", "--json")

    assert [each["clue"] for each in json.loads(out)["next"]] == ["rings"]


def test_json_is_one_line(run):
    code, out, _ = run(GUIDE, "--read", "pad=7", "--read", "grip-cap=?", "--json")

    verdict = json.loads(out)
    assert code == 0
    assert out.count("\n") == 1
    assert verdict["guide"] == GUIDE
    assert "grip-cap" not in [advice["clue"] for advice in verdict["next"]]


def test_away_and_without_limit_what_is_next(run):
    _, away, _ = run(GUIDE, "--away", "--json")
    _, bare, _ = run(GUIDE, "--without", "callipers", "--json")

    assert "pad" not in [advice["clue"] for advice in json.loads(away)["next"]]
    assert "pad" not in [advice["clue"] for advice in json.loads(bare)["next"]]
    assert len(json.loads(away)["next"]) < len(json.loads(bare)["next"])


def test_find_on_several_lines_is_one(run, tmp_path):
    file = tmp_path / "find.json"
    file.write_text(json.dumps(FIND, indent=2))

    code, out, _ = run(GUIDE, "--find", str(file), "--json")

    assert code == 0
    assert len(out.splitlines()) == 1


def test_many_finds_come_back_in_their_order(run):
    finds = line() + line(items=[{"readings": {"hosel-code": "C624"}}]) + b"\n" + line()

    code, out, _ = run(GUIDE, "--find", "-", "--json", stdin=finds)

    first, second, third = map(json.loads, out.splitlines())
    assert code == 0
    assert first == third != second


def test_bad_line_costs_itself_only(run):
    finds = line() + b'{"format": 1}\n' + line()

    code, out, err = run(GUIDE, "--find", "-", "--json", stdin=finds)

    rows = [json.loads(row) for row in out.splitlines()]
    assert code == 1
    assert err.startswith("find:2: guide: ")
    assert err.count("\n") == 1
    assert [next(iter(row)) for row in rows] == ["guide", "error", "guide"]


@pytest.mark.parametrize(
    ("find", "sentence"),
    [
        (
            line(items=[{"readings": {"toe-outlin": "peaked"}}]),
            "'toe-outlin' is no clue of this guide; would be right: 'toe-outline'",
        ),
        (line(items=[{"readings": {"finds": "C6"}}]), "'finds' is no clue"),
        (line(items=[{"readings": {"hosel-code": "C6"}}]), "'C6'"),
        (line(items=[{"readings": {"pad": 999}}]), "999"),
        (line(guide="no-such-guide"), "'no-such-guide'"),
        (b"not json at all", "not JSON"),
        (b"", "not JSON"),
        (b"[" * 100_000, "find"),
        (b"\xff\xfe\x00", "UTF-8"),
        (b"x" * 50_000_000, "larger than"),
        (b"{" + b"x" * 5_000_000 + b"}\n", "larger than"),
    ],
)
def test_bad_find_is_one_clear_line(run, find, sentence):
    code, out, err = run(GUIDE, "--find", "-", stdin=find)

    assert (code, out) == (1, "")
    assert sentence in err
    assert err.count("\n") == 1
    assert len(err) < 500


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        ((GUIDE, "--read", "pad"), "write CLUE=READING"),
        ((GUIDE, "--read", "pad=1", "--read", "pad=2"), "stands twice"),
        ((GUIDE, "--cites", "pad"), "needs --claim"),
        (
            (GUIDE, "--read", "pad=7", "--member", "6", "--member", "7"),
            "--read 'pad=7' stands before the first --member",
        ),
        (
            (GUIDE, "--member", "6", "--read", "pad=1", "--read", "pad=2"),
            "stands twice",
        ),
        ((GUIDE, "--find", "-", "--member", "6"), "leave out"),
        ((GUIDE, "--find", "-", "--gone", "grip"), "leave out"),
        (("no-such-guide",), "there is no guide 'no-such-guide'"),
        ((), "GUIDE"),
        ((GUIDE, "--claim", "soon"), "invalid int value"),
    ],
)
def test_wrong_call_exits_with_two(run, arguments, sentence):
    code, out, err = run(*arguments)

    assert (code, out) == (2, "")
    assert sentence in err


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("--find", "/no/such/find.json"), "No such file"),
        (("--read", "pad=thick"), "'thick' is no number"),
        (("--read", "pad=7±thick"), "or one with its error as 6.1±0.2"),
        (("--read", "pad=7±0"), "the error 0.0 does not fit here"),
        (("--read", "pad=7±-1"), "the error -1.0 does not fit here"),
        (("--read", "pad=7±1±1"), "'7±1±1' is no number"),
        (("--read", "nonsense=1"), "'nonsense' is no clue"),
        (("--gone", "wheel"), "'wheel' is no part"),
        (("--claim", "1812"), "1812"),
        (("--member", "Q"), "'Q'"),
        (("--member", "6", "--member", "6"), "'6' is the member of items[1] too"),
        (("--member", "6", "--member", "w"), "'w' is no member of the set"),
        (("--member", "6", "--member", "7", "--claim", "1812"), "1812"),
        (("--member", "6") * 40, "has 40 items, and the set has 10 members"),
    ],
)
def test_problem_in_what_was_read_exits_with_one(run, arguments, sentence):
    code, out, err = run(GUIDE, *arguments)

    assert (code, out) == (1, "")
    assert sentence in err
    assert err.count("\n") == 1


def test_guide_can_be_a_file(run, tmp_path):
    broken = tmp_path / "broken.toml"
    broken.write_text("format = 1\n")

    code, _, err = run(str(broken))

    assert code == 1
    assert "broken.toml:" in err


def test_find_names_its_own_guide(run):
    named = run(GUIDE, "--find", "-", "--json", stdin=line())
    other = line(guide="wrackham-teale-whimbrel", items=[{"readings": {}}])
    code, out, err = run("--find", "-", "--json", stdin=line() + other)

    first, second = out.splitlines()
    assert (code, err) == (0, "")
    assert f"{first}\n" == named[1]
    assert json.loads(second)["guide"] == "wrackham-teale-whimbrel"


def log(*finds, **changes):
    """A log as a phone exports it."""
    kept = [{"id": "a", "title": "Iron", "find": find} for find in finds]
    whole = {"format": 1, "app": "fieldid", "finds": kept, **changes}
    return json.dumps(whole, indent=1).encode()


def test_log_is_judged_find_by_find(run, tmp_path):
    other = {**FIND, "guide": "wrackham-teale-whimbrel", "items": [{}]}
    file = tmp_path / "finds.json"
    file.write_bytes(log(FIND, other))

    code, out, err = run("--find", str(file), "--json")

    assert (code, err) == (0, "")
    lines = line() + line(guide=other["guide"], items=[{}])
    assert out == run("--find", "-", "--json", stdin=lines)[1]
    assert run("--find", str(file))[1].count("(invented)") == 2


def test_zip_of_all_finds_is_judged_as_its_list(run, tmp_path):
    """The file of all finds, as a phone saves it."""
    packed, alone = tmp_path / "finds.zip", tmp_path / "finds.json"
    alone.write_bytes(log(FIND))
    packed.write_bytes(hostile.pack(("finds.json", log(FIND))))

    assert run("--find", str(packed)) == run("--find", str(alone))


def test_zip_comes_through_a_pipe(run):
    """As from a process, and on standard input."""
    packed = hostile.pack(("finds.json", log(FIND)))
    reading, writing = os.pipe()
    os.write(writing, packed)
    os.close(writing)
    _, piped, _ = run("--find", f"/dev/fd/{reading}")
    os.close(reading)

    assert piped == run("--find", "-", stdin=log(FIND))[1]
    assert piped == run("--find", "-", stdin=packed)[1]


def test_zip_without_finds_is_one_clear_line(run, tmp_path):
    file = tmp_path / "finds.zip"
    file.write_bytes(hostile.pack())

    code, out, err = run("--find", str(file))

    assert (code, out) == (1, "")
    assert err == f"{file}: This ZIP file holds no finds.json, so it has no finds.\n"


def test_damaged_zip_is_one_clear_line(run, tmp_path):
    file = tmp_path / "finds.zip"
    file.write_bytes(hostile.pack(("finds.json", log(FIND)))[:-9])

    code, out, err = run("--find", str(file))

    assert (code, out) == (1, "")
    assert err == f"{file}: This is no ZIP file, or its end is missing.\n"


PHONE = Path(__file__).parents[2] / "static" / "phone"
EXPORT = """
const [, phone, finds] = process.argv;
const { findsText } = await import(`${phone}/log/archive.js`);
const own = { prices: [{ guide: "a" }], wants: [{ id: "b" }, { id: "c" }] };
const kept = JSON.parse(finds).map((find) => JSON.stringify({ find }));
process.stdout.write(findsText(kept, own));
"""


def test_log_is_judged_with_wants_beside_it(run):
    """Just as the phone writes it; what its owner wants is nothing to judge."""
    told = [PHONE.as_uri(), json.dumps([FIND, FIND])]
    command = ["node", "--input-type=module", "-e", EXPORT, *told]
    made = subprocess.run(command, capture_output=True, check=True).stdout
    assert b'"own":{"prices":[' in made

    code, out, err = run("--find", "-", "--json", stdin=made)

    assert (code, err) == (0, "")
    assert out == run("--find", "-", "--json", stdin=log(FIND, FIND))[1]


def test_log_may_stand_on_one_line(run):
    one = log(FIND, FIND).replace(b"\n", b"")
    [expected] = run(GUIDE, "--find", "-", "--json", stdin=line())[1].splitlines()

    for stdin in (one, one + b"\n", one + b"\n" + line()):
        code, out, _ = run(GUIDE, "--find", "-", "--json", stdin=stdin)

        assert code == 0
        assert set(out.splitlines()) == {expected}
        assert len(out.splitlines()) == 2 + stdin.endswith(line())


@pytest.mark.parametrize("notes", ["x" * 600_000, "x" * 999_900 + "}" * 200])
def test_log_may_be_larger_than_a_find(run, notes):
    """Also where what is read first breaks off at a brace, and so looks whole."""
    kept = [
        {"note": notes, "find": FIND},
        {"find": FIND},
        {"note": notes, "find": FIND},
    ]
    log = json.dumps({"finds": kept, "format": 1, "app": "fieldid"}).encode()

    code, out, err = run(GUIDE, "--find", "-", "--json", stdin=log)

    assert (code, err) == (0, "")
    assert out.count("\n") == 3


def test_bad_find_in_a_log_is_named_by_its_place(run):
    bad = {**FIND, "items": [{"readings": {"toe-outlin": "peaked"}}]}

    code, out, err = run("--find", "-", "--json", stdin=log(FIND, bad, FIND))

    assert code == 1
    assert err.startswith("find: finds[2].find.items[1].readings.toe-outlin: ")
    assert [next(iter(json.loads(row))) for row in out.splitlines()] == [
        "guide",
        "error",
        "guide",
    ]


@pytest.mark.parametrize(
    ("source", "sentence"),
    [
        (log(FIND, format=2), "find: format: format 2 cannot be read by this version"),
        (log(FIND, app="other"), "find: app: 'other' does not fit here"),
        (log(FIND, more=1), "find: more: is not a key that is known here"),
        (log(finds={}), "find: finds: a table does not fit here"),
        (log(7).replace(b'"find":', b'"fund":'), "find: finds[1].find: is missing"),
        (log(None), "find: finds[1].find: is missing"),
        (log(json.dumps(FIND)), 'find: finds[1].find: \'{"format"'),
        (log(finds=[7]), "find: finds[1]: 7 does not fit here"),
        (log({**FIND, "format": 2}), "find: finds[1].find.format: format 2"),
        (log({**FIND, "guide": "none"}), "find: finds[1].find.guide: 'none' is no"),
        (log(FIND)[:-5], "not JSON"),
        (log(finds=["x" * 10_000_000]), "larger than 10000000 bytes"),
        (b'{"finds": ' * 100_000, "nested too deeply"),
    ],
)
def test_bad_log_is_one_clear_line(run, source, sentence):
    code, out, err = run("--find", "-", stdin=source)

    assert (code, out) == (1, "")
    assert sentence in err
    assert err.count("\n") == 1
    assert len(err) < 500


def test_empty_log_has_nothing_to_judge(run):
    assert run("--find", "-", stdin=log()) == (0, "", "")


def test_nothing_to_judge_is_a_wrong_call(run):
    code, out, err = run("--read", "pad=7")

    assert (code, out) == (2, "")
    assert "judge needs a GUIDE, or a file with --find" in err


def test_numbers_are_read_as_whole_ones(run):
    guide = str(PLOVER)

    code, out, err = run(guide, "--read", "serial=4200", "--read", "mark=?")
    wrong, _, told = run(guide, "--read", "serial=4200a")

    assert (code, err, wrong) == (0, "", 1)
    assert "Runner-up" in out
    assert told.endswith("'4200a' is no number; would be right: digits alone\n")
