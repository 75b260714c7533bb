"""`fieldid judge`, called as a person or a batch calls it."""

import io
import json
import sys

import pytest

from fieldid.cli import main

GUIDE = "wrackham-teale-dotterel"
FIND = {
    "format": 1,
    "guide": GUIDE,
    "items": [{"readings": {"toe-outline": "peaked", "pad": 7.0}, "gone": ["grip"]}],
}


@pytest.fixture
def run(capsys, monkeypatch):
    """Runs the command: (exit code, what it printed, what it complained of)."""

    def run(*arguments, stdin=b""):
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin)))
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
        (("--read", "nonsense=1"), "'nonsense' is no clue"),
        (("--gone", "wheel"), "'wheel' is no part"),
        (("--claim", "1812"), "1812"),
        (("--member", "Q"), "'Q'"),
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
