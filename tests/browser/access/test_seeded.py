"""Each check objects to what it is there for: here a page is broken on purpose.

The other checks have theirs beside them: `test_colours.py`, `test_policy.py`,
`test_speaking.py`, `test_valid.py`.
"""

import pytest
from playwright.sync_api import expect

from access.checks import LOOKS, barriers
from access.tabbing import tabbed
from access.walk import opened, phone
from steps import add_set, heading, open_kept, read, start

LOOK = {look.name: look for look in LOOKS}

SEEDS = {
    "a label that is gone": (
        "light",
        "label",
        "(main) => main.append(document.createElement('input'))",
    ),
    "a picture without words": (
        "light",
        "role-img-alt",
        "(main) => document.querySelector('[data-ribbon]')"
        ".removeAttribute('aria-label')",
    ),
    "a link that says nothing": (
        "light",
        "link-name",
        "() => { document.querySelector('.row__cell--set').replaceChildren() }",
    ),
    "a target that was made small": (
        "light",
        "target-size",
        "() => { for (const each of document.querySelectorAll('.bar__item')) {"
        " each.style.cssText = 'min-height: 0; padding: 0; border: 0; flex: none;"
        " font-size: 5px; line-height: 5px' } }",
    ),
    "letters like their paper": (
        "dark",
        "color-contrast",
        "(main) => { main.style.color = 'var(--rule)'; main.style.opacity = 0.5 }",
    ),
    "letters that lose where contrast was asked for": (
        "more contrast",
        "color-contrast",
        "(main) => { main.style.color = '#888' }",
    ),
    "a choice that only a filling tells": (
        "forced colours",
        "looks like the others",
        "() => { for (const each of document.querySelectorAll('.row__cell')) {"
        " each.style.border = '0' } }",
    ),
    "a line that does not wrap at twice the size": (
        "large text",
        "wider than the screen",
        "(main) => { main.style.whiteSpace = 'nowrap' }",
    ),
    "words that are cut off on a small phone": (
        "narrow",
        "cut off",
        "(main) => { const h1 = main.querySelector('[data-screen=look] h1');"
        " h1.style.cssText = 'white-space: nowrap; overflow: hidden; width: 5rem' }",
    ),
}
"""What was done to a question, in which look it is met, and what is then said."""

KEYS = {
    "a trap": (
        "never leaves",
        "() => addEventListener('keydown', (event) => {"
        " if (event.key === 'Tab' && document.activeElement.closest('.aside')) {"
        " event.preventDefault() } })",
    ),
    "a stop that is jumped over": (
        "does not reach",
        "() => addEventListener('focusin', ({ target }) => {"
        " if (target.matches('.switch__box')) target.blur() })",
    ),
    "a bar that lies over the page": (
        "hidden:",
        # A bar so high scrolls away by itself, unless it is held.
        "() => { document.querySelector('[data-bar]').style.cssText ="
        " 'height: 80vh; position: fixed !important' }",
    ),
    "a focus that nobody sees": (
        "nothing shows the focus",
        "() => { for (const each of document.querySelectorAll('.link')) {"
        " each.style.outline = 'none' } }",
    ),
    "an order against the eyes": (
        "goes back up",
        "() => { document.querySelector('.aside').style.order = -1;"
        " document.querySelector('[data-screen=look]').style.display = 'grid' }",
    ),
}


@pytest.fixture(scope="module")
def asked(chromium, site):
    """A question to a set, which has no barriers by itself."""
    with phone(chromium) as context:
        page = opened(context, [])
        open_kept(page, site.url)
        start(page)
        add_set(page)
        read(page, "toe-outline", "round")
        yield page


@pytest.fixture
def question(asked):
    """The same, whole again."""
    asked.reload()
    expect(heading(asked)).to_be_visible()
    return asked


@pytest.mark.parametrize("seed", SEEDS)
def test_seeded_barrier_is_met(seed, question):
    name, wanted, broken = SEEDS[seed]
    look = (LOOK[name],)
    before = barriers(question, look)
    question.locator("main").evaluate(broken)

    assert not any(wanted in each for each in before)
    assert any(wanted in each for each in barriers(question, look))


@pytest.mark.parametrize("seed", KEYS)
def test_seeded_trouble_with_keys_is_met(seed, question):
    wanted, broken = KEYS[seed]
    before = tabbed(question)
    question.evaluate(broken)

    assert not any(wanted in each for each in before)
    assert any(wanted in each for each in tabbed(question))
