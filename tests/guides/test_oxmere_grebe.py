"""The reel guide reads numbers, stamps and patents as its history tells them."""

import pytest

from fieldid.engine import judge, prepare
from fieldid.engine.find import Claim
from fieldid.guides.load import load
from fieldid.paths import RULES
from make import find

GUIDE = load(RULES / "oxmere-grebe.toml")
TABLES = prepare(GUIDE)


def judged(claim=None, **readings):
    """The verdict on a reel; an underscore stands for a clue's hyphen."""
    read = {clue.replace("_", "-"): reading for clue, reading in readings.items()}
    return judge(TABLES, find(read, claim=claim, guide=GUIDE.id))


def leads(verdict):
    """The model years that are not ruled out, the likeliest first."""
    likely = [(p, year) for year, p in verdict.model_years if p > 0.03]
    return [year for _, year in sorted(likely, reverse=True)]


def asked(verdict):
    """What the guide's own flags say."""
    return "".join(flag.say for flag in verdict.flags if flag.kind == "guide")


@pytest.mark.parametrize(
    ("serial", "years"),
    [
        (150, {1947}),
        (9500, {1953, 1954}),
        (12086, {1955, 1956}),
        (17000, {1958, 1959}),
        (19300, {1960}),
    ],
)
def test_serial_tells_the_calendar_year(serial, years):
    """What was built in autumn belongs to the next model year."""
    assert set(leads(judged(serial=serial))) == years


def test_every_month_of_building_has_numbers():
    [serial] = [clue.kind for clue in GUIDE.clues if clue.id == "serial"]
    built = {t // 12 for y in GUIDE.years for t in range(y.opens, y.closes + 1)}

    assert {year for year, _ in serial.first} == built


@pytest.mark.parametrize(
    ("serial", "odd"), [(8507, False), (8508, True), (9000, True), (9001, False)]
)
def test_skipped_numbers_raise_a_flag(serial, odd):
    assert ("never used" in asked(judged(serial=serial))) == odd


@pytest.mark.parametrize(
    ("serial", "regatta"), [(6200, False), (6201, True), (6600, True), (6601, False)]
)
def test_regatta_numbers_want_bronze(serial, regatta):
    said = asked(judged(serial=serial, finish="black"))

    assert ("painted again" in said) == regatta
    assert "painted again" not in asked(judged(serial=serial, finish="bronze"))


def test_regatta_spool_belongs_to_its_number():
    other = judged(serial=6300, drum_holes="slots")
    own = judged(serial=6300, drum_holes="petals")

    assert "from another reel" in asked(other)
    assert "from another reel" not in asked(own)
    assert own.leading == 1951


@pytest.mark.parametrize(
    ("stamp", "years"),
    [
        ("R1", {1948, 1949}),
        ("F4", {1951, 1952}),
        ("O2", {1952, 1953, 1954}),
        ("2755", {1955}),
    ],
)
def test_stamp_is_read_in_either_layout(stamp, years):
    assert set(leads(judged(foot_stamp=stamp))) == years


def test_week_tells_the_autumn_from_the_spring():
    assert judged(foot_stamp="0856").leading == 1956
    assert judged(foot_stamp="4856").leading == 1957


def test_letter_that_was_never_cut_is_flagged():
    assert "never cut" in asked(judged(foot_stamp="L3"))
    assert "never cut" not in asked(judged(foot_stamp="O3"))


def test_patent_bounds_the_start_alone():
    """A patent of 1955 stays on later reels and is on none before it."""
    years = dict(judged(patent=45000).model_years)

    assert sum(p for year, p in years.items() if year < 1955) < 0.15
    assert min(years[year] for year in (1955, 1956, 1957)) > 0.1


def test_patent_younger_than_the_number_is_flagged():
    found = judged(serial=6000, patent=47900)
    agreeing = judged(serial=6000, patent=41500)

    assert "disagree" in [flag.kind for flag in found.flags]
    assert "disagree" not in [flag.kind for flag in agreeing.flags]


def test_bronze_alone_proves_nothing():
    """No year falls to half of what it was, since all could be had in bronze."""
    before = judged().model_years
    found = judged(Claim(1951, ("finish",)), finish="bronze")

    assert found.claim.bayes_factor < 3
    assert "proves nothing" in asked(found)
    for (_, was), (_, is_now) in zip(before, found.model_years, strict=True):
        assert is_now > was / 2


def test_check_tells_the_reissue_apart():
    looks = {"drum_holes": "none", "knob": "ball", "foot_ends": "spear"}
    modern = judged(**looks, check_wheel="slanted")

    assert dict(modern.model_years)[1958] > 0.75
    assert judged(**looks, check_wheel="coarse").leading < 1950
