"""The shared vectors, which the phone's engine runs too; see `make_vectors`.

That they are right is shown beside them: a sample agrees with the brute force.
"""

import json

import pytest

import make_vectors
import oracle
import vector_cases
from fieldid.engine import judge, prepare
from fieldid.engine.find import Measured
from fieldid.guides.pack import plain

GUIDES = {guide.id: guide for guide in make_vectors.guides()}
FILES = {path.stem: path for path in sorted(make_vectors.VECTORS.glob("*.json"))}
# The brute force takes all combinations of part states: only small guides and finds.
SMALL = ("ashlar-kittiwake", "fen-bittern", "lone-dunlin", "tarn-corncrake")
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


def test_sets_among_them_are_sixty_or_more():
    """Small and large, with strays, parts replaced on all, gone parts, unread members,
    claims, and the view of an online listing.
    """
    sets = [case for guide in FILES for case in stored(guide) if is_set(case)]
    members = [each for case in sets for each in case["verdict"]["members"]]
    kinds = [flag["kind"] for case in sets for flag in case["verdict"]["flags"]]
    items = [item for case in sets for item in case["find"]["items"]]

    assert len(sets) >= 60
    assert {2, 3, 10} <= {len(case["find"]["items"]) for case in sets}
    assert any(each["stray"] > 0.5 for each in members)
    assert {"stray", "whole-set", "missing", "gone", "claim"} <= set(kinds)
    assert any(item["gone"] for item in items)
    assert any(not item["readings"] for item in items)
    assert any(case["photos"] for case in sets)
    cited = [
        each
        for case in sets
        for each in (case["verdict"]["claim"] or {}).get("cited", ())
    ]
    assert {each["read"] for each in cited} == {True, False}


def is_set(case: dict) -> bool:
    return len(case["find"]["items"]) > 1


def read(item: dict) -> dict:
    """The readings by clue; a size with its error as the record that it is."""
    return {
        clue: Measured(**reading) if isinstance(reading, dict) else reading
        for clue, reading in item["readings"]
    }


def is_rough(case: dict) -> bool:
    return any(
        isinstance(reading, Measured)
        for item in case["find"]["items"]
        for reading in read(item).values()
    )


def sample(wanted) -> list[tuple[str, int]]:
    """Every few of the small guides' cases of one sort, and of those with errors."""
    found = []
    for guide in SMALL:
        cases = [(i, case) for i, case in enumerate(stored(guide)) if wanted(case)]
        few = [i for i, _ in cases[::EVERY]]
        rough = [i for i, case in cases if is_rough(case)][::2]
        found += [(guide, i) for i in sorted({*few, *rough})]
    return found


@pytest.mark.parametrize(("guide", "i"), sample(lambda case: not is_set(case)))
def test_vectors_agree_with_brute_force(guide, i):
    case = stored(guide)[i]
    item = case["find"]["items"][0]
    found = oracle.truth(GUIDES[guide], read(item), item["gone"], item["member"])
    verdict = case["verdict"]

    assert dict(verdict["model_years"]) == pytest.approx(found.years, abs=1e-9)
    assert verdict["outside"] == pytest.approx(found.outside, abs=1e-9)
    assert dict(verdict["built"]) == pytest.approx(found.built, abs=1e-9)
    assert verdict["log_evidence"] == pytest.approx(found.log_evidence, abs=1e-9)
    replaced = {part["part"]: part["probability"] for part in verdict["replaced"]}
    assert replaced == pytest.approx(found.replaced, abs=1e-9)


@pytest.mark.parametrize(("guide", "i"), sample(is_set))
def test_vectors_of_sets_agree_with_brute_force(guide, i):
    case = stored(guide)[i]
    items = [
        (standing(GUIDES[guide], item), item["gone"], item["member"])
        for item in case["find"]["items"]
    ]
    found = oracle.set_truth(GUIDES[guide], items)
    verdict = case["verdict"]

    assert dict(verdict["model_years"]) == pytest.approx(found.years, abs=1e-9)
    assert verdict["outside"] == pytest.approx(found.outside, abs=1e-9)
    strays = [each["stray"] for each in verdict["members"]]
    assert strays == pytest.approx(found.stray, abs=1e-9)
    for state in verdict["whole_set"]:
        wanted = found.whole_set[state["part"]]
        assert state["probability"] == pytest.approx(wanted, abs=1e-9)
    assert verdict["log_evidence"] == pytest.approx(found.log_evidence, abs=1e-9)


def standing(guide, item: dict) -> dict:
    """The readings that count: none on parts that are gone."""
    parts = {clue.id: clue.part for clue in guide.clues}
    return {c: a for c, a in read(item).items() if parts[c] not in item["gone"]}


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
    find, limits = vector_cases.cases(guide)[0]

    verdict = judge(prepare(guide), find, **limits)

    assert list(plain(verdict)) == list(verdict.__dataclass_fields__)
    assert list(stored(guide.id)[0]["verdict"]) == list(plain(verdict))
