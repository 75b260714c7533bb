"""Dark for whoever follows the system: the same colours, written once."""

import re

from fieldid.paths import STATIC
from fieldid.web.theme import TOKENS, following

CHOSEN, FOLLOWED = '[data-theme="dark"]', '[data-theme="system"]'


def rules(text: str, head: str) -> list[str]:
    """What stands between the brackets of each rule with this head."""
    return re.findall(rf"{re.escape(head)} {{([^}}]*)}}", text)


def test_every_dark_rule_is_followed():
    tokens = (STATIC / TOKENS).read_text("utf-8")
    made = following(tokens)

    assert rules(made, FOLLOWED) == rules(tokens, CHOSEN)
    assert len(rules(made, FOLLOWED)) == tokens.count(CHOSEN) > 1
    assert CHOSEN not in made


def test_print_and_light_are_left_alone():
    """What is printed is ink on paper, also for whoever reads in the dark."""
    made = following((STATIC / TOKENS).read_text("utf-8"))

    media = re.findall("@media (.*) {", made)
    assert len(media) == len(rules(made, FOLLOWED))
    assert all(each.startswith("screen") for each in media)
    assert all(each.endswith("and (prefers-color-scheme: dark)") for each in media)


def test_no_other_sheet_has_a_dark_of_its_own():
    """It would be missed by whoever follows the system."""
    sheets = [each for each in STATIC.rglob("*.css") if each.name != "tokens.css"]

    assert sheets
    assert [each.name for each in sheets if "data-theme" in each.read_text()] == []
