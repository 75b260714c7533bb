"""Sizes off photographs with a known truth: right without noise, honest with it."""

import json
import subprocess
from pathlib import Path

import numpy as np
import pytest
from scipy.stats import binom

from camera import CARD, Camera, asked, camera, inside, laid, rim

SCALE = Path(__file__).parents[1] / "static" / "phone" / "scale"
ASK = """
const [, folder, door] = process.argv;
const { size } = await import(`${folder}/size.js`);
const { sized } = await import(`${folder}/marked.js`);
const doors = {
  size,
  sized: ({ scale, marks, ends, photo }) =>
    sized({ photo, points: [...marks, ...ends] }, scale, "mm"),
};
const told = (asked) => {
  try {
    return doors[door](asked);
  } catch (error) {
    if (error.name !== "ScaleError") throw error;
    return { wrong: error.message };
  }
};
let text = "";
for await (const part of process.stdin) text += part;
console.log(JSON.stringify(JSON.parse(text).map(told)));
"""
BANK_CARD = {"shape": "card", "name": "a card", "width": 85.6, "height": 53.98}
COIN = {"shape": "coin", "name": "a coin", "diameter": 24.25}
CARD_DOUBT, COIN_DOUBT = 0.07, 0.05
POINTING = 1.5
WITHIN_ONE = 0.6827
TRIALS = 1000


