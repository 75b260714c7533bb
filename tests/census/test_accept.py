"""Counts into a guide's text, and nothing else."""

import tomllib
from dataclasses import replace
from datetime import date

import pytest

from confirmed import census, specimen
from fieldid.census.accept import accept, accepted, chosen, overruled
from fieldid.census.learn import learn
from fieldid.census.propose import proposals
from fieldid.engine import prepare
from fieldid.errors import ChangedError, GuideError, UsageError
from fieldid.guides.document import opened
from fieldid.guides.load import loads
from make import plover

TODAY = date(2026, 11, 25)
TEXT = plover()
GUIDE = loads(TEXT.encode(), file="plover.toml")
SEEN = census(
    *(specimen(1951, rings="green-ivory", pad=6.0, member="3") for _ in range(3)),
    *(specimen(1951, rings="none", pad=6.1, member="3") for _ in range(2)),
    *(specimen(1953, rings="navy-ivory", pad=7.2, member="3") for _ in range(4)),
)


def proposed(guide=GUIDE):
    tables = prepare(guide)
    return proposals(tables, learn(tables, SEEN))


def taken(*names):
    return chosen(proposed(), names)


def after(text=TEXT, *names, specimens=9):
    found = taken(*(names or ("rings",)))
    return accepted(text, GUIDE, found, specimens=specimens, on=TODAY)


def changed(text, other):
    """The lines of the second that the first has not."""
    return [
        line.strip() for line in other.splitlines() if line not in text.splitlines()
    ]


@pytest.mark.parametrize(
    ("name", "names"),
    [
        ("rings.green-ivory.2", {"rings.green-ivory.2"}),
        ("rings.green-ivory", {"rings.green-ivory.1", "rings.green-ivory.2"}),
        (
            "rings",
            {"rings.green-ivory.1", "rings.green-ivory.2", "rings.navy-ivory.1"},
        ),
    ],
)
def test_names_choose_spans_options_and_clues(name, names):
    assert {each.name for each in taken(name)} == names


def test_name_is_no_beginning_of_another():
    """rings is not rings-two, and the first span not the tenth."""
    [one, *_] = proposed()
    found = (
        one,
        replace(one, span=one.span + 9),
        replace(one, clue="rings-two"),
        replace(one, option=f"{one.option}-two"),
    )

    assert chosen(found, [one.name]) == (one,)
    assert chosen(found, ["rings"]) == (found[0], found[1], found[3])
    assert chosen(found, [f"rings.{one.option}"]) == found[:2]


def test_unknown_name_is_a_wrong_call():
    with pytest.raises(UsageError, match=r"'rings\.green' is|'rings\.green': "):
        taken("rings.green")


def test_count_stands_in_the_place_of_the_share():
    made = after(TEXT, "rings.green-ivory.1")

    assert changed(TEXT, made) == [
        "updated = 2026-11-25",
        f'{{ years = "1951-1952", to = "1952-06", fade = 3, share = "{count()}" }},',
        'source = "census of 9 specimens, 2026-11"',
    ]


def count():
    [each] = taken("rings.green-ivory.1")
    return each.count


def test_share_is_added_where_there_was_none():
    made = after(TEXT, "rings.navy-ivory")
    option = tomllib.loads(made)["clue"][0]["option"][1]

    assert option["seen"][0]["share"] == taken("rings.navy-ivory")[0].count
    assert option["source"] == "census of 9 specimens, 2026-11"


def test_guide_reads_the_count_as_it_was_proposed():
    [each] = taken("rings.green-ivory.1")
    span = loads(after().encode(), file="x").clues[0].kind.options[0].seen[0]

    assert span.share == each.proposed


@pytest.mark.parametrize(
    ("before", "once", "twice"),
    [
        ("", "census of 9 specimens, 2026-11", "census of 1 specimen, 2027-01"),
        (
            "My eyes.",
            "My eyes. Census of 9 specimens, 2026-11.",
            "My eyes. Census of 1 specimen, 2027-01.",
        ),
        (
            "my eyes",
            "my eyes; census of 9 specimens, 2026-11",
            "my eyes; census of 1 specimen, 2027-01",
        ),
    ],
)
def test_source_is_kept_and_an_older_census_replaced(before, once, twice):
    label = 'label = "green over ivory"'
    source = f'  source = "{before}"' if before else ""
    text = plover((label, f"{label}  # ours\n{source}"))
    first = after(text, "rings.green-ivory")
    found = taken("rings.green-ivory")
    second = accepted(first, GUIDE, found, specimens=1, on=date(2027, 1, 2))

    assert first.count("source = ") == second.count("source = ") == 3
    assert f'source = "{once}"' in first
    assert f'source = "{twice}"' in second
    assert "# ours" in second


def test_later_knowledge_keeps_its_date():
    text = TEXT.replace("updated = 2026-02-01", 'updated = "2030-01-01"')

    assert 'updated = "2030-01-01"' in after(text)
    assert 'updated = "2026-11-25"' in after(text.replace("2030", "2020"))


def test_nothing_taken_changes_nothing():
    assert accepted(TEXT, GUIDE, (), specimens=9, on=TODAY) == TEXT


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "plover.toml"
    path.write_text(TEXT, "utf-8")
    return path


def write(document):
    return accept(document, GUIDE, taken("rings"), specimens=9, on=TODAY)


def test_file_is_written_and_read_back(path):
    made = write(opened(path))

    assert path.read_text("utf-8") == after()
    assert made == loads(path.read_bytes(), file="x")


def test_change_meanwhile_is_not_overwritten(path):
    document = opened(path)
    path.write_text(TEXT + "# mine\n", "utf-8")

    with pytest.raises(ChangedError):
        write(document)
    assert path.read_text("utf-8") == TEXT + "# mine\n"


def test_guide_with_problems_is_not_written(path):
    path.write_text(TEXT.replace('drawing = "iron"', 'drawing = "irony"'), "utf-8")
    before = path.read_bytes()

    with pytest.raises(GuideError):
        write(opened(path))
    assert path.read_bytes() == before


def test_clue_of_another_guide_is_accepted_there():
    """It is taken over, and stands in no line of this text."""
    short = TEXT[: TEXT.index("[[clue]]")] + TEXT[TEXT.index('[[clue]]\nid = "pad"') :]
    moved = GUIDE.clues[1:] + GUIDE.clues[:1]
    with pytest.raises(UsageError, match="taken over from another guide"):
        accepted(
            short, replace(GUIDE, clues=moved), taken("rings"), specimens=9, on=TODAY
        )


def test_span_that_a_wider_one_covers_is_told():
    """The census gave it a smaller share than that of the other span."""
    seen = 'seen = [{ years = 1951, share = "1/9" }, { share = 0.5 }]'
    label = 'label = "no rings"'
    guide = loads(plover((label, f"{label}\n  {seen}")).encode(), file="x")
    wide = next(each for each in proposed(guide) if each.name == "rings.none.2")
    narrow = replace(wide, span=0)

    assert overruled(guide, (wide, narrow)) == (narrow,)


def test_span_of_other_months_or_members_covers_nothing():
    label = 'label = "no rings"'
    for other in ('to = "1951-02"', "years = 1952", 'members = ["3"]'):
        seen = f'seen = [{{ years = 1951, share = "1/9" }}, {{ share = 0.5, {other} }}]'
        guide = loads(plover((label, f"{label}\n  {seen}")).encode(), file="x")
        made = replace(proposed()[0], clue="rings", option="none", span=0)

        assert overruled(guide, (made,)) == ()
