"""What the audit's page shows of guides that bracket, and of a stopped audit."""

from dataclasses import replace

from fieldid.audit.figures import share
from fieldid.audit.report import Confused, report
from fieldid.audit.run import Run
from fieldid.workbench.audit.page import shown
from fieldid.workbench.audit.summary import summary
from kittiwake import GUIDE


def ran(guide, steps: int | None = None):
    run = Run(guide, specimens=20, seed=3)
    for i, _ in enumerate(run.steps(), 1):
        if i == steps:
            break
    return report(run)


def titles(audit) -> list[str]:
    return [table.id for table in shown(audit)]


def test_guide_that_brackets_has_a_width_and_no_matrix():
    audit = ran(replace(GUIDE, verdict="range"))

    assert titles(audit) == ["verdicts", "calibration", "elsewhere", "clues", "shares"]
    assert [line.name for line in shown(audit)[0].lines][:2] == [
        "The range holds the year",
        "Years in a range",
    ]


def test_stopped_audit_shows_no_other_worlds():
    assert titles(ran(GUIDE, steps=2)) == [
        "verdicts",
        "soon",
        "calibration",
        "confused",
        "clues",
    ]


def test_nothing_done_shows_nothing():
    assert shown(report(Run(GUIDE, specimens=20))) == ()


def test_rows_have_a_cell_for_each_head():
    for table in shown(ran(GUIDE)):
        assert table.lines
        assert {1 + len(line.cells) for line in table.lines} == {len(table.heads)}


def test_longest_bar_is_that_of_the_share_that_moves_most():
    table = shown(ran(GUIDE))[-1]
    lengths = [float(str(line.bar).split("H")[1].split("V")[0]) for line in table.lines]

    assert lengths[0] == 100
    assert lengths == sorted(lengths, reverse=True)


def confused(year, told, count, of):
    return Confused(year, told, share(count, of))


def test_sentence_says_what_came_out():
    audit = ran(GUIDE)
    pairs = (
        confused("1952", "1951", 5, 20),
        confused("1951", "1952", 4, 20),
        confused("1954", "1953", 3, 20),
        confused("1953", "none of these", 9, 20),
        confused("1951", "1953", 2, 10),
        confused("1955", "1954", 3, 40),
    )
    own = replace(audit.own, specimens=1000, right=share(969, 1000))
    said = summary(replace(audit, own=own, confused=pairs))

    seconds = f"{audit.own.seconds.half:.0f} seconds"
    assert said == (
        "For 969 of 1,000 invented specimens the verdict named the right year; half "
        f"of the verdicts took {seconds} or less. Two pairs are hard to keep "
        "apart, with a tenth or more of one told as the other: 1951 and 1952, "
        "1953 and 1954."
    )


def test_sentence_names_no_more_pairs_than_can_be_read():
    years = [str(1950 + 2 * n) for n in range(5)]
    pairs = tuple(confused(year, f"{int(year) + 1}", 5, 20) for year in years)

    assert summary(replace(ran(GUIDE), confused=pairs)).endswith("1955 and 2 more.")


def test_sentence_fits_what_was_tried():
    assert "No two years" in summary(replace(ran(GUIDE), confused=()))
    ranged = summary(ran(replace(GUIDE, verdict="range")))
    assert "invented specimens the range held the year; half" in ranged
    assert "apart" not in ranged
    assert summary(report(Run(GUIDE, specimens=20))) == ""
