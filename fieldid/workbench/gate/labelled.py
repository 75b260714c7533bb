"""What a form calls its fields, carried along by the form itself.

A form that comes from before a restart, or from a session that has ended, cannot be
taken and its page not be opened for it; what was typed is then shown again by the words
that stood over it.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

LABEL = "label."
"""Begins the name of the hidden field with the words of another."""
INNER = ("csrf_token", "password", "tag", "was", "do", "step", "take")
"""What a form says that nobody typed, and what is never shown."""
NAMELESS = "A field without a name"
LONGEST = 100_000
"""So much of a field is shown again."""


def label_name(name: str) -> str:
    """The name of the hidden field that says what a field is called."""
    return LABEL + name


def labelled(input: Any, before: str = "") -> str:
    """The words over a field of a form, and those of each choice in it; `before` says
    in which line of a list it stands.
    """
    label = ": ".join(filter(None, (before, input.label.text)))
    return json.dumps([label, dict(_choices(input))], ensure_ascii=False)


def asked(sent: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str]]:
    """What was typed, in its order, by the words of the form; what was left empty is
    left out. None of it is to be trusted.
    """
    pairs = list(sent)
    words = {name: value for name, value in pairs if name.startswith(LABEL)}
    for name, value in pairs:
        if name in INNER or name in words or not value.strip():
            continue
        label, choices = _said(words.get(label_name(name), ""))
        yield label or NAMELESS, choices.get(value, value)[:LONGEST]


def _choices(input: Any) -> Iterator[tuple[str, str]]:
    if input.type == "BooleanField":
        yield "y", "yes"
    elif hasattr(input, "iter_choices"):
        for each in input.iter_choices():
            value, words = each[:2]
            yield str(value), str(words)


def _said(text: str) -> tuple[str, Mapping[str, str]]:
    """The words that a form brought along, if they are what ours brings."""
    try:
        label, choices = json.loads(text)
    except (ValueError, TypeError, RecursionError):
        return "", {}
    if not isinstance(label, str) or not isinstance(choices, dict):
        return "", {}
    known = {key: each for key, each in choices.items() if isinstance(each, str)}
    return label[:LONGEST], known
