"""A file that somebody else changes while a page is open."""

import pytest

from make import plover


def test_change_on_disk_is_told_and_kept(desk):
    desk.open("/guides/plover/table/part/0")
    other = plover(
        ('name = "shaft"', 'name = "the shaft"'),
        ("replaced = 0.02", "replaced = 0.03 # new"),
    )
    desk.write("plover", other)
    desk.send(name="club head")

    assert desk.status == 409
    assert "was changed on disk" in desk.said(".problems")
    assert 'name = "head"' in desk.said(".differing")
    assert 'name = "club head"' in desk.said(".differing")
    assert desk.text("plover") == other
    # What the other one changed stays, and what was filled in here comes to it.
    desk.send()
    assert desk.text("plover") == other.replace(
        'name = "head"\nreplaced', 'name = "club head"\nreplaced'
    )


def lines(desk, side):
    """Where and what was taken out and added, as the page tells it."""
    found = desk.page.select(f"section[aria-labelledby={side}] > div")
    return [
        (each.h3.text, *(line.text for line in each.select("del, ins")))
        for each in found
    ]


def test_what_the_other_editor_changed_is_shown_beside_ones_own(desk):
    desk.open("/guides/plover/table/part/0")
    other = plover(('name = "shaft"', 'name = "the shaft"'))
    desk.write("plover", f"# Theirs\n{other}")
    desk.send(name="club head")

    at = [i for i, line in enumerate(other.split("\n"), 2) if line.startswith("name")]
    theirs = [
        ("Line 1", "# Theirs"),
        (f"Line {at[1]}", 'name = "shaft"', 'name = "the shaft"'),
    ]
    own = [(f"Line {at[0]}", 'name = "head"', 'name = "club head"')]
    assert lines(desk, "meanwhile") == theirs
    assert lines(desk, "own") == own
    assert "Taken out: name" in desk.said(".differing")

    desk.open("/guides/plover/raw")
    desk.write("plover", other)
    desk.send(text=other.replace('name = "head"', 'name = "club head"'))
    assert lines(desk, "meanwhile") == [("Line 1", "# Theirs")]
    assert [each[1] for each in lines(desk, "own")] == ['name = "head"']


def test_text_that_nobody_remembers_is_not_guessed_at(desk):
    desk.open("/guides/plover/table/part/0")
    desk.app.extensions["opened"] = {}
    desk.write("plover", plover(('name = "shaft"', 'name = "the shaft"')))
    desk.send(name="club head")

    assert "is no longer known" in desk.said(".differing")
    assert lines(desk, "meanwhile") == []


def test_table_that_was_moved_is_not_taken_for_another(desk):
    desk.open("/guides/plover/table/part/0")
    moved = plover().replace(
        '[[part]]\nid = "head"\nname = "head"\nreplaced = 0.02\n\n', ""
    )
    desk.write("plover", moved)
    desk.send(name="club head")

    assert desk.status == 409
    assert "something else stands in this place now" in desk.said()
    assert 'name = "head"' in desk.said("section[aria-labelledby=meanwhile] del")
    assert "club head" in desk.said(".typed")
    assert "What saving yours" not in desk.said()
    assert "/guides/plover/" in desk.links()
    assert desk.text("plover") == moved


@pytest.mark.parametrize("address", ["table/part/0", "raw"])
def test_file_that_is_gone_is_told(desk, address):
    desk.open(f"/guides/plover/{address}")
    (desk.rules / "plover.toml").unlink()

    said = {"name": "club head"} if "table" in address else {"text": "club head"}
    assert desk.send(**said).status == 404
    assert "club head" in desk.said(".typed")
    assert list(desk.rules.glob("*.toml")) == []


def test_file_that_was_broken_is_told_and_nothing_lost(desk):
    desk.open("/guides/plover/table/part/0")
    desk.write("plover", "title = ")

    assert desk.send(name="club head").status == 409
    assert "cannot be read any more" in desk.said()
    assert "club head" in desk.said(".typed")
    assert "/guides/plover/raw" in desk.links()

    desk.write("plover", plover())
    desk.open("/guides/plover/raw")
    (desk.rules / "plover.toml").write_bytes(b"\xff\xfe\x00")
    assert desk.send(text="title = 'x'").status == 409
    assert "title = 'x'" in desk.said(".typed")


def test_table_with_the_same_id_is_the_same(desk):
    """Also where somebody changed what it is called."""
    desk.open("/guides/plover/table/part/0")
    other = plover(('id = "head"\nname = "head"', 'id = "head"\nname = "the head"'))
    desk.write("plover", other)
    desk.send(replaced="0.04")

    assert "Save once more" in desk.said(".work__form")
    assert 'name = "the head"' in desk.said("section[aria-labelledby=meanwhile]")
    assert "replaced = 0.04" in desk.said("section[aria-labelledby=own]")
    desk.send()
    assert desk.text("plover") == other.replace("replaced = 0.02", "replaced = 0.04", 1)


def test_caution_is_known_by_its_place_and_their_number(desk):
    desk.open("/guides/plover/table/caution/0")
    was = desk.fields()["at.say"]
    desk.write("plover", plover((was, "Hold it well.")))
    assert desk.send(say="Hold it firmly.").status == 409
    assert "What saving yours would change" in desk.said()

    desk.open("/guides/plover/table/caution/0")
    more = "[[caution]]\nsay = 'Keep it dry.'\n\n[[caution]]"
    desk.write(
        "plover", plover((f'"{was}"', '"Keep it."')).replace("[[caution]]", more)
    )
    desk.send(say="Hold it firmly.")
    assert "something else stands in this place now" in desk.said()


@pytest.mark.parametrize("brought", ["", "3", "[3]", "[[1, 2]]", "[[[], [], {}]]"])
def test_broken_mark_of_a_table_does_no_harm(desk, brought):
    desk.open("/guides/plover/table/part/0")
    desk.write("plover", f"# Theirs\n{plover()}")

    assert desk.send(name="club head", was=brought).status == 409
    assert "something else stands in this place now" in desk.said()


def test_change_that_is_there_already_changes_nothing(desk):
    desk.open("/guides/plover/table/part/0")
    desk.write("plover", plover(("replaced = 0.02", "replaced = 0.04")))
    desk.send(replaced="0.04")

    assert "Saving yours would change nothing." in desk.said()


def test_full_disk_is_told(desk, monkeypatch):
    def full(handle):
        raise OSError(28, "No space left on device")

    desk.open("/guides/plover/table/part/0")
    monkeypatch.setattr("os.fsync", full)

    assert "No space left" in desk.send(name="club head").said(".problems")
    assert desk.text("plover") == plover()
