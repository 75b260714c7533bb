"""Which scripts import which, read from their text."""

import posixpath
import re
from pathlib import Path

ENTRY = "phone/app.js"

# `import ... from "./x.js"`, `export ... from "./x.js"` and `import "./x.js"`.
_IMPORT = re.compile(
    r"""^\s*(?:(?:import|export)\b[\w\s{},*$]*\bfrom|import)\s*["']([^"'\n]+)["']""",
    re.MULTILINE,
)


def imports(script: str) -> tuple[str, ...]:
    """The addresses that a script imports, as they are written.

    >>> imports('import { a } from "./a.js";\\nexport const b = ["./b.js"];')
    ('./a.js',)
    """
    return tuple(_IMPORT.findall(script))


def modules(static: Path, entry: str = ENTRY) -> tuple[str, ...]:
    """The entry and all that it imports, directly or not, sorted by path.

    An import that does not exist is there too: whoever reads it will say so.
    """
    found: dict[str, None] = {}
    waiting = [entry]
    while waiting:
        path = waiting.pop()
        if path in found:
            continue
        found[path] = None
        file = static / path
        if file.is_file():
            folder = posixpath.dirname(path)
            waiting += [
                posixpath.normpath(posixpath.join(folder, address))
                for address in imports(file.read_text("utf-8"))
            ]
    return tuple(sorted(found))
