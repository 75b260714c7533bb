"""Photographs that were never taken: flat things before a pinhole camera.

Shares no code with the phone: a plane with a tilt at a distance, points on it in
millimetres, and where a camera sees them in pixels.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

WIDTH, HEIGHT = 1600, 1200
CARD = np.array([[0.0, 0.0], [85.6, 0.0], [85.6, 53.98], [0.0, 53.98]])
Points = NDArray[np.float64]


@dataclass(frozen=True)
class Camera:
    """A camera that looks at a plane: how the plane lies before it, and its lens.

    `slope` is how much deeper the plane gets across and down the photo, for each
    millimetre; `distance` is that to the plane in the middle of the photo.
    """

    slope: tuple[float, float]
    distance: float
    focal: float

    def sees(self, points: Points) -> Points:
        """Points of the plane in pixels; the origin is in the middle of the photo."""
        a, b = self.slope
        across = np.array([1.0, 0.0, a]) / np.hypot(1, a)
        normal = np.array([-a, -b, 1.0]) / np.sqrt(1 + a * a + b * b)
        down = np.cross(normal, across)
        places = np.outer(points[:, 0], across) + np.outer(points[:, 1], down)
        places[:, 2] += self.distance
        return self.focal * places[:, :2] / places[:, 2:] + [WIDTH / 2, HEIGHT / 2]


def camera(dice: np.random.Generator, *, held: float) -> Camera:
    """One that is held above a plane by hand: off by `held` degrees each way."""
    slope = dice.normal(0, np.tan(np.radians(held)), 2)
    focal = dice.uniform(0.65, 0.85) * WIDTH
    return Camera((slope[0], slope[1]), dice.uniform(220, 420), focal)


def laid(points: Points, dice: np.random.Generator, *, around: float) -> Points:
    """The points turned at random and laid somewhere about the middle of the photo."""
    angle = dice.uniform(0, 2 * np.pi)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    return points @ turn.T + dice.uniform(-around, around, 2)


def rim(diameter: float, count: int) -> Points:
    """Points evenly around a coin."""
    angles = 2 * np.pi * np.arange(count) / count
    return diameter / 2 * np.stack([np.cos(angles), np.sin(angles)], axis=1)


def asked(scale: dict[str, Any], marks: Points, ends: Points) -> dict[str, Any]:
    """What the phone is asked for, as JSON."""
    return {
        "scale": scale,
        "marks": marks.tolist(),
        "ends": ends.tolist(),
        "photo": {"width": WIDTH, "height": HEIGHT},
    }


def inside(points: Points) -> bool:
    """Whether the photo shows all of the points."""
    return bool(np.all((points >= 0) & (points <= [WIDTH, HEIGHT])))
