"""The shared vectors, which the phone's engine runs too; see `make_vectors`.

That they are right is shown beside them: a sample agrees with the brute force.
"""

import json

import pytest

import make_vectors
import oracle
from fieldid.engine import judge, prepare
from fieldid.guides.pack import plain

GUIDES = {guide.id: guide for guide in make_vectors.guides()}
FILES = {path.stem: path for path in sorted(make_vectors.VECTORS.glob("*.json"))}
# The brute force takes all combinations of part states: only small guides and finds.
SMALL = ("ashlar-kittiwake", "lone-dunlin", "tarn-corncrake")
EVERY = 12


def stored(guide: str) -> list[dict]:
    return json.loads(FILES[guide].read_text())["cases"]


def test_every_guide_has_vectors():
    assert sorted(FILES) == sorted(GUIDES)


def test_vectors_are_three_hundred_or_more():
    assert sum(len(stored(guide)) for guide in FILES) >= 300


@pytest.mark.parametrize("guide", GUIDES)
def test_vectors_are_what_python_says(guide):
    """The finds are drawn again too, so that the file follows its maker."""
    assert make_vectors.stale(GUIDES[guide]) == []


@pytest.mark.parametrize(
    ("guide", "i"),
    [(guide, i) for guide in SMALL for i in range(0, len(stored(guide)), EVERY)],
)
def test_vectors_agree_with_brute_force(guide, i):
    case = stored(guide)[i]
    item = case["find"]["items"][0]
    found = oracle.truth(
        GUIDES[guide], dict(item["readings"]), item["gone"], item["member"]
    )
    verdict = case["verdict"]

    assert dict(verdict["model_years"]) == pytest.approx(found.years, abs=1e-9)
    assert verdict["outside"] == pytest.approx(found.outside, abs=1e-9)
    assert dict(verdict["built"]) == pytest.approx(found.built, abs=1e-9)
    assert verdict["log_evidence"] == pytest.approx(found.log_evidence, abs=1e-9)
    replaced = {part["part"]: part["probability"] for part in verdict["replaced"]}
    assert replaced == pytest.approx(found.replaced, abs=1e-9)


def test_differences_names_the_place():
    case = stored("lone-dunlin")[0]
    other = json.loads(json.dumps(case))
    other["verdict"]["model_years"][0][1] += 2e-9
    other["verdict"]["say"] += "."

    told = list(make_vectors.differences(other, case))

    assert [line.split(":")[0] for line in told] == [
        "[verdict][model_years][0][1]",
        "[verdict][say]",
    ]


def test_plain_verdict_is_all_of_it():
    """What the vectors hold is the whole verdict, so nothing escapes comparison."""
    guide = GUIDES["lone-dunlin"]
    find, limits = make_vectors.cases(guide)[0]

    verdict = judge(prepare(guide), find, **limits)

    assert list(plain(verdict)) == list(verdict.__dataclass_fields__)
    assert list(stored(guide.id)[0]["verdict"]) == list(plain(verdict))
