"""The guides that come along: whole, light, and able to tell their years apart."""

import random

import pytest

from fieldid.build.budget import GUIDE, PACKERS
from fieldid.engine import prepare
from fieldid.engine.one import weigh
from fieldid.engine.range import brackets
from fieldid.guides.load import load
from fieldid.guides.pack import dump
from fieldid.guides.warnings import warnings
from fieldid.paths import RULES
from specimens import look, specimen

GUIDES = [
    pytest.param(load(path), id=path.stem) for path in sorted(RULES.glob("*.toml"))
]
SETS = [each for each in GUIDES if each.values[0].members]
YEARS = [each for each in GUIDES if not brackets(each.values[0])]


@pytest.mark.parametrize("guide", GUIDES)
def test_shipped_guide_has_no_warning(guide):
    assert warnings(guide) == ()


@pytest.mark.parametrize("guide", GUIDES)
def test_shipped_guide_is_light(guide):
    assert len(PACKERS[".br"](dump(guide))) < GUIDE


@pytest.mark.parametrize("guide", GUIDES)
def test_every_clue_says_what_to_photograph(guide):
    """A seller far away can be asked for any of them."""
    assert [clue.id for clue in guide.clues if not clue.photo or not clue.why] == []


@pytest.mark.parametrize("guide", SETS)
def test_every_member_has_a_name(guide):
    assert [member for member, _ in guide.members.names] == list(guide.members.all)


@pytest.mark.parametrize("guide", YEARS)
def test_simulated_specimens_get_their_year(guide):
    """Nine of ten at least, with smudged codes and lost parts among them."""
    tables, dice = prepare(guide), random.Random(1957)
    members = guide.members.usual if guide.members else (None,)
    right = []
    while len(right) < 300:
        found = specimen(guide, dice, dice.choice(members))
        if found.year is None:
            continue
        item = look(guide, found, dice, seen=1.0, lost=0.3)
        years = weigh(tables, item).years
        right.append(guide.years[years.index(max(years))].year == found.year)

    assert sum(right) / len(right) > 0.9
