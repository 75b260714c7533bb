"""A few mistakes for all that reads what people wrote; `feed.py` makes more."""

import json
from base64 import b64decode
from pathlib import Path

import pytest
import targets

import fuzz
from fuzz import cases, faults

KNOWN = json.loads((Path(__file__).parent / "known.json").read_text())
SEEDS = range(40)


def test_no_mistake_is_more_than_refused():
    """Neither a traceback nor a hang, always a sentence, and the same on the phone."""
    assert faults(cases(SEEDS)) == []


@pytest.mark.parametrize("name", KNOWN)
def test_what_once_went_wrong_stays_mended(name):
    target, content = KNOWN[name]

    assert faults([(target, b64decode(content))]) == []


def test_same_seed_makes_the_same_case():
    assert cases(range(3)) == cases(range(3))
    assert len(set(cases(range(9), ["guide"]))) > 5


def test_crash_hang_and_parting_are_seen(monkeypatch):
    """What the dice never throw is thrown here: each way to go wrong is told."""
    [case] = cases([1], ["find"])

    def told(say):
        monkeypatch.setitem(
            fuzz.TARGETS, "find", targets.Target(targets.find, say, False)
        )
        return [each.why for each in faults([case])]

    def busy(_):
        while True:
            pass

    monkeypatch.setattr(targets, "SECONDS", 0.2)
    assert "ZeroDivisionError" in told(lambda _: 1 / 0)[0]
    assert "no answer" in told(busy)[0]
    assert "without a word" in told(lambda _: {"taken": False, "say": " "})[0]
    assert told(lambda _: {"taken": True}) == []
    keys = targets.Target(
        targets.keys, lambda _: {"taken": False, "say": "no"}, phone=True
    )
    monkeypatch.setitem(fuzz.TARGETS, "keys", keys)
    assert "the phone:" in faults(cases([1], ["keys"]))[0].why
