"""`fieldid census`: what it prints and what it writes."""

import json
import shutil
from datetime import date

import pytest

import make_census
from fieldid.census.read import beside
from fieldid.cli import main
from fieldid.guides.load import load
from fieldid.paths import RULES

DOTTEREL = RULES / "wrackham-teale-dotterel.toml"


@pytest.fixture
def copied(tmp_path):
    """The guide and its census, to be written to."""
    for path in (DOTTEREL, beside(DOTTEREL)):
        shutil.copy(path, tmp_path / path.name)
    return tmp_path / DOTTEREL.name


def test_census_that_comes_along_is_the_one_drawn():
    assert beside(DOTTEREL).read_text("utf-8") == make_census.census()


def test_disagreements_are_told_first(capsys):
    assert main(["census", DOTTEREL.stem]) == 0

    out, err = capsys.readouterr()
    top = out[out.index("Disagreements") :].splitlines()
    assert "44 specimens, 39 of a known year" in out
    assert "The shares settled after" in out
    assert top[1] == "  face-scoring.lines.1 (long lines; 1954-1965)"
    assert top[2].endswith("the guide expects 34 %; disagrees: very strong")
    assert "  grip-cap.red-lantern.1 (red with a lantern; 1957-1958)" in top
    assert (
        out.index("Disagreements") < out.index("\nAgree\n") < out.index("\nSeen where")
    )
    assert "  grip-cap.red-star: seen 4 times where no span of it holds: 1958" in out
    assert err == ""


def test_json_has_the_same_figures(capsys):
    assert main(["census", str(DOTTEREL), "--json"]) == 0

    told = json.loads(capsys.readouterr().out)
    first = told["proposals"][0]
    assert (told["specimens"], told["settled"]) == (44, True)
    assert told["heights"][0] < told["heights"][1]
    assert (first["name"], first["count"]) == ("face-scoring.lines.1", "28/41")
    assert first["low"] < first["proposed"] < first["high"]
    agrees = [each["agrees"] for each in told["proposals"]]
    assert agrees == sorted(agrees)
    assert told["unforeseen"][0]["option"] == "red-star"


def test_accepted_counts_are_written(copied, capsys):
    before = copied.read_text("utf-8")
    assert main(["census", str(copied), "--accept", "face-scoring.lines"]) == 0

    out, _ = capsys.readouterr()
    after = copied.read_text("utf-8")
    assert 'face-scoring.lines.1: share = "28/41"' in out
    assert 'seen = [{ years = "1954-1965", share = "28/41" }]' in after
    assert f'source = "census of 44 specimens, {date.today():%Y-%m}"' in after
    assert len(after.splitlines()) == len(before.splitlines()) + 1
    assert "# 1964 brought pattern 21 back" in after


def test_all_that_disagree_are_accepted_at_once(copied, capsys):
    assert main(["census", str(copied), "--accept-all", "--json"]) == 0

    told = json.loads(capsys.readouterr().out)
    text = copied.read_text("utf-8")
    disagree = [each for each in told["proposals"] if not each["agrees"]]
    assert len(disagree) > 3
    assert all(f'share = "{each["count"]}"' in text for each in disagree)
    options = {(each["clue"], each["option"]) for each in disagree}
    assert text.count('source = "census of 44') == len(options)
    assert load(copied).updated == date.today().isoformat()


def test_census_beside_a_copy_is_another(copied, capsys):
    beside(copied).write_text("specimen,model_year,how\nA,1999,family\n", "utf-8")

    assert main(["census", str(copied)]) == 1
    assert "2: model_year: '1999' does not say a model year" in capsys.readouterr().err
    assert main(["census", str(copied), "--census", str(beside(DOTTEREL))]) == 0


@pytest.mark.parametrize(
    "more",
    [["--accept", "face"], ["--accept", "pad"], ["--accept", "x", "--accept-all"]],
)
def test_wrong_call_writes_nothing(copied, capsys, more):
    before = copied.read_bytes()

    assert main(["census", str(copied), *more]) == 2
    assert capsys.readouterr().err
    assert copied.read_bytes() == before


def test_guide_without_a_census_is_told(capsys):
    assert main(["census", "oxmere-grebe"]) == 1

    assert "oxmere-grebe.census.csv: cannot be read" in capsys.readouterr().err
