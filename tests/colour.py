"""Colours as eyes see them: contrast, distance, colour-blind and grey.

Contrast is that of WCAG 2.2, the distance CIEDE2000 as Sharma, Wu and Dalal wrote it
down (Color Research and Application 30, 2005), colour blindness that of Machado,
Oliveira and Fernandes (IEEE Transactions on Visualization and Computer Graphics 15,
2009) at full severity, on linear light.
"""

import math
import re

Triple = tuple[float, float, float]

EYES = {
    "any eye": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "no red": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "no green": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "no blue": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
    "grey": ((0.2126, 0.7152, 0.0722),) * 3,
}
"""Whose eyes -> what becomes of linear red, green and blue."""

XYZ = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
"""Linear sRGB to CIE XYZ (IEC 61966-2-1)."""
WHITE = (0.95047, 1.0, 1.08883)
"""The white of daylight, D65."""
FAR = 25.0**7


def linear(colour: str) -> Triple:
    """A colour as it is written, `#rgb` or `#rrggbb`, in parts of linear light."""
    digits = re.fullmatch(r"#(?:([0-9a-f]{3})|([0-9a-f]{6}))", colour)
    assert digits, f"{colour} is no colour that is written in figures"
    whole = digits[2] or "".join(digit * 2 for digit in digits[1])
    red, green, blue = (int(whole[i : i + 2], 16) / 255 for i in (0, 2, 4))
    return _bright(red), _bright(green), _bright(blue)


def seen(colour: str, eyes: str = "any eye") -> Triple:
    """The light that a colour is taken for by these eyes."""
    red, green, blue = _times(EYES[eyes], linear(colour))
    return _within(red), _within(green), _within(blue)


def contrast(one: str, other: str, eyes: str = "any eye") -> float:
    """How much lighter one is than the other, from 1 to 21 (WCAG 2.2, 1.4.3).

    >>> contrast("#000", "#ffffff")
    21.0
    """
    low, high = sorted(luminance(seen(each, eyes)) for each in (one, other))
    return (high + 0.05) / (low + 0.05)


def luminance(light: Triple) -> float:
    """How bright linear light is, from 0 to 1."""
    return sum(w * c for w, c in zip((0.2126, 0.7152, 0.0722), light, strict=True))


def apart(one: str, other: str, eyes: str = "any eye") -> float:
    """How far apart two colours look; 1 is what one just notices side by side."""
    return ciede2000(lab(seen(one, eyes)), lab(seen(other, eyes)))


def lab(light: Triple) -> Triple:
    """Linear light as CIE L*a*b*."""
    x, y, z = (
        _root(part / white)
        for part, white in zip(_times(XYZ, light), WHITE, strict=True)
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def ciede2000(one: Triple, other: Triple) -> float:
    """The distance of two colours in L*a*b*; the numbers are those of the paper."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    # 2 to 7: chroma and hue, with a stretched where there is little colour.
    c7 = ((math.hypot(a1, b1) + math.hypot(a2, b2)) / 2) ** 7
    stretch = 1 + (1 - math.sqrt(c7 / (c7 + FAR))) / 2
    a1, a2 = a1 * stretch, a2 * stretch
    c1, c2 = math.hypot(a1, b1), math.hypot(a2, b2)
    h1, h2 = _hue(a1, b1), _hue(a2, b2)
    # 8 to 11: differences, with hues the short way round.
    turn = 0.0 if c1 * c2 == 0 else (h2 - h1 + 180) % 360 - 180
    dh = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(turn / 2))
    # 12 to 14: means.
    light, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    hue = h1 + h2 if c1 * c2 == 0 else _between(h1, h2)
    # 15 to 21: weights, and what blue does.
    weight = 1 + 0.015 * (light - 50) ** 2 / math.sqrt(20 + (light - 50) ** 2)
    in_light = (l2 - l1) / weight
    in_chroma = (c2 - c1) / (1 + 0.045 * chroma)
    in_hue = dh / (1 + 0.015 * chroma * _hue_weight(hue))
    crossed = _rotation(chroma, hue) * in_chroma * in_hue
    # 22.
    return math.sqrt(in_light**2 + in_chroma**2 + in_hue**2 + crossed)


def _hue_weight(hue: float) -> float:
    return (
        1
        - 0.17 * math.cos(math.radians(hue - 30))
        + 0.24 * math.cos(math.radians(2 * hue))
        + 0.32 * math.cos(math.radians(3 * hue + 6))
        - 0.20 * math.cos(math.radians(4 * hue - 63))
    )


def _rotation(chroma: float, hue: float) -> float:
    turned = 30 * math.exp(-(((hue - 275) / 25) ** 2))
    far = 2 * math.sqrt(chroma**7 / (chroma**7 + FAR))
    return -math.sin(math.radians(2 * turned)) * far


def _between(one: float, other: float) -> float:
    """The middle of two hues, the short way round."""
    if abs(one - other) <= 180:
        return (one + other) / 2
    return (one + other + (360 if one + other < 360 else -360)) / 2


def _hue(a: float, b: float) -> float:
    return math.degrees(math.atan2(b, a)) % 360 if a or b else 0.0


def _root(part: float) -> float:
    return math.cbrt(part) if part > 216 / 24389 else (24389 / 27 * part + 16) / 116


def _bright(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def _within(part: float) -> float:
    return min(max(part, 0.0), 1.0)


def _times(matrix: tuple[Triple, ...], light: Triple) -> Triple:
    x, y, z = (sum(m * c for m, c in zip(row, light, strict=True)) for row in matrix)
    return x, y, z
