"""What a share does to verdicts, against the guide changed by hand and judged anew."""

from dataclasses import replace

import pytest

from fieldid.audit.shares import DOWN, FACTORS, UP, Handle, Shaken, handles, with_share
from fieldid.audit.walked import SURE, Walked, answer, walked
from fieldid.audit.worlds import nth
from fieldid.engine import Item, prepare
from fieldid.engine.guide import Choice
from fieldid.engine.one import weigh
from kittiwake import GUIDE
from make import choice, guide, option, span

TABLES = prepare(GUIDE)


def read_whole(i: int) -> Walked:
    """A specimen whose clues were all looked at."""
    found = nth(TABLES, 2, i)
    item = Item(found.readings, (), found.member)
    posterior = weigh(TABLES, item)
    told, p = answer(TABLES, [*posterior.years, posterior.outside])
    return Walked(0, item, 0.0, told, p, p >= SURE, (), 0.0)


WALKS = [read_whole(i) for i in range(30)]


def by_hand(handle: Handle, factor: float):
    """The tables of the guide with the share written otherwise."""
    clue = GUIDE.clues[handle.k]
    option = clue.kind.options[handle.o]
    spans = list(option.seen)
    spans[handle.s] = replace(spans[handle.s], share=factor * spans[handle.s].share)
    options = list(clue.kind.options)
    options[handle.o] = replace(option, seen=tuple(spans))
    clues = list(GUIDE.clues)
    clues[handle.k] = replace(clue, kind=replace(clue.kind, options=tuple(options)))
    return prepare(replace(GUIDE, clues=tuple(clues)))


def test_every_share_is_a_handle():
    spans = [
        span
        for clue in GUIDE.clues
        if isinstance(clue.kind, Choice)
        for option in clue.kind.options
        for span in option.seen
    ]

    assert len(handles(TABLES)) == len(spans) == 8


@pytest.mark.parametrize("factor", FACTORS)
@pytest.mark.parametrize("handle", handles(TABLES), ids=str)
def test_moved_share_is_a_changed_guide(handle, factor):
    tables = by_hand(handle, factor)
    shaken = Shaken(TABLES)
    asked = 0
    for found in WALKS:
        then = weigh(tables, found.item)
        shares = [*then.years, then.outside]
        told, _ = answer(tables, shares)
        change = abs(sum(shares[found.told[0] : found.told[1] + 1]) - found.p)
        # A share that is not named does nothing.
        moved = dict(shaken.moves(found)).get((handle, factor))
        asked += moved is not None
        assert change == pytest.approx(moved.change if moved else 0.0, abs=1e-9)
        assert (told != found.told) == bool(moved and moved.others)
    assert asked > 15


def test_share_four_times_as_large_has_four_times_the_odds():
    """But for the floor, which is none here."""
    face = choice(
        "face",
        option("dots", span(share=0.5)),
        option("lines", span(share=0.5)),
        misread=0.0,
    )
    for factor, odds in ((UP, 4.0), (DOWN, 0.25)):
        moved = with_share(face, Handle(0, 0, 0), factor)
        table = prepare(guide(moved, floor=0.0)).clues[0][0]
        dots, lines = (each.orig[0] for each in table.likelihoods)
        assert dots / lines == pytest.approx(odds)


def test_what_cannot_be_stays_so():
    """Without floor or misreading an option has no chance in some years."""
    face = choice(
        "face", option("dots", span((1951, 1951))), option("lines", span()), misread=0.0
    )
    tables = prepare(guide(face, floor=0.0))
    found = walked(tables, nth(tables, 1, 0), {})

    moves = list(Shaken(tables).moves(found))
    assert moves
    assert all(0 <= moved.change <= 1 for _, moved in moves)
