"""Photographs to measure in: a card or a coin, and a bar in one plane with it."""

import io
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw

from camera import CARD, HEIGHT, WIDTH, Camera, Points, rim

GROUND, WHITE, BAR, METAL = "#2e3a33", "#f7f6f2", "#c9a24b", "#b9bcc0"
BAR_WIDE = 9.0
ROUND = 3.18
"""The radius of a card's corners."""
SHARP = 3
"""Drawn so many times larger and made smaller, so that edges are smooth."""


@dataclass(frozen=True)
class Taken:
    """A photo as a file, and where in it the points of its scale and the ends are."""

    file: bytes
    marks: Points
    ends: Points


def beside_card(long: float, camera: Camera) -> Taken:
    """A bar of that many millimetres below a card, as the camera sees them."""
    card = CARD - CARD.mean(axis=0) - [0, 22]
    return _taken(_rounded(card), card, WHITE, long, camera)


def beside_coin(long: float, diameter: float, camera: Camera, count: int) -> Taken:
    where = [60.0, 22.0]
    around = rim(diameter, 90) - where
    first = rim(diameter, count) - where
    return _taken(around, first, METAL, long, camera)


def _taken(
    shape: Points, marks: Points, colour: str, long: float, camera: Camera
) -> Taken:
    ends = np.array([[-long / 2, 30.0], [long / 2, 30.0]])
    half = np.array([0.0, BAR_WIDE / 2])
    bar = np.array([ends[0] - half, ends[1] - half, ends[1] + half, ends[0] + half])
    picture = Image.new("RGB", (WIDTH * SHARP, HEIGHT * SHARP), GROUND)
    pen = ImageDraw.Draw(picture)
    for flat, fill in ((shape, colour), (bar, BAR)):
        seen = camera.sees(flat) * SHARP
        pen.polygon([tuple(point) for point in seen], fill=fill)
    out = io.BytesIO()
    picture.resize((WIDTH, HEIGHT), Image.Resampling.BOX).save(out, "JPEG", quality=90)
    return Taken(out.getvalue(), camera.sees(marks), camera.sees(ends))


def _rounded(corners: Points) -> Points:
    """The outline of a card, its corners round."""
    middle = corners.mean(axis=0)
    outline = []
    for place, corner in enumerate(corners):
        centre = corner + ROUND * np.sign(middle - corner)
        angles = np.radians(180 + 90 * place + np.linspace(0, 90, 12))
        outline.append(centre + ROUND * np.stack([np.cos(angles), np.sin(angles)], 1))
    return np.concatenate(outline)
