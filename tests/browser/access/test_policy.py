"""Nothing that the app does is refused by its own policy, and what it forbids is."""

import pytest

from access.states import APP
from access.walk import opened, phone
from steps import open_kept

JOURNEY = (
    "home, a first visit",
    "a code",
    "a size off a photo",
    "an offer",
    "a kept find with photos",
    "the file of all finds",
    "what is in a file",
    "what a round told",
    "a guide that was added",
    "home after the update",
)
"""What the walk passes, in this order."""

FORBIDDEN = {
    "script-src-elem": "import('data:text/javascript,1')",
    "style-src-attr": "document.body.setAttribute('style', 'color: red')",
    "img-src": "document.body.append(Object.assign("
    "new Image(), { src: 'data:image/gif,x' }))",
    "connect-src": "fetch('https://example.invalid/')",
    "require-trusted-types-for": "document.body.innerHTML = '<p>a</p>'",
    "trusted-types": "trustedTypes.createPolicy('another', {})",
}
"""What the policy refuses by, and something that it refuses."""


def test_nothing_is_refused_on_the_way(walked):
    """From the first visit to an update: no refusal, no error on the console."""
    assert walked.said == []


def test_nothing_is_refused_beside_the_app(beside):
    # An answer that refuses a form is told on the console, too.
    assert [each for each in beside.said if "400 (BAD REQUEST)" not in each] == []


def test_walk_is_a_whole_journey():
    names = iter([str(state) for state in APP])

    assert all(name in names for name in JOURNEY)


@pytest.fixture(scope="module")
def refusing(chromium, site):
    """A page of the app, and what it complains of."""
    said = []
    with phone(chromium) as context:
        page = opened(context, said)
        open_kept(page, site.url)
        yield page, said


@pytest.mark.parametrize("directive", FORBIDDEN)
def test_what_is_forbidden_is_heard(directive, refusing):
    page, said = refusing
    said.clear()
    with page.expect_console_message(lambda line: f"by {directive}" in line.text):
        # Later, since some are refused with an exception as well.
        page.evaluate(f"() => {{ setTimeout(() => {{ {FORBIDDEN[directive]} }}) }}")

    assert any(f"refused by {directive}" in each for each in said)
