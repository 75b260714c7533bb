"""What the works stamped into steel: hosel codes and the mark on the back."""

from collections.abc import Iterator
from math import cos, sin
from typing import Annotated

from fieldid.draw.devices import DEVICES, device
from fieldid.draw.letters import breadth, word
from fieldid.draw.nodes import (
    FINE,
    Node,
    black,
    body,
    canvas,
    group,
    line,
    tag,
    tone,
)
from fieldid.draw.params import CODE, OneOf, Several, Stamped, Words

HIGH, SPACE = 30, 16
"""The letters of a code as shown large, and the space between its fields."""


def stamp(
    *,
    fields: Annotated[tuple[str, ...], Several(Stamped(4), most=4, least=1)],
    names: Annotated[tuple[str, ...], Several(Words(12), most=4, least=1)],
) -> Node:
    """How a stamped code reads: its fields, each with its name under a bracket."""
    widths = [breadth(field, HIGH) for field in fields]
    left = 88 - (sum(widths) + SPACE * (len(fields) - 1)) / 2
    parts: list[Node] = []
    for field, name, width in zip(fields, names, widths, strict=False):
        parts += _field(field, name, left + width / 2, width)
        left += width + SPACE
    return canvas(body("M4 10Q88 2 172 10V78Q88 86 4 78Z"), *parts, width=176)


def hosel(
    *,
    lines: Annotated[tuple[str, ...], Several(Stamped(7), most=2), CODE] = (),
    setting: Annotated[str, OneOf(("along", "across", "round"))] = "across",
) -> Node:
    """The hosel under its collar, with what is stamped on it and how it is set."""
    marks = {"along": _along, "across": _across, "round": _round}[setting]
    return canvas(
        body("M18 90L21 14H67L70 90Z"),
        tone("M57 90L56 15H66L69 90Z"),
        black("M24 -2H64L67 14H21Z"),
        *marks(lines),
    )


def backstamp(
    *,
    device: Annotated[str, OneOf(DEVICES)] = "none",
    words: Annotated[str, Stamped(8)] = "",
    setting: Annotated[str, OneOf(("under", "over", "ring", "bar"))] = "under",
) -> Node:
    """The mark in the middle of the back: an emblem, words, and how they are set."""
    return canvas(tone("M0 0H88V88H0Z"), *_mark(device, words, setting))


def _field(text: str, name: str, middle: float, width: float) -> tuple[Node, ...]:
    half = width / 2 + 3
    bracket = f"M{middle - half:.4g} 51v5h{2 * half:.4g}v-5"
    caption = tag(
        "text",
        name,
        class_="drawing__words",
        x=middle,
        y=70,
        font_size=11,
        text_anchor="middle",
    )
    letters = word(text, middle=(middle, 31), height=HIGH, weight=3.2)
    return letters, line(bracket, stroke_width=FINE), caption


def _along(lines: tuple[str, ...]) -> Iterator[Node]:
    left = 42 - 9 * (len(lines) - 1)
    for at, text in enumerate(lines):
        letters = word(text, middle=(0, 0), height=13, weight=2.4)
        yield group(letters, transform=f"translate({left + 18 * at} 50) rotate(-90)")


def _across(lines: tuple[str, ...]) -> Iterator[Node]:
    top = 52 - 11 * (len(lines) - 1)
    for at, text in enumerate(lines):
        yield word(text, middle=(42, top + 22 * at), height=15, weight=2.4)


def _round(lines: tuple[str, ...]) -> Iterator[Node]:
    """Letters that run round the hosel: they drop and narrow towards its edges."""
    for row, text in enumerate(lines):
        for at, letter in enumerate(text):
            turn = (at - (len(text) - 1) / 2) * 0.5
            x, drop = 44 + 23 * sin(turn), 12 * (1 - cos(turn))
            shape = word(letter, middle=(0, 0), height=14, weight=2.4)
            place = f"translate({x:.4g} {46 + 20 * row - drop:.4g})"
            narrow = f"rotate({-turn * 16:.3g}) scale({cos(turn):.3g} 1)"
            yield group(shape, transform=f"{place} {narrow}")


def _mark(emblem: str, words: str, setting: str) -> tuple[Node, ...]:
    height = min(14.0, 14 * 76 / max(76, breadth(words, 14)))
    text = [word(words, middle=(0, 0), height=height, weight=2.2)] if words else []

    def at(y: float) -> list[Node]:
        return [group(each, transform=f"translate(44 {y})") for each in text]

    if setting == "under":
        return (device(emblem, middle=(44, 34), size=44), *at(72))
    if setting == "over":
        return (*at(17), device(emblem, middle=(44, 54), size=44))
    if setting == "bar":
        rules = line("M6 30H82M6 58H82", stroke_width=2.5)
        return (rules, *at(44))
    ring = line("M44 5A39 39 0 1 1 43.9 5Z")
    return (ring, device(emblem, middle=(44, 36), size=36), *at(67))
