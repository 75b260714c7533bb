"""What the app's own policy forbids is refused, and heard of."""

import pytest

from access.walk import opened, phone
from steps import open_kept

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
