"""What the audit's page shows of guides that bracket, and of a stopped audit."""

from dataclasses import replace

from fieldid.audit.report import report
from fieldid.audit.run import Run
from fieldid.workbench.auditpage import shown
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
