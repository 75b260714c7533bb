"""Specimens held against the model that they are drawn from, and against their twin."""

import json
import subprocess
from collections import Counter
from math import sqrt

import pytest

from fieldid.engine import Item, prepare
from fieldid.engine.guide import Field, Measure
from fieldid.engine.lot import lots
from fieldid.engine.measure import STEPS
from fieldid.engine.number import NumberTable
from fieldid.engine.one import ranked, weigh
from fieldid.engine.prepare import likelihood
from fieldid.engine.special import dot
from fieldid.engine.specimen import shows, specimen
from fieldid.guides.load import load
from fieldid.guides.pack import dump
from fieldid.paths import RULES, STATIC
from kittiwake import GUIDE
from make import code, guide, number

MANY = 4000
MARKED = guide(
    number("patent", {1948: 1000, 1951: 2000, 1952: 3000}, 9999, lag=4),
    number("serial", {1951: 1, 1952: 101}, 400),
    code("mark", Field("year", "year", 2, "0123456789"), lag=2),
    code("month", Field("month", "month", 1, "ABCDEFGHIJKLXYZ", odd=0.3)),
    code("stamp", Field("letter", "year-letter", 1, "ABCD", codes=((1951, "A"),))),
)
TOLD = [
    (found, k)
    for found in (GUIDE, MARKED)
    for k, clue in enumerate(found.clues)
    if not isinstance(clue.kind, Measure)
]
SIZES = [k for k, clue in enumerate(GUIDE.clues) if isinstance(clue.kind, Measure)]
# Fewer than these say little of how often they come.
OFTEN = 5
# Off by more than this once in 16,000 times.
MOST = 4.0


def off(count, share):
    """By how many standard errors a count of MANY is off its expected share."""
    return abs(count - MANY * share) / sqrt(MANY * share * (1 - share))


def year_of(table, reading):
    """The first number of a number's year, and how many there are; of anything else
    itself.
    """
    if not isinstance(table, NumberTable):
        return reading, 1
    i = max(i for i, (_, n) in enumerate(table.number.first) if n <= reading)
    return table.number.first[i][1], table.counts[i]


def drawn(table, cell, *, replaced):
    draw = lots(7)
    return [shows(table, draw, cell, replaced) for _ in range(MANY)]


@pytest.mark.parametrize("replaced", [False, True])
@pytest.mark.parametrize(
    ("found", "k"), TOLD, ids=[found.clues[k].id for found, k in TOLD]
)
def test_readings_come_as_often_as_the_model_says(found, k, replaced):
    tables = prepare(found)
    table, cell = tables.clues[0][k], len(tables.cells) // 2
    found = Counter(drawn(table, cell, replaced=replaced))
    # A number stands for all of its year: they are too many to be counted apart.
    counts: Counter = Counter()
    shares = {}
    for reading, count in found.items():
        if reading is not None:
            first, alike = year_of(table, reading)
            like = likelihood(table, reading)
            counts[first] += count
            shares[first] = alike * (like.rep if replaced else like.orig[cell])

    often = [first for first in counts if MANY * shares[first] >= OFTEN]
    assert often
    for first in often:
        assert off(counts[first], shares[first]) < MOST, first


@pytest.mark.parametrize("replaced", [False, True])
@pytest.mark.parametrize("k", SIZES)
def test_sizes_come_as_often_as_the_model_says(k, replaced):
    """In twelve bins of the range; what lies beyond it is read at its ends."""
    tables = prepare(GUIDE)
    table, cell = tables.clues[0][k], len(tables.cells) // 2
    low, width = table.measure.low, (table.measure.high - table.measure.low) / 12
    found = drawn(table, cell, replaced=replaced)
    # What is read as fine as a hundredth may fall over the edge of a bin.
    bins = Counter(min(int((x - low) / width + 1e-9), 11) for x in found)
    rows = (
        [*table.rows, table.rows[-1]] if replaced else [table.rows[table.which[cell]]]
    )
    weights = table.sources if replaced else [1.0]
    steps = [dot(weights, column) for column in zip(*rows, strict=True)]

    for i in range(12):
        part = slice(i * STEPS // 12, (i + 1) * STEPS // 12)
        assert abs(bins[i] / MANY - sum(steps[part])) < 0.05, i


def test_year_that_is_asked_for_is_the_specimens():
    tables = prepare(GUIDE)
    draw = lots(1)
    start, stop = tables.stretches[2]

    for _ in range(50):
        assert start <= specimen(tables, draw, y=2, member=None).cell < stop


def test_parts_are_replaced_as_often_as_the_guide_says():
    """A follower as often as its own rate and its parent's fate make it."""
    tables = prepare(GUIDE)
    draw = lots(4)
    found = [specimen(tables, draw, y=None, member=None).replaced for _ in range(MANY)]
    bare = weigh(tables, Item())

    for p, part in enumerate(GUIDE.parts):
        share = sum(bare.replaced[p][:-1]) / (1 - bare.outside)
        assert off(sum(each[p] for each in found), share) < MOST, part.id


def test_leading_years_come_true_as_often_as_told():
    """Whole specimens, read and judged: the mean probability of the leading year is
    the share of those where it is the year.
    """
    tables = prepare(GUIDE)
    draw = lots(5)
    told, right = 0.0, 0
    for _ in range(1500):
        found = specimen(tables, draw, y=None, member=None)
        years = weigh(tables, Item(found.readings)).years
        y = ranked(years)[0]
        start, stop = tables.stretches[y]
        told += years[y]
        right += start <= found.cell < stop

    # Of what is never outside, the model's own doubt about that is off by its share.
    assert right / 1500 == pytest.approx(told / 1500, abs=0.04)


@pytest.mark.parametrize("path", sorted(RULES.glob("*.toml")), ids=lambda p: p.stem)
def test_twin_draws_the_same_specimens(path, tmp_path):
    found = load(path)
    tables = prepare(found)
    draw = lots(11)
    members = [None, *(found.members.all[:2] if found.members else ())]
    ours = [
        specimen(tables, draw, y=i % 3 or None, member=members[i % len(members)])
        for i in range(60)
    ]
    packed = tmp_path / "guide.json"
    packed.write_bytes(dump(found))
    told = subprocess.run(
        ["node", "--input-type=module", "-e", TWIN, packed, json.dumps(members)],
        cwd=STATIC / "phone" / "engine",
        check=True,
        capture_output=True,
        text=True,
    )

    theirs = json.loads(told.stdout)
    assert theirs == [
        [each.cell, list(each.replaced), list(map(list, each.readings))]
        for each in ours
    ]


TWIN = """
import { readFileSync } from "node:fs";
import { prepare, unpack } from "./index.js";
import { lots } from "./lot.js";
import { specimen } from "./specimen.js";

const [file, members] = process.argv.slice(1);
const tables = prepare(unpack(JSON.parse(readFileSync(file, "utf8"))));
const known = JSON.parse(members);
const draw = lots(11);
const found = [];
for (let i = 0; i < 60; i++) {
  const by = { y: i % 3 || null, member: known[i % known.length] };
  const { cell, replaced, readings } = specimen(tables, draw, by);
  found.push([cell, replaced, readings]);
}
console.log(JSON.stringify(found));
"""
