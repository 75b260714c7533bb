"""Scripts, styles and pages without what only authors read: a third of the bytes.

Nothing is renamed, so a mistake on a phone can still be found in the source. Of
comments only what is surely one goes: lines of their own, and types of JSDoc.

`minify-html` takes idle blanks and brackets out of a script, 3 kB of what a phone
fetches; it has wheels for every common machine and needs no Node.
"""

import re

import minify_html

from fieldid.web.script import SCRIPTS

_COMMENT_LINES = re.compile(
    r"^[ \t]*(?://[^\n]*|/\*(?:[^*]|\*(?!/))*\*/[ \t]*)\n", re.M
)
_TYPE = re.compile(r"/\*\* @(?:[^*]|\*(?!/))*\*/ ?")
_INDENT = re.compile(r"^[ \t]+", re.M)
_BLANK = re.compile(r"\n{2,}")


def slim(path: str, body: bytes) -> bytes:
    """The file with less in it, if it is a text whose indents mean nothing.

    >>> slim("a.js", b"// Why.\\nconst a = 1;\\n\\n/** @type {number} */\\nlet b;\\n")
    b'const a = 1;\\nlet b;\\n'
    """
    text = body.decode() if path.endswith((".js", ".css", ".html")) else ""
    if not text or _means_its_blanks(text):
        return body
    if not path.endswith(".html"):
        text = _TYPE.sub("", _COMMENT_LINES.sub("", text))
    text = _BLANK.sub("\n", _INDENT.sub("", text)).lstrip("\n")
    return (_minified(text) if path.endswith(SCRIPTS) else text).encode()


def tight(script: str) -> str:
    """A classic script of modules with everything out of it that can go.

    It is strict, as modules are by themselves; for that the words are put back.
    """
    return f'"use strict";{_minified(slim("script.js", script.encode()).decode())}'


def _minified(script: str) -> str:
    """A script without idle blanks and brackets; names stay as they are."""
    opening, closing = '<script type="module">', "</script>"
    page = minify_html.minify(f"{opening}{script}{closing}", minify_js=True)
    return page.partition(">")[2].removesuffix(closing)


def _means_its_blanks(text: str) -> bool:
    """Whether a text in backticks may run over lines, or a page shows lines as such."""
    long = any(line.count("`") % 2 for line in text.splitlines())
    return long or "<pre" in text