def sizes(asks: list[dict], door: str = "size") -> list[dict]:
    """What the phone says to each of them: the arithmetic, or as a screen's reading."""
    done = subprocess.run(
        ["node", "--input-type=module", "-e", ASK, SCALE.as_uri(), door],
        input=json.dumps(asks),
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def photo(
    kind: str,
    dice: np.random.Generator,
    *,
    held: float,
    pointing: float,
    around: int = 8,
):
    """A length that is true, and what is asked of a photo of it beside a scale."""
    while True:
        taken = camera(dice, held=held)
        length = dice.uniform(15, 80)
        ends = laid(np.array([[-length / 2, 0], [length / 2, 0]]), dice, around=60)
        if kind == "card":
            scale = BANK_CARD | {"doubt": CARD_DOUBT}
            whole, doubt, flat = 85.6, CARD_DOUBT, CARD - CARD.mean(axis=0)
        else:
            scale = COIN | {"doubt": COIN_DOUBT}
            whole, doubt, flat = 24.25, COIN_DOUBT, rim(24.25, around)
        # No card and no coin is exactly of its size.
        made = 1 + dice.normal(0, doubt) / whole if pointing else 1.0
        seen = [taken.sees(laid(made * flat, dice, around=30)), taken.sees(ends)]
        if all(map(inside, seen)):
            marks, ends = (each + dice.normal(0, pointing, each.shape) for each in seen)
            return length, asked(scale, marks, ends)


def trials(kind: str, *, held: float, seed: int, pointing: float = POINTING):
    """The true lengths, and those that were found with their errors; what was refused
    is left out, but little of it may be.
    """
    dice = np.random.default_rng(seed)
    taken = [photo(kind, dice, held=held, pointing=pointing) for _ in range(TRIALS)]
    told = sizes([ask for _, ask in taken])
    found = [
        (true, each["length"], each["error"])
        for (true, _), each in zip(taken, told, strict=True)
        if "length" in each
    ]
    assert len(found) > 0.97 * TRIALS
    return np.array(found).T


def within(true, length, error, times: float = 1) -> int:
    """How many lengths are off by no more than some standard errors."""
    return int(np.sum(np.abs(length - true) <= times * error))


@pytest.mark.parametrize("held", [0, 10, 20])
def test_card_without_noise_is_exact(held):
    """A thousandth would do; four corners and a pinhole leave nothing over."""
    true, length, _ = trials("card", held=held, seed=3, pointing=0.0)

    assert np.max(np.abs(length / true - 1)) < 1e-9


def test_coin_from_above_is_well_within_its_error():
    """That it is from above is not known, which draws the mean off a little."""
    true, length, error = trials("coin", held=0, seed=4, pointing=0.0)

    assert np.median(np.abs(length / true - 1)) < 0.005
    assert np.max(np.abs(length - true) / error) < 1


@pytest.mark.parametrize(
    ("kind", "held"), [("card", 0.5), ("card", 8), ("card", 16), ("coin", 8)]
)
def test_two_thirds_lie_within_one_error(kind, held):
    """So many of the trials that chance alone would do worse once in a thousand; for a
    coin, over the tilts that it is told people hold a phone with.
    """
    found = trials(kind, held=held, seed=5)
    low, high = binom.interval(0.999, found.shape[1], WITHIN_ONE)

    assert low <= within(*found) <= high
    # And no long tail beside them: of normal errors it would be 95.4 percent.
    assert within(*found, times=2) >= binom.ppf(0.001, found.shape[1], 0.9545)


@pytest.mark.parametrize("kind", ["card", "coin"])
@pytest.mark.parametrize("long", [1600, 1200])
def test_readings_off_the_screen_are_as_honest(kind, long):
    """Of 1,000 synthetic trials 68 percent, or what chance allows of it, lie within
    one standard error: all through the screen's own door, the reading rounded, the
    rim with its six points, and a finger off by as much of a smaller photo.
    """
    dice = np.random.default_rng(9)
    taken = [
        photo(kind, dice, held=8, pointing=POINTING, around=6) for _ in range(TRIALS)
    ]
    told = sizes([_smaller(ask, long / 1600) for _, ask in taken], door="sized")
    found = np.array(
        [
            (true, each["value"], each["error"])
            for (true, _), each in zip(taken, told, strict=True)
            if "value" in each
        ]
    ).T
    assert found.shape[1] > 0.97 * TRIALS
    low, high = binom.interval(0.999, found.shape[1], WITHIN_ONE)

    assert low <= within(*found) <= high


def _smaller(ask: dict, by: float) -> dict:
    """The same photo with fewer pixels."""
    points = {key: (by * np.array(ask[key])).tolist() for key in ("marks", "ends")}
    width, height = ask["photo"]["width"], ask["photo"]["height"]
    return ask | points | {"photo": {"width": by * width, "height": by * height}}


@pytest.mark.parametrize("held", [1, 4])
def test_coin_from_steadier_hands_is_no_worse(held):
    found = trials("coin", held=held, seed=6)

    assert within(*found) >= binom.ppf(0.001, found.shape[1], WITHIN_ONE)


def test_smaller_pointing_error_is_no_less_honest():
    dice = np.random.default_rng(7)
    taken = [photo("card", dice, held=8, pointing=0.4) for _ in range(TRIALS)]
    told = sizes([ask | {"pointing": 0.4} for _, ask in taken])
    true = np.array([length for length, _ in taken])
    length, error = (
        np.array([each[key] for each in told]) for key in ("length", "error")
    )
    low, high = binom.interval(0.999, TRIALS, WITHIN_ONE)

    assert low <= within(true, length, error) <= high


def test_card_agrees_with_eight_equations():
    """The closed form against numpy's solution of the equations that define it."""
    dice = np.random.default_rng(8)
    taken = [photo("card", dice, held=12, pointing=3.0)[1] for _ in range(200)]

    for ask, told in zip(taken, sizes(taken), strict=True):
        ends = _solved(np.array(ask["marks"]), CARD, np.array(ask["ends"]))
        assert told["length"] == pytest.approx(np.linalg.norm(ends[0] - ends[1]))


def _solved(corners, flat, points):
    """Points carried by the homography from four corners to their flat places."""
    rows, right = [], []
    for (x, y), (u, v) in zip(corners, flat, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    matrix = np.append(np.linalg.solve(rows, right), 1).reshape(3, 3)
    carried = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    return carried[:, :2] / carried[:, 2:]


def test_height_above_the_card_is_not_in_the_error():
    """What the words on the screen warn of: a thing that lies nearer looks larger."""
    low, high = (Camera((0.0, 0.0), far, 1200.0) for far in (300.0, 270.0))
    ends = np.array([[-20.0, 60.0], [20.0, 60.0]])
    scale = BANK_CARD | {"doubt": CARD_DOUBT}

    (told,) = sizes([asked(scale, low.sees(CARD), high.sees(ends))])

    assert told["length"] == pytest.approx(40 * 300 / 270)
