"""Scripts, styles and pages without what only authors read: a third of the bytes.

Nothing is renamed, so a mistake on a phone can still be found in the source. Of
comments only what is surely one goes: lines of their own, and types of JSDoc.

`minify-html` takes idle blanks and brackets out of a script, 3 kB of what a phone
fetches; it has wheels for every common machine and needs no Node. Where a constant is
used it writes its value, and the constant stays behind, used no more; that goes here.
"""

import re
from collections import Counter

import minify_html

from fieldid.web.phone import EARLY
from fieldid.web.script import SCRIPTS

_COMMENT_LINES = re.compile(
    r"^[ \t]*(?://[^\n]*|/\*(?:[^*]|\*(?!/))*\*/[ \t]*)\n", re.M
)
_TYPE = re.compile(r"/\*\* @(?:[^*]|\*(?!/))*\*/ ?")
_INDENT = re.compile(r"^[ \t]+", re.M)
_BLANK = re.compile(r"\n{2,}")
_ENDED = re.compile(r"(<(path|use|rect|circle|ellipse|line)\b[^<>]*)></\2>")
"""A shape of a drawing, which holds nothing."""
_PROPERTY = re.compile(r"^([\w-]+): ", re.M)
_LAST = re.compile(r";?\n}")
_BESIDE = re.compile(r" ?([{}]|[,;](?=\n))\n")
_MODULE = re.compile(r"(?=\$\w+=\(\(\)=>\{)")
"""Where the names of another module begin."""
_VALUE = r"=(?:`[^`$\\]*`|-?[\d.]+(?:e-?\d+)?)"
_CONSTANT = re.compile(rf"(?:\b(?:let|const) |,)([A-Z][A-Z_0-9]*){_VALUE}(?=[,;])")
"""A name in capitals that stands for a text or a number."""


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
    if path.endswith((*SCRIPTS, EARLY)):
        text = _minified(text)
    elif path.endswith(".css"):
        text = _close(text)
    elif path.endswith(".html"):
        # Values stand in double quotes, where an apostrophe is one sign.
        text = _ENDED.sub(r"\1/>", text).replace("&#39;", "'")
    return text.encode()


def tight(script: str) -> str:
    """A classic script of modules with everything out of it that can go.

    It is strict, as modules are by themselves; for that the words are put back.
    """
    return f'"use strict";{_minified(slim("script.js", script.encode()).decode())}'


def _minified(script: str) -> str:
    """A script without idle blanks and brackets; names stay as they are."""
    opening, closing = '<script type="module">', "</script>"
    page = minify_html.minify(f"{opening}{script}{closing}", minify_js=True)
    made = page.partition(">")[2].removesuffix(closing)
    return "".join(map(_used, _MODULE.split(made)))


def _used(module: str) -> str:
    """A module of a script without the constants that it names just once: where it
    makes them.

    >>> _used("$a=(()=>{let A=1,B=`b`,C=.5,d=A;let E=2;let F=3,G=4;return{d,G}})();")
    '$a=(()=>{let A=1,d=A;let G=4;return{d,G}})();'
    """
    words = Counter(re.findall(r"\w+", module))
    for name in _CONSTANT.findall(module):
        if words[name] == 1:
            made = name + _VALUE
            alone = rf"\b(?:let|const) {made};"
            first = rf"(?<=\blet ){made},|(?<=\bconst ){made},"
            module = re.sub(rf",{made}(?=[,;])|{first}|{alone}", "", module)
    return module


def _close(sheet: str) -> str:
    """A style sheet without the blanks and the line ends around its signs.

    >>> _close("a,\\nb {\\n--c: 1;\\nfont: 1rem\\nserif;\\n}\\n")
    'a,b{--c:1;font:1rem\\nserif}'
    >>> _close("@media d {\\na {\\ne: f;\\n}\\n}\\n")
    '@media d{a{e:f}}'
    """
    return _BESIDE.sub(r"\1", _LAST.sub("}", _PROPERTY.sub(r"\1:", sheet)))


def _means_its_blanks(text: str) -> bool:
    """Whether a text in backticks may run over lines, or a page shows lines as such."""
    long = any(line.count("`") % 2 for line in text.splitlines())
    return long or "<pre" in text
