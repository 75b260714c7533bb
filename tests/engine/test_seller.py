"""The message to the seller: questions, photos, members; polite and short enough."""

import random
from dataclasses import replace

import pytest

from fieldid.engine.find import Item
from fieldid.engine.gain import WORTHWHILE
from fieldid.engine.guide import Members
from fieldid.engine.judge import judge
from fieldid.engine.prepare import prepare
from fieldid.engine.seller import ANYTHING, MOST_PHOTOS, SHORT, message, photos
from fieldid.guides.load import load
from fieldid.paths import RULES
from kittiwake import SET, bag, find
from specimens import look, specimen

PHOTOS = {
    "rings": "The collar, square on",
    "scoring": "The face",
    "numeral": "The sole",
    "stamp": "The hosel, in raking light",
    "pad": "The sole",
}
SHOWN = replace(
    SET, clues=tuple(replace(c, photo=PHOTOS.get(c.id, "")) for c in SET.clues)
)
TABLES = prepare(SHOWN)
UGLY = ("fake", "wrong", "stray", "lie", "fraud", "false", "not the original")


def sent(asked, tables=TABLES):
    return message(tables, asked, judge(tables, asked))


def shown(asked, tables=TABLES):
    return [photo.show for photo in photos(tables, asked)]


def test_questions_stand_once_in_their_order():
    asked = bag(("5", {"rings": "none"}, ["grip"]), ("6", {"rings": "none"}))
    verdict = judge(TABLES, asked)
    long = message(TABLES, asked, verdict).long

    asks = list(dict.fromkeys(flag.ask for flag in verdict.flags if flag.ask))
    assert len(asks) > 2
    listed = "\n".join(f"- {ask}" for ask in asks)
    assert f"May I ask you something?\n\n{listed}\n\n" in long


def test_same_question_of_two_flags_stands_once():
    guide = replace(SHOWN, flags=(SHOWN.flags[0], SHOWN.flags[0]))
    long = sent(find({"rings": "none"}), prepare(guide)).long

    assert long.count("- Why?") == 1


def test_photos_are_asked_for_best_first():
    """In order of what they would tell, whatever they cost in seconds."""
    nexts = judge(TABLES, find({}), photos=True).next
    best = sorted(nexts, key=lambda each: -each.bits)
    wanted = [PHOTOS[each.clue] for each in best if each.bits >= WORTHWHILE]

    assert shown(find({})) == list(dict.fromkeys(wanted))
    assert len(wanted) == 4
    assert [each.clue for each in nexts] != [each.clue for each in best]


def test_one_photo_may_show_two_clues():
    [photo] = [p for p in photos(TABLES, find({})) if p.show == "The sole"]

    assert photo.brief == "the sole numeral and the pad thickness"


def test_photos_of_what_was_read_are_not_missing():
    assert "The collar, square on" not in shown(find({"rings": "green"}))
    assert "The collar, square on" not in shown(find({}, ["collar"]))


def test_photo_is_asked_for_what_could_not_be_told():
    """A better photo may tell it."""
    assert shown(find({"rings": None, "stamp": None})) == shown(find({}))


def test_photo_that_tells_nothing_is_not_asked_for():
    settled = {"stamp": "C218A", "rings": "green", "numeral": "plain", "pad": 5.9}

    assert shown(find(settled)) == []


def test_where_i_stand_does_not_matter_to_the_seller():
    """What I cannot hold or measure, the seller still can photograph."""
    asked = find({})
    near, far = (
        message(TABLES, asked, judge(TABLES, asked, **limits))
        for limits in ({}, {"away": True, "without": ("callipers",)})
    )

    assert near == far


def test_members_of_one_photo_are_one_line():
    asked = bag(("5", {}), ("6", {"stamp": "C218A"}), ("7", {}))

    lines = shown(asked)

    assert "The hosel, in raking light (the 5 and 7 irons)" in lines
    assert "The sole (the whole set)" in shown(bag(("5", {}), ("6", {})))


def test_most_photos_are_five():
    tables = prepare(load(RULES / "wrackham-teale-dotterel.toml"))

    assert len(shown(find({}), tables)) == MOST_PHOTOS


def test_members_not_seen_are_asked_for():
    long = sent(bag(("5", {"stamp": "C218A"}), ("6", {}), ("W", {}))).long

    assert "May I also see the 6 iron and the wedge?" in long


def test_nothing_seen_asks_for_no_member():
    assert "also see" not in sent(bag(("5", {}), ("6", {}))).long


def test_nothing_to_ask_asks_where_it_comes_from():
    settled = {"stamp": "C218A", "rings": "green", "numeral": "plain", "pad": 5.9}

    found = sent(find(settled))

    assert ANYTHING in found.long
    assert ANYTHING in found.short


def test_message_begins_and_ends_kindly():
    long, short = (getattr(sent(find({})), key) for key in ("long", "short"))

    assert long.startswith("Hello,\n\nI am interested in your golf irons.\n\n")
    assert long.endswith("Thank you very much, and kind regards\n")
    assert short.startswith("Hello, I am interested in your golf irons. Could you ")
    assert short.endswith(" Thank you!")


def test_member_that_is_known_is_named():
    assert sent(find({}, member="7")).short.startswith(
        "Hello, I am interested in your 7 iron. "
    )


def test_short_message_takes_turns():
    """The best photo first, then the first question."""
    found = sent(find({"pad": 5.9}, ["grip"])).short

    assert "Do you still have the grip?" in found
    assert "Could you send me photos of the hosel letters" in found


@pytest.mark.parametrize("name", ["iron", "iron " * 200])
def test_long_names_do_not_crowd_out_the_questions(name):
    guide = replace(
        SHOWN,
        kind=name,
        members=Members(("5",), names=(("5", name),)),
    )
    tables = prepare(guide)

    for asked in (find({}, ["grip"]), find({}, ["grip"], "5")):
        short = sent(asked, tables).short
        assert len(short) <= SHORT
        assert "Do you still have the grip?" in short
        assert (f"your {name}" if len(name) < 10 else "what you offer") in short


def test_photo_is_asked_for_before_a_long_question():
    """If there is room for one of the two alone."""
    ask = "Why" + " oh why" * 33 + "?"
    guide = replace(SHOWN, flags=(replace(SHOWN.flags[2], ask=ask),))
    found = sent(find({"pad": 4.9}), prepare(guide)).short

    assert "Could you send me " in found
    assert ask not in found
    assert len(f"Hello, I am interested in your golf irons. {ask} Thank you!") <= SHORT


def test_question_that_is_too_long_is_left_out():
    guide = replace(
        SHOWN,
        flags=(replace(SHOWN.flags[0], ask="Why? " * 100),),
    )
    found = sent(find({"rings": "none"}), prepare(guide))

    assert "Why? Why?" in found.long
    assert "Why?" not in found.short


@pytest.mark.parametrize("seed", range(12))
def test_message_accuses_nobody_and_is_short(seed):
    """Over finds drawn by lot, sets among them, with claims that cannot hold."""
    dice = random.Random(seed)
    guide = load(RULES / "wrackham-teale-dotterel.toml")
    members = dice.sample(guide.members.all, dice.choice((1, 3)))
    items = tuple(
        replace(
            look(guide, specimen(guide, dice, m), dice, seen=0.5, lost=0.3), member=m
        )
        for m in members
    )
    asked = replace(bag(claim=1959), guide=guide.id, items=items or (Item(),))

    found = sent(asked, prepare(guide))

    assert len(found.short) <= SHORT
    for text in (found.long, found.short):
        assert not [word for word in UGLY if word in text.lower()]
        assert text.count("Thank you") == 1
