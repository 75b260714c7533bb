"""The colours of static/css/tokens.css, as each kind of screen has them."""

import re

from fieldid.paths import STATIC

SCREENS = {
    "light": (),
    "dark": ("dark",),
    "more contrast": ("more",),
    "dark, more contrast": ("dark", "more"),
}
"""A kind of screen -> what its rules ask for beside what holds always."""

_RULE = re.compile(r"(?P<head>[^{}]+)\{(?P<body>[^{}]*)\}")
_MEDIA = re.compile(r"@media ([^{]+)\{((?:[^{}]*\{[^{}]*\})*)[^{}]*\}")
_TOKEN = re.compile(r"--([\w-]+):\s*([^;]+);")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_VAR = re.compile(r"var\(--([\w-]+)\)")


def colours(screen: str, text: str | None = None) -> dict[str, str]:
    """Token -> its colour, on this kind of screen."""
    if text is None:
        text = (STATIC / "css" / "tokens.css").read_text("utf-8")
    asked = SCREENS[screen]
    found: dict[str, str] = {}
    # All of them weigh the same, so that the last one counts.
    for wants, body in _rules(text):
        if wants <= {*asked}:
            found |= dict(_TOKEN.findall(body))
    return {name: _plain(value, found) for name, value in found.items()}


def _rules(text: str):
    """What each rule asks of the screen, and its declarations, in the file's order."""
    text = _COMMENT.sub("", text)
    while rule := re.search(rf"{_MEDIA.pattern}|{_RULE.pattern}", text):
        text = text[rule.end() :]
        if rule["head"]:
            yield _wants("", rule["head"]), rule["body"]
            continue
        for inner in _RULE.finditer(rule[2]):
            yield _wants(rule[1], inner["head"]), inner["body"]


def _wants(media: str, head: str) -> frozenset[str]:
    wants = {"dark"} if "[data-theme" in head else set()
    if "prefers-contrast: more" in media:
        wants.add("more")
    if re.search(r"width|height|motion", media):
        # Of sizes and motion alone, which are no colours.
        wants.add("other")
    return frozenset(wants)


def _plain(value: str, found: dict[str, str]) -> str:
    while used := _VAR.fullmatch(value.strip()):
        value = found[used[1]]
    return value.strip()
