"""The phone's modules as two scripts: two files to fetch in place of eighty.

Each module becomes a function, called once, that gives what the module exports; it
stands after all that it imports. So names stay apart and nothing is renamed. Only the
forms of `import` and `export` that our modules use are known; another is refused.

The first script is what Home needs. It asks for the second, which holds the rest and
takes from the first what is there already, so that no module runs twice.
"""

import posixpath
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from fieldid.errors import BuildError

ENTRY = "phone/app.js"
LATER = "phone/finding.js"
SCRIPTS = (ENTRY, LATER)
"""What each script begins from."""

_NAMED = r"\{(?P<names>[^}]*)\}"
_LIST = r"\s*\w+(?:\s*,\s*\w+)*,?\s*"
_STATEMENTS = re.compile(
    rf"""^(?:
      import\s+(?:{_NAMED}|\*\s+as\s+(?P<whole>\w+))\s+from\s+"(?P<source>[^"]+)";
    | export\s+\{{(?P<passed>{_LIST})\}}\s+from\s+"(?P<passing>[^"]+)";
    | export\s+(?P<opening>(?:async\s+)?function\*?|const|class)\s+
      (?P<own>\w+|\{{{_LIST}\}})
    | export\s+\{{\s*\}};
    | (?P<unknown>(?:import|export)\b(?!\.).*)
    )""",
    re.MULTILINE | re.VERBOSE,
)


_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_ASKED = re.compile(r"\bimport\(\s*(?P<source>[^)]*?)\s*\)")


def script(static: Path, entry: str = ENTRY) -> str:
    """The entry and all that it imports, directly or not, as one module; of the later
    script, what the first has not got.

    A BuildError names what is missing, imported in a circle, or written in a form that
    is not known here.
    """
    first: dict[str, str] = {}
    _write(static, ENTRY, (), first)
    if entry == ENTRY:
        return "\n".join([*first.values(), f"export {_names(first)};\n"])
    written = dict(first)
    _write(static, entry, (), written)
    later = [text for path, text in written.items() if path not in first]
    address = posixpath.relpath(ENTRY, posixpath.dirname(entry))
    taken = f'import {_names(first)} from "./{address}";\n'
    given = ", ".join(_given(static / entry))
    return "\n".join([taken, *later, f"export const {{ {given} }} = {_name(entry)};\n"])


def _given(file: Path) -> Iterator[str]:
    """The names that a module makes and exports."""
    for found in _STATEMENTS.finditer(file.read_text("utf-8")):
        if found["own"]:
            yield from _listed(found["own"])


def _names(written: Iterable[str]) -> str:
    """The modules' names between braces."""
    return f"{{ {', '.join(map(_name, written))} }}"


def _write(
    static: Path, path: str, importing: tuple[str, ...], written: dict[str, str]
) -> None:
    """Put a module after all that it imports, each once."""
    if path in written:
        return
    if path in importing:
        raise BuildError(f"{' imports '.join((*importing, path))}: a circle")
    file = static / path
    if not file.is_file():
        raise BuildError(f"{importing[-1]} imports {path}, which does not exist")
    text = file.read_text("utf-8")
    _check_asked(path, text)
    for source in _sources(path, text):
        _write(static, source, (*importing, path), written)
    written[path] = _wrapped(path, text)


def _sources(path: str, text: str) -> Iterator[str]:
    """Paths of the modules that a module takes something from."""
    for found in _STATEMENTS.finditer(text):
        if found["unknown"]:
            raise BuildError(f"{path}: cannot join {found['unknown']!r}")
        if source := found["source"] or found["passing"]:
            yield _path(path, source)


def _check_asked(path: str, text: str) -> None:
    """What a module asks for while it runs can only be the later script."""
    for found in _ASKED.finditer(_COMMENT.sub("", text)):
        if _path(path, found["source"].strip('"')) != LATER:
            raise BuildError(f"{path}: cannot join {found[0]!r}")


def _wrapped(path: str, text: str) -> str:
    """A module as a function that was called, under the name of its path."""
    exported: list[str] = []

    def rewritten(found: re.Match[str]) -> str:
        if found["own"]:
            exported.extend(_listed(found["own"]))
            return f"{found['opening']} {found['own']}"
        if found["passed"]:
            whole = _name(_path(path, found["passing"]))
            exported.extend(
                f"{name}: {whole}.{name}" for name in _listed(found["passed"])
            )
            return ""
        if not found["source"]:
            return ""
        whole = _name(_path(path, found["source"]))
        if found["whole"]:
            return f"const {found['whole']} = {whole};"
        taken = found["names"].replace(" as ", ": ").strip()
        return f"const {{ {taken} }} = {whole};"

    body = _STATEMENTS.sub(rewritten, text).strip()
    given = f"return {{ {', '.join(exported)} }};\n" if exported else ""
    return f"const {_name(path)} = (() => {{\n{body}\n{given}}})();\n"


def _listed(names: str) -> list[str]:
    return re.findall(r"\w+", names)


def _name(path: str) -> str:
    """What a module's exports are called in the one script.

    >>> _name("phone/engine/judge.js")
    '$engine_judge'
    """
    return "$" + re.sub(r"\W", "_", path.removeprefix("phone/").removesuffix(".js"))


def _path(importer: str, address: str) -> str:
    return posixpath.normpath(posixpath.join(posixpath.dirname(importer), address))
