"""The texts that pages were opened with, so that a change that somebody made meanwhile
can be told from one's own; forgotten when the server ends.
"""

from flask import Blueprint, current_app
from flask.blueprints import BlueprintSetupState

from fieldid.guides.document import Document

MOST = 30
"""Texts are some ten kilobytes; nobody has more forms open."""


def keep_memory(blueprint: Blueprint) -> None:
    """Lets the application of a blueprint remember texts."""

    def set_up(state: BlueprintSetupState) -> None:
        state.app.extensions["opened"] = {}

    blueprint.record(set_up)


def remember(document: Document) -> None:
    """Keeps the text of a file as it was opened; the one opened first is forgotten."""
    kept: dict[str, str] = current_app.extensions["opened"]
    others = [(tag, text) for tag, text in kept.items() if tag != document.tag]
    newest = (document.tag, document.text)
    current_app.extensions["opened"] = dict([*others, newest][-MOST:])


def remembered(tag: str) -> str:
    """The text with a tag; empty if it is not remembered."""
    kept: dict[str, str] = current_app.extensions["opened"]
    return kept.get(tag, "")
